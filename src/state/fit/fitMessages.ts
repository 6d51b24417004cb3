import type { Layout } from '../../domain/layout/document/layout'
import type { WhoFits } from '../../domain/layout/fit/whoFits'

/** What the page asks of the worker. A worker answers one question and is then stopped. */
export interface FitQuestion {
  readonly layout: Layout
  readonly placeId: string
}

/** What the worker says; `done` and `failed` are its last words. */
export type FitAnswer =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly result: WhoFits }
  | { readonly kind: 'failed'; readonly message: string }
