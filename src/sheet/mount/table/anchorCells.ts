import type { PointMm } from '../../../domain/geometry/point'
import type { Layout, LengthUnit } from '../../../domain/layout/document/layout'
import { anchorName, tubeName } from '../../../domain/layout/wording/names'
import { capitalised } from '../../../domain/layout/wording/words'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import { sideOfTurn } from '../../../domain/shop/lineOfPullAngles'
import {
  type EyeMount,
  type Mount,
  tabForm,
  type TabMount,
  type WrapMount,
} from '../../../domain/straps/anchor'
import { plainPlane, type PlainPlane } from '../../../domain/straps/tabPlane'
import { angleText } from '../../../domain/units/angle'
import { lengthText, lengthWithUnit } from '../../../domain/units/length'
import { cell } from '../../page/section'
import type { CellText } from '../../page/table'
import type { Typography } from '../../page/typography'

export const otherUnit = (unit: LengthUnit): LengthUnit => (unit === 'mm' ? 'in' : 'mm')

/** Lengths that are bought, cut or drilled stand in both units, so that nobody rounds a hole. */
export const bothUnits = (lengthMm: number, unit: LengthUnit): string =>
  `${lengthWithUnit(lengthMm, unit)} (${lengthWithUnit(lengthMm, otherUnit(unit))})`

/** "x 310, y 0, z 95 mm" */
export const pointText = (point: PointMm, unit: LengthUnit): string =>
  `x ${lengthText(point.xMm, unit)}, y ${lengthText(point.yMm, unit)}, z ${lengthWithUnit(point.zMm, unit)}`

/** Text from the layout is short by its schema; this only keeps a foreign one from filling a page. */
const MOST_LINES = 24

/** The cells of one anchor's row, in the order of the table's columns. */
export const anchorCells = (
  row: AnchorRow,
  layout: Layout,
  type: Typography,
  shared: SharedWords,
  ranges: RangeLine,
): readonly (readonly CellText[])[] => {
  const unit = layout.units.length
  const { point } = row.anchor.mount
  const figure = (lengthMm: number): readonly CellText[] => [
    cell(lengthText(lengthMm, unit), type.figure, 1),
    cell(lengthWithUnit(lengthMm, otherUnit(unit)), type.small, 1),
  ]
  return [
    [cell(String(row.itemNumber), type.figure, 1)],
    [
      cell(capitalised(anchorName(row.anchor)), type.strong, 2),
      cell(mountText(row, layout, shared), type.small, MOST_LINES),
    ],
    figure(point.xMm),
    figure(point.yMm),
    figure(point.zMm),
    sideCell(row, type, ranges),
    stringCell(row, type),
    planCell(row, type),
    turnCell(row, type),
    ...(shared.areTabsUpright ? [] : [leanCell(row, type)]),
  ]
}

/** What is alike for all tabs or all wraps of a place is said once, above its rows. */
export interface SharedWords {
  /** Plate, hole and shear of every tab; null where they differ. */
  readonly tabs: string | null
  /** Side and hoops of every wrap; null where they differ. */
  readonly wraps: string | null
  /** Thread, eye and rise of every eye bolt; null where they differ. */
  readonly eyes: string | null
  /** No tab of the whole sheet leans: the table goes without the column. */
  readonly areTabsUpright: boolean
}

/** Whether an anchor is a tab without lean; a wrap leans nowhere either. */
export const isUpright = ({ anchor: { mount } }: AnchorRow): boolean =>
  mount.kind !== 'tab' || Math.abs(mount.leanDeg) < NO_ANGLE_DEG

export const sharedWords = (
  rows: readonly AnchorRow[],
  areTabsUpright: boolean,
  unit: LengthUnit,
): SharedWords => {
  const mounts = rows.map(({ anchor }) => anchor.mount)
  return {
    tabs: theOnly(mounts.flatMap((mount) => (mount.kind === 'tab' ? [tabText(mount, unit)] : []))),
    wraps: theOnly(mounts.flatMap((mount) => (mount.kind === 'wrap' ? [wrapText(mount)] : []))),
    eyes: theOnly(mounts.flatMap((mount) => (mount.kind === 'eye' ? [eyeText(mount, unit)] : []))),
    areTabsUpright,
  }
}

/** The text when there are several and all are the same. */
const theOnly = (texts: readonly string[]): string | null =>
  texts.length > 1 && new Set(texts).size === 1 ? (texts[0] ?? null) : null

