import { type PlanePointMm, planeDistanceMm, planePoint } from '../../../geometry/plane'
import {
  type Direction,
  directionDot,
  directionLength,
  type PointMm,
  pointSum,
} from '../../../geometry/point'
import type { TabMount, WrapMount } from '../../../straps/anchor'
import { lineOfPull } from '../../../straps/lineOfPull'
import { anchorOf, tubeAt, wrapAxis } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import type { Slot } from '../../../straps/seat'
import { slotOf } from '../../../straps/slotGate'
import { tabNormal } from '../../../straps/tabPlane'
import { atan2Deg, wrappedDeg } from '../../../units/angle'
import type { Primitive } from '../primitive'
import { BEHIND_PLANE, type DrawnPlane, onPlane, planeThrough, SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, Measure } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf } from './solvedStrap'
import { slotCorners } from '../../../straps/slotGate'
import { vehiclePoint } from '../../../body/pose'

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
            { text: 'A tab, edge on', at: apex },
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

interface Bend {
  readonly view: 'side' | 'top' | 'behind'
  readonly plane: DrawnPlane
  readonly measure: Extract<Measure, { kind: 'angle' }>
  readonly sizeDeg: number
}

/** The turn of the strap where it passes its slot, as one plane shows it: from straight on to where it really goes. */
const bendIn = (
  view: Bend['view'],
  plane: DrawnPlane,
  [before, at, after]: readonly [PointMm, PointMm, PointMm],
): Bend => {
  const [from, apex, to] = [onPlane(plane, before), onPlane(plane, at), onPlane(plane, after)]
  const zeroDeg = atan2Deg(apex.vMm - from.vMm, apex.uMm - from.uMm)
  const turnDeg = wrappedDeg(atan2Deg(to.vMm - apex.vMm, to.uMm - apex.uMm) - zeroDeg)
  const turn = turnDeg < 0 ? -1 : 1
  return { view, plane, measure: { kind: 'angle', apex, zeroDeg, turn, to }, sizeDeg: Math.abs(turnDeg) }
}

/** The plane in which the bend has the value: side view, or the one in which an end of the slot holds the strap. */
const shownBend = (scene: ExplainScene, slot: Slot, points: readonly [PointMm, PointMm, PointMm]): Bend => {
  const side = bendIn('side', SIDE_PLANE, points)
  const across =
    slot.face === 'cushion' ? bendIn('behind', BEHIND_PLANE, points) : bendIn('top', TOP_PLANE, points)
  return Math.abs(side.sizeDeg - scene.value) <= Math.abs(across.sizeDeg - scene.value) ? side : across
}

const slotLine = (scene: ExplainScene, slot: Slot, plane: DrawnPlane): Primitive =>
  line(
    'slot',
    slotCorners(slot).map((corner) => onPlane(plane, vehiclePoint(scene.sitting.pose, corner))),
    'outline',
    true,
  )

/** How far the slot turns the strap: from straight on past the slot to where it goes. */
export const explainSlotBend = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const slot = slotOf(scene.place.seat, path.strap)
  const solved = solvedStrapOf(scene, path.strap)
  if (slot === null || solved === null) return null
  const index = path.contacts.findIndex(({ on }) => on === 'slot')
  const [before, at, after] = path.contacts.slice(Math.max(0, index - 1), Math.max(0, index - 1) + 3)
  if (index < 1 || before === undefined || at === undefined || after === undefined)
    return cleanSlot(scene, path, slot, solved.pass?.point ?? null)
  const bend = shownBend(scene, slot, [before.point, at.point, after.point])
  const points = [named('E', 'slot edge', at.point), anchorNamed(scene, path)]
  return {
    figures: [
      figureOf(
        {
          view: bend.view,
          measure: shortened(bend.measure),
          points: labelled(points.slice(0, 1), bend.plane),
          lines: [slotLine(scene, slot, bend.plane)],
          scenery: sceneryOf(scene, path, bend),
        },
        scene,
      ),
    ],
    points,
  }
}

/** The same angle with its far end no further than needed, so that the slot stays large enough to be seen. */
const shortened = (measure: Extract<Measure, { kind: 'angle' }>): Measure => {
  const { apex, to } = measure
  const lengthMm = planeDistanceMm(apex, to)
  const share = Math.min(1, PULL_MM / lengthMm)
  return {
    ...measure,
    to: planePoint(apex.uMm + share * (to.uMm - apex.uMm), apex.vMm + share * (to.vMm - apex.vMm)),
  }
}

const sceneryOf = (
  scene: ExplainScene,
  path: StrapPath,
  { view, plane }: Pick<Bend, 'view' | 'plane'>,
): readonly Primitive[] => [
  ...(view === 'behind' ? [] : elevationScenery(scene, view)),
  ...strapScenery([path], plane),
]

/** A strap that its slot does not touch goes straight on: 0°. */
const cleanSlot = (scene: ExplainScene, path: StrapPath, slot: Slot, pass: PointMm | null): Explanation => {
  const through = pass === null ? [] : [named('G', 'through the slot', pass)]
  const points = [...through, anchorNamed(scene, path)]
  return {
    figures: [
      figureOf(
        {
          view: 'side',
          measure: null,
          points: labelled(pass === null ? points : points.slice(0, 1), SIDE_PLANE),
          lines: [slotLine(scene, slot, SIDE_PLANE)],
          scenery: sceneryOf(scene, path, { view: 'side', plane: SIDE_PLANE }),
          note: pass === null ? 'ends before its slot: 0°' : 'passes clean: 0°',
        },
        scene,
      ),
    ],
    points,
  }
}
