import { HIP, RECLINE_DEG, SHOULDER_CENTRE_MM, SHOULDER_RADIUS_MM } from './benchCar'

/*
 * Plane trigonometry of the side view, written out here on its own: what a builder would work out with a calculator.
 * x rearward, z up, angles in degrees. Source: right triangles and the tangent from a point to a circle, any school book.
 */

export interface SidePoint {
  readonly x: number
  readonly z: number
}

export const deg = (rad: number): number => (rad * 180) / Math.PI
const rad = (degrees: number): number => (degrees * Math.PI) / 180
export const sin = (degrees: number): number => Math.sin(rad(degrees))
export const cos = (degrees: number): number => Math.cos(rad(degrees))
export const tan = (degrees: number): number => Math.tan(rad(degrees))
export const angle = (rise: number, run: number): number => deg(Math.atan2(rise, run))

/** `along` mm up a torso line that leans `recline` back from vertical, from the hip. */
export const upTorso = (hip: SidePoint, recline: number, along: number): SidePoint => ({
  x: hip.x + along * sin(recline),
  z: hip.z + along * cos(recline),
})

export const BENCH_HIP: SidePoint = { x: HIP.xMm, z: HIP.zMm }

/** Middle of the bench car's shoulder circle with the hip and recline as given. */
export const shoulderCentre = (hip = BENCH_HIP, recline = RECLINE_DEG): SidePoint =>
  upTorso(hip, recline, SHOULDER_CENTRE_MM)

/**
 * Fall of a strap that lies on top of the shoulder circle and runs straight to a point, or over a bar of `barRadius`: the line
 * of the centres falls by φ, and the outer tangent by asin((R − r)/d) more.
 */
export const shoulderDrop = (centre: SidePoint, to: SidePoint, barRadius = 0): number => {
  const distance = Math.hypot(to.x - centre.x, to.z - centre.z)
  return angle(centre.z - to.z, to.x - centre.x) + deg(Math.asin((SHOULDER_RADIUS_MM - barRadius) / distance))
}

/** x where that strap leaves the shoulder circle: the tangent's foot lies square to it. */
export const shoulderLeaveX = (centre: SidePoint, drop: number): number =>
  centre.x + SHOULDER_RADIUS_MM * sin(drop)

/** Angle above horizontal of the line from a lap tab forward to the hip. */
export const lapAngle = (hip: SidePoint, at: SidePoint): number => angle(hip.z - at.z, at.x - hip.x)

/**
 * Angle from vertical of a strap that comes down the front of a circle about the hip and runs straight to a tab: the line from
 * hip to tab leans by φ, and the tangent past the front of the circle by asin(r/d) more.
 */
export const subToVertical = (hip: SidePoint, radius: number, at: SidePoint): number =>
  angle(at.x - hip.x, hip.z - at.z) + deg(Math.asin(radius / Math.hypot(at.x - hip.x, at.z - hip.z)))
