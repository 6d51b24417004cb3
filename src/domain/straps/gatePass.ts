import type { PlanePointMm } from '../geometry/plane'
import { planeDistanceMm } from '../geometry/plane'
import type { GateCrossing } from './gateCrossing'
import type { Gate } from './scene'
import { sideTurnDeg, type GatePass, type Touch } from './strapPath'

/** The straight pieces on both sides of a gate in the side plane, and the lateral ends they are carried between. */
export interface GateLegs {
  readonly anchorEnd: PlanePointMm
  readonly anchorYMm: number
  readonly bodyEnd: PlanePointMm
  readonly bodyYMm: number
  /** Length of strap between `bodyEnd` and where y is `bodyYMm`, on an arc beyond the straight piece; usually 0. */
  readonly beyondBodyMm: number
}

/**
 * A crossing carried into 3-D. Across the seat a taut strap is straight in the unrolled run: y changes evenly with the length in
 * the side plane (a geodesic unrolls to a straight line; source: any text on developable surfaces). A slot's ends hold it.
 */
export const gatePass = (gate: Gate, crossing: GateCrossing, legs: GateLegs): GatePass => {
  const bodyMm = legs.beyondBodyMm + planeDistanceMm(crossing.at, legs.bodyEnd)
  const anchorMm = planeDistanceMm(crossing.at, legs.anchorEnd)
  const lengthMm = bodyMm + anchorMm
  const share = lengthMm === 0 ? 0 : bodyMm / lengthMm
  const straightYMm = legs.bodyYMm + share * (legs.anchorYMm - legs.bodyYMm)
  const yMm = Math.min(gate.yMaxMm ?? Infinity, Math.max(gate.yMinMm ?? -Infinity, straightYMm))
  return {
    gate,
    point: { xMm: crossing.at.uMm, yMm, zMm: crossing.at.vMm },
    touches: crossing.bent || yMm !== straightYMm,
  }
}

/** The contact that a pass makes: none when the strap goes through clean. */
export const passTouches = (
  pass: GatePass | null,
  anchorEnd: PlanePointMm,
  bodyEnd: PlanePointMm,
): readonly Touch[] => {
  if (pass === null || !pass.touches) return []
  const at = { uMm: pass.point.xMm, vMm: pass.point.zMm }
  return [
    {
      on: pass.gate.on,
      point: pass.point,
      bendDeg: sideTurnDeg(anchorEnd, at, bodyEnd),
      arcToNext: null,
    },
  ]
}
