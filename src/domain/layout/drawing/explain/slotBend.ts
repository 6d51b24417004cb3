import { vehiclePoint } from '../../../body/pose'
import { planeDistanceMm, planePoint } from '../../../geometry/plane'
import { directionBetween, type PointMm } from '../../../geometry/point'
import type { StrapPath } from '../../../straps/path'
import type { Slot } from '../../../straps/seat'
import { slotCorners, slotOf } from '../../../straps/slotGate'
import { atan2Deg, wrappedDeg } from '../../../units/angle'
import type { Primitive } from '../primitive'
import { BEHIND_PLANE, type DrawnPlane, onPlane, planeThrough, SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, Measure } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf } from './solvedStrap'

/** Length of strap drawn from its slot. Our judgement. */
const PULL_MM = 160

interface Bend {
  readonly view: 'side' | 'top' | 'behind' | 'true'
  readonly plane: DrawnPlane
  readonly measure: Extract<Measure, { kind: 'angle' }>
  readonly sizeDeg: number
}

/** The strap at its slot: the piece before the first edge it bears on, and the piece after the last. */
interface SlotPieces {
  readonly before: PointMm
  readonly first: PointMm
  readonly last: PointMm
  readonly after: PointMm
}

const slotPieces = ({ contacts }: StrapPath): SlotPieces | null => {
  const firstIndex = contacts.findIndex(({ on }) => on === 'slot')
  const lastIndex = contacts.findLastIndex(({ on }) => on === 'slot')
  const before = contacts[firstIndex - 1]?.point
  const first = contacts[firstIndex]?.point
  const last = contacts[lastIndex]?.point
  const after = contacts[lastIndex + 1]?.point
  return before && first && last && after ? { before, first, last, after } : null
}

/** The turn between the two pieces as one plane shows it, about the last edge: from straight on to where the strap really goes. */
const bendIn = (view: Bend['view'], plane: DrawnPlane, { before, first, last, after }: SlotPieces): Bend => {
  const [from, edge, apex, to] = [before, first, last, after].map((point) => onPlane(plane, point))
  if (!from || !edge || !apex || !to) throw new RangeError('four points stay four')
  const zeroDeg = atan2Deg(edge.vMm - from.vMm, edge.uMm - from.uMm)
  const turnDeg = wrappedDeg(atan2Deg(to.vMm - apex.vMm, to.uMm - apex.uMm) - zeroDeg)
  const turn = turnDeg < 0 ? -1 : 1
  return { view, plane, measure: { kind: 'angle', apex, zeroDeg, turn, to }, sizeDeg: Math.abs(turnDeg) }
}

/** The plane of both pieces, in which the turn in space has its true size. */
const planeOf = ({ before, first, last, after }: SlotPieces): DrawnPlane =>
  planeThrough(directionBetween(before, first) ?? SIDE_PLANE.u, directionBetween(last, after) ?? SIDE_PLANE.v)

/**
 * The plane in which the bend has the value: that of both pieces for a slot in a side wall; else the side view or the view in which
 * an end of the slot holds the strap.
 */
const shownBend = (scene: ExplainScene, slot: Slot, pieces: SlotPieces): Bend => {
  if (slot.face === 'side') return bendIn('true', planeOf(pieces), pieces)
  const side = bendIn('side', SIDE_PLANE, pieces)
  const across =
    slot.face === 'cushion' ? bendIn('behind', BEHIND_PLANE, pieces) : bendIn('top', TOP_PLANE, pieces)
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
  const pieces = slotPieces(path)
  if (pieces === null) return cleanSlot(scene, path, slot, solved.pass?.point ?? null)
  const bend = shownBend(scene, slot, pieces)
  const isThick = pieces.first !== pieces.last
  const points = [
    named('E', 'slot edge', pieces.last),
    ...(isThick ? [named('F', 'slot edge', pieces.first)] : []),
    anchorNamed(scene, path),
  ]
  return {
    figures: [
      figureOf(
        {
          view: bend.view,
          measure: shortened(bend.measure),
          points: labelled(points.slice(0, -1), bend.plane),
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
  ...(view === 'side' || view === 'top' ? elevationScenery(scene, view) : []),
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
