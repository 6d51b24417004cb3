/** What may be left out of the mount sheet, and what the layout itself cannot tell. */
export interface SheetOptions {
  /** The harness bar seen from behind. */
  readonly hasRearView: boolean
  /** The questions whose numbers nobody has measured yet, as they are asked; left out or empty: none is known of. */
  readonly unmeasured?: readonly string[]
}

export const WHOLE_SHEET: SheetOptions = { hasRearView: true }
