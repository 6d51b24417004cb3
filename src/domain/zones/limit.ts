import type { QuantityRule } from '../rules/rule'
import { QUANTITY_IDS, type QuantityId } from '../straps/quantity'
import type { Numbers, Triangle } from './lattice'

const INDEX = Object.fromEntries(QUANTITY_IDS.map((id, index) => [id, index])) as Readonly<
  Record<QuantityId, number>
>

/** Where a quantity's number stands among the numbers of a place. */
export const numberIndex = (id: QuantityId): number => INDEX[id]

/** Where it stands whether the strap can lie there at all: Infinity, or how far it is from that, mm < 0. */
export const PATH_INDEX = QUANTITY_IDS.length

/** One side of a rule, as a margin: ≥ 0 where it is kept. */
export interface Limit {
  /** Whether the number is of the strap itself, of the tubes about it or of its pair. */
  readonly of: 'strap' | 'tube' | 'pair'
  readonly index: number
  /** 1: at least the bound, −1: at most. */
  readonly sign: 1 | -1
  readonly bound: number
  /** The margin where there is no number: −Infinity, that never keeps a rule, unless nothing is there to be measured. */
  readonly missing: number
  /**
   * The most that the number can change per mm of the anchor's way inside a triangle, for numbers with creases, which cannot be
   * judged from a few corners; null where they are smooth between the straight edges that the strap bends over.
   */
  readonly steepest: ((triangle: Triangle) => number) | null
  /** Farthest that the middle of a chord may lie from the limit as it is drawn, mm. */
  readonly chordMm: number
  /** Where it crosses the sides of triangles is found to this, mm. */
  readonly crossingMm: number
  /** Triangles that it may cross in more than one way are halved down to this, mm. */
  readonly leastMm: number
}

/** A rule's limit is drawn this finely. Our judgement: chords within a tenth of what a tape can show. */
const RULE_FINENESS = { chordMm: 0.015, crossingMm: 1e-4, leastMm: 0.2 }

/** The shadow of a tube this finely. Our judgement: the webbing that would touch the tube is 50 mm wide, and neither's place is known better. */
const SHADOW_FINENESS = { chordMm: 0.5, crossingMm: 0.1, leastMm: 1 }

/** Where the number of the tube in the way stands. */
export const TUBE_INDEX = numberIndex('tube-clearance')

/**
 * How far a limit is kept, in the number's own unit. NaN where there is no number because the strap has no path: that is for the
 * limit of the path to say.
 */
export const marginOf = ({ index, sign, bound, missing }: Limit, numbers: Numbers): number => {
  const value = numbers[index] ?? NaN
  if (!Number.isNaN(value)) return sign * (value - bound)
  return (numbers[PATH_INDEX] ?? NaN) < 0 ? NaN : missing
}

/** A point of a taut strap moves at most as far as its anchor; a wrap's contact a little further. Our judgement. */
export const TUBE_PER_MM = 1.2

const pathLimit = (of: Limit['of']): Limit => ({
  of,
  index: PATH_INDEX,
  sign: 1,
  bound: 0,
  missing: -Infinity,
  steepest: null,
  ...RULE_FINENESS,
})

const tubeLimit = (of: Limit['of']): Limit => ({
  of,
  index: TUBE_INDEX,
  sign: 1,
  bound: 0,
  missing: Infinity,
  steepest: () => TUBE_PER_MM,
  ...SHADOW_FINENESS,
})

/** That the strap has a path, and that both straps of its pair have. */
export const STRAP_PATH = pathLimit('strap')
const PAIR_PATH = pathLimit('pair')

/** That no tube is in the way of the strap, and of the two of its pair. */
export const STRAP_CLEAR = tubeLimit('tube')
const PAIR_CLEAR = tubeLimit('pair')

export const isPathLimit = (limit: Limit): boolean => limit === STRAP_PATH || limit === PAIR_PATH

/** Distances between mounts, which need no path. */
const NEEDS_NO_PATH: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'lap-off-centre',
  'lap-spacing',
  'lap-mirror',
  'sub-spacing',
])

/** The sides of a rule, and that the quantity has a number at all. */
export const limitsOf = (
  rule: QuantityRule,
  of: 'strap' | 'pair',
  steepest: Limit['steepest'],
): readonly Limit[] => {
  const isPair = of === 'pair'
  const side = {
    of: rule.quantity === 'tube-clearance' ? 'tube' : of,
    index: numberIndex(rule.quantity),
    missing: -Infinity,
    steepest,
    ...RULE_FINENESS,
  } as const
  return [
    ...(NEEDS_NO_PATH.has(rule.quantity) ? [] : [isPair ? PAIR_PATH : STRAP_PATH]),
    ...(rule.min === null ? [] : [{ ...side, sign: 1, bound: rule.min } as const]),
    ...(rule.max === null ? [] : [{ ...side, sign: -1, bound: rule.max } as const]),
    ...(rule.quantity === 'tube-clearance' ? [] : [isPair ? PAIR_CLEAR : STRAP_CLEAR]),
  ]
}
