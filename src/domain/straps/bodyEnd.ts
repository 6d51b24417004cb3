import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import { pointDistanceMm, type PointMm } from '../geometry/point'
import { tangentPoint } from '../geometry/tangent'
import { isPassedOnRight } from './aroundArc'

/** The shoulder arc, on which a strap keeps its y. */
export interface ShoulderEnd {
  readonly family: 'shoulder'
  readonly arc: CircleMm
  readonly yMm: number
}

/** The pelvis, one side: a solid of revolution about the lateral axis through the hip point. */
export interface LapEnd {
  readonly family: 'lap'
  readonly hip: PointMm
  /** −1 left, +1 right. */
  readonly outward: 1 | -1
  readonly radiusMm: number
  /** Half breadth of the cylinder, and how far the rounded end reaches beyond it (0: a flat end). */
  readonly cylinderHalfMm: number
  readonly endMm: number
  /** Sine and cosine of the lowest angle at which the thigh lets the strap lie, and the front contact there. */
  readonly lowestSin: number
  readonly lowestCos: number
  readonly held: PlanePointMm
}

/** The groin arc and the buckle. */
export interface SubEnd {
  readonly family: 'sub'
  readonly groin: CircleMm
  readonly buckle: PointMm
}

export type BodyEnd = ShoulderEnd | LapEnd | SubEnd

/** Where a strap that comes straight from a point first meets the body. */
export interface Reach {
  readonly point: PointMm
  /** In side view the direction of the strap turns about a point this far away when that point moves square to it, mm > 0. */
  readonly pivotMm: number
  /** Length of the straight strap in space, unrolled as far as its direction across the seat is decided, mm > 0. */
  readonly straightMm: number
}

/** A place on the section of the pelvis's end, by cosine and sine of its parameter. */
interface SectionPlace {
  readonly cosine: number
  readonly sine: number
}

/** A lap strap's way round the end of the pelvis, in the plane through the strap and the lateral direction. */
export interface LapReach extends Reach {
  /** The front contact, where the strap starts straight across. */
  readonly front: PointMm
  /** Forward along the strap in side view, length 1. */
  readonly forwardU: number
  readonly forwardV: number
  /** Half-axes of the section of the pelvis's end, along the strap and across the seat. */
  readonly alongMm: number
  readonly acrossMm: number
  /** Where it meets that section: cosine and sine of the parameter from the front contact round the outside. */
  readonly meets: SectionPlace
}

/** An anti-submarine strap's way round the groin. */
export interface SubReach extends Reach {
  /** Null: straight to the buckle, which is then the point reached. */
  readonly onGroin: {
    readonly high: PlanePointMm
    /** Angle at the groin's middle from the high to the low contact, radians > 0. */
    readonly sweepRad: number
    /** Length in the side plane from the low contact to the buckle. */
    readonly toBuckleMm: number
  } | null
}

/** Stands for a straight piece without a length, so that nothing is divided by 0. */
const LEAST_MM = 1e-9

const shoulderReach = ({ arc, yMm }: ShoulderEnd, from: PointMm): Reach | null => {
  const at = projected(from, 'side')
  const onArc = tangentPoint(arc, at, 'left')
  if (onArc === null) return null
  const pivotMm = Math.max(LEAST_MM, planeDistanceMm(at, onArc))
  return {
    point: { xMm: onArc.uMm, yMm, zMm: onArc.vMm },
    pivotMm,
    straightMm: Math.max(LEAST_MM, pointDistanceMm(from, { xMm: onArc.uMm, yMm, zMm: onArc.vMm })),
  }
}

/** Whether the thigh leaves a lap strap from a point free to point at the hip: the line to it rises at the lowest angle at least. */
const isFreeOfThigh = (
  { hip, lowestSin, lowestCos }: LapEnd,
  { xMm, zMm }: { readonly xMm: number; readonly zMm: number },
): boolean => (hip.zMm - zMm) * lowestCos >= (xMm - hip.xMm) * lowestSin

/**
 * The strap in the plane that holds it and the lateral direction: straight, tangent to the section of the pelvis's end on its outer
 * side, along it to the front pole. The section of the ellipsoid at distance d from the hip point is an ellipse with both half-axes
 * √(1 − d²/r²) of the full ones. Null inside the pelvis. Source: derived here; tangent as for a circle in stretched coordinates.
 */
