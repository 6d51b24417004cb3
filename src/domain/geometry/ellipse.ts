import type { CircleMm } from './circle'
import type { PlanePointMm } from './plane'
import type { Side } from './tangent'

/** An ellipse in a drawn plane; a half-axis of 0 makes it a straight piece. */
export interface EllipseMm {
  readonly centre: PlanePointMm
  /** Half-axis along the unit direction (`cos`, `sin`). */
  readonly aMm: number
  /** Half-axis along (−`sin`, `cos`). */
  readonly bMm: number
  readonly cos: number
  readonly sin: number
}

/** Coordinates in which an ellipse is the circle of radius 1 about the origin. */
interface UnitPoint {
  readonly x: number
  readonly y: number
}

const unitPoint = ({ centre, aMm, bMm, cos, sin }: EllipseMm, { uMm, vMm }: PlanePointMm): UnitPoint => {
  const du = uMm - centre.uMm
  const dv = vMm - centre.vMm
  return { x: (du * cos + dv * sin) / aMm, y: (dv * cos - du * sin) / bMm }
}

/** The angle of a point in those coordinates, radians: the ellipse's parameter for a point on it. */
export const ellipseParameter = (ellipse: EllipseMm, point: PlanePointMm): number => {
  const { x, y } = unitPoint(ellipse, point)
  return Math.atan2(y, x)
}

const ellipsePoint = (ellipse: EllipseMm, cosine: number, sine: number): PlanePointMm => {
  const { centre, aMm, bMm, cos, sin } = ellipse
  return {
    uMm: centre.uMm + aMm * cosine * cos - bMm * sine * sin,
    vMm: centre.vMm + aMm * cosine * sin + bMm * sine * cos,
  }
}

/**
 * Where the tangent from `from` touches an ellipse with both half-axes > 0; the middle lies on `centreSide` of somebody looking from
 * `from`. Null when `from` is inside. Formula: the tangent to the circle of radius 1 in the stretched coordinates, which keep
 * tangents; with d the distance from the middle the touching point is turned from `from` by acos(1/d). Source: derived here.
 */
export const ellipseTangentPoint = (
  ellipse: EllipseMm,
  from: PlanePointMm,
  centreSide: Side,
): PlanePointMm | null => {
  const { x, y } = unitPoint(ellipse, from)
  const distanceSq = x * x + y * y
  if (distanceSq < 1) return null
  const turn = (centreSide === 'left' ? 1 : -1) * Math.sqrt(distanceSq - 1)
  return ellipsePoint(ellipse, (x - y * turn) / distanceSq, (y + x * turn) / distanceSq)
}

/** Whether the straight piece between two points cuts into an ellipse; touching is not cutting, a flat ellipse is never cut. */
export const isEllipseCut = (ellipse: EllipseMm, from: PlanePointMm, to: PlanePointMm): boolean => {
  if (!(ellipse.aMm > 0 && ellipse.bMm > 0)) return false
  const a = unitPoint(ellipse, from)
  const b = unitPoint(ellipse, to)
  const dx = b.x - a.x
  const dy = b.y - a.y
  const lengthSq = dx * dx + dy * dy
  const share = lengthSq === 0 ? 0 : Math.min(1, Math.max(0, -(a.x * dx + a.y * dy) / lengthSq))
  const x = a.x + share * dx
  const y = a.y + share * dy
  return x * x + y * y < 1
}

/** The two ends of a straight piece that touches a circle and an ellipse on the same side. */
export interface CircleEllipseTangent {
  readonly onCircle: PlanePointMm
  readonly onEllipse: PlanePointMm
}

/** The direction square to an ellipse, outward, at a point on it, radians anticlockwise from the drawing's right. */
const outwardRad = (ellipse: EllipseMm, point: PlanePointMm): number => {
  const { x, y } = unitPoint(ellipse, point)
  const p = x / ellipse.aMm
  const q = y / ellipse.bMm
  return Math.atan2(p * ellipse.sin + q * ellipse.cos, p * ellipse.cos - q * ellipse.sin)
}

/** How much further an ellipse reaches than a circle in a direction, mm, and how that changes with it, mm per radian. */
const reachBeyond = (
  { centre, radiusMm }: CircleMm,
  { centre: middle, aMm, bMm, cos, sin }: EllipseMm,
  rad: number,
): { readonly mm: number; readonly slopeMm: number } => {
  const nu = Math.cos(rad)
  const nv = Math.sin(rad)
  const du = middle.uMm - centre.uMm
  const dv = middle.vMm - centre.vMm
  const p = nu * cos + nv * sin
  const q = nv * cos - nu * sin
  const reachMm = Math.sqrt(aMm * aMm * p * p + bMm * bMm * q * q)
  // Turning the direction by a small angle changes p by −q and q by p.
  const slopeMm = dv * nu - du * nv + ((bMm * bMm - aMm * aMm) * p * q) / reachMm
  return { mm: du * nu + dv * nv + reachMm - radiusMm, slopeMm }
}

const LOOK_RAD = 0.2
const ROOT_STEPS = 60

/** The direction between two, in the lower of which the ellipse reaches less far, in which both reach alike. Newton's method, halving where that leaves the two. */
const alikeRad = (circle: CircleMm, ellipse: EllipseMm, lowRad: number, highRad: number): number => {
  let [low, high] = [lowRad, highRad]
  let rad = (low + high) / 2
  for (let step = 0; step < ROOT_STEPS; step += 1) {
    const { mm, slopeMm } = reachBeyond(circle, ellipse, rad)
    if (mm < 0) low = rad
    else high = rad
    const next = slopeMm === 0 ? low : rad - mm / slopeMm
    const held = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(held - rad) < 1e-15) break
    rad = held
  }
  return rad
}

