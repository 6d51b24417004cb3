import { planeDistanceMm } from '../geometry/plane'
import type { HalfPlane } from '../geometry/polygon'
import { type Asked, crossingOn, type Judgement, lookAt, marginAt, type Margins, marginsOf } from './asked'
import { chordLine, frontierBetween, isOnKeptSide } from './frontier'
import type { Triangle } from './lattice'
import { type Limit, STRAP_PATH } from './limit'

/**
 * Whether a limit matters that runs within `asideMm` of the edge of a half-plane and is kept inside: not when all that is asked about
 * lies farther inside.
 */
export type Matters = (inside: HalfPlane, asideMm: number) => boolean

/** A limit runs at most this far beside the chord between its crossings, as a share of the chord, or its triangle is halved. */
const ASIDE_SHARE = 0.45

/** What one line cuts off a larger triangle may be two shadows of tubes, or the end of one. Our judgement. */
const ONE_SHADOW_MM = 100

/** So far inside the edge of where the strap has a path a number is asked for. */
const INSIDE_MM = 0.01

const fourOf = ({ corner, from, to, middle }: Margins): readonly number[] => [corner, from, to, middle]

/** What a limit says about a triangle that the edge of the path crosses, from the corners and along that edge; null: not the same. */
const judgedAlongPath = (
  asked: Asked,
  limit: Limit,
  triangle: Triangle,
  margins: Margins,
): 'kept' | 'broken' | null => {
  if (limit.of === 'pair' || limit === STRAP_PATH) return null
  const edge = judged(asked, STRAP_PATH, triangle, () => true)
  if (typeof edge === 'string') return null
  const along = edge.points.map((point, index) => {
    const [from, to] = index === 0 ? [point, edge.points[1]] : [edge.points[index - 1], point]
    if (from === undefined || to === undefined) return NaN
    const { nu, nv } = chordLine(from, to, edge.isKeptLeft)
    return marginAt(asked, limit, { uMm: point.uMm - INSIDE_MM * nu, vMm: point.vMm - INSIDE_MM * nv })
  })
  const known = [...fourOf(margins), ...along].filter((margin) => !Number.isNaN(margin))
  if (known.every((margin) => margin >= 0)) return 'kept'
  return known.every((margin) => margin < 0) ? 'broken' : null
}

/** What a limit says about a triangle where the numbers alone say nothing: where it crosses its sides, it is followed from one to the other. */
export const judged = (asked: Asked, limit: Limit, triangle: Triangle, matters: Matters): Judgement => {
  const known = asked.judgements.get(limit) ?? new Map<Triangle, Judgement>()
  asked.judgements.set(limit, known)
  const before = known.get(triangle)
  if (before !== undefined) return before
  const judgement = freshlyJudged(asked, limit, triangle, matters)
  if (judgement === 'elsewhere') return 'kept'
  known.set(triangle, judgement)
  return judgement
}

const freshlyJudged = (
  asked: Asked,
  limit: Limit,
  triangle: Triangle,
  matters: Matters,
): Judgement | 'elsewhere' => {
  const margins = marginsOf(lookAt(asked, limit.of, triangle), limit)
  const isLeast = triangle.acrossMm <= limit.leastMm
  if (margins.known === 0) return 'unknown'
  if (margins.known < 4) {
    if (limit.creases !== null && triangle.acrossMm > limit.creases.seenMm) return 'unclear'
    const sure = judgedAlongPath(asked, limit, triangle, margins)
    if (sure !== null || !isLeast) return sure ?? 'unclear'
    // A shadow says nothing where there is no strap.
    return limit.what === 'tubes' && margins.least >= 0 ? 'kept' : 'broken'
  }
  const { corner, from, to, middle } = margins
  const keptCount = (corner >= 0 ? 1 : 0) + (from >= 0 ? 1 : 0) + (to >= 0 ? 1 : 0)
  if (keptCount === 0 || keptCount === 3) {
    if (!isLeast) return 'unclear'
    return keptCount === 3 && middle >= 0 ? 'kept' : 'broken'
  }
  if (limit.what === 'tubes' && triangle.acrossMm > ONE_SHADOW_MM) return 'unclear'
  const lone = [corner, from, to].findIndex((margin) => margin >= 0 === (keptCount === 1))
  return followed(asked, limit, triangle, matters, { lone, isLoneKept: keptCount === 1, middle })
}

/** The one corner that is on its side of the limit alone, and how far the limit is kept at the middle of the longest side. */
interface Lone {
  readonly lone: number
  readonly isLoneKept: boolean
  readonly middle: number
}

/** The limit from one of the two sides that meet in the lone corner to the other. */
const followed = (
  asked: Asked,
  limit: Limit,
  { corners, middle, acrossMm }: Triangle,
  matters: Matters,
  { lone, isLoneKept, middle: atMiddle }: Lone,
): Judgement | 'elsewhere' => {
  const [own, next, last] = [corners[lone], corners[(lone + 1) % 3], corners[(lone + 2) % 3]]
  if (own === undefined || next === undefined || last === undefined) throw new Error('a triangle has corners')
  const from = crossingOn(asked, limit, own, next)
  const to = crossingOn(asked, limit, own, last)
  // Both crossings in one corner: that corner alone is on its side.
  if (planeDistanceMm(from, to) <= 2 * limit.crossingMm) return isLoneKept ? 'broken' : 'kept'
  if (!matters(chordLine(from, to, isLoneKept), ASIDE_SHARE * planeDistanceMm(from, to))) return 'elsewhere'
  // Corners go anticlockwise: on the way from the one crossing to the other the lone corner lies on the left.
  if (acrossMm <= limit.leastMm) return { points: [from, to], isKeptLeft: isLoneKept }
  const frontier = frontierBetween((at) => marginAt(asked, limit, at), [from, to], isLoneKept, limit.chordMm)
  return frontier === null || isOnKeptSide(frontier, middle.at, 2 * limit.chordMm) === !(atMiddle >= 0)
    ? 'unclear'
    : frontier
}
