import { type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import { directionBetween } from '../../../geometry/point'
import { anchorOf } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import { strapSide, type StrapId } from '../../../straps/strap'
import type { Primitive } from '../primitive'
import { type DrawnPlane, onPlane, planeThrough, SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, ExplainView, Measure, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, effectiveAnchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { pathOf } from './solvedStrap'

interface Length {
  readonly view: ExplainView
  readonly plane: DrawnPlane
  readonly points: readonly NamedPoint[]
  readonly measure: Measure
  readonly lines?: readonly Primitive[]
  readonly scenery: readonly Primitive[]
}

const explained = (scene: ExplainScene, length: Length): Explanation => ({
  figures: [
    figureOf(
      {
        view: length.view,
        measure: length.measure,
        points: labelled(length.points, length.plane),
        lines: length.lines ?? [],
        scenery: length.scenery,
      },
      scene,
    ),
  ],
  points: length.points,
})

/** A thin line to where a dimension ends, from the point that the end stands for. */
const extension = (from: PlanePointMm, to: PlanePointMm): readonly Primitive[] => [
  line('extension', [from, to], 'dimension'),
]

const sideScenery = (scene: ExplainScene, paths: readonly StrapPath[]): readonly Primitive[] => [
  ...elevationScenery(scene, 'side'),
  ...strapScenery(paths, SIDE_PLANE),
]

/** Height of the shoulder point over the anchor contact, measured above the anchor. */
export const explainShoulderHeight = (scene: ExplainScene, path: StrapPath): Explanation => {
  const which = strapSide(path.strap) === 'right' ? 'right' : 'left'
  const shoulder = named('S', 'shoulder point', scene.sitting.body.shoulderPoint[which])
  const anchor = anchorNamed(scene, path)
  const from = projected(anchor.point, 'side')
  const to = planePoint(from.uMm, shoulder.point.zMm)
  return explained(scene, {
    view: 'side',
    plane: SIDE_PLANE,
    points: [shoulder, anchor],
    measure: { kind: 'length', from, to },
    lines: extension(projected(shoulder.point, 'side'), to),
    scenery: sideScenery(scene, [path]),
  })
}

/** Height of the strap over the front hip bone; where the bone is ahead of the front contact, that contact's own height. */
export const explainLapOverHipBone = (scene: ExplainScene, path: StrapPath): Explanation => {
  const which = path.strap === 'lap-left' ? 'left' : 'right'
  const bone = named('B', 'hip bone', scene.sitting.body.frontHipBone[which])
  const end = effectiveAnchorNamed(scene, path)
  const front = named('Q', 'front contact', path.contacts.at(-2)?.point ?? path.bodyContact)
  const at = {
    bone: projected(bone.point, 'side'),
    end: projected(end.point, 'side'),
    front: projected(front.point, 'side'),
  }
  const share = (at.bone.uMm - at.front.uMm) / (at.end.uMm - at.front.uMm)
  const held = Math.min(1, Math.max(0, share))
  const strap = planePoint(
    at.front.uMm + held * (at.end.uMm - at.front.uMm),
    at.front.vMm + held * (at.end.vMm - at.front.vMm),
  )
  const to = planePoint(at.bone.uMm, strap.vMm)
  return explained(scene, {
    view: 'side',
    plane: SIDE_PLANE,
    points: [bone, front],
    measure: { kind: 'length', from: at.bone, to },
    lines: held === share ? [] : extension(strap, to),
    scenery: [...sideScenery(scene, [path]), line('run', [at.end, at.front], 'focus')],
  })
}

const mountsOfPair = (
  { place }: ExplainScene,
  [left, right]: readonly [StrapId, StrapId],
): readonly [NamedPoint, NamedPoint] | null => {
  const first = anchorOf(place.anchors, left)
  const second = anchorOf(place.anchors, right)
  if (first === null || second === null) return null
  return [named('L', 'left anchor', first.mount.point), named('R', 'right anchor', second.mount.point)]
}

const pathsOf = (scene: ExplainScene, straps: readonly StrapId[]): readonly StrapPath[] =>
  straps.flatMap((strap) => pathOf(scene, strap) ?? [])

/** Distance across the car of the two mounts, seen from above. */
export const explainAcross = (
  scene: ExplainScene,
  straps: readonly [StrapId, StrapId],
): Explanation | null => {
  const mounts = mountsOfPair(scene, straps)
  if (mounts === null) return null
  const [left, right] = mounts
  const from = projected(left.point, 'top')
  const to = planePoint(from.uMm, right.point.yMm)
  return explained(scene, {
    view: 'top',
    plane: TOP_PLANE,
    points: mounts,
    measure: { kind: 'length', from, to },
    lines: extension(projected(right.point, 'top'), to),
    scenery: [...elevationScenery(scene, 'top'), ...strapScenery(pathsOf(scene, straps), TOP_PLANE)],
  })
}

/** How far apart the two mounts of a pair are in side view, where they should lie on each other. */
export const explainMirror = (
  scene: ExplainScene,
  straps: readonly [StrapId, StrapId],
): Explanation | null => {
  const mounts = mountsOfPair(scene, straps)
  if (mounts === null) return null
  return explained(scene, {
    view: 'side',
    plane: SIDE_PLANE,
    points: mounts,
    measure: {
      kind: 'length',
      from: projected(mounts[0].point, 'side'),
      to: projected(mounts[1].point, 'side'),
    },
    scenery: sideScenery(scene, pathsOf(scene, straps)),
  })
}

/** The distance in space of the two shoulder contacts, seen square to the line between them. */
export const explainShoulderSpacing = (scene: ExplainScene): Explanation | null => {
  const [left, right] = pathsOf(scene, ['shoulder-left', 'shoulder-right'])
  if (left === undefined || right === undefined) return null
  const from = { ...anchorNamed(scene, left), letter: 'L' }
  const to = { ...anchorNamed(scene, right), letter: 'R' }
  const along = directionBetween(from.point, to.point) ?? TOP_PLANE.v
  const plane = planeThrough(along, SIDE_PLANE.v)
  return explained(scene, {
    view: 'true',
    plane,
    points: [from, to],
    measure: { kind: 'length', from: onPlane(plane, from.point), to: onPlane(plane, to.point) },
    scenery: strapScenery([left, right], plane),
  })
}

/** How far behind the back of the neck, the rearmost point of the shoulder arc, the straps are joined. */
export const explainJunction = (scene: ExplainScene): Explanation | null => {
  const paths = pathsOf(scene, ['shoulder-left', 'shoulder-right'])
  const joined = paths[0]?.contacts.find(({ on }) => on === 'junction')
  if (joined === undefined) return null
  const { shoulderArc, hip } = scene.sitting.body
  const neck = named('N', 'back of the neck', {
    xMm: shoulderArc.centre.uMm + shoulderArc.radiusMm,
    yMm: hip.yMm,
    zMm: shoulderArc.centre.vMm,
  })
  const junction = named('J', 'junction', joined.point)
  const from = projected(neck.point, 'side')
  const at = projected(junction.point, 'side')
  const to = planePoint(at.uMm, from.vMm)
  return explained(scene, {
    view: 'side',
    plane: SIDE_PLANE,
    points: [neck, junction],
    measure: { kind: 'length', from, to },
    lines: [
      ...extension(at, to),
      {
        kind: 'circle',
        key: 'explain/shoulder-arc',
        part: null,
        centre: shoulderArc.centre,
        radiusMm: shoulderArc.radiusMm,
        style: 'hidden',
      },
    ],
    scenery: sideScenery(scene, paths),
  })
}
