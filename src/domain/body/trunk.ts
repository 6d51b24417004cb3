import { planePoint, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import { CHEST_BACK_MM, CHEST_UP } from './chest'
import { HIP_AHEAD_OF_BACK_MM } from './leg'
import type { Body } from './occupant'
import { vehiclePoint } from './pose'

/** Drawn points between two given ones. */
const STEPS = 3

/** A smooth closed curve through the given points. Formula: Catmull-Rom spline. Source: Catmull and Rom 1974 (from memory). */
const smoothClosed = (points: readonly PlanePointMm[]): readonly PlanePointMm[] => {
  const at = (index: number): PlanePointMm =>
    points[(index + points.length) % points.length] ?? planePoint(0, 0)
  return points.flatMap((_, index) => {
    const [p0, p1, p2, p3] = [at(index - 1), at(index), at(index + 1), at(index + 2)]
    return Array.from({ length: STEPS }, (_step, step) => {
      const t = step / STEPS
      const blend = (a: number, b: number, c: number, d: number): number =>
        0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t ** 2 + (3 * b - a - 3 * c + d) * t ** 3)
      return planePoint(blend(p0.uMm, p1.uMm, p2.uMm, p3.uMm), blend(p0.vMm, p1.vMm, p2.vMm, p3.vMm))
    })
  })
}

/**
 * The trunk in side view, anticlockwise from below the hip: up the back, over the shoulder arc, down the front. In the torso
 * frame (u rearward, v up the torso line from the hip). Depths and lengths are the body's; the lumbar hollow and the like are
 * drawn by eye, an illustration of our own.
 */
const trunkInTorsoFrame = (body: Body): readonly PlanePointMm[] => {
  const top = body.hipToShoulderMm
  const radiusMm = body.shoulderArcRadiusMm
  const back = HIP_AHEAD_OF_BACK_MM
  const chestFront = back - CHEST_BACK_MM - body.chestDepthMm
  const bellyFront = back - 20 - body.abdominalDepthMm
  const shoulder = (angleDeg: number): PlanePointMm =>
    planePoint(radiusMm * cosDeg(angleDeg), top - radiusMm + radiusMm * sinDeg(angleDeg))
  return [
    planePoint(20, -body.hipHeightMm),
    planePoint(0.8 * back, -0.7 * body.hipHeightMm),
    planePoint(back, 0.02 * top),
    planePoint(back - 22, 0.3 * top),
    planePoint(back - 8, 0.6 * top),
    planePoint(Math.max(back - 30, 0.9 * radiusMm), top - radiusMm),
    shoulder(50),
    shoulder(90),
    shoulder(130),
    planePoint(Math.min(-0.95 * radiusMm, 0.6 * chestFront), top - 1.15 * radiusMm),
    planePoint(chestFront, CHEST_UP * top),
    planePoint(bellyFront, 0.32 * top),
    planePoint(0.85 * bellyFront, 0.1 * top),
    planePoint(-0.6 * body.hipHeightMm, -0.6 * body.hipHeightMm),
  ]
}

/** The trunk's closed outline in the side elevation. */
export const trunkOutline = (body: Body, hip: PointMm, reclineDeg: number): readonly PlanePointMm[] =>
  smoothClosed(trunkInTorsoFrame(body)).map((point) => {
    const placed = vehiclePoint({ hip, reclineDeg }, { xMm: point.uMm, yMm: 0, zMm: point.vMm })
    return planePoint(placed.xMm, placed.zMm)
  })