const mountText = (row: AnchorRow, layout: Layout, shared: SharedWords): string => {
  const { anchor, alongTubeMm, sameAsItem } = row
  if (sameAsItem !== null) return `The same anchor as ${sameAsItem}: the shoulder straps are joined`
  const unit = layout.units.length
  const { mount } = anchor
  const on = mount.tubeId === null ? 'Floor or other structure' : tubeName(mount.tubeId, layout)
  const along = alongTubeMm === null ? '' : `, ${lengthWithUnit(alongTubeMm, unit)} from P1`
  const own = ownMountText(mount, unit, shared)
  return own === null ? `${on}${along}` : `${on}${along}; ${own}`
}

/** How this one mount is made; null where that is said once above the rows. */
const ownMountText = (mount: Mount, unit: LengthUnit, shared: SharedWords): string | null => {
  switch (mount.kind) {
    case 'tab':
      return shared.tabs === null ? tabText(mount, unit) : null
    case 'wrap':
      return shared.wraps === null ? wrapText(mount) : null
    case 'eye':
      return shared.eyes === null ? eyeText(mount, unit) : null
  }
}

/** Inches never without millimetres: a sixteenth is coarse for a plate or a hole. The other way round stands in the hardware list. */
const drilledSize = (lengthMm: number, unit: LengthUnit): string =>
  unit === 'in' ? bothUnits(lengthMm, unit) : lengthWithUnit(lengthMm, unit)

const tabText = (mount: TabMount, unit: LengthUnit): string => {
  const [thick, wide] = [drilledSize(mount.thicknessMm, unit), drilledSize(mount.holeDiameterMm, unit)]
  switch (tabForm(mount)) {
    case 'plate':
      return `plate ${thick}, hole Ø ${wide}, ${mount.shear} shear`
    case 'clevis':
      return `clevis of two plates ${thick}, hole Ø ${wide}, double shear`
    case 'insert':
      return `welded insert ${thick} long, thread Ø ${wide}, single shear`
  }
}

const eyeText = ({ threadDiameterMm, eyeDiameterMm, riseDeg }: EyeMount, unit: LengthUnit): string =>
  `thread Ø ${drilledSize(threadDiameterMm, unit)}, eye Ø ${drilledSize(eyeDiameterMm, unit)}, shank ${riseText(riseDeg)}`

const riseText = (riseDeg: number): string =>
  Math.abs(riseDeg) < NO_ANGLE_DEG
    ? 'level'
    : `${angleText(Math.abs(riseDeg))} ${riseDeg > 0 ? 'upward' : 'downward'}`

const wrapText = ({ over, guideHoops }: WrapMount): string =>
  `strap ${over === 'over' ? 'over the top' : 'under the bottom'}, ${guideHoops ? 'guide hoops' : 'no guide hoops'}`

/** Angles are shown to 0.1°: less than half of that is none. */
const NO_ANGLE_DEG = 0.05

/** The ends of the swing; the way each runs only when it is not the same. */
const rangeText = (leastDeg: number, mostDeg: number): string => {
  const ends = [sideOfTurn(leastDeg), sideOfTurn(mostDeg)]
  const isOneWay = ends[0]?.runs === ends[1]?.runs
  const texts = ends.map(
    ({ sideFromLevelDeg, runs }) => `${angleText(sideFromLevelDeg)}${isOneWay ? '' : ` ${runs}`}`,
  )
  return texts.join(' to ')
}

/** Whether the range over the sittings follows the direction words on their line or has a line of its own. */
export type RangeLine = 'same-line' | 'own-line'

const sideCell = (
  { pull, pullRange }: AnchorRow,
  type: Typography,
  ranges: RangeLine,
): readonly CellText[] => {
  if (pull === null) return [cell('no strap path', type.strong, 3)]
  const { sideFromLevelDeg, runs } = pull
  const isLevel = Math.abs(sideFromLevelDeg) < NO_ANGLE_DEG
  const turn = isLevel ? 'level' : sideFromLevelDeg > 0 ? 'up' : 'down'
  const way = runs === 'neither' ? turn : `${turn}, ${runs}`
  const hasRange = pullRange !== null && pullRange.mostDeg - pullRange.leastDeg >= 2 * NO_ANGLE_DEG
  const range = hasRange ? rangeText(pullRange.leastDeg, pullRange.mostDeg) : ''
  const words = ranges === 'own-line' ? [way, range] : [[way, range].filter((word) => word !== '').join('; ')]
  return [
    cell(angleText(Math.abs(sideFromLevelDeg)), type.figure, 1),
    ...words.map((word) => cell(word, type.small, 4)),
  ]
}

