import { planePoint, projected, type Elevation, type PlanePointMm } from '../../../src/domain/geometry/plane'
import type { PointMm } from '../../../src/domain/geometry/point'
import { regionContains } from '../../../src/domain/geometry/region'
import type { Region } from '../../../src/domain/geometry/polygon'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { solvePlace } from '../../../src/domain/straps/solve'
import { mirroredStrap, strapFamily, type StrapId } from '../../../src/domain/straps/strap'

export interface Trial {
  readonly scene: StrapScene
  readonly strap: StrapId
  readonly at: PointMm
  readonly mirrored: boolean
}

/** A value with the anchor (and its mirror image, or the other of two joined straps) somewhere else, from the strap solver: what a region must agree with. */
export const valueAt = (
  { scene, strap, at, mirrored }: Trial,
  id: QuantityId,
  subject: Subject,
): number | null => {
  const partner = mirroredStrap(strap)
  // Joined shoulder straps hang on one anchor, mirrored or not.
  const isOne = strapFamily(strap) === 'shoulder' && scene.belt.shoulderTailMm !== undefined
  const image = isOne ? at : { ...at, yMm: 2 * scene.body.hip.yMm - at.yMm }
  const anchors = scene.anchors.map((anchor) => {
    if (anchor.strap === strap) return { ...anchor, mount: { ...anchor.mount, point: at } }
    if (!(mirrored || isOne) || anchor.strap !== partner) return anchor
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

/** What breaks a rule is seen when it is wider than this, mm: zones/README.md. */
const BROKEN_SEEN_MM = 16

/** Of what keeps it narrower room than this, or than the second as a share of its distance from the body, may be left out. */
const KEPT_SEEN_MM = 60
const KEPT_SEEN_SHARE = 0.2

/** Whether the answer at a place is that of a strip narrower than what is promised to be seen: it is different on both sides. */
export const isThin = (
  isKept: (at: PlanePointMm) => boolean,
  at: PlanePointMm,
  body: PlanePointMm,
): boolean => {
  const here = isKept(at)
  const roomMm = Math.max(KEPT_SEEN_MM, KEPT_SEEN_SHARE * Math.hypot(at.uMm - body.uMm, at.vMm - body.vMm))
  const widthMm = here ? roomMm : BROKEN_SEEN_MM
  return Array.from({ length: 8 }, (_, index) => (index * Math.PI) / 8).some((angle) =>
    [-1, 1].every(
      (side) =>
        isKept(
          planePoint(at.uMm + side * widthMm * Math.cos(angle), at.vMm + side * widthMm * Math.sin(angle)),
        ) !== here,
    ),
  )
}
