import { pointDifference, type Direction, type PointMm } from '../geometry/point'
import { atan2Deg } from '../units/angle'
import type { Portal } from './portal'
import type { SolvedStrap } from './strapPath'

/** Angle between two directions in a drawn plane, degrees ≥ 0. */
const planeTurnDeg = (u1: number, v1: number, u2: number, v2: number): number =>
  Math.abs(atan2Deg(u1 * v2 - v1 * u2, u1 * u2 + v1 * v2))

/** Angle between two directions in space, degrees ≥ 0. Formula: atan2(|a × b|, a·b). */
const spaceTurnDeg = (a: Direction, b: Direction): number =>
  atan2Deg(
    Math.hypot(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x),
    a.x * b.x + a.y * b.y + a.z * b.z,
  )

/** Rounding of coordinates of some metres, mm. */
const AT_END_MM = 1e-9

/** Whether a place on the edge of an opening is on anything but an edge that runs straight across the seat. */
const isHeldAcross = ({ centre, long, longMinMm, longMaxMm }: Portal, at: PointMm): boolean => {
  if (Math.abs(long.y) < 1 - 1e-12) return true
  const alongMm =
    (at.xMm - centre.xMm) * long.x + (at.yMm - centre.yMm) * long.y + (at.zMm - centre.zMm) * long.z
  return alongMm <= longMinMm + AT_END_MM || alongMm >= longMaxMm - AT_END_MM
}

/**
 * The angle by which a slot deflects the taut strap, from the piece before it to the piece after it. In the backrest and the
 * cushion: the larger of the turn in side view and, where more than an edge straight across the seat holds it, the turn in plan
 * or, for the cushion through which straps run down, from the front. In a side wall, which straps cross slantwise: the turn in
 * space. 0 when the strap passes clean or ends before the slot.
 */
export const slotBendDeg = ({ path, pass }: SolvedStrap): number => {
  const { contacts } = path
  let first = 0
  let last = 0
  for (let index = 1; index < contacts.length; index += 1)
    if (contacts[index]?.on === 'slot') {
      if (first === 0) first = index
      last = index
    }
  const before = contacts[first - 1]?.point
  const from = contacts[first]?.point
  const to = contacts[last]?.point
  const after = contacts[last + 1]?.point
  if (pass === null || before === undefined || from === undefined || to === undefined || after === undefined)
    return 0
  const a = pointDifference(from, before)
  const b = pointDifference(after, to)
  if (pass.gate.face === 'side') return spaceTurnDeg(a, b)
  const sideDeg = planeTurnDeg(a.x, a.z, b.x, b.z)
  if (!isHeldAcross(pass.gate, from) && !isHeldAcross(pass.gate, to)) return sideDeg
  const acrossDeg =
    pass.gate.face === 'cushion' ? planeTurnDeg(a.z, a.y, b.z, b.y) : planeTurnDeg(a.x, a.y, b.x, b.y)
  return Math.max(sideDeg, acrossDeg)
}
