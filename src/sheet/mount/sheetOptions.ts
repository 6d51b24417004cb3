/** What may be left out of the mount sheet. */
export interface SheetOptions {
  /** The harness bar seen from behind. */
  readonly hasRearView: boolean
}

export const WHOLE_SHEET: SheetOptions = { hasRearView: true }