/**
 * A straight piece from a circle on to an ellipse with both half-axes > 0, that touches both with their middles on the left: of those before
 * `off`, a point of the ellipse that reaches further out than the circle, the last. Null when the ellipse reaches further out all the
 * way back for half a turn. Formula: with n the outward direction, right of the piece, both reach alike: C·n + R = E·n + √(a²(n·p)² + b²(n·q)²).
 * Source: support functions of convex figures, derived here.
 */
export const circleEllipseTangent = (
  circle: CircleMm,
  ellipse: EllipseMm,
  off: PlanePointMm,
): CircleEllipseTangent | null => {
  let highRad = outwardRad(ellipse, off)
  const lastRad = highRad - Math.PI
  while (highRad > lastRad) {
    const lowRad = highRad - LOOK_RAD
    if (reachBeyond(circle, ellipse, lowRad).mm < 0) {
      const rad = alikeRad(circle, ellipse, lowRad, highRad)
      const nu = Math.cos(rad)
      const nv = Math.sin(rad)
      const { centre, radiusMm } = circle
      const p = ellipse.aMm * (nu * ellipse.cos + nv * ellipse.sin)
      const q = ellipse.bMm * (nv * ellipse.cos - nu * ellipse.sin)
      const reachMm = Math.hypot(p, q)
      return {
        onCircle: { uMm: centre.uMm + radiusMm * nu, vMm: centre.vMm + radiusMm * nv },
        onEllipse: ellipsePoint(ellipse, p / reachMm, q / reachMm),
      }
    }
    highRad = lowRad
  }
  return null
}

/** Carlson's R_F. Source: Carlson's duplication theorem as in the Digital Library of Mathematical Functions 19.36 (from memory). */
const carlsonRf = (x0: number, y0: number, z0: number): number => {
  let [x, y, z] = [x0, y0, z0]
  for (let step = 0; step < 40; step += 1) {
    const mean = (x + y + z) / 3
    const dx = 1 - x / mean
    const dy = 1 - y / mean
    const dz = -dx - dy
    if (Math.max(Math.abs(dx), Math.abs(dy), Math.abs(dz)) < 2e-3) {
      const e2 = dx * dy - dz * dz
      const e3 = dx * dy * dz
      return (1 - e2 / 10 + e3 / 14 + (e2 * e2) / 24 - (3 * e2 * e3) / 44) / Math.sqrt(mean)
    }
    const lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x)
    x = (x + lambda) / 4
    y = (y + lambda) / 4
    z = (z + lambda) / 4
  }
  return 1 / Math.sqrt((x + y + z) / 3)
}

/** Carlson's R_D, same source. */
const carlsonRd = (x0: number, y0: number, z0: number): number => {
  let [x, y, z] = [x0, y0, z0]
  let sum = 0
  let factor = 1
  for (let step = 0; step < 40; step += 1) {
    const mean = (x + y + 3 * z) / 5
    const dx = 1 - x / mean
    const dy = 1 - y / mean
    const dz = 1 - z / mean
    if (Math.max(Math.abs(dx), Math.abs(dy), Math.abs(dz)) < 2e-3) {
      const ea = dx * dy
      const eb = dz * dz
      const e2 = ea - 6 * eb
      const e3 = (3 * ea - 8 * eb) * dz
      const e4 = 3 * (ea - eb) * eb
      const e5 = ea * eb * dz
      const series =
        1 - (3 * e2) / 14 + e3 / 6 + (9 * e2 * e2) / 88 - (3 * e4) / 22 - (9 * e2 * e3) / 52 + (3 * e5) / 26
      return 3 * sum + (factor * series) / (mean * Math.sqrt(mean))
    }
    const lambda = Math.sqrt(x * y) + Math.sqrt(y * z) + Math.sqrt(z * x)
    sum += factor / (Math.sqrt(z) * (z + lambda))
    factor /= 4
    x = (x + lambda) / 4
    y = (y + lambda) / 4
    z = (z + lambda) / 4
  }
  return 3 * sum
}

/** ∫₀^φ √(a²sin² + b²cos²) for a sine of φ in [0, 1], b > 0. */
const quarterArcMm = (aMm: number, bMm: number, sine: number): number => {
  const s2 = sine * sine
  const m = 1 - (aMm * aMm) / (bMm * bMm)
  const cos2 = Math.max(0, 1 - s2)
  const delta = 1 - m * s2
  return bMm * sine * (carlsonRf(cos2, delta, 1) - ((m * s2) / 3) * carlsonRd(cos2, delta, 1))
}

/** Length of half of the ellipse from the end of the axis a to a parameter of 0…π. */
const halfArcMm = (aMm: number, bMm: number, parameter: number): number => {
  const sine = Math.min(1, Math.abs(Math.sin(parameter)))
  // A flat ellipse is run along its axis a.
  if (bMm <= 0) return aMm * (1 - Math.cos(parameter))
  const partMm = quarterArcMm(aMm, bMm, sine)
  return parameter > Math.PI / 2 ? 2 * quarterArcMm(aMm, bMm, 1) - partMm : partMm
}

/** Length along an ellipse from parameter 0 (the end of the axis a) to a parameter of 0…2π, mm. */
export const ellipseArcMm = (aMm: number, bMm: number, parameter: number): number =>
  parameter <= Math.PI
    ? halfArcMm(aMm, bMm, parameter)
    : halfArcMm(aMm, bMm, Math.PI) + halfArcMm(aMm, bMm, parameter - Math.PI)
