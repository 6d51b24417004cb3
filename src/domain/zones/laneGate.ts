import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import { CONTACT_MM } from '../straps/aroundArc'
import type { Gate } from '../straps/scene'
import { acosDeg, atan2Deg } from '../units/angle'
import { angleNearDeg, type Fan, fanAngleDeg } from './fan'
import type { LaneGate } from './lane'

/** The gate's line as a unit normal that points away from a point of the body; null when that point is on the line. */
export const beyondGate = (gate: Gate, bodyPoint: PlanePointMm): LaneGate['beyond'] | null => {
  const { lower } = gate
  // The line of the open rim is vertical, as the strap solver takes it.
  const upper = gate.upper ?? { uMm: lower.uMm, vMm: lower.vMm + 1 }
  const lengthMm = planeDistanceMm(lower, upper)
  if (lengthMm === 0) return null
  const nu = (upper.vMm - lower.vMm) / lengthMm
  const nv = (lower.uMm - upper.uMm) / lengthMm
  const offsetMm = nu * lower.uMm + nv * lower.vMm
  const bodyMm = nu * bodyPoint.uMm + nv * bodyPoint.vMm - offsetMm
  if (Math.abs(bodyMm) < CONTACT_MM) return null
  return bodyMm < 0 ? { nu, nv, offsetMm } : { nu: -nu, nv: -nv, offsetMm: -offsetMm }
}

/** The angle of the ray through a point, within half a turn of `nearDeg`; null inside the circle. */
export const rayThroughDeg = (fan: Fan, point: PlanePointMm, nearDeg: number): number | null => {
  const angleDeg = fanAngleDeg(fan, point)
  return angleDeg === null ? null : angleNearDeg(angleDeg, nearDeg)
}

/**
 * The rays of a fan that leave their circle only beyond the gate's line, as an interval of angles near `nearDeg`; null when the
 * circle does not reach the line. Formula: the contact C + R·n(α) is beyond where m·n(α) exceeds the distance of C over R.
 */
export const farRays = (
  fan: Fan,
  beyond: LaneGate['beyond'],
  nearDeg: number,
): { readonly fromDeg: number; readonly toDeg: number } | null => {
  const beforeMm = beyond.offsetMm - beyond.nu * fan.centre.uMm - beyond.nv * fan.centre.vMm
  const radiusMm = Math.abs(fan.offsetMm)
  if (beforeMm >= radiusMm) return null
  const normalDeg = atan2Deg(beyond.nv, beyond.nu)
  const middleDeg = angleNearDeg(fan.offsetMm > 0 ? normalDeg - 90 : normalDeg + 90, nearDeg)
  const halfDeg = acosDeg(beforeMm / radiusMm)
  return { fromDeg: middleDeg - halfDeg, toDeg: middleDeg + halfDeg }
}

/** Whether the strap can bear on a point: it is outside the round part of the body. */
export const isClearOf = (circle: CircleMm, point: PlanePointMm): boolean =>
  planeDistanceMm(circle.centre, point) - circle.radiusMm >= CONTACT_MM
