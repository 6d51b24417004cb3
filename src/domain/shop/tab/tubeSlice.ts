import { directionDot, pointDifference, type Direction, type PointMm } from '../../geometry/point'
import { directionCross, directionScaled, squareTo, unitDirection } from '../../geometry/vector'

/**
 * A straight tube as somebody sees it who looks squarely at a plate: coordinates x to the right and y up in the plate's mid-plane from
 * the hole's centre, and d out of the plate toward the one who looks. Up is away from the tube.
 */
export interface TubeSlice {
  readonly right: Direction
  readonly up: Direction
  /** Out of the plate toward the one who looks, length 1: the plate's normal. */
  readonly normal: Direction
  readonly radiusMm: number
  /** From the hole's centre straight down to the tube's surface in the mid-plane, mm ≥ 0. */
  readonly reachMm: number
  /** Square to the tube, in the plate's plane where there is one such line: p and q are measured from the centre line along these. */
  readonly p: Direction
  readonly q: Direction
  /** p and q of the hole's centre. */
  readonly p0Mm: number
  readonly q0Mm: number
}

export interface SliceInput {
  /** Of a plate: the middle of its hole in its mid-plane. */
  readonly hole: PointMm
  /** Of the plate, length 1. */
  readonly normal: Direction
  /** Any point of the tube's centre line, and its direction, length 1. */
  readonly onAxis: PointMm
  readonly axis: Direction
  readonly radiusMm: number
  /** Which way is up in the plate, length 1 and in its plane; left out: straight away from the tube's nearest surface. */
  readonly up?: Direction
}

/** A plate turned less than this out of the tube's direction holds it: sine of about 0.06 µrad. Our judgement. */
const PARALLEL = 1e-9

/**
 * How a plate's mid-plane cuts a tube, or why not: `inside` when the hole's centre is in the tube, `misses` when the plane, which holds
 * the tube's direction, passes beside it, or the tube is not below the hole. Unless it is given, up is chosen so that the tube's surface is nearest straight below the hole.
 *
 * Formulas: with p along axis × normal (in the plane, square to the tube) and q = axis × p, a point u·p + v·m of the plane, m the axis'
 * share in the plane, has q-coordinate q0 + c·v with c = m·q; the tube is p² + q² = r². The nearest point satisfies
 * p = p0/(1 + λ), q = q0/(1 + λc²) with λ ≥ 0 the root of p² + q² = r² (Lagrange's multiplier). Source: derived here.
 */
export const tubeSlice = (input: SliceInput): TubeSlice | 'inside' | 'misses' => {
  const { hole, normal, onAxis, axis, radiusMm } = input
  const inPlane = unitDirection(squareTo(normal, axis))
  const p = unitDirection(directionCross(axis, normal)) ?? squareAcross(axis)
  const q = directionCross(axis, p)
  const along = inPlane ?? directionCross(normal, p)
  const from = pointDifference(hole, onAxis)
  const [p0Mm, q0Mm] = [directionDot(from, p), directionDot(from, q)]
  const c = directionDot(along, q)
  if (p0Mm ** 2 + q0Mm ** 2 <= radiusMm ** 2) return 'inside'
  if (Math.abs(c) < PARALLEL && Math.abs(q0Mm) >= radiusMm) return 'misses'
  const pull = multiplier(p0Mm, q0Mm, c, radiusMm)
  const u = -pull * (p0Mm / (1 + pull))
  const v = -pull * c * (q0Mm / (1 + pull * c * c))
  const reachMm = Math.hypot(u, v)
  const up = unitDirection({
    x: -(u * p.x + v * along.x),
    y: -(u * p.y + v * along.y),
    z: -(u * p.z + v * along.z),
  })
  if (up === null) return 'inside'
  const nearest = { right: directionCross(up, normal), up, normal, radiusMm, reachMm, p, q, p0Mm, q0Mm }
  if (input.up === undefined) return nearest
  const turned = { ...nearest, right: directionCross(input.up, normal), up: input.up }
  const surfaceMm = surfaceAt(turned, 0, 0)
  return surfaceMm === null || surfaceMm >= 0 ? 'misses' : { ...turned, reachMm: -surfaceMm }
}

/** Any direction square to a line: across the car, or rearward for a line that itself runs across. */
const squareAcross = (axis: Direction): Direction => {
  const across = Math.abs(axis.y) < 0.9 ? { x: 0, y: 1, z: 0 } : { x: 1, y: 0, z: 0 }
  const unit = unitDirection(squareTo(axis, across))
  return unit ?? directionScaled(across, 1)
}

const MOST_STEPS = 400

/** λ of `tubeSlice`. Newton's method from 0: the function falls and is convex for λ ≥ 0, so that it never overshoots. */
const multiplier = (p0Mm: number, q0Mm: number, c: number, radiusMm: number): number => {
  let pull = 0
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const p = p0Mm / (1 + pull)
    const q = q0Mm / (1 + pull * c * c)
    const excess = p * p + q * q - radiusMm * radiusMm
    const slope = -2 * ((p * p) / (1 + pull) + (q * q * c * c) / (1 + pull * c * c))
    const next = pull - excess / slope
    if (!(next > pull)) break
    pull = next
  }
  return pull
}

/** A place of the slice's coordinates as p and q, mm from the tube's centre line. */
export const acrossTube = (
  slice: TubeSlice,
  { xMm, yMm, depthMm }: SlicePoint,
): { readonly pMm: number; readonly qMm: number } => ({
  pMm:
    slice.p0Mm +
    xMm * directionDot(slice.right, slice.p) +
    yMm * directionDot(slice.up, slice.p) +
    depthMm * directionDot(slice.normal, slice.p),
  qMm:
    slice.q0Mm +
    xMm * directionDot(slice.right, slice.q) +
    yMm * directionDot(slice.up, slice.q) +
    depthMm * directionDot(slice.normal, slice.q),
})

/** A place in a slice's coordinates. */
export interface SlicePoint {
  readonly xMm: number
  readonly yMm: number
  /** From the mid-plane toward the one who looks, mm. */
  readonly depthMm: number
}

/** The tube's upper surface as seen from the hole, at `xMm` in the plane at `depthMm`: its height y, mm; null beside the tube. */
export const surfaceAt = (slice: TubeSlice, xMm: number, depthMm: number): number | null => {
  const at = acrossTube(slice, { xMm, yMm: 0, depthMm })
  const [upP, upQ] = [directionDot(slice.up, slice.p), directionDot(slice.up, slice.q)]
  const square = upP * upP + upQ * upQ
  const half = at.pMm * upP + at.qMm * upQ
  const rest = at.pMm ** 2 + at.qMm ** 2 - slice.radiusMm ** 2
  const root = half * half - square * rest
  return root < 0 || square === 0 ? null : (-half + Math.sqrt(root)) / square
}
