import type { InspectionItemId } from './inspection'

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

export const INSPECTION_RESULTS = ['sound', 'fault', 'not-looked-at'] as const
/** What was found of one thing looked at. */
export type InspectionResult = (typeof INSPECTION_RESULTS)[number]

/** An item that is left out was not looked at. */
type InspectionResults = Readonly<Partial<Record<InspectionItemId, InspectionResult>>>

/** What is known of a belt from its label and its fitting; a change of any of them is kept as an entry. */
export const BELT_FACTS = ['name', 'standard', 'serial', 'manufactured', 'labelYear', 'fitted'] as const
export type BeltFact = (typeof BELT_FACTS)[number]

export const RELEASERS = ['maker', 'licensed-person'] as const
/** Who looked at a belt that was out of use and put it back into use. */
export type Releaser = (typeof RELEASERS)[number]

/** What happened to a belt, without when and by whom. */
export type BeltEvent =
  | { readonly kind: 'inspection'; readonly results: InspectionResults }
  | { readonly kind: 'cleaning' }
  /** A crash, a roll-over or a hard landing while the belt was worn. */
  | { readonly kind: 'crash' }
  /** Looked at and put back into use. The maker's word ends faults and crashes entered before it, a licensed person's only faults. */
  | { readonly kind: 'released'; readonly lookedAtBy: Releaser }
  /** Taken out of the car for good. */
  | { readonly kind: 'retired' }
  | { readonly kind: 'note' }
  /** A fact of the label or the fitting was changed: as text, empty where nothing was known. The note says why. */
  | { readonly kind: 'corrected'; readonly fact: BeltFact; readonly from: string; readonly to: string }
  /** Takes back an earlier entry, which stays readable; the note says why. Corrections and strikes are not struck. */
  | { readonly kind: 'struck'; readonly entryId: string }

/** One thing that happened to a belt. Entries are only ever added, never changed, and keep the order they were entered in. */
export type BeltEntry = BeltEvent & {
  readonly id: string
  /** ISO 8601 calendar date of what happened; may be earlier than that of an entry before it. */
  readonly date: string
  readonly by: string
  readonly note: string
}

/** What a new record starts from. */
export interface BeltFacts {
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
}

/** One belt that is or was fitted at a place. Kept when the place is removed: a history is not lost with a drawing. */
export interface BeltRecord extends BeltFacts {
  readonly id: string
  /** The place it is or was fitted at, which may no longer be in the layout. */
  readonly placeId: string
  /** How often the shop wants it looked at, whole months, its own choice; left out when it wants no reminder. */
  readonly inspectEveryMonths?: number
  readonly entries: readonly BeltEntry[]
}

/** A fact as an entry keeps it: text, empty where nothing is known. */
export const factText = (facts: BeltFacts, fact: BeltFact): string => {
  if (fact === 'labelYear') return facts.labelYear === null ? '' : String(facts.labelYear)
  return facts[fact]
}

/** The facts with one of them set from such a text; null when the text is none: no standard, no whole year. */
export const withFactText = <Facts extends BeltFacts>(
  facts: Facts,
  fact: BeltFact,
  text: string,
): Facts | null => {
  switch (fact) {
    case 'labelYear':
      if (text !== '' && !/^\d{4}$/.test(text)) return null
      return { ...facts, labelYear: text === '' ? null : Number(text) }
    case 'standard': {
      const standard = BELT_STANDARDS.find((each) => each === text)
      return standard === undefined ? null : { ...facts, standard }
    }
    case 'name':
    case 'serial':
    case 'manufactured':
    case 'fitted':
      return { ...facts, [fact]: text }
  }
}
