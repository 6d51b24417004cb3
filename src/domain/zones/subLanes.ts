import type { CircleMm } from '../geometry/circle'
import { projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import type { Anchor } from '../straps/anchor'
import { isPassedOnRight } from '../straps/aroundArc'
import { gateCrossingOnArc } from '../straps/gateCrossing'
import type { Gate, StrapScene } from '../straps/scene'
import { groinBottomMm, groinOf } from '../straps/subPath'
import { asinDeg, atan2Deg, sinDeg } from '../units/angle'
import { type Fan, turnedBeyond, turnedShortOf } from './fan'
import type { Bend, Lane, LaneGate } from './lane'
import { beyondGate, farRays, isClearOf, rayThroughDeg } from './laneGate'

/** The two fans of an anti-submarine strap, and the angles between which each holds. */
interface SubFans {
  readonly straight: Fan
  readonly round: Fan
  /** The ray from the buckle that just touches the front of the groin: in line with the ray of the other fan at this angle. */
  readonly touchDeg: number
  /** Square to the line from the buckle to the middle of the groin, above it: beyond this the straight strap clears it again. */
  readonly squareDeg: number
}

const subFans = ({ centre, radiusMm }: CircleMm, buckle: PlanePointMm): SubFans | null => {
  const distanceMm = Math.hypot(centre.uMm - buckle.uMm, centre.vMm - buckle.vMm)
  if (distanceMm === 0) return null
  const towardDeg = atan2Deg(centre.vMm - buckle.vMm, centre.uMm - buckle.uMm)
  return {
    straight: { centre: buckle, offsetMm: 0 },
    round: { centre, offsetMm: -radiusMm },
    touchDeg: towardDeg - asinDeg(radiusMm / distanceMm),
    squareDeg: towardDeg + 90,
  }
}

/** Which fan an end of the gate belongs to and the angle of its ray there. */
const endRay = (
  groin: CircleMm,
  fans: SubFans,
  at: PlanePointMm,
): { readonly isStraight: boolean; readonly angleDeg: number } | null => {
  const isStraight = isPassedOnRight(groin, at, fans.straight.centre)
  const angleDeg = rayThroughDeg(isStraight ? fans.straight : fans.round, at, fans.touchDeg)
  return angleDeg === null ? null : { isStraight, angleDeg }
}

/** What the gate does to a strap that leaves the groin beyond its line; null: it passes clean. */
const farBend = (
  gate: Gate,
  groin: CircleMm,
  bends: { readonly lower: Bend | null; readonly upper: Bend | null },
): Bend | null => {
  const crossing = gateCrossingOnArc(gate, groin)
  if (crossing?.bent !== true) return null
  return crossing.at === gate.lower ? bends.lower : bends.upper
}

/** The gate on both fans; null where no straight-line description holds. */
const laneGates = (
  groin: CircleMm,
  gate: Gate,
  fans: SubFans,
): { readonly straight: LaneGate; readonly round: LaneGate } | null => {
  const beyond = beyondGate(gate, fans.straight.centre)
  const { lower, upper } = gate
  if (beyond === null || upper === null || !isClearOf(groin, lower) || !isClearOf(groin, upper)) return null
  const low = endRay(groin, fans, lower)
  const high = endRay(groin, fans, upper)
  if (low === null || high === null || high.angleDeg < low.angleDeg) return null
  if (high.isStraight && !low.isStraight) return null
  const part = ({ isStraight }: { readonly isStraight: boolean }): Bend['from'] =>
    isStraight ? 'buckle' : 'groin'
  // An edge that is not below the body there gives the strap no path.
  const bendAt = (at: PlanePointMm, ray: { readonly isStraight: boolean; readonly angleDeg: number }) =>
    sinDeg(ray.angleDeg) < 0 ? { at, runDeg: ray.angleDeg, from: part(ray) } : null
  const bends = { lower: bendAt(lower, low), upper: bendAt(upper, high) }
  const far = farRays(fans.round, beyond, fans.touchDeg + 90)
  return {
    straight: {
      beyond,
      lowDeg: low.isStraight ? low.angleDeg : Infinity,
      highDeg: high.isStraight ? high.angleDeg : Infinity,
      ...bends,
      far: null,
    },
    round: {
      beyond,
      lowDeg: low.isStraight ? -Infinity : low.angleDeg,
      highDeg: high.isStraight ? -Infinity : high.angleDeg,
      ...bends,
      far: far && { ...far, bend: farBend(gate, groin, bends) },
    },
  }
}

/**
 * The two lanes of an anti-submarine strap to a tab: straight from the buckle, or round the groin. Null for a wrap and where
 * the slot lets no straight-line description hold; then the region is traced.
 */
export const subLanes = (
  scene: StrapScene,
  anchor: Anchor,
  gate: Gate | null,
  buckle: PointMm | null,
): readonly Lane[] | null => {
  if (buckle === null) return []
  if (anchor.mount.kind === 'wrap') return null
  const end = projected(buckle, 'side')
  const groin = groinOf(scene, end)
  const fans = subFans(groin, end)
  if (fans === null) return null
  const gates = gate && laneGates(groin, gate, fans)
  if (gate !== null && gates === null) return null
  const { straight, round, touchDeg, squareDeg } = fans
  const below = { nu: 0, nv: 1, offsetMm: groinBottomMm(groin) }
  const common = { contactShiftMm: 0, openBelow: false, openAbove: false, whereUnbent: [] }
  return [
    {
      ...common,
      on: 'buckle',
      fan: straight,
      fromDeg: squareDeg - 360,
      toDeg: touchDeg,
      where: [below],
      closedByWhere: false,
      gate: gates && gates.straight,
    },
    {
      ...common,
      on: 'groin',
      fan: round,
      fromDeg: touchDeg,
      toDeg: touchDeg + 300,
      closedByWhere: true,
      where: [turnedBeyond(straight, touchDeg), turnedShortOf(straight, squareDeg), below],
      gate: gates && gates.round,
    },
  ]
}
