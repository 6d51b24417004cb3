import type { ChestSection, PosedBody } from '../../../../src/domain/body/posedBody'
import {
  bisected,
  ovalLength,
  ovalPoint,
  ovalReach,
  overtaken,
  pointReach,
  type Flat,
  type Oval,
} from './oval'
import { apart, vectorOf, type Vector } from './vector'

/** The rest of a strap from its last point outside the body: where it touches first, then the length from there to its end. */
export interface Arrival {
  readonly touch: Vector
  readonly restMm: () => number
  /** The strap would pass clear of what it must bear on: counts only at rest, a search may come by. */
  readonly isClear: boolean
  /** Further contacts, the last being the strap's end. */
  readonly later: readonly Vector[]
}

/** Null when the point lies inside the body. */
export type BodyEnd = (last: Vector) => Arrival | null

const TURN = 2 * Math.PI
const DEG = Math.PI / 180
const side = ([x, , z]: Vector): Flat => [x, z]
const circle = (centre: Flat, radius: number): Oval => ({ centre, along: [1, 0], a: radius, b: radius })
const flatApart = (a: Flat, b: Flat): number => Math.hypot(b[0] - a[0], b[1] - a[1])

const chestOval = ({ centre, acrossMm, alongMm }: ChestSection, reclineDeg: number): Oval => ({
  centre: [centre.uMm, centre.vMm],
  along: [Math.cos(reclineDeg * DEG), -Math.sin(reclineDeg * DEG)],
  a: acrossMm,
  b: alongMm,
})

/** The taut line in side view from the circle over the chest to the buckle, turning anticlockwise (forward and down). */
interface FrontLine {
  /** Direction of the normal where it leaves the circle. */
  readonly leaves: number
  readonly lengthMm: number
  /** Points with their lengths from there: on the chest (none when clear of it), the buckle. */
  readonly points: readonly { readonly at: Flat; readonly alongMm: number }[]
}

/**
 * The reach of the hull of circle, chest and buckle, swept from up the torso line (`from`) forward and down; null when the buckle
 * is inside.
 */
const frontLine = (arc: Oval, chest: Oval | null, buckle: Flat, from: number): FrontLine | null => {
  const to = from + 1.5 * Math.PI
  const toBuckle = overtaken(ovalReach(arc), pointReach(buckle), from, to)
  const toChest = chest && overtaken(ovalReach(arc), ovalReach(chest), from, to)
  if (chest === null || toChest === null || (toBuckle !== null && toBuckle <= toChest)) {
    if (toBuckle === null) return null
    const lengthMm = flatApart(ovalPoint(arc, toBuckle), buckle)
    return { leaves: toBuckle, lengthMm, points: [{ at: buckle, alongMm: lengthMm }] }
  }
  const off = overtaken(ovalReach(chest), pointReach(buckle), toChest, to)
  if (off === null) return null
  const onto = ovalPoint(chest, toChest)
  const straightMm = flatApart(ovalPoint(arc, toChest), onto)
  const overMm = ovalLength(chest, toChest, off)
  const leaving = ovalPoint(chest, off)
  const lengthMm = straightMm + overMm + flatApart(leaving, buckle)
  return {
    leaves: toChest,
    lengthMm,
    points: [
      { at: onto, alongMm: straightMm },
      { at: leaving, alongMm: straightMm + overMm },
      { at: buckle, alongMm: lengthMm },
    ],
  }
}

/** Over one shoulder in its groove, over the chest, to the buckle. */
export const shoulderEnd = (body: PosedBody, shoulder: 'left' | 'right', buckle: Vector): BodyEnd => {
  const { centre, radiusMm } = body.shoulderArc
  const arc = circle([centre.uMm, centre.vMm], radiusMm)
  const y = body.shoulderPoint[shoulder].yMm
  const chest = body.chest.acrossMm > 0 ? chestOval(body.chest, body.reclineDeg) : null
  const front = frontLine(arc, chest, side(buckle), Math.PI / 2 - body.reclineDeg * DEG)
  return (last) => {
    const reach = pointReach(side(last))
    // Sweeping back from the top of the arc, the strap leaves where the last point outside reaches further.
    const isOutside = flatApart(side(last), arc.centre) > radiusMm
    if (front === null || !isOutside) return null
    const toward = Math.atan2(last[2] - centre.vMm, last[0] - centre.uMm)
    const meets = bisected((angle) => reach(angle) - ovalReach(arc)(angle), toward, toward + Math.PI)
    const [x, z] = ovalPoint(arc, meets)
    const slope = (buckle[1] - y) / front.lengthMm
    const frontMm = Math.hypot(front.lengthMm, buckle[1] - y)
    const [fx, fz] = ovalPoint(arc, front.leaves)
    return {
      touch: [x, y, z],
      restMm: () => ovalLength(arc, meets, front.leaves) + frontMm,
      isClear: meets > front.leaves,
      later: [
        [fx, y, fz],
        ...front.points.map(({ at, alongMm }): Vector => [at[0], y + slope * alongMm, at[1]]),
      ],
    }
  }
}