const lapReach = (end: LapEnd, from: PointMm): LapReach | null => {
  const { hip, outward, radiusMm, held } = end
  const isFree = isFreeOfThigh(end, from)
  const toU = (isFree ? hip.xMm : held.uMm) - from.xMm
  const toV = (isFree ? hip.zMm : held.vMm) - from.zMm
  const aimMm = Math.sqrt(toU * toU + toV * toV)
  if (aimMm === 0 || radiusMm <= 0) return null
  const forwardU = toU / aimMm
  const forwardV = toV / aimMm
  // From the foot of the hip point on the line, + forward.
  const sMm = isFree ? -aimMm : (from.xMm - hip.xMm) * forwardU + (from.zMm - hip.zMm) * forwardV
  const offMm = isFree ? 0 : (from.xMm - hip.xMm) * forwardV - (from.zMm - hip.zMm) * forwardU
  const share = Math.sqrt(Math.max(0, 1 - (offMm * offMm) / (radiusMm * radiusMm)))
  const alongMm = radiusMm * share
  const acrossMm = end.endMm * share
  const poleYMm = hip.yMm + outward * end.cylinderHalfMm
  const outMm = outward * (from.yMm - poleYMm)
  if (outMm < 0 && Math.abs(sMm) < alongMm) return null
  const footU = hip.xMm + offMm * forwardV
  const footV = hip.zMm - offMm * forwardU
  const angle = endAngle(sMm, outMm, alongMm, acrossMm)
  if (angle === null) return null
  const onMm = alongMm * angle.cosine
  const point: PointMm = {
    xMm: footU + onMm * forwardU,
    yMm: poleYMm + outward * acrossMm * angle.sine,
    zMm: footV + onMm * forwardV,
  }
  return {
    point,
    front: { xMm: footU + alongMm * forwardU, yMm: poleYMm, zMm: footV + alongMm * forwardV },
    pivotMm: aimMm,
    straightMm: Math.max(LEAST_MM, pointDistanceMm(from, point)),
    forwardU,
    forwardV,
    alongMm,
    acrossMm,
    meets: angle,
  }
}

/** Below this, in mm, the end of the pelvis is flat. */
const FLAT_MM = 1e-9

/** The parameter of the end's section where the strap meets it; null inside. A flat end is met at its nearer corner. */
const endAngle = (sMm: number, outMm: number, alongMm: number, acrossMm: number): SectionPlace | null => {
  if (alongMm <= 0) return { cosine: 1, sine: 0 }
  if (acrossMm < FLAT_MM) return outMm >= 0 ? { cosine: 1, sine: 0 } : { cosine: -1, sine: 0 }
  const x = sMm / alongMm
  const y = outMm / acrossMm
  const distanceSq = x * x + y * y
  if (distanceSq < 1) return null
  const tangent = Math.sqrt(distanceSq - 1)
  return { cosine: (x + y * tangent) / distanceSq, sine: (y - x * tangent) / distanceSq }
}

/**
 * The strap from `from` to the buckle: straight where it passes ahead of the groin, else tangent to it from below, up its front, and
 * on to the buckle; y changes evenly along the unrolled strap. Null inside the groin.
 */
const subReach = ({ groin, buckle }: SubEnd, from: PointMm): SubReach | null => {
  const at = projected(from, 'side')
  const end = projected(buckle, 'side')
  const acrossMm = buckle.yMm - from.yMm
  if (isPassedOnRight(groin, at, end)) {
    const pivotMm = Math.max(LEAST_MM, planeDistanceMm(at, end))
    return {
      point: buckle,
      pivotMm,
      straightMm: Math.sqrt(pivotMm * pivotMm + acrossMm * acrossMm),
      onGroin: null,
    }
  }
  const low = tangentPoint(groin, at, 'right')
  const high = tangentPoint(groin, end, 'left')
  if (low === null || high === null) return null
  const { centre, radiusMm } = groin
  const [lowU, lowV] = [low.uMm - centre.uMm, low.vMm - centre.vMm]
  const [highU, highV] = [high.uMm - centre.uMm, high.vMm - centre.vMm]
  // Anticlockwise from the high contact down the front to the low one.
  const turn = Math.atan2(highU * lowV - highV * lowU, highU * lowU + highV * lowV)
  const sweepRad = turn < 0 ? turn + 2 * Math.PI : turn
  const lowMm = Math.max(LEAST_MM, planeDistanceMm(at, low))
  const toBuckleMm = radiusMm * sweepRad + planeDistanceMm(end, high)
  const share = lowMm / (lowMm + toBuckleMm)
  return {
    point: { xMm: low.uMm, yMm: from.yMm + share * acrossMm, zMm: low.vMm },
    pivotMm: lowMm,
    straightMm: Math.sqrt((lowMm + toBuckleMm) ** 2 + acrossMm * acrossMm),
    onGroin: { high, sweepRad, toBuckleMm },
  }
}

/** Where a strap that comes straight from `from` meets the body; null inside it. */
export const reachOf = (end: BodyEnd, from: PointMm): Reach | null => {
  switch (end.family) {
    case 'shoulder':
      return shoulderReach(end, from)
    case 'lap':
      return lapReach(end, from)
    case 'sub':
      return subReach(end, from)
  }
}
