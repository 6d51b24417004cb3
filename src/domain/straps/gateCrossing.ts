import type { CircleMm } from '../geometry/circle'
import type { PlanePointMm } from '../geometry/plane'
import type { Gate } from './scene'

/** Where a strap passes its gate in the side plane. */
export interface GateCrossing {
  readonly at: PlanePointMm
  /** It bears on the gate's end there; false: it passes clean, the ends themselves included. */
  readonly bent: boolean
}

/** Which side of the gate's line a point is on: the sign counts, 0 is on the line. The line of the open rim is vertical. */
export const gateSide = (gate: Gate, point: PlanePointMm): number => {
  if (gate.upper === null) return gate.lower.uMm - point.uMm
  const du = gate.upper.uMm - gate.lower.uMm
  const dv = gate.upper.vMm - gate.lower.vMm
  return du * (point.vMm - gate.lower.vMm) - dv * (point.uMm - gate.lower.uMm)
}

/** A point of the gate's line held to the opening: itself when within, otherwise the nearer end. */
const heldToGate = (gate: Gate, at: PlanePointMm): GateCrossing => {
  const { lower, upper } = gate
  if (upper === null) return at.vMm < lower.vMm ? { at: lower, bent: true } : { at, bent: false }
  const du = upper.uMm - lower.uMm
  const dv = upper.vMm - lower.vMm
  const share = ((at.uMm - lower.uMm) * du + (at.vMm - lower.vMm) * dv) / (du * du + dv * dv)
  if (share < 0) return { at: lower, bent: true }
  if (share > 1) return { at: upper, bent: true }
  return { at, bent: false }
}

/**
 * Where a taut strap between two points passes the gate. A straight line that misses the opening bears on the nearer end: the
 * length from one point over the gate's line to the other is a convex function of the place where it crosses, so held to the
 * opening it is least at the end nearer to the straight crossing. Null when both points are on the same side of the gate's
 * line (or one is on it): the strap ends before the gate, which then does not act.
 */
export const gateCrossing = (
  gate: Gate,
  anchorEnd: PlanePointMm,
  bodyEnd: PlanePointMm,
): GateCrossing | null => {
  const anchorSide = gateSide(gate, anchorEnd)
  const bodySide = gateSide(gate, bodyEnd)
  if (!(anchorSide * bodySide < 0)) return null
  const share = bodySide / (bodySide - anchorSide)
  return heldToGate(gate, {
    uMm: bodyEnd.uMm + share * (anchorEnd.uMm - bodyEnd.uMm),
    vMm: bodyEnd.vMm + share * (anchorEnd.vMm - bodyEnd.vMm),
  })
}

/**
 * The same where the strap still lies on the body when it passes the gate's line: the front one of the points where the arc
 * meets that line. Null for the open rim or when the arc does not reach the line.
 */
export const gateCrossingOnArc = (gate: Gate, arc: CircleMm): GateCrossing | null => {
  if (gate.upper === null) return null
  const du = gate.upper.uMm - gate.lower.uMm
  const dv = gate.upper.vMm - gate.lower.vMm
  const lengthMm = Math.hypot(du, dv)
  if (lengthMm === 0) return null
  const offsetMm = gateSide(gate, arc.centre) / lengthMm
  if (Math.abs(offsetMm) > arc.radiusMm) return null
  const halfChordMm = Math.sqrt(arc.radiusMm ** 2 - offsetMm ** 2)
  const forward = du > 0 ? -1 : 1
  // The foot of the perpendicular from the centre, then along the line to the point that lies further forward.
  return heldToGate(gate, {
    uMm: arc.centre.uMm + (dv * offsetMm + forward * du * halfChordMm) / lengthMm,
    vMm: arc.centre.vMm + (-du * offsetMm + forward * dv * halfChordMm) / lengthMm,
  })
}
