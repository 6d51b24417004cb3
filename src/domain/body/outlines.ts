import { planePoint, type PlanePointMm } from '../geometry/plane'
import { pointSum, type PointMm } from '../geometry/point'
import { commonTangent } from '../geometry/tangent'
import type { CircleMm } from '../geometry/circle'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import { legOf, shankOutline, type Leg } from './leg'
import type { Body } from './occupant'
import type { BodyOutline, PosedBody } from './posedBody'
import { trunkOutline } from './trunk'

/** Corners of a full circle; enough that it looks round at the size of a page. */
const CIRCLE_CORNERS = 32

/** A closed ellipse with its axes along the drawing. */
const ellipse = (centre: PlanePointMm, halfU: number, halfV: number): readonly PlanePointMm[] =>
  Array.from({ length: CIRCLE_CORNERS }, (_, index) => {
    const angleDeg = (index * 360) / CIRCLE_CORNERS
    return planePoint(centre.uMm + halfU * cosDeg(angleDeg), centre.vMm + halfV * sinDeg(angleDeg))
  })

/** Points on a circle from one to another of its points, anticlockwise, both ends included. */
const arcPoints = (circle: CircleMm, from: PlanePointMm, to: PlanePointMm): readonly PlanePointMm[] => {
  const startDeg = atan2Deg(from.vMm - circle.centre.vMm, from.uMm - circle.centre.uMm)
  const endDeg = atan2Deg(to.vMm - circle.centre.vMm, to.uMm - circle.centre.uMm)
  const sweepDeg = (((endDeg - startDeg) % 360) + 360) % 360
  const steps = 8
  return Array.from({ length: steps + 1 }, (_, index) => {
    const angleDeg = startDeg + (sweepDeg * index) / steps
    return planePoint(
      circle.centre.uMm + circle.radiusMm * cosDeg(angleDeg),
      circle.centre.vMm + circle.radiusMm * sinDeg(angleDeg),
    )
  })
}

/** The outline of a limb: two circles and the outer tangents between them; the larger circle when it holds the other. */
const limbOutline = (a: CircleMm, b: CircleMm): readonly PlanePointMm[] => {
  const under = commonTangent(a, b, 'left', 'left')
  const over = commonTangent(b, a, 'left', 'left')
  if (under === null || over === null) {
    const larger = a.radiusMm >= b.radiusMm ? a : b
    return ellipse(larger.centre, larger.radiusMm, larger.radiusMm)
  }
  // Anticlockwise round both: along the tangent with the limb on the left, round b, back, round a.
  return [...arcPoints(b, under.onB, over.onA), ...arcPoints(a, over.onB, under.onA)]
}

const sideOutlines = (body: Body, hip: PointMm, reclineDeg: number, leg: Leg): readonly BodyOutline[] => {
  const up = { x: sinDeg(reclineDeg), y: 0, z: cosDeg(reclineDeg) }
  const head = pointSum(hip, up, body.headCentreAboveHipMm)
  return [
    { part: 'shank', points: shankOutline(leg, body.kneeHeightMm) },
    { part: 'thigh', points: limbOutline(leg.thighTop, leg.knee) },
    { part: 'trunk', points: trunkOutline(body, hip, reclineDeg) },
    {
      part: 'helmet',
      points: ellipse(planePoint(head.xMm, head.zMm), body.helmetRadiusMm, body.helmetRadiusMm),
    },
  ]
}

/** One thigh from above: from a quarter of the hip breadth beside the middle straight forward to the knee. */
const topThigh = (body: Body, hip: PointMm, leg: Leg, side: -1 | 1): BodyOutline => {
  const vMm = hip.yMm + (side * body.hipBreadthMm) / 4
  const hipCircle = { centre: planePoint(hip.xMm, vMm), radiusMm: body.hipBreadthMm / 4 }
  const kneeCircle = { centre: planePoint(leg.knee.centre.uMm, vMm), radiusMm: leg.knee.radiusMm }
  return { part: 'thigh', points: limbOutline(hipCircle, kneeCircle) }
}

const topOutlines = (body: Body, hip: PointMm, reclineDeg: number, leg: Leg): readonly BodyOutline[] => {
  const up = { x: sinDeg(reclineDeg), y: 0, z: cosDeg(reclineDeg) }
  const shoulder = pointSum(hip, up, body.hipToShoulderMm - body.shoulderArcRadiusMm)
  const head = pointSum(hip, up, body.headCentreAboveHipMm)
  const hipDepthMm = body.abdominalDepthMm / 2
  return [
    topThigh(body, hip, leg, -1),
    topThigh(body, hip, leg, 1),
    { part: 'hips', points: ellipse(planePoint(hip.xMm, hip.yMm), hipDepthMm, body.hipBreadthMm / 2) },
    {
      part: 'shoulders',
      points: ellipse(
        planePoint(shoulder.xMm, shoulder.yMm),
        body.shoulderArcRadiusMm,
        body.bideltoidBreadthMm / 2,
      ),
    },
    {
      part: 'helmet',
      points: ellipse(planePoint(head.xMm, head.yMm), body.helmetRadiusMm, body.helmetRadiusMm),
    },
  ]
}

/**
 * The body as both elevations draw it, parts behind first. Sizes are the body's own; the shape between them is an
 * illustration of our own making and no rule looks at it.
 */
export const outlinesOf = (body: Body, hip: PointMm, reclineDeg: number): PosedBody['outlines'] => {
  const leg = legOf(body, hip)
  return { side: sideOutlines(body, hip, reclineDeg, leg), top: topOutlines(body, hip, reclineDeg, leg) }
}
