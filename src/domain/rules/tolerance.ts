/** How an error is taken to be spread over its ±: not at all, evenly, or mostly small. */
export const ERROR_SPREADS = ['worst-case', 'even', 'mostly-small'] as const

/**
 * `worst-case`: only the worst is looked for. `even`: every error within the ± is as likely as any other. `mostly-small`: a normal
 * error with a standard deviation of half the ±, cut off at the ±. In all three nothing is ever off by more than the ±.
 * Source: JCGM 100:2008 §4.3.7 (rectangular) and §6.2 (twice the standard deviation), from memory; the cut is our judgement.
 */
export type ErrorSpread = (typeof ERROR_SPREADS)[number]

/** What a shop's welding and measuring may be off by, typed by the builder. Each is a ± and at least 0; 0 is no error at all. */
export interface WeldTolerance {
  /** Every anchor, whether on a tab or on a bar, along each vehicle axis, each on its own. */
  readonly xMm: number
  readonly yMm: number
  readonly zMm: number
  /** The turn of a tab in plan and its lean, each on its own. */
  readonly tabDeg: number
  /** The reading of the recline, the same in every sitting. */
  readonly reclineDeg: number
  readonly spread: ErrorSpread
}

/** What the typed error can make of one finding. */
export interface ToleranceCase {
  /** The worst value found anywhere within the ±, in the quantity's unit; null when a strap may be left without a path. */
  readonly worstValue: number | null
  /** The sitting of that value. */
  readonly worstSitting: string
  /** Whether the rule is broken, or cannot be checked, somewhere within the ±. */
  readonly canLeave: boolean
  /**
   * Share of all cars welded so in which the rule is broken in some sitting, 0…1; null where it was not asked for, where the
   * rule is broken as drawn and where no method gives it.
   */
  readonly chance: number | null
}

/**
 * What the form starts with. Our judgement, no source: ± 5 mm is what "tight" is built on; angles as an angle finder held by hand
 * is read. A shop that has measured its own puts that in.
 */
export const STARTING_TOLERANCE: WeldTolerance = {
  xMm: 5,
  yMm: 5,
  zMm: 5,
  tabDeg: 2,
  reclineDeg: 1,
  spread: 'worst-case',
}
