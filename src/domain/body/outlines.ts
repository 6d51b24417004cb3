import { planePoint, type PlanePointMm } from '../geometry/plane'
import { pointSum, type PointMm } from '../geometry/point'
import { commonTangent } from '../geometry/tangent'
import type { CircleMm } from '../geometry/circle'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import { legOf, shankOutline, type Leg } from './leg'
import type { Body } from './occupant'
import type { BodyOutline, PosedBody } from './posedBody'
import { trunkOutline } from './trunk'

/** What of a body in its seat the outlines are drawn about. */
type Seated = Pick<PosedBody, 'hip' | 'reclineDeg' | 'lapArc' | 'lapLowestDeg' | 'hipHalfBreadthMm'>

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

const sideOutlines = (body: Body, seated: Seated, leg: Leg): readonly BodyOutline[] => {
  const { hip, reclineDeg, lapArc, lapLowestDeg } = seated
  const up = { x: sinDeg(reclineDeg), y: 0, z: cosDeg(reclineDeg) }
  const head = pointSum(hip, up, body.headCentreAboveHipMm)
  const pelvis = { lapRadiusMm: lapArc.radiusMm, lapLowestDeg }
  return [
    { part: 'shank', points: shankOutline(leg, body.kneeHeightMm) },
    { part: 'thigh', points: limbOutline(leg.thighTop, leg.knee) },
    { part: 'trunk', points: trunkOutline(body, hip, reclineDeg, pelvis) },
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

/**
 * The pelvis from above as the lap strap meets it: the cylinder between the front hip bones and half an ellipse at each end.
 * A pelvis no wider than its hip bones has flat ends.
 */
const hipsOutline = (body: Body, { hip, lapArc, hipHalfBreadthMm }: Seated): readonly PlanePointMm[] => {
  const cylinderMm = Math.min(hipHalfBreadthMm, body.frontHipBoneBreadthMm / 2)
  const endMm = hipHalfBreadthMm - cylinderMm
  const steps = CIRCLE_CORNERS / 2
  const end = (outward: 1 | -1): readonly PlanePointMm[] =>
    Array.from({ length: steps + 1 }, (_, step) => {
      const angleDeg = (step * 180) / steps
      const outMm = cylinderMm + endMm * sinDeg(angleDeg)
      return planePoint(hip.xMm + outward * lapArc.radiusMm * cosDeg(angleDeg), hip.yMm + outward * outMm)
    })
  return [...end(1), ...end(-1)]
}

const topOutlines = (body: Body, seated: Seated, leg: Leg): readonly BodyOutline[] => {
  const { hip, reclineDeg } = seated
  const up = { x: sinDeg(reclineDeg), y: 0, z: cosDeg(reclineDeg) }
  const shoulder = pointSum(hip, up, body.hipToShoulderMm - body.shoulderArcRadiusMm)
  const head = pointSum(hip, up, body.headCentreAboveHipMm)
  return [
    topThigh(body, hip, leg, -1),
    topThigh(body, hip, leg, 1),
    { part: 'hips', points: hipsOutline(body, seated) },
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
 * The body as both elevations draw it, parts behind first. Sizes are the body's own, and where straps touch it the outline is what
 * they are solved on; the shape between is an illustration of our own making and no rule looks at it.
 */
export const outlinesOf = (body: Body, seated: Seated): PosedBody['outlines'] => {
  const leg = legOf(body, seated.hip)
  return { side: sideOutlines(body, seated, leg), top: topOutlines(body, seated, leg) }
}
