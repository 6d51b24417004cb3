import { type PlanePointMm, projected, type ViewPlane } from '../../geometry/plane'
import { pointSum } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import { type Anchor, type EyeMount, tabForm, type TabMount, type WrapMount } from '../../straps/anchor'
import type { Belt } from '../../straps/strap'
import { strapFamily } from '../../straps/strap'
import { tubeAt, wrapAxis } from '../../straps/mount'
import { eyeNormal, shankAxis } from '../../straps/eyeShank'
import { tabNormal } from '../../straps/tabPlane'
import { tabSize } from '../../straps/tabSize'
import { handleId } from '../edit/handles'
import type { DrawnPlace } from './drawnPlace'
import type { PartId, Primitive } from './primitive'
import { projectedRing } from './ring'
import { strapVerdict } from './strapVerdict'

/**
 * The layout holds a tab's hole and plane but not its outline, so the plate is drawn as a disc of this share of the hole's diameter
 * about the hole. A drawing convention of ours, not a dimension.
 */
const PLATE_RADIUS_SHARE = 1.5

/** Webbing is drawn standing off the tube by its own thickness, about 1.2 mm, doubled for visibility. A drawing convention of ours. */
const WEBBING_STANDOFF_MM = 2.5

/** Thread diameters of shank drawn below the eye. A drawing convention of ours: the layout holds no length of thread. */
const SHANK_THREADS = 2

interface Where {
  readonly key: string
  readonly part: PartId
  readonly plane: ViewPlane
}

const closedLine = (key: string, part: PartId, points: readonly PlanePointMm[]): Primitive => ({
  kind: 'polyline',
  key,
  part,
  points,
  closed: true,
  style: 'outline',
})

/** Where along a tab's normal, from the middle of the fitting, its rings lie: the faces of its plates, or the ends of an insert. */
const ringOffsetsMm = (mount: TabMount): readonly number[] => {
  const { thicknessMm } = mount
  const { gapMm } = tabSize(mount)
  switch (tabForm(mount)) {
    case 'plate':
      return [0]
    case 'clevis':
      return [1, -1].flatMap((side) => [(side * gapMm) / 2, side * (gapMm / 2 + thicknessMm)])
    case 'insert':
      return [0, -thicknessMm]
  }
}

/**
 * A tab by its hole and its plate at true size: a clevis with both plates, an insert from the face that the fitting lies on back to its
 * other end. The thickness of a single plate is not drawn.
 */
const tabPrimitives = (mount: TabMount, at: Where): Primitive[] => {
  const normal = tabNormal(mount)
  return ringOffsetsMm(mount).flatMap((offsetMm, index) => {
    const key = index === 0 ? at.key : `${at.key}/${index + 1}`
    const centre = pointSum(mount.point, normal, offsetMm)
    const ring = (radiusMm: number): readonly PlanePointMm[] =>
      projectedRing(centre, normal, radiusMm, at.plane)
    return [
      closedLine(`${key}/hole`, at.part, ring(mount.holeDiameterMm / 2)),
      closedLine(`${key}/plate`, at.part, ring(PLATE_RADIUS_SHARE * mount.holeDiameterMm)),
    ]
  })
}

/** An eye bolt: the ring of its eye, the outside of its forged eye and its shank down to where it is screwed in. */
const eyePrimitives = (mount: EyeMount, at: Where): Primitive[] => {
  const axis = shankAxis(mount)
  const ringNormal = eyeNormal(mount)
  const ring = (radiusMm: number): readonly PlanePointMm[] =>
    projectedRing(mount.point, ringNormal, radiusMm, at.plane)
  const outsideMm = mount.eyeDiameterMm / 2 + mount.threadDiameterMm
  const shankEnd = (alongMm: number): PlanePointMm =>
    projected(pointSum(mount.point, axis, -alongMm), at.plane)
  return [
    closedLine(`${at.key}/eye`, at.part, ring(mount.eyeDiameterMm / 2)),
    closedLine(`${at.key}/eye-outside`, at.part, ring(outsideMm)),
    {
      kind: 'polyline',
      key: `${at.key}/shank`,
      part: at.part,
      points: [shankEnd(outsideMm), shankEnd(outsideMm + SHANK_THREADS * mount.threadDiameterMm)],
      closed: false,
      style: 'outline',
    },
  ]
}

/** The loop of webbing round its tube: a ring at each edge of the webbing, joined where the elevation sees them edge on. */
const wrapPrimitives = (
  mount: WrapMount,
  webbingMm: number,
  tubes: readonly Tube[],
  at: Where,
): Primitive[] => {
  const tube = tubeAt(tubes, mount.tubeId)
  const axis = wrapAxis(mount, tubes)
  if (tube === null || axis === null) return []
  const radiusMm = tube.outsideDiameterMm / 2 + WEBBING_STANDOFF_MM
  const edge = (alongMm: number): readonly PlanePointMm[] =>
    projectedRing(pointSum(mount.point, axis, alongMm), axis, radiusMm, at.plane)
  return [
    closedLine(`${at.key}/loop-start`, at.part, edge(-webbingMm / 2)),
    closedLine(`${at.key}/loop-end`, at.part, edge(webbingMm / 2)),
  ]
}

const mountPrimitives = (anchor: Anchor, belt: Belt, tubes: readonly Tube[], at: Where): Primitive[] => {
  const { mount } = anchor
  switch (mount.kind) {
    case 'tab':
      return tabPrimitives(mount, at)
    case 'eye':
      return eyePrimitives(mount, at)
    case 'wrap':
      return wrapPrimitives(mount, belt.webbingMm[strapFamily(anchor.strap)], tubes, at)
  }
}

/** Every anchor of the place at its true size, with a mark that carries the worst verdict about its strap. */
export const anchorPrimitives = (drawn: DrawnPlace, tubes: readonly Tube[], plane: ViewPlane): Primitive[] =>
  drawn.place.anchors.flatMap((anchor) => {
    const key = `${drawn.place.id}/anchor/${anchor.id}`
    const part = handleId({ kind: 'anchor', placeId: drawn.place.id, anchorId: anchor.id })
    return [
      ...mountPrimitives(anchor, drawn.place.belt, tubes, { key, part, plane }),
      {
        kind: 'mark',
        key: `${key}/mark`,
        part,
        at: projected(anchor.mount.point, plane),
        mark: anchor.mount.kind,
        verdict: strapVerdict(drawn.evaluation.findings, anchor.strap),
      },
    ]
  })
