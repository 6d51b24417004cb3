import { planePoint, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import { chestInTorsoFrame } from './chest'
import { HIP_AHEAD_OF_BACK_MM } from './leg'
import type { Body } from './occupant'
import { vehiclePoint } from './pose'

/** The pelvis as the trunk is drawn round it. */
export interface DrawnPelvis {
  /** Of the circle about the hip point on which the lap strap lies. */
  readonly lapRadiusMm: number
  /** The lowest angle above horizontal at which it can lie: there the belly meets the thigh. */
  readonly lapLowestDeg: number
}

/** Drawn points between two given ones of the back. */
const STEPS = 3

/**
 * A smooth curve through the given points but the first and the last, which only lead into it and out of it.
 * Formula: Catmull-Rom spline. Source: Catmull and Rom 1974 (from memory).
 */
const smooth = (points: readonly PlanePointMm[]): readonly PlanePointMm[] =>
  points.flatMap((p1, index) => {
    const [p0, p2, p3] = [points[index - 1], points[index + 1], points[index + 2]]
    if (p0 === undefined || p2 === undefined || p3 === undefined) return []
    return Array.from({ length: STEPS }, (_step, step) => {
      const t = step / STEPS
      const blend = (a: number, b: number, c: number, d: number): number =>
        0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t ** 2 + (3 * b - a - 3 * c + d) * t ** 3)
      return planePoint(blend(p0.uMm, p1.uMm, p2.uMm, p3.uMm), blend(p0.vMm, p1.vMm, p2.vMm, p3.vMm))
    })
  })

/** Points of an ellipse about a middle, from one angle to another, both included. */
const arcOf = (
  middle: PlanePointMm,
  [halfU, halfV]: readonly [number, number],
  [fromDeg, toDeg]: readonly [number, number],
  steps: number,
): readonly PlanePointMm[] =>
  Array.from({ length: steps + 1 }, (_, step) => {
    const angleDeg = fromDeg + ((toDeg - fromDeg) * step) / steps
    return planePoint(middle.uMm + halfU * cosDeg(angleDeg), middle.vMm + halfV * sinDeg(angleDeg))
  })

/** Above 0 when the way from `a` over `b` to `c` turns to the left. */
const leftTurn = (a: PlanePointMm, b: PlanePointMm, c: PlanePointMm): number =>
  (b.uMm - a.uMm) * (c.vMm - b.vMm) - (b.vMm - a.vMm) * (c.uMm - b.uMm)

/** What a string pulled over the front of the given points from the highest to the lowest lies on. Source: monotone chain (from memory). */
const tautFront = (points: readonly PlanePointMm[]): readonly PlanePointMm[] => {
  const chain: PlanePointMm[] = []
  for (const point of points.toSorted((a, b) => b.vMm - a.vMm)) {
    for (;;) {
      const [before, last] = [chain.at(-2), chain.at(-1)]
      if (before === undefined || last === undefined || leftTurn(before, last, point) > 0) break
      chain.pop()
    }
    chain.push(point)
  }
  return chain
}

/**
 * A belly less deep than the straps would let it be: hollow by up to this much, most at two thirds of the way down, setting out along
 * the line between its two ends. Formula: 27/4·t²(1 − t), which has its greatest value 1 at t = 2/3. Source: derived here.
 */
const hollow = (from: PlanePointMm, to: PlanePointMm, byMm: number): readonly PlanePointMm[] =>
  [0.25, 0.5, 0.75].map((t) =>
    planePoint(
      from.uMm + t * (to.uMm - from.uMm) + 6.75 * t * t * (1 - t) * byMm,
      from.vMm + t * (to.vMm - from.vMm),
    ),
  )

/**
 * The front from the shoulder down over the chest to the fold between belly and thigh, as the straps lie on it: round the shoulder arc
 * and the chest's section, from there straight, a thick belly pressed in by the straps, a thin one as deep as it is.
 */
