/** What a page says to the service worker. */
export type ToSiteWorker =
  /** Take charge of every page now, instead of when the last page of the older build is closed. */
  | { readonly kind: 'take-charge' }
  /** Say over the port that comes with it whether the whole build is kept. */
  | { readonly kind: 'what-is-kept' }
  /** Remove what no page uses any more. */
  | { readonly kind: 'tidy' }

/** Its answer to `what-is-kept`. */
export interface KeptReport {
  readonly version: string
  readonly missing: number
}