/**
 * Round the side of the pelvis to the front contact. In the plane through the lateral direction and the line of aim (first
 * coordinate forward along that line from the foot of the hip point, second outward) the pelvis' end is an oval.
 */
export const lapEnd = (body: PosedBody, strap: 'left' | 'right'): BodyEnd => {
  const hip = vectorOf(body.hip)
  const r = body.lapArc.radiusMm
  const sign = strap === 'left' ? -1 : 1
  const yb = Math.abs(body.frontHipBone.right.yMm - body.frontHipBone.left.yMm) / 2
  const end = Math.max(0, body.hipHalfBreadthMm - yb)
  return (given) => {
    // A search may look ahead of the hip on its way; `isLapBehind` has the last word.
    const last: Vector = [Math.max(given[0], hip[0] + 1e-6), given[1], given[2]]
    const lineDeg = Math.atan2(hip[2] - last[2], last[0] - hip[0]) / DEG
    const low = body.lapLowestDeg * DEG
    const aim: Flat =
      lineDeg >= body.lapLowestDeg
        ? [hip[0], hip[2]]
        : [hip[0] - r * Math.cos(low), hip[2] + r * Math.sin(low)]
    const awayMm = flatApart(side(last), aim)
    const ahead: Flat = [(aim[0] - last[0]) / awayMm, (aim[1] - last[2]) / awayMm]
    const footMm = (hip[0] - last[0]) * ahead[0] + (hip[2] - last[2]) * ahead[1]
    const foot: Flat = [last[0] + ahead[0] * footMm, last[2] + ahead[1] * footMm]
    const k = Math.sqrt(Math.max(0, 1 - (flatApart(foot, [hip[0], hip[2]]) / r) ** 2))
    const inSpace = ([s, out]: Flat): Vector => [
      foot[0] + ahead[0] * s,
      hip[1] + sign * out,
      foot[1] + ahead[1] * s,
    ]
    const section: Oval = { centre: [0, yb], along: [1, 0], a: r * k, b: end * k }
    const outside: Flat = [-footMm, sign * (last[1] - hip[1])]
    // From the front pole (normal forward) outward and back, until the last point outside reaches further.
    const meets = overtaken(ovalReach(section), pointReach(outside), 0, Math.PI, 120)
    if (meets === null) return null
    const touch = ovalPoint(section, meets)
    return {
      touch: inSpace(touch),
      restMm: () => ovalLength(section, 0, meets),
      isClear: false,
      later: [inSpace([r * k, yb])],
    }
  }
}

/** A lap strap pulls rearward: its last point outside the body lies behind the hip point. */
export const isLapBehind = (body: PosedBody, last: Vector): boolean => last[0] > body.hip.xMm

/** A thigh strap that the wearer sits on leaves the body at its lowest point or behind it. */
export const isSubBehind = (body: PosedBody, touch: Vector): boolean => touch[0] >= body.groinArc.centre.uMm

/** Down the front of the groin and under it as far as needed, evenly across the unrolled length from the buckle. */
export const subEnd = (body: PosedBody, buckle: Vector): BodyEnd => {
  const { centre, radiusMm } = body.groinArc
  const middle: Flat = [centre.uMm, centre.vMm]
  const arc = circle(middle, radiusMm)
  const from = side(buckle)
  const polar = ([x, z]: Flat): number => Math.atan2(z - middle[1], x - middle[0])
  const buckleAt = polar(from)
  const buckleMm = flatApart(from, middle)
  return (last) => {
    const lastMm = flatApart(side(last), middle)
    if (buckleMm < radiusMm || lastMm < radiusMm) return null
    const turned = (((polar(side(last)) - buckleAt) % TURN) + TURN) % TURN
    const on = buckleAt + Math.acos(radiusMm / buckleMm)
    const off = buckleAt + turned - Math.acos(radiusMm / lastMm)
    if (off <= on) return { touch: buckle, restMm: () => 0, isClear: false, later: [] }
    const downMm = Math.sqrt(buckleMm ** 2 - radiusMm ** 2)
    const arcMm = radiusMm * (off - on)
    const awayMm = Math.sqrt(lastMm ** 2 - radiusMm ** 2)
    const slope = (last[1] - buckle[1]) / (downMm + arcMm + awayMm)
    const at = (angle: number, alongMm: number): Vector => {
      const [x, z] = ovalPoint(arc, angle)
      return [x, buckle[1] + slope * alongMm, z]
    }
    const touch = at(off, downMm + arcMm)
    const first = at(on, downMm)
    return {
      touch,
      restMm: () => Math.hypot(arcMm, touch[1] - first[1]) + apart(first, buckle),
      isClear: false,
      later: [first, buckle],
    }
  }
}
