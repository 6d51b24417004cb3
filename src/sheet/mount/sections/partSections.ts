import type { PointMm } from '../../../domain/geometry/point'
import type { Tube } from '../../../domain/geometry/tube'
import type { Layout, LengthUnit } from '../../../domain/layout/document/layout'
import { tubeName } from '../../../domain/layout/wording/names'
import { tubeLengthMm } from '../../../domain/shop/anchorRows'
import { lengthText, lengthWithUnit } from '../../../domain/units/length'
import type { FlowRow } from '../../page/flow'
import { cell, sectionRows, textRows, type BareRow } from '../../page/section'
import { tableRow } from '../../page/table'
import type { Typography } from '../../page/typography'

/** What a section is about, and the width and lettering it is set in. */
export interface Setting {
  readonly layout: Layout
  readonly widthMm: number
  readonly type: Typography
}

const ROLE_WORDS = { 'harness-bar': 'harness bar', cage: 'cage tube', floor: 'floor tube' } as const

/** The tubes that belts or anchors need: every harness bar and every tube that carries an anchor, then how many others there are. */
export const tubeSection = (setting: Setting): readonly FlowRow[] => {
  const { layout } = setting
  const carrying = new Set(
    layout.places.flatMap((place) => place.anchors.map((anchor) => anchor.mount.tubeId)),
  )
  const listed = layout.tubes.filter((tube) => tube.role === 'harness-bar' || carrying.has(tube.id))
  const sizes = sizeRows(
    layout.tubes.filter((tube) => !listed.includes(tube)),
    setting,
  )
  return sectionRows(SECTION, setting.widthMm, setting.type, [
    ...listed.map((tube) => tubeRow(tube, setting)),
    ...sizes,
  ])
}

/** The wall always in millimetres: to a sixteenth of an inch a 2.4 mm wall and a 3 mm wall read the same. */
const sizeText = (tube: Tube, unit: LengthUnit): string => {
  const { outsideDiameterMm, wallMm } = tube
  const diameter = `Ø ${lengthText(outsideDiameterMm, 'mm')} × ${lengthWithUnit(wallMm, 'mm')} wall`
  const inches = `Ø ${lengthWithUnit(outsideDiameterMm, 'in')}`
  return unit === 'mm' ? `${diameter} (${inches})` : `${inches} (${diameter})`
}

const SECTION = 'Bars and tubes (points: x, y, z from the datum)'

/** "1052, 55, 110 mm" */
const coordinates = ({ xMm, yMm, zMm }: PointMm, unit: LengthUnit): string =>
  `${lengthText(xMm, unit)}, ${lengthText(yMm, unit)}, ${lengthWithUnit(zMm, unit)}`

/** Points are called P1, P2 … as in the anchor table's "along its centre line from P1". */
const tubeRow = (tube: Tube, { layout, widthMm, type }: Setting): BareRow => {
  const unit = layout.units.length
  const name = tubeName(tube.id, layout)
  const role = ROLE_WORDS[tube.role]
  const points = tube.points.map((point, index) => `P${index + 1}: ${coordinates(point, unit)}`).join('; ')
  const length = `centre line ${lengthWithUnit(tubeLengthMm(tube.points), unit)}`
  return tableRow(
    [{ widthMm, align: 'left' }],
    [
      [
        cell(
          `${name.toLowerCase() === role ? name : `${name} (${role})`}: ${sizeText(tube, unit)}`,
          type.body,
          10,
        ),
        cell(`${length}; ${points}`, type.small, 40),
      ],
    ],
    { section: SECTION, rule: 'thin' },
  )
}

/** The tubes that carry nothing, by size: only what to have in stock. */
const sizeRows = (tubes: readonly Tube[], { layout, widthMm, type }: Setting): readonly BareRow[] => {
  const names = new Map<string, string[]>()
  for (const tube of tubes) {
    const size = sizeText(tube, layout.units.length)
    names.set(size, [...(names.get(size) ?? []), tubeName(tube.id, layout)])
  }
  return [...names].flatMap(([size, list]) =>
    textRows(`${size}: ${list.join(', ')}`, widthMm, type.small, SECTION),
  )
}
