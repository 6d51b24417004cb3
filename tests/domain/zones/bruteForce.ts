import {
  planeDistanceMm,
  planePoint,
  projected,
  type Elevation,
  type PlanePointMm,
} from '../../../src/domain/geometry/plane'
import type { PointMm } from '../../../src/domain/geometry/point'
import { regionContains } from '../../../src/domain/geometry/region'
import type { Region } from '../../../src/domain/geometry/polygon'
import { tubeAt } from '../../../src/domain/straps/mount'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import { type Gate, gateOf, type StrapScene } from '../../../src/domain/straps/scene'
import { solvePlace } from '../../../src/domain/straps/solve'
import { mirroredStrap, strapFamily, type StrapId } from '../../../src/domain/straps/strap'

export interface Trial {
  readonly scene: StrapScene
  readonly strap: StrapId
  readonly at: PointMm
  readonly mirrored: boolean
}

/** A value with the anchor (and its mirror image) somewhere else, from the strap solver: what a region must agree with. */
export const valueAt = (
  { scene, strap, at, mirrored }: Trial,
  id: QuantityId,
  subject: Subject,
): number | null => {
  const partner = mirroredStrap(strap)
  const image = { ...at, yMm: 2 * scene.body.hip.yMm - at.yMm }
  const anchors = scene.anchors.map((anchor) => {
    if (anchor.strap === strap) return { ...anchor, mount: { ...anchor.mount, point: at } }
    if (!mirrored || anchor.strap !== partner) return anchor
    return { ...anchor, mount: { ...anchor.mount, point: image } }
  })
  const { quantities } = solvePlace({ ...scene, anchors })
  return quantities.find((each) => each.id === id && each.subject === subject)?.value ?? null
}

/** The part of the body a strap runs from, in a drawn plane. */
export const planeOrigin = (scene: StrapScene, strap: StrapId, elevation: Elevation): PlanePointMm => {
  const hip = projected(scene.body.hip, 'side')
  const side = strapFamily(strap) === 'shoulder' ? scene.body.shoulderArc.centre : hip
  return elevation === 'side' ? side : planePoint(side.uMm, scene.body.hip.yMm)
}

/** Points spread evenly by angle (the golden angle) from 40 mm to 900 mm about a point. */
export const spread = (about: PlanePointMm, count: number, turn: number): readonly PlanePointMm[] =>
  Array.from({ length: count }, (_, index) => {
    const angle = (index + turn) * Math.PI * (3 - Math.sqrt(5))
    const distanceMm = 40 + 860 * ((index + 0.5) / count) ** 0.8
    return planePoint(about.uMm + distanceMm * Math.cos(angle), about.vMm + distanceMm * Math.sin(angle))
  })

/** Whether the answer of a region changes within a distance of a point, looked at in eight directions. */
export const isNearEdge = (region: Region, at: PlanePointMm, withinMm: number): boolean => {
  const here = regionContains(region, at)
  return Array.from({ length: 8 }, (_, index) => (index * Math.PI) / 4).some((angle) => {
    const near = planePoint(at.uMm + withinMm * Math.cos(angle), at.vMm + withinMm * Math.sin(angle))
    return regionContains(region, near) !== here
  })
}

const gateLineMm = (gate: Gate, at: PlanePointMm): number => {
  const upper = gate.upper ?? planePoint(gate.lower.uMm, gate.lower.vMm + 1)
  const du = upper.uMm - gate.lower.uMm
  const dv = upper.vMm - gate.lower.vMm
  return Math.abs(du * (at.vMm - gate.lower.vMm) - dv * (at.uMm - gate.lower.uMm)) / Math.hypot(du, dv)
}

/** Caps at the arcs that wedges leave out, see fan.ts: 2 mm; and half a per cent of the pelvis. */
export const CAP_MM = 2.1

/**
 * Where regions make no promise, as zones/README.md says: an anchor in the body; a wrap whose tube overlaps the shoulder, lies
 * ahead of its middle or in the strip of its own width at the gate's line; an anti-sub anchor in the lap, between buckle and hip;
 * a lap anchor ahead of the hip point.
 */
export const isLeftOut = (scene: StrapScene, strap: StrapId, at: PointMm): boolean => {
  const plane = projected(at, 'side')
  const { body } = scene
  const isNear = (circle: StrapScene['body']['lapArc'], moreMm: number): boolean =>
    planeDistanceMm(plane, circle.centre) < circle.radiusMm + moreMm
  switch (strapFamily(strap)) {
    case 'shoulder': {
      const mount = scene.anchors.find((each) => each.strap === strap)?.mount
      if (mount?.kind !== 'wrap') return isNear(body.shoulderArc, CAP_MM)
      const radiusMm = (tubeAt(scene.tubes, mount.tubeId)?.outsideDiameterMm ?? 0) / 2
      const gate = gateOf(scene, strap)
      return (
        isNear(body.shoulderArc, radiusMm + CAP_MM) ||
        plane.uMm < body.shoulderArc.centre.uMm ||
        (gate !== null && gateLineMm(gate, plane) < radiusMm)
      )
    }
    case 'lap': {
      const isBeside = Math.abs(at.yMm - body.hip.yMm) >= body.hipHalfBreadthMm
      return plane.uMm < body.hip.xMm || (!isBeside && isNear(body.lapArc, 0.006 * body.lapArc.radiusMm))
    }
    case 'sub': {
      const { buckle } = solvePlace(scene)
      if (buckle === null) return true
      const middle = planePoint((buckle.xMm + body.hip.xMm) / 2, (buckle.zMm + body.hip.zMm) / 2)
      const halfMm = planeDistanceMm(middle, projected(body.hip, 'side'))
      return planeDistanceMm(plane, middle) < halfMm || isNear(body.groinArc, CAP_MM)
    }
  }
}
