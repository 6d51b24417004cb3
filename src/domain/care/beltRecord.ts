/** The standard on a belt's label; `other` for any that no age rule here speaks about. */
export const BELT_STANDARDS = [
  'sfi-16.1',
  'sfi-16.2',
  'sfi-16.5',
  'sfi-16.6',
  'fia-8853-98',
  'fia-8853-2016',
  'fmvss-209',
  'other',
  'unreadable',
] as const
export type BeltStandard = (typeof BELT_STANDARDS)[number]

/** What was found of one thing looked at. */
export type InspectionResult = 'sound' | 'fault' | 'not-looked-at'

/** One thing that happened to a belt. Entries are only ever added; a mistaken one is struck by a later one and stays readable. */
export type BeltEntry = {
  readonly id: string
  /** ISO 8601 calendar date of what happened. */
  readonly date: string
  readonly by: string
  readonly note: string
} & (
  | { readonly kind: 'inspection'; readonly results: Readonly<Record<string, InspectionResult>> }
  | { readonly kind: 'cleaning' }
  /** A crash or a hard landing while the belt was worn. */
  | { readonly kind: 'crash' }
  /** Taken out of the car for good. */
  | { readonly kind: 'retired' }
  | { readonly kind: 'note' }
  /** Takes back an earlier entry; the note says why. */
  | { readonly kind: 'struck'; readonly entryId: string }
)

/** One belt that is or was fitted at a place. */
export interface BeltRecord {
  readonly id: string
  readonly placeId: string
  /** What the shop calls it. */
  readonly name: string
  readonly standard: BeltStandard
  /** Serial or batch number on the label; may be empty. */
  readonly serial: string
  /** Date of manufacture on the label: YYYY-MM-DD or YYYY-MM, YYYY where only the year can be read, or empty. */
  readonly manufactured: string
  /** The last year of use that the label itself states; null where it states none. */
  readonly labelYear: number | null
  /** ISO 8601 calendar date of fitting, or empty. */
  readonly fitted: string
  readonly entries: readonly BeltEntry[]
}
