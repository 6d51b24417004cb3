import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import { type Direction, directionDot, directionLength, pointSum } from '../../../geometry/point'
import { type EyeMount, type TabMount, tabForm, type WrapMount } from '../../../straps/anchor'
import { shankAxis } from '../../../straps/eyeShank'
import { lineOfPull } from '../../../straps/lineOfPull'
import { anchorOf, tubeAt, wrapAxis } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import { tabNormal } from '../../../straps/tabPlane'
import type { Primitive } from '../primitive'
import { type DrawnPlane, onPlane, planeThrough, SIDE_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed } from './names'
import { strapScenery } from './scenery'

/** Length of strap drawn from its mount. Our judgement. */
const PULL_MM = 160

const opposite = ({ x, y, z }: Direction): Direction => ({ x: -x, y: -y, z: -z })

const sum = (a: Direction, b: Direction, share: number): Direction => ({
  x: a.x + share * b.x,
  y: a.y + share * b.y,
  z: a.z + share * b.z,
})

/** Angle between the bar and the strap, in the plane that holds both. */
export const explainWrapSquare = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const mount = anchorOf(scene.place.anchors, path.strap)?.mount
  if (mount?.kind !== 'wrap') return null
  const anyway = wrapAxis(mount, scene.tubes)
  if (anyway === null) return null
  const pull = lineOfPull(path)
  const axis = directionDot(pull, anyway) < 0 ? opposite(anyway) : anyway
  const plane = planeThrough(axis, pull)
  const anchor = anchorNamed(scene, path)
  const apex = onPlane(plane, anchor.point)
  const to = onPlane(plane, pointSum(anchor.point, pull, PULL_MM))
  return {
    figures: [
      figureOf(
        {
          view: 'true',
          measure: { kind: 'angle', apex, zeroDeg: 0, turn: 1, to },
          points: [
            { text: 'A on the tube', at: apex },
            { text: 'strap', at: to },
          ],
          lines: barLines(mount, scene, plane),
          scenery: strapScenery([path], plane),
        },
        scene,
      ),
    ],
    points: [anchor],
  }
}

/** The bar as two lines a diameter apart, and its centre line, as long as the strap is drawn. */
const barLines = (mount: WrapMount, scene: ExplainScene, plane: DrawnPlane): readonly Primitive[] => {
  const radiusMm = (tubeAt(scene.tubes, mount.tubeId)?.outsideDiameterMm ?? 0) / 2
  const middle = onPlane(plane, mount.point)
  const along = (offsetMm: number): readonly PlanePointMm[] => [
    planePoint(middle.uMm - PULL_MM / 2, middle.vMm + offsetMm),
    planePoint(middle.uMm + PULL_MM, middle.vMm + offsetMm),
  ]
  return [
    line('bar/lower', along(-radiusMm), 'tube'),
    line('bar/upper', along(radiusMm), 'tube'),
    line('bar/centre', along(0), 'centre'),
  ]
}

/** The direction in the tab's plane nearest to the pull; any direction of the plane for a pull square to it. */
const inTab = (normal: Direction, pull: Direction): Direction => {
  const part = sum(pull, normal, -directionDot(pull, normal))
  const length = directionLength(part)
  return length < 1e-9
    ? planeThrough(normal, SIDE_PLANE.v).v
    : { x: part.x / length, y: part.y / length, z: part.z / length }
}

const TAB_WORDS = { plate: 'tab', clevis: 'clevis', insert: 'plane square to the insert' } as const

/** The tab seen edge on, with the line of pull leaving its plane. */
export const explainTabTwist = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const mount = anchorOf(scene.place.anchors, path.strap)?.mount
  if (mount?.kind !== 'tab') return null
  const pull = lineOfPull(path)
  const either = tabNormal(mount)
  const normal = directionDot(pull, either) < 0 ? opposite(either) : either
  const plane = planeThrough(inTab(normal, pull), normal)
  const anchor = anchorNamed(scene, path)
  const apex = onPlane(plane, anchor.point)
  const to = onPlane(plane, pointSum(anchor.point, pull, PULL_MM))
  return {
    figures: [
      figureOf(
        {
          view: 'true',
          measure: { kind: 'angle', apex, zeroDeg: 0, turn: 1, to },
          points: [
            { text: `A ${TAB_WORDS[tabForm(mount)]}, edge on`, at: apex },
            { text: 'line of pull', at: to },
          ],
          lines: [tabEdge(mount, apex)],
          scenery: [],
        },
        scene,
      ),
    ],
    points: [anchor],
  }
}

/** The layout holds no outline of a tab; seen edge on it is drawn as long as three holes. A drawing convention of ours. */
const tabEdge = ({ thicknessMm, holeDiameterMm }: TabMount, at: PlanePointMm): Primitive => {
  const reachMm = 1.5 * holeDiameterMm
  const corner = (u: 1 | -1, v: 1 | -1): PlanePointMm =>
    planePoint(at.uMm + u * reachMm, at.vMm + (v * thicknessMm) / 2)
  return line('tab', [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], 'outline', true)
}

/** The shank and the line of pull in the plane that holds both, from the eye on. */
export const explainShankAngle = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const mount = anchorOf(scene.place.anchors, path.strap)?.mount
  if (mount?.kind !== 'eye') return null
  const axis = shankAxis(mount)
  const pull = lineOfPull(path)
  const plane = planeThrough(axis, pull)
  const anchor = anchorNamed(scene, path)
  const apex = onPlane(plane, anchor.point)
  const to = onPlane(plane, pointSum(anchor.point, pull, PULL_MM))
  return {
    figures: [
      figureOf(
        {
          view: 'true',
          measure: { kind: 'angle', apex, zeroDeg: 0, turn: 1, to },
          points: [
            { text: 'A eye bolt', at: apex },
            { text: 'line of pull', at: to },
          ],
          lines: eyeLines(mount, apex),
          scenery: strapScenery([path], plane),
        },
        scene,
      ),
    ],
    points: [anchor],
  }
}

/** Shank drawn below the eye, in diameters of its thread: a drawing convention of ours, the layout holds no length. */
const SHANK_THREADS = 3

/** The eye's opening and outside, and its shank, with the shank's axis to the right. */
const eyeLines = (mount: EyeMount, at: PlanePointMm): readonly Primitive[] => {
  const { eyeDiameterMm, threadDiameterMm } = mount
  const outsideMm = eyeDiameterMm / 2 + threadDiameterMm
  const ring = (key: string, radiusMm: number): Primitive => ({
    kind: 'circle',
    key: `explain/${key}`,
    part: null,
    centre: at,
    radiusMm,
    style: 'outline',
  })
  const corner = (alongMm: number, side: 1 | -1): PlanePointMm =>
    planePoint(at.uMm - alongMm, at.vMm + (side * threadDiameterMm) / 2)
  const endMm = outsideMm + SHANK_THREADS * threadDiameterMm
  return [
    ring('eye', eyeDiameterMm / 2),
    ring('eye-outside', outsideMm),
    line(
      'shank',
      [corner(outsideMm, 1), corner(endMm, 1), corner(endMm, -1), corner(outsideMm, -1)],
      'outline',
    ),
    line('axis', [planePoint(at.uMm - 1.3 * endMm, at.vMm), at], 'centre'),
  ]
}
