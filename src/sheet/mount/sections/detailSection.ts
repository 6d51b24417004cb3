import type { Layout } from '../../../domain/layout/document/layout'
import { anchorName, placeName, tubeName } from '../../../domain/layout/wording/names'
import {
  clockText,
  fromMarkText,
  templateProblemText,
  towardText,
} from '../../../domain/layout/wording/tabText'
import { capitalised } from '../../../domain/layout/wording/words'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import { type TabOnTube, tabOnTube } from '../../../domain/shop/tab/tabOnTube'
import { tabPlates } from '../../../domain/shop/tab/tabPlates'
import { type Mount, tabForm, type WrapMount } from '../../../domain/straps/anchor'
import { angleText } from '../../../domain/units/angle'
import type { FlowRow } from '../../page/flow'
import { straightItem } from '../../page/item'
import { sectionRows, textRows, type BareRow } from '../../page/section'
import { DETAIL_MM, type DetailFigure, detailFigure } from '../figure/detailFigure'
import { bothUnits, leanText, shankText, tabTurnText } from '../table/anchorCells'
import type { PlaceAnchors } from '../table/anchorTable'
import type { Setting } from './partSections'

const SECTION = 'How each anchor sits'
const GAP_MM = 2
const BELOW_MM = 1

/** Every anchor looked at along its tube, with what is set by tape, angle finder and square in words beside it. */
export const detailSection = (places: readonly PlaceAnchors[], setting: Setting): readonly FlowRow[] => {
  const { layout, widthMm, type } = setting
  const rows = places.flatMap((place) =>
    place.rows
      .filter(({ sameAsItem }) => sameAsItem === null)
      .map((row) => ({ row, place: layout.places.length > 1 ? placeName(place.place.id, layout) : '' })),
  )
  if (rows.length === 0) return []
  return sectionRows(SECTION, widthMm, type, [
    ...textRows(EXPLAINED, widthMm, type.small, SECTION).map((row) => ({ ...row, keepWithNext: true })),
    ...rows.map(({ row, place }) => detailRow(row, place, setting)),
  ])
}

const EXPLAINED =
  'The tube is cut through at the anchor and looked at along it from its point P1; the thick line is the strap as drawn. Dash-dotted: the line that the angle round the tube is counted from.'

const detailRow = (row: AnchorRow, place: string, setting: Setting): BareRow => {
  const { layout, widthMm, type } = setting
  const on = tabOnTube(row.anchor, layout.tubes)
  const figure = detailFigure(row, on, layout.units.length)
  const textMm = widthMm - DETAIL_MM - GAP_MM
  const title = [place, capitalised(anchorName(row.anchor))].filter((word) => word !== '').join(', ')
  const lines = [
    ...textRows(`${row.itemNumber}  ${title}`, textMm, type.strong, SECTION),
    ...problemWords(row.anchor.mount, on, layout).flatMap((text) =>
      textRows(text, textMm, type.strong, SECTION),
    ),
    ...wordsOf(row, on, setting, figure).flatMap((text) => textRows(text, textMm, type.body, SECTION)),
  ]
  const linesMm = lines.reduce((sumMm, line) => sumMm + line.heightMm, 0)
  const heightMm = Math.max(DETAIL_MM, linesMm) + 2 * BELOW_MM
  return {
    heightMm,
    keepWithNext: false,
    section: SECTION,
    draw: (at) => {
      let yMm = at.yMm + BELOW_MM
      const words = lines.flatMap((line) => {
        const items = line.draw({ xMm: at.xMm + DETAIL_MM + GAP_MM, yMm })
        yMm += line.heightMm
        return items
      })
      const ruleMm = at.yMm + heightMm
      return [
        ...figure.itemsAt({ xMm: at.xMm, yMm: at.yMm + BELOW_MM }),
        ...words,
        straightItem({ xMm: at.xMm, yMm: ruleMm }, { xMm: at.xMm + widthMm, yMm: ruleMm }, { widthMm: 0.12 }),
      ]
    },
  }
}

/** Why the anchor cannot be made as drawn; nothing where it can. */
const problemWords = (mount: Mount, on: TabOnTube | null, layout: Layout): readonly string[] => {
  if (on === null) return []
  const made = mount.kind === 'tab' && tabForm(mount) !== 'insert' ? tabPlates(mount, on) : null
  const problem = on.problem ?? (made !== null && 'kind' in made ? made : null)
  return problem === null ? [] : [`LOOK AT THIS: ${templateProblemText(problem, layout)}`]
}

/** What stands on no tube has nothing to be told along. */
const bareWords = (mount: Mount): readonly string[] => {
  switch (mount.kind) {
    case 'tab':
      return [`Plate ${tabTurnText(mount)}, ${leanText(mount)}.`]
    case 'eye':
      return [`Shank ${shankText(mount)}.`]
    case 'wrap':
      return []
  }
}

const wordsOf = (
  row: AnchorRow,
  on: TabOnTube | null,
  setting: Setting,
  { scale, detail }: DetailFigure,
): readonly string[] => {
  const { layout } = setting
  const unit = layout.units.length
  const facing = `Looking ${detail.facing === 'up' || detail.facing === 'down' ? `${detail.facing}ward` : `toward ${towardText(detail.facing)}`}, 1:${scale}.`
  if (on === null)
    return [
      'On the floor or another structure: set by x, y, z.',
      ...bareWords(row.anchor.mount),
      `Looking forward from behind, 1:${scale}.`,
    ]
  const { mount } = row.anchor
  const { clock, standoffMm, alongTubeMm, nearest } = on
  return [
    capitalised(tubeName(on.tube.id, layout)),
    ...(clock === null ? [] : [`Round the tube: ${clockText(clock)}.`]),
    ...(standoffMm === null
      ? []
      : [`${mount.kind === 'eye' ? 'Eye' : 'Hole'} to the tube’s surface: ${bothUnits(standoffMm, unit)}.`]),
    ...(mount.kind === 'wrap' ? wrapWords(mount) : []),
    ...planeWords(on),
    `Along the tube: ${bothUnits(alongTubeMm, unit)} from P1${nearest === null ? '' : `; ${fromMarkText(nearest, layout)}`}.`,
    facing,
  ]
}

/** Angles are shown to 0.1°: less than half of that is none. */
const NO_ANGLE_DEG = 0.05

const planeWords = ({ planeToTubeDeg, leanFromSquareDeg, clock }: TabOnTube): readonly string[] => {
  const lean =
    leanFromSquareDeg === null || leanFromSquareDeg < NO_ANGLE_DEG
      ? ''
      : `leans ${angleText(leanFromSquareDeg)} from square on it`
  if (planeToTubeDeg === null) return clock === null || lean === '' ? [] : [`The shank ${lean}.`]
  const plane =
    planeToTubeDeg < NO_ANGLE_DEG
      ? 'Plate along the tube'
      : planeToTubeDeg > 90 - NO_ANGLE_DEG
        ? 'Plate square across the tube'
        : `Plate turned ${angleText(planeToTubeDeg)} out of the tube’s line`
  return [`${plane}${lean === '' ? ', square on it' : `; it ${lean}`}.`]
}

const wrapWords = ({ over, guideHoops }: WrapMount): readonly string[] => [
  `Wrap: strap ${over === 'over' ? 'over the top' : 'under the bottom'}, ${guideHoops ? 'guide hoops at both sides of the webbing' : 'no guide hoops'}.`,
]