const frontOf = (body: Body, fold: PlanePointMm): readonly PlanePointMm[] => {
  const top = body.hipToShoulderMm
  const radiusMm = body.shoulderArcRadiusMm
  const chest = chestInTorsoFrame(body)
  const round = [
    ...arcOf(planePoint(0, top - radiusMm), [radiusMm, radiusMm], [90, 190], 10),
    ...arcOf(chest.centre, [chest.acrossMm, chest.alongMm], [90, 270], 24),
  ].filter(({ vMm }) => vMm > fold.vMm)
  const front = tautFront([...round, fold])
  const chestEnd = front.at(-2)
  if (chestEnd === undefined) return front
  const bellyMm = HIP_AHEAD_OF_BACK_MM - 20 - body.abdominalDepthMm
  const byMm = bellyMm - (chestEnd.uMm + 2 * fold.uMm) / 3
  return byMm <= 0 ? front : [...front.slice(0, -1), ...hollow(chestEnd, fold, byMm), fold]
}

/** The fold between belly and thigh stays between these, in the torso frame from straight rearward. Our judgement, by eye. */
const FOLD_DEG = [110, 200] as const

/** Where the pelvis is drawn down to, from straight rearward in the torso frame: just ahead of the seat bones. Our judgement, by eye. */
const BELOW_DEG = 255

/** Round the front of the pelvis from the fold to below it: at the lap strap's radius there, at the groin's below. */
const pelvisOf = (body: Body, foldDeg: number, lapRadiusMm: number): readonly PlanePointMm[] =>
  Array.from({ length: 7 }, (_, step) => {
    const share = step / 6
    const radiusMm = lapRadiusMm + share * (body.hipHeightMm - lapRadiusMm)
    const angleDeg = foldDeg + share * (BELOW_DEG - foldDeg)
    return planePoint(radiusMm * cosDeg(angleDeg), radiusMm * sinDeg(angleDeg))
  })

/**
 * The trunk in side view, anticlockwise from below the hip: up the back, over the shoulder arc, down the front. In the torso
 * frame (u rearward, v up the torso line from the hip). Where straps touch it, it is what they are solved on; depths and lengths
 * are the body's; the lumbar hollow and the like are drawn by eye, an illustration of our own.
 */
const trunkInTorsoFrame = (body: Body, pelvis: DrawnPelvis, reclineDeg: number): readonly PlanePointMm[] => {
  const top = body.hipToShoulderMm
  const radiusMm = body.shoulderArcRadiusMm
  const back = HIP_AHEAD_OF_BACK_MM
  const foldDeg = Math.min(FOLD_DEG[1], Math.max(FOLD_DEG[0], 180 - pelvis.lapLowestDeg + reclineDeg))
  const front = pelvisOf(body, foldDeg, pelvis.lapRadiusMm)
  const fold = front[0] ?? planePoint(0, 0)
  const shoulder = (angleDeg: number): PlanePointMm =>
    planePoint(radiusMm * cosDeg(angleDeg), top - radiusMm + radiusMm * sinDeg(angleDeg))
  const rear = smooth([
    front.at(-1) ?? fold,
    planePoint(20, -body.hipHeightMm),
    planePoint(0.8 * back, -0.7 * body.hipHeightMm),
    planePoint(back, 0.02 * top),
    planePoint(back - 22, 0.3 * top),
    planePoint(back - 8, 0.6 * top),
    planePoint(Math.max(back - 30, 0.9 * radiusMm), top - radiusMm),
    shoulder(50),
    shoulder(90),
  ])
  return [...rear, ...[50, 60, 70, 80].map(shoulder), ...frontOf(body, fold), ...front.slice(1)]
}

/** The trunk's closed outline in the side elevation. */
export const trunkOutline = (
  body: Body,
  hip: PointMm,
  reclineDeg: number,
  pelvis: DrawnPelvis,
): readonly PlanePointMm[] =>
  trunkInTorsoFrame(body, pelvis, reclineDeg).map((point) => {
    const placed = vehiclePoint({ hip, reclineDeg }, { xMm: point.uMm, yMm: 0, zMm: point.vMm })
    return planePoint(placed.xMm, placed.zMm)
  })