/** The side cell says already that there is no path. */
const stringCell = ({ pull }: AnchorRow, type: Typography): readonly CellText[] =>
  pull === null ? [] : [cell(angleText(Math.abs(pull.stringFromLevelDeg)), type.figure, 1)]

const planCell = ({ pull }: AnchorRow, type: Typography): readonly CellText[] => {
  if (pull === null) return []
  if (pull.planFromCentreDeg === null) return [cell('none: plumb', type.small, 2)]
  const way = pull.turns === 'neither' ? 'straight' : `to the ${pull.turns}`
  return [cell(angleText(pull.planFromCentreDeg), type.figure, 1), cell(way, type.small, 2)]
}

/** Signs as in the layout file's tab plane, said in words because nobody remembers signs at the bench. */
const turnCell = ({ anchor }: AnchorRow, type: Typography): readonly CellText[] => {
  if (anchor.mount.kind === 'wrap') return [cell('wrap', type.small, 1)]
  if (anchor.mount.kind === 'eye') return shankTurn(anchor.mount, type)
  const { planDeg } = plainPlane(anchor.mount)
  return [cell(angleText(Math.abs(planDeg)), type.figure, 1), cell(turnWay(planDeg), type.small, 3)]
}

const turnWay = (planDeg: number): string =>
  Math.abs(planDeg) < NO_ANGLE_DEG ? 'fore and aft' : `rear edge ${planDeg > 0 ? 'right' : 'left'}`

/** "fore and aft", "turned 31° in plan, rear edge left" */
export const tabTurnText = (mount: TabMount): string => {
  const { planDeg } = plainPlane(mount)
  return Math.abs(planDeg) < NO_ANGLE_DEG
    ? turnWay(planDeg)
    : `turned ${angleText(Math.abs(planDeg))} in plan, ${turnWay(planDeg)}`
}

/** "upright", "leaning 10°, right face up" */
export const leanText = (mount: TabMount): string => {
  const plane = plainPlane(mount)
  return Math.abs(plane.leanDeg) < NO_ANGLE_DEG
    ? 'upright'
    : `leaning ${angleText(Math.abs(plane.leanDeg))}, ${leanWay(plane)}`
}

/** "plumb, upward", "turned 144° right from rearward, 44° upward" */
export const shankText = ({ planDeg, riseDeg }: EyeMount): string => {
  if (90 - Math.abs(riseDeg) < NO_ANGLE_DEG) return `plumb, ${riseDeg > 0 ? 'upward' : 'downward'}`
  const turn =
    Math.abs(planDeg) < NO_ANGLE_DEG
      ? 'rearward'
      : `turned ${angleText(Math.abs(planDeg))} ${planDeg > 0 ? 'right' : 'left'} from rearward`
  return `${turn}, ${riseText(riseDeg)}`
}

/** The way the shank points in plan, out of what it is screwed into; none for one that stands plumb. */
const shankTurn = ({ planDeg, riseDeg }: EyeMount, type: Typography): readonly CellText[] => {
  if (90 - Math.abs(riseDeg) < NO_ANGLE_DEG) return [cell('shank plumb', type.small, 1)]
  const way =
    Math.abs(planDeg) < NO_ANGLE_DEG ? 'shank rearward' : `shank turned ${planDeg > 0 ? 'right' : 'left'}`
  return [cell(angleText(Math.abs(planDeg)), type.figure, 1), cell(way, type.small, 3)]
}

const leanCell = ({ anchor }: AnchorRow, type: Typography): readonly CellText[] => {
  if (anchor.mount.kind !== 'tab')
    return [cell(anchor.mount.kind === 'wrap' ? 'wrap' : 'eye bolt', type.small, 1)]
  const plane = plainPlane(anchor.mount)
  const way = Math.abs(plane.leanDeg) < NO_ANGLE_DEG ? 'upright' : leanWay(plane)
  return [cell(angleText(Math.abs(plane.leanDeg)), type.figure, 1), cell(way, type.small, 2)]
}

/** Which face looks up: of a plate that stands square across the car the front or rear one. */
const leanWay = ({ planDeg, leanDeg }: PlainPlane): string => {
  if (90 - Math.abs(planDeg) < NO_ANGLE_DEG) return `${planDeg * leanDeg > 0 ? 'front' : 'rear'} face up`
  return `${leanDeg > 0 ? 'right' : 'left'} face up`
}
