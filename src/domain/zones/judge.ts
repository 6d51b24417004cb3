import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import type { HalfPlane } from '../geometry/polygon'
import { crossingShare } from './crossing'
import { chordLine, type Frontier, frontierBetween, isOnKeptSide } from './frontier'
import type { Corner, Triangle } from './lattice'
import { type Limit, marginOf, STRAP_PATH, TUBE_PER_MM } from './limit'
import type { SittingField } from './sittingField'

/** One sitting as the triangles ask it. */
export interface Asked {
  readonly sitting: number
  readonly field: SittingField
  /** Where limits cross the sides of triangles, by limit and by the two corners: neighbours ask for the same. */
  readonly crossings: Map<Limit, Map<number, PlanePointMm>>
  /** What limits said about triangles: zones, rooms and remedies ask for the same. */
  readonly judgements: Map<Limit, Map<Triangle, Judgement>>
}

/**
 * What a limit says about a triangle: kept or broken all over, crossed in one line, not to be said before it is halved, or that there
 * is no number anywhere because the strap has no path.
 */
export type Judgement = 'kept' | 'broken' | 'unclear' | 'unknown' | Frontier

/**
 * What neither the numbers at a triangle's corners nor those at the middle of its longest side show may be missed when it is
 * smaller than this. Our judgement: less than the width of any webbing, or the thickness of a tab's edge weld on both sides.
 */
const SEEN_MM = 16

/** How much further than at the middle of its longest side a smooth number may leave the plane through a triangle's corners. */
const SLACK = 2

/** No point of a right-angled triangle with equal legs is further from a corner or the middle of its longest side, as a share of that side. */
const FARTHEST_SHARE = 0.354

/** Creases of numbers that have them are looked for down to this. Our judgement: no strap's shadow of a tube is narrower where an anchor can be. */
const CREASE_MM = 100

/** How much steeper than between the places looked at a number with creases may be in between. */
const STEEPER = 3

/** Where only some places of a triangle have a number it is halved down to this before those few are trusted. */
const PARTLY_MM = 64

/** How far a limit is kept at a place. */
const marginAt = ({ field }: Asked, limit: Limit, at: PlanePointMm): number => field.marginAt(limit, at)

const cornerMargin = ({ sitting, field }: Asked, limit: Limit, corner: Corner): number =>
  marginOf(limit, (corner[limit.of][sitting] ??= field.numbersAt(limit.of, corner.at)))

const between = (from: PlanePointMm, to: PlanePointMm, share: number): PlanePointMm => ({
  uMm: from.uMm + (to.uMm - from.uMm) * share,
  vMm: from.vMm + (to.vMm - from.vMm) * share,
})

/** Corners of one lattice are fewer than this. */
const MOST_CORNERS = 2 ** 26

/** Where a limit crosses a side of a triangle; found once for both triangles that share it. */
const crossingOn = (asked: Asked, limit: Limit, one: Corner, other: Corner): PlanePointMm => {
  const [from, to] = one.id < other.id ? [one, other] : [other, one]
  const known = asked.crossings.get(limit) ?? new Map<number, PlanePointMm>()
  asked.crossings.set(limit, known)
  const key = from.id * MOST_CORNERS + to.id
  const found = known.get(key)
  if (found !== undefined) return found
  const share = crossingShare(
    (at) => marginAt(asked, limit, between(from.at, to.at, at)),
    cornerMargin(asked, limit, from),
    cornerMargin(asked, limit, to),
    limit.crossingMm / planeDistanceMm(from.at, to.at),
  )
  const at = between(from.at, to.at, share)
  known.set(key, at)
  return at
}

/**
 * Whether a limit matters that runs within `asideMm` of the edge of a half-plane and is kept inside: not when all that is asked about
 * lies farther inside.
 */
export type Matters = (inside: HalfPlane, asideMm: number) => boolean

/** A limit runs at most this far beside the chord between its crossings, as a share of the chord, or its triangle is halved. */
const ASIDE_SHARE = 0.45

type Margins = readonly [number, number, number]

/**
 * Whether the numbers at the corners and at the middle of the longest side already say that a limit is kept or broken all over.
 * Where some have no number the others must be broken by more than they differ.
 */
