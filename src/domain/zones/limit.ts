import type { QuantityRule } from '../rules/rule'
import { quantityFamilies } from '../rules/quantityFamilies'
import { QUANTITY_IDS, type QuantityId } from '../straps/quantity'
import type { StrapFamily } from '../straps/strap'
import type { Triangle } from './lattice'

/** What a place of the drawn plane is asked in a sitting: numbers by `numberIndex`, NaN where there is none. */
export type Numbers = number[]

/** Where the one number of a place stands for which nothing else is known. */
export const ONLY_INDEX = 0

/** Where it stands how far the place is from having no path or, < 0, from having one, mm; Infinity where that has no measure. */
export const PATH_INDEX = 1

/** Where it stands how far the strap is from running through a tube, its own among them, mm; Infinity where there is none. */
export const CLEAR_INDEX = 2

const FIRST_INDEX = 3

const FAMILIES: readonly StrapFamily[] = ['shoulder', 'lap', 'sub']

/** Quantities of all straps come first; those of one family stand where those of the others do: no strap has both. */
const inOrder = (family: StrapFamily): readonly QuantityId[] => {
  const families = (id: QuantityId): number => quantityFamilies(id).length
  const own = QUANTITY_IDS.filter((id) => quantityFamilies(id).includes(family))
  return [...own.filter((id) => families(id) > 1), ...own.filter((id) => families(id) === 1)]
}

const INDEX: Readonly<Partial<Record<QuantityId, number>>> = Object.fromEntries(
  FAMILIES.flatMap((family) => inOrder(family).map((id, index) => [id, FIRST_INDEX + index])),
)

/** Where a quantity's number stands among the numbers of a place; null for what is not of straps. */
export const numberIndex = (id: QuantityId): number | null => INDEX[id] ?? null

/** So many numbers a place has for a strap of a family. */
export const numberCount = (family: StrapFamily): number => FIRST_INDEX + inOrder(family).length

/** Of a number with creases, which cannot be judged from a few corners. */
export interface Creases {
  /** The most that it can change per mm of the anchor's way inside a triangle. */
  readonly steepest: (triangle: Triangle) => number
  /** Creases of triangles that are no larger than this show at their corners, mm. */
  readonly seenMm: number
  /** But for those no deeper than this, which are looked for down to `grazingSeenMm`. */
  readonly grazing: number
  readonly grazingSeenMm: number
}

/** One side of a rule, as a margin: ≥ 0 where it is kept. */
export interface Limit {
  /** Whether the number is of the strap itself or of its pair. */
  readonly of: 'strap' | 'pair'
  /** That there is a path, that no tube is in its way (the edge of a tube's shadow), or what a rule says. */
  readonly what: 'path' | 'tubes' | 'rule'
  readonly index: number
  /** 1: at least the bound, −1: at most. */
  readonly sign: 1 | -1
  readonly bound: number
  /** Null where the number is smooth between the straight edges that the strap bends over. */
  readonly creases: Creases | null
  /** Farthest that the middle of a chord may lie from the limit as it is drawn, mm. */
  readonly chordMm: number
  /** Where it crosses the sides of triangles is found to this, mm. */
  readonly crossingMm: number
  /** Triangles that it may cross in more than one way are halved down to this, mm. */
  readonly leastMm: number
}

/** A rule's limit is drawn this finely. Our judgement: chords within a tenth of what a tape can show. */
const RULE_FINENESS = { chordMm: 0.1, crossingMm: 1e-4, leastMm: 0.5 }

/** The shadow of a tube this finely. Our judgement: the webbing that would touch the tube is 50 mm wide, and neither's place is known better. */
const SHADOW_FINENESS = { chordMm: 0.5, crossingMm: 0.2, leastMm: 2 }

/** Where the number of the nearest tube stands. */
export const TUBE_INDEX = numberIndex('tube-clearance') ?? ONLY_INDEX

/**
 * How far a limit is kept, in the number's own unit. NaN where there is no number because the strap has no path: that is for the
 * limit of the path to say. A number that is missing otherwise never keeps a rule.
 */
export const marginOf = ({ index, sign, bound }: Limit, numbers: Numbers): number => {
  const value = numbers[index] ?? NaN
  if (!Number.isNaN(value)) return sign * (value - bound)
  return (numbers[PATH_INDEX] ?? NaN) < 0 ? NaN : -Infinity
}

/** A point of a taut strap moves at most as far as its anchor; a wrap's contact a little further. Our judgement. */
const TUBE_PER_MM = 1.2

const pathLimit = (of: Limit['of']): Limit => ({
  of,
  what: 'path',
  index: PATH_INDEX,
  sign: 1,
  bound: 0,
  creases: null,
  ...RULE_FINENESS,
})

/** That the strap has a path, and that both straps of its pair have. */
export const STRAP_PATH = pathLimit('strap')
const PAIR_PATH = pathLimit('pair')

/**
 * The shadow of a tube is looked for in triangles down to 40 mm: no tube of a cage is as thin as half of that. Where the strap only grazes
 * a tube the shadow is narrower: that is looked for down to 8 mm, half of which is less than the thickness of a tab. Our judgement.
 */
const SHADOW_CREASES: Creases = {
  steepest: () => TUBE_PER_MM,
  seenMm: 40,
  grazing: 3,
  grazingSeenMm: 8,
}

const clearance = (of: Limit['of']): Limit => ({
  of,
  what: 'tubes',
  index: CLEAR_INDEX,
  sign: 1,
  bound: 0,
  creases: SHADOW_CREASES,
  ...SHADOW_FINENESS,
})

/** That no tube is in the way of the strap, and of the two of its pair. */
export const STRAP_CLEAR = clearance('strap')
const PAIR_CLEAR = clearance('pair')

/** Distances between mounts, which need no path. */
const NEEDS_NO_PATH: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'lap-off-centre',
  'lap-spacing',
  'lap-mirror',
  'shoulder-mirror',
  'sub-mirror',
  'sub-spacing',
])

/** The sides of a rule, and that the quantity has a number at all. */
export const limitsOf = (
  rule: QuantityRule,
  of: 'strap' | 'pair',
  creases: Creases | null,
): readonly Limit[] => {
  const [path, clear] = of === 'pair' ? [PAIR_PATH, PAIR_CLEAR] : [STRAP_PATH, STRAP_CLEAR]
  const index = numberIndex(rule.quantity) ?? ONLY_INDEX
  const side = { ...path, what: 'rule', index, creases } as const
  const tubes = { ...clear, index }
  const isOfTubes = rule.quantity === 'tube-clearance'
  return [
    ...(NEEDS_NO_PATH.has(rule.quantity) ? [] : [path]),
    // That no tube at all is in the way says as much as a least distance of 0, and more.
    ...(rule.min === null || (isOfTubes && rule.min <= 0)
      ? []
      : [{ ...(isOfTubes ? tubes : side), bound: rule.min }]),
    ...(rule.max === null ? [] : [{ ...side, sign: -1, bound: rule.max } as const]),
    clear,
  ]
}
