import type { PlanePointMm } from '../geometry/plane'
import type { Look, Margins } from './asked'
import { marginsOf } from './asked'
import type { Triangle } from './lattice'
import type { Limit } from './limit'

/**
 * What neither the numbers at a triangle's corners nor those at the middle of its longest side show may be missed when it is
 * smaller than this. Our judgement: less than the width of any webbing, or the thickness of a tab's edge weld on both sides.
 */
const SEEN_MM = 16

/** How much further than at the middle of its longest side a smooth number may leave the plane through a triangle's corners. */
const SLACK = 2

/** No point of a right-angled triangle with equal legs is further from a corner or the middle of its longest side, as a share of that side. */
const FARTHEST_SHARE = 0.354

/** How much steeper than between the places looked at a number with creases may be in between. */
const STEEPER = 3

/** How much of the steepest change is allowed for in a part of a triangle. */
const PART_SHARE = 0.5

/** Where only some places of a triangle have a number it is halved down to this before those few are trusted. */
export const PARTLY_MM = 64

/** Calls `visit` with the corners of what is asked about. */
export type Part = (visit: (at: PlanePointMm) => void) => void

/** Least and most of the plane through a triangle's margins over the corners of a part of it. */
const planeOver = (
  { corners: [corner, from, to] }: Triangle,
  margins: Margins,
  part: Part,
): { readonly least: number; readonly most: number } => {
  const fu = from.at.uMm - corner.at.uMm
  const fv = from.at.vMm - corner.at.vMm
  const tu = to.at.uMm - corner.at.uMm
  const tv = to.at.vMm - corner.at.vMm
  // The legs are square to each other and equally long.
  const perF = (margins.from - margins.corner) / (fu * fu + fv * fv)
  const perT = (margins.to - margins.corner) / (tu * tu + tv * tv)
  let least = Infinity
  let most = -Infinity
  part(({ uMm, vMm }) => {
    const u = uMm - corner.at.uMm
    const v = vMm - corner.at.vMm
    const margin = margins.corner + (u * fu + v * fv) * perF + (u * tu + v * tv) * perT
    if (margin < least) least = margin
    if (margin > most) most = margin
  })
  return { least, most }
}

/** How far a number with creases may lie from what is seen of it at four places. */
const creaseSlack = (triangle: Triangle, limit: Limit, spread: number): number => {
  const { creases, what } = limit
  if (creases === null || triangle.acrossMm <= creases.grazingSeenMm) return 0
  const most = FARTHEST_SHARE * triangle.acrossMm * creases.steepest(triangle)
  if (triangle.acrossMm <= creases.seenMm) return Math.min(most, creases.grazing)
  return what === 'tubes' ? most : Math.min(FARTHEST_SHARE * Math.SQRT2 * STEEPER * spread, most)
}

/** From the least that has a measure to the most. */
const spreadOf = ({ corner, from, to, middle, least, most }: Margins): number =>
  most - (Number.isFinite(least) ? least : Math.min(...[corner, from, to, middle].filter(Number.isFinite)))

/** The same for a part of a triangle in which all four places have a measure, from the plane through its corners. */
const judgedInPart = (
  triangle: Triangle,
  limit: Limit,
  margins: Margins,
  part: Part,
  slack: number,
): 'kept' | 'broken' | null => {
  const { known, least, most } = margins
  if (known < 4 || !Number.isFinite(least) || !Number.isFinite(most)) return null
  const over = planeOver(triangle, margins, part)
  if (over.least - slack >= 0) return 'kept'
  // Of a path the least of several ways to have none is known: inside a triangle it can be more than at its corners.
  return over.most + slack < 0 && limit.what !== 'path' ? 'broken' : null
}

/**
 * Whether the numbers at the corners of a triangle that is fine enough to be trusted, and at the middle of its longest side, already
 * say that a limit is kept or broken all over it, or over a part of it. Where some have no number the others must be broken by more
 * than they differ.
 */
export const judgedAtOnce = (
  look: Look,
  limit: Limit,
  triangle: Triangle,
  part: Part | null,
): 'kept' | 'broken' | null => {
  const margins = marginsOf(look, limit)
  const { known, least, most } = margins
  if (known === 0) return null
  // A shadow says nothing where there is no strap: no tube is there at all, or none is as near as the triangle is wide.
  if (known < 4 && limit.what === 'tubes' && least >= creaseSlack(triangle, limit, 0) / FARTHEST_SHARE)
    return 'kept'
  if (known === 4 && least === Infinity) return 'kept'
  if (known === 4 && most === -Infinity) return 'broken'
  const isPartly = known < 4 || least === -Infinity
  // Where the path ends a number may change fast: what lies along that edge has to be asked.
  if (known < 4 && most >= 0) return null
  const isSmall = triangle.acrossMm <= (isPartly ? PARTLY_MM : (limit.creases?.grazingSeenMm ?? SEEN_MM))
  if (isSmall && least >= 0) return 'kept'
  if (isSmall && most < 0) return 'broken'
  if (known === 1 || (isSmall && isPartly)) return null
  const spread = spreadOf(margins)
  const sag = isPartly ? spread : SLACK * Math.abs(margins.middle - (margins.from + margins.to) / 2)
  const crease = creaseSlack(triangle, limit, spread)
  const slack =
    limit.what === 'path' ? Math.min(sag, FARTHEST_SHARE * triangle.acrossMm) : Math.max(sag, crease)
  if (least - slack >= 0) return 'kept'
  if (most + slack < 0) return 'broken'
  return part === null ? null : judgedInPart(triangle, limit, margins, part, sag + PART_SHARE * crease)
}

/** How well a limit is kept in a triangle, for putting the likeliest to break first; null where some place has no measure. */
export const keptOnAverage = (look: Look, limit: Limit): number | null => {
  const { corner, from, to, known, least, most } = marginsOf(look, limit)
  if (known < 4 || !Number.isFinite(least) || !Number.isFinite(most)) return null
  return (corner + from + to) / Math.max(most - least, 1e-9)
}