const judgedByNumbers = (
  triangle: Triangle,
  { steepest, missing }: Limit,
  [corner, from, to]: Margins,
  middle: number,
): 'kept' | 'broken' | null => {
  const known = [corner, from, to, middle].filter((margin) => !Number.isNaN(margin))
  const least = Math.min(...known)
  const most = Math.max(...known)
  if (known.length === 0) return null
  // A shadow says nothing where there is no strap: no tube is there at all, or none is as near as the triangle is wide.
  if (missing === Infinity && known.length < 4 && least >= TUBE_PER_MM * triangle.acrossMm) return 'kept'
  if (known.length === 4 && least === Infinity) return 'kept'
  if (known.length === 4 && most === -Infinity) return 'broken'
  const isPartly = known.length < 4 || least === -Infinity
  // Where the path ends a number may change fast: what lies along that edge has to be asked.
  if (known.length < 4 && most >= 0) return null
  if (triangle.acrossMm <= (isPartly ? PARTLY_MM : SEEN_MM))
    return least >= 0 ? 'kept' : most < 0 ? 'broken' : null
  if (known.length === 1) return null
  const spread = most - Math.min(...known.filter(Number.isFinite))
  const smooth = isPartly ? spread : SLACK * Math.abs(middle - (from + to) / 2)
  const seen = FARTHEST_SHARE * Math.SQRT2 * STEEPER * spread
  const slack =
    steepest === null || triangle.acrossMm <= CREASE_MM
      ? smooth
      : Math.max(smooth, Math.min(seen, FARTHEST_SHARE * triangle.acrossMm * steepest(triangle)))
  if (least - slack >= 0) return 'kept'
  return most + slack < 0 ? 'broken' : null
}

const marginsAt = (asked: Asked, limit: Limit, { corners: [corner, from, to] }: Triangle): Margins => [
  cornerMargin(asked, limit, corner),
  cornerMargin(asked, limit, from),
  cornerMargin(asked, limit, to),
]

/** Whether the numbers alone say that a limit is kept or broken all over a triangle that is fine enough to be trusted. */
export const judgedAtOnce = (asked: Asked, limit: Limit, triangle: Triangle): 'kept' | 'broken' | null =>
  judgedByNumbers(
    triangle,
    limit,
    marginsAt(asked, limit, triangle),
    cornerMargin(asked, limit, triangle.middle),
  )

/** So far inside the edge of where the strap has a path a number is asked for. */
const INSIDE_MM = 0.01

/** What a limit says about a triangle that the edge of the path crosses, from the corners and along that edge; null: not the same. */
const judgedAlongPath = (
  asked: Asked,
  limit: Limit,
  triangle: Triangle,
  margins: readonly number[],
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
  const known = [...margins, ...along].filter((margin) => !Number.isNaN(margin))
  if (known.every((margin) => margin >= 0)) return 'kept'
  return known.every((margin) => margin < 0) ? 'broken' : null
}

/** What a limit says about such a triangle where the numbers alone say nothing. */
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
  const { corners, middle } = triangle
  const margins = marginsAt(asked, limit, triangle)
  const atMiddle = cornerMargin(asked, limit, middle)
  const isMiddleKept = atMiddle >= 0
  const isLeast = triangle.acrossMm <= limit.leastMm
  if (margins.every(Number.isNaN) && Number.isNaN(atMiddle)) return 'unknown'
  if (margins.some(Number.isNaN) || Number.isNaN(atMiddle)) {
    const sure = judgedAlongPath(asked, limit, triangle, [...margins, atMiddle])
    if (sure !== null || !isLeast) return sure ?? 'unclear'
    // A shadow says nothing where there is no strap.
    const isShadow = limit.missing === Infinity
    return isShadow && ![...margins, atMiddle].some((margin) => margin < 0) ? 'kept' : 'broken'
  }
  const keptCount = margins.filter((margin) => margin >= 0).length
  if (keptCount === 0 || keptCount === 3) {
    if (!isLeast) return 'unclear'
    return keptCount === 3 && isMiddleKept ? 'kept' : 'broken'
  }
  const isLoneKept = keptCount === 1
  const lone = margins.findIndex((margin) => margin >= 0 === isLoneKept)
  const [own, next, last] = [corners[lone], corners[(lone + 1) % 3], corners[(lone + 2) % 3]]
  if (own === undefined || next === undefined || last === undefined) throw new Error('a triangle has corners')
  const from = crossingOn(asked, limit, own, next)
  const to = crossingOn(asked, limit, own, last)
  // Both crossings in one corner: that corner alone is on its side.
  if (planeDistanceMm(from, to) <= 2 * limit.crossingMm) return isLoneKept ? 'broken' : 'kept'
  if (!matters(chordLine(from, to, isLoneKept), ASIDE_SHARE * planeDistanceMm(from, to))) return 'elsewhere'
  // Corners go anticlockwise: on the way from the one crossing to the other the lone corner lies on the left.
  if (isLeast) return { points: [from, to], isKeptLeft: isLoneKept }
  const frontier = frontierBetween((at) => marginAt(asked, limit, at), [from, to], isLoneKept, limit.chordMm)
  return frontier === null || isOnKeptSide(frontier, middle.at, 2 * limit.chordMm) === !isMiddleKept
    ? 'unclear'
    : frontier
}
