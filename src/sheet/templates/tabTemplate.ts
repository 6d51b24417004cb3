import type { Direction } from '../../domain/geometry/point'
import { directionScaled } from '../../domain/geometry/vector'
import type { Layout } from '../../domain/layout/document/layout'
import { anchorName } from '../../domain/layout/wording/names'
import { clockText, fromMarkText } from '../../domain/layout/wording/tabText'
import { capitalised } from '../../domain/layout/wording/words'
import type { FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import type { TabOnTube } from '../../domain/shop/tab/tabOnTube'
import {
  directionInPlate,
  levelInPlate,
  type TabPlate,
  type TabPlates,
} from '../../domain/shop/tab/tabPlates'
import { wayOf } from '../../domain/shop/tab/way'
import type { Anchor, TabMount } from '../../domain/straps/anchor'
import type { TabSize } from '../../domain/straps/tabSize'
import { angleText, cosDeg, sinDeg, wrappedDeg } from '../../domain/units/angle'
import { lengthWithUnit } from '../../domain/units/length'
import { bothUnits } from '../mount/table/anchorCells'
import { at, line, loop, type Template, writing } from './template'

/** A tab that is to be drawn, with everything known about it. */
export interface TabTask {
  readonly layout: Layout
  readonly itemNumber: number
  readonly placeWords: string
  readonly anchor: Anchor
  readonly mount: TabMount
  readonly on: TabOnTube
  /** The way the strap pulls in the drawn sitting; null when it is not known. */
  readonly pull: Direction | null
}

/** The templates of a tab: one for its plate, two for the plates of a clevis. */
export const tabTemplates = (task: TabTask, { plates, size }: TabPlates): readonly Template[] =>
  plates.map((plate) => {
    const letter = plate.which === 'only' ? '' : plate.which === 'near' ? 'a' : 'b'
    const label = `${task.itemNumber}${letter}`
    const way = wayOf(directionScaled(plate.slice.normal, plate.which === 'far' ? -1 : 1))
    const which = letter === '' ? '' : `, its plate ${letter} (${way})`
    const name = `${capitalised(anchorName(task.anchor))}${which}`
    return {
      kind: 'tab',
      figure: {
        id: `tab-${label}`,
        title: `${label}  ${name}${task.placeWords}`,
        shapes: plateShapes(task, plate, label),
      },
      words: [
        ...plateWords(task, plate, size),
        ...footWords(task, plate),
        ...placeWords(task, plate),
        ...cautionWords(task, plate),
      ],
    }
  })

/** How far the cross and the arrows of a hole reach past the plate's head. */
const BEYOND_MM = 3

const plateShapes = (task: TabTask, plate: TabPlate, label: string): readonly FlatShape[] => {
  const { outline, slice } = plate
  const holeMm = task.mount.holeDiameterMm / 2
  const reachMm = outline.rimMm + holeMm + BEYOND_MM
  const footMm = Math.min(...outline.edge.map(({ yMm }) => yMm))
  const pullDeg = task.pull === null ? null : directionInPlate(slice, task.pull)
  const face = `${label}: this side faces ${wayOf(slice.normal)}`
  return [
    loop('CUT', outline.points),
    { kind: 'circle', layer: 'DRILL', centre: at(0, 0), radiusMm: holeMm },
    // The line down to the tube, which the welder finds again on the strip.
    line('MARK', [at(0, -holeMm - 1), at(0, -outline.reachMm)]),
    ...levelShapes(levelInPlate(slice), pullDeg, reachMm),
    ...(pullDeg === null ? [] : arrow(pullDeg, holeMm, reachMm + BEYOND_MM)),
    writing(at(0, footMm - 4.5), face, { align: 'centre' }),
  ]
}

const polar = (deg: number, lengthMm: number): FlatPoint => at(lengthMm * cosDeg(deg), lengthMm * sinDeg(deg))

/** The level line through the hole, named at its upper end on the side away from the strap's arrow; a cross where every line is level. */
const levelShapes = (
  levelDeg: number | null,
  pullDeg: number | null,
  reachMm: number,
): readonly FlatShape[] => {
  if (levelDeg === null) return cross(reachMm / 3)
  const upperDeg = levelDeg < 0 ? levelDeg + 180 : levelDeg
  const turnDeg = pullDeg === null ? 180 : wrappedDeg(pullDeg - upperDeg)
  const isByArrow = Math.abs(turnDeg) < BESIDE_ARROW_DEG
  const end = polar(upperDeg, reachMm + 1)
  const isNamedLeft = isByArrow ? turnDeg < 0 : end.xMm < 0
  return [
    line('MARK', [polar(levelDeg + 180, reachMm), polar(levelDeg, reachMm)]),
    line('MARK', [polar(levelDeg - 90, 2), polar(levelDeg + 90, 2)]),
    writing(isByArrow ? at(end.xMm + (isNamedLeft ? -1.5 : 1.5), end.yMm - 2) : end, 'level', {
      align: isNamedLeft ? 'right' : 'left',
    }),
  ]
}

/** Nearer to the level line than this the strap's arrow decides on which side of it there is room for a word. */
const BESIDE_ARROW_DEG = 30

const cross = (lengthMm: number): readonly FlatShape[] =>
  [0, 90].map((deg) => line('MARK', [polar(deg + 180, lengthMm), polar(deg, lengthMm)]))

/** The way the strap pulls, from the hole outward. */
const arrow = (deg: number, fromMm: number, toMm: number): readonly FlatShape[] => {
  const tip = polar(deg, toMm)
  const barb = (turnDeg: number): FlatPoint => {
    const back = polar(deg + 180 + turnDeg, 2.5)
    return at(tip.xMm + back.xMm, tip.yMm + back.yMm)
  }
  const word = polar(deg, toMm + 1.5)
  const upMm = sinDeg(deg) >= 0 ? 0.3 : -2
  const align = cosDeg(deg) > 0.3 ? 'left' : cosDeg(deg) < -0.3 ? 'right' : 'centre'
  return [
    line('MARK', [polar(deg, fromMm), tip]),
    line('MARK', [barb(18), tip, barb(-18)]),
    writing(at(word.xMm, word.yMm + upMm), 'strap', { align }),
  ]
}

const plateWords = ({ mount, layout }: TabTask, plate: TabPlate, size: TabSize): readonly string[] => {
  const unit = layout.units.length
  const both = (lengthMm: number): string => bothUnits(lengthMm, unit)
  const isClevis = plate.which !== 'only'
  const isChosen = size.chosen.some((name) => name !== 'gapMm')
  const gap = size.chosen.includes('gapMm')
    ? 'chosen, no source: measure the end fitting'
    : 'between the plates'
  return [
    `Plate ${both(mount.thicknessMm)}, hole Ø ${both(mount.holeDiameterMm)}.`,
    ...(isClevis ? [`${both(size.gapMm)} clear (${gap}).`] : []),
    `Width ${both(size.widthMm)}, hole to end ${both(size.edgeDistanceMm)}${isChosen ? ' (chosen)' : ''}.`,
  ]
}

/** Gaps under this close as the bead runs: half of a root opening that nobody notices. Our judgement. */
const NOTED_GAP_MM = 0.5

const footWords = ({ on, layout }: TabTask, { outline }: TabPlate): readonly string[] => {
  const unit = layout.units.length
  const { near, far } = outline.gapMm
  const turn =
    on.planeToTubeDeg === null || on.planeToTubeDeg > 89.95
      ? 'square across it'
      : on.planeToTubeDeg < 0.05
        ? 'along it'
        : `at ${angleText(on.planeToTubeDeg)} to it`
  const fit = `Foot coped for a Ø ${bothUnits(on.tube.outsideDiameterMm, unit)} tube, plate ${turn}.`
  if (Math.max(near, far) < NOTED_GAP_MM) return [fit]
  return [
    `${fit} Open up to ${lengthWithUnit(near, 'mm')} on this side, ${lengthWithUnit(far, 'mm')} on the other: bevel it to fit.`,
  ]
}

const placeWords = ({ on, layout }: TabTask, plate: TabPlate): readonly string[] => {
  const along = `Middle of the foot ${bothUnits(plate.footAlongMm, layout.units.length)} from P1`
  const clock = plate.footClock === null ? '' : `, ${clockText(plate.footClock)}`
  const hole = on.nearest === null ? '' : ` Hole ${fromMarkText(on.nearest, layout)}.`
  return [`${along}${clock}.${hole}`]
}

/** Nearer to a bend than this many diameters the tube may no longer be straight: bends are drawn sharp. Our judgement. */
const NEAR_BEND_DIAMETERS = 3

const cautionWords = ({ on, layout }: TabTask, plate: TabPlate): readonly string[] => {
  const unit = layout.units.length
  const { holeToTubeMm, rimMm } = plate.outline
  const isBend = on.nearest !== null && on.nearest.mark.kind === 'bend'
  const isNear = isBend && (on.nearest?.distanceMm ?? 0) < NEAR_BEND_DIAMETERS * on.tube.outsideDiameterMm
  return [
    ...(holeToTubeMm < rimMm
      ? [`Only ${bothUnits(holeToTubeMm, unit)} from hole to tube: see that bolt head and bead clear.`]
      : []),
    ...(plate.overBendMm > 0
      ? [`The foot reaches ${bothUnits(plate.overBendMm, unit)} past a bend or end: fit that part by hand.`]
      : []),
    ...(isNear ? ['Near a bend, which is drawn sharp: fit by hand where the tube is not straight.'] : []),
  ]
}
