import type { Layout } from '../document/layout'
import { limited, type NumberLimits } from '../document/limits'
import type { QuestionFigure } from './figure/figure'

/** In the order in which a person measures a car. */
export const QUESTION_IDS = [
  'job',
  'datum',
  'seat',
  'recline',
  'hip-height',
  'slide',
  'people',
  'belt',
  'bar',
  'tubes',
  'lap',
  'shoulder',
  'sub',
  'slots',
  'rules',
] as const

export type QuestionId = (typeof QUESTION_IDS)[number]

/** What somebody answers: mm, degrees or kg for a number; the value of a choice; words. */
export type Answer = number | string

/** What the questions begin with: a layout to copy from, or nothing but the starting values. */
export interface Begun {
  /** True: parts start where the starting mounts put them. False: they start as they are in `base`. */
  readonly isFresh: boolean
  readonly base: Layout
}

export interface AskChoice {
  readonly value: string
  readonly words: string
  readonly group?: string
}

/** How an answer is given; `kept`: nobody is asked, the part only follows what it hangs on until somebody moves it by hand. */
type Entry =
  | { readonly kind: 'length' | 'angle' | 'mass'; readonly limits: NumberLimits }
  | { readonly kind: 'text'; readonly isLong: boolean; readonly maxLength: number }
  | { readonly kind: 'choice'; readonly choices: readonly AskChoice[]; readonly isList: boolean }
  | { readonly kind: 'kept' }

/** One thing that a question asks for. Reading, writing and where it starts are pure. */
export interface Ask {
  /** Stable; never changed, because answers are kept by it. */
  readonly id: string
  readonly words: string
  readonly hint?: string
  /** The letter on the question's drawing. */
  readonly letter?: string
  readonly entry: Entry
  readonly read: (layout: Layout) => Answer
  /** The layout as it was for an answer that this ask does not know. */
  readonly write: (layout: Layout, answer: Answer) => Layout
  /** Where it starts in a fresh layout, from what was asked before it; left out: as in the layout that the questions began with. */
  readonly derived?: (layout: Layout) => Answer
  /** Starts as derived in every layout, whatever it was in the one that the questions began with. */
  readonly isAlwaysDerived?: true
  /** What a start taken from another layout moves along with; left out: nothing. */
  readonly hangsOn?: (layout: Layout) => HungOn
  /** The answer that others of the question imply: where a slot is, is not asked of a shell without one. */
  readonly implied?: { readonly by: readonly string[]; readonly answer: Answer }
}

/** What something is fixed to, and where that and the seat are along the asked axis, mm. */
export interface HungOn {
  /** The tube's id; null: the seat. */
  readonly tubeId: string | null
  readonly atMm: number
  readonly seatMm: number
}

export interface Question {
  readonly id: QuestionId
  readonly title: string
  /** How to measure, in plain words. */
  readonly how: string
  readonly isAsked: (layout: Layout) => boolean
  readonly asks: (layout: Layout, begun: Begun) => readonly Ask[]
  /** Where the tape goes, computed from the layout as it is; none where there is nothing to measure. */
  readonly figures: (layout: Layout) => readonly QuestionFigure[]
}

type Common = Pick<Ask, 'id' | 'words' | 'hint' | 'letter' | 'hangsOn' | 'implied'>

export interface NumberAsk extends Common {
  readonly kind: 'length' | 'angle' | 'mass'
  readonly limits: NumberLimits
  readonly read: (layout: Layout) => number
  readonly write: (layout: Layout, value: number) => Layout
  readonly derived?: (layout: Layout) => number
}

/** A number; an answer outside the limits is taken as the nearest end of them. */
export const numberAsk = ({ kind, limits, write, ...ask }: NumberAsk): Ask => ({
  ...ask,
  entry: { kind, limits },
  write: (layout, answer) =>
    typeof answer === 'number' && Number.isFinite(answer) ? write(layout, limited(answer, limits)) : layout,
})

interface TextAsk extends Common {
  readonly isLong?: boolean
  readonly maxLength: number
  readonly read: (layout: Layout) => string
  readonly write: (layout: Layout, value: string) => Layout
}

export const textAsk = ({ isLong = false, maxLength, write, ...ask }: TextAsk): Ask => ({
  ...ask,
  entry: { kind: 'text', isLong, maxLength },
  write: (layout, answer) =>
    typeof answer === 'string' ? write(layout, answer.slice(0, maxLength)) : layout,
})

interface ChoiceAsk extends Common {
  readonly choices: readonly AskChoice[]
  /** Many choices: a list to open instead of all in view. */
  readonly isList?: boolean
  readonly read: (layout: Layout) => string
  readonly write: (layout: Layout, value: string) => Layout
  readonly derived?: (layout: Layout) => string
}

export const choiceAsk = ({ choices, isList = false, write, ...ask }: ChoiceAsk): Ask => ({
  ...ask,
  entry: { kind: 'choice', choices, isList },
  write: (layout, answer) =>
    choices.some(({ value }) => value === answer) ? write(layout, String(answer)) : layout,
})

interface KeptAsk {
  readonly id: string
  readonly read: (layout: Layout) => Answer
  readonly write: (layout: Layout, value: Answer) => Layout
  readonly derived: (layout: Layout) => Answer
  readonly isAlwaysDerived?: true
  readonly hangsOn?: (layout: Layout) => HungOn
}

/** Something that follows without being asked for. */
export const keptAsk = (ask: KeptAsk): Ask => ({ ...ask, words: '', entry: { kind: 'kept' } })

export const YES_NO: readonly AskChoice[] = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
]

/** Readings of a tape from the datum. Our judgement: no buggy is longer, and a slipped decimal point is caught. */
export const FROM_DATUM: NumberLimits = { min: -10_000, max: 10_000, unit: 'mm' }

/** Whole millimetres: a start that nobody measured needs no tenths. */
export const whole = (value: number): number => Math.round(value) + 0
