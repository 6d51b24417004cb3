import { planeDistanceMm, type PlanePointMm } from '../../geometry/plane'
import type { Primitive } from './primitive'

/** The part that every line of a sitting's ghost belongs to. */
export const ghostPart = (sittingId: string): string => `${GHOST}${sittingId}`

const GHOST = 'sitting:'

const sittingOf = ({ part }: Primitive): string | null =>
  part?.startsWith(GHOST) === true ? part.slice(GHOST.length) : null

/** Distance from a point to a straight piece of the plane, its ends included, mm. */
const toPieceMm = (point: PlanePointMm, a: PlanePointMm, b: PlanePointMm): number => {
  const du = b.uMm - a.uMm
  const dv = b.vMm - a.vMm
  const lengthSqMm2 = du * du + dv * dv
  const alongMm2 = (point.uMm - a.uMm) * du + (point.vMm - a.vMm) * dv
  const share = lengthSqMm2 === 0 ? 0 : Math.min(1, Math.max(0, alongMm2 / lengthSqMm2))
  return Math.hypot(point.uMm - a.uMm - share * du, point.vMm - a.vMm - share * dv)
}

const distanceMm = (primitive: Primitive, point: PlanePointMm): number => {
  if (primitive.kind === 'circle')
    return Math.abs(planeDistanceMm(point, primitive.centre) - primitive.radiusMm)
  if (primitive.kind !== 'polyline') return Number.POSITIVE_INFINITY
  const { points, closed } = primitive
  const last = points.at(-1)
  const first = points[0]
  const closing =
    closed && last !== undefined && first !== undefined ? toPieceMm(point, last, first) : Infinity
  return points.reduce((nearest, to, index) => {
    const from = points[index - 1]
    return from === undefined ? nearest : Math.min(nearest, toPieceMm(point, from, to))
  }, closing)
}

/**
 * The sitting whose ghost outline passes nearest to a point of the drawing, no further away than `reachMm`; null when none does.
 * Of outlines at the same distance the one drawn first counts.
 */
export const ghostAt = (
  primitives: readonly Primitive[],
  point: PlanePointMm,
  reachMm: number,
): string | null => {
  let nearest: { readonly sittingId: string; readonly distanceMm: number } | null = null
  for (const primitive of primitives) {
    const sittingId = sittingOf(primitive)
    if (sittingId === null) continue
    const awayMm = distanceMm(primitive, point)
    if (awayMm <= reachMm && (nearest === null || awayMm < nearest.distanceMm))
      nearest = { sittingId, distanceMm: awayMm }
  }
  return nearest?.sittingId ?? null
}
