import type { PointMm } from '../domain/geometry/point'
import type { Tube } from '../domain/geometry/tube'
import type { Layout, LengthUnit, Place } from '../domain/layout/document/layout'
import type { Evaluation, PlaceEvaluation } from '../domain/layout/evaluate/evaluation'
import { familyWord, placeName, strapName, tubeName } from '../domain/layout/wording/names'
import { capitalised } from '../domain/layout/wording/words'
import { tubeLengthMm } from '../domain/shop/anchorRows'
import { type HardwareItem, hardwareList } from '../domain/shop/hardwareList'
import { longestOrderLengths } from '../domain/shop/orderLengths'
import { strapFamily, strapSide, type Belt, type StrapId } from '../domain/straps/strap'
import { lengthOnScaleMm, lengthText, lengthWithUnit } from '../domain/units/length'
import { bothUnits } from './anchorCells'
import type { FlowRow } from './flow'
import { cell, sectionRows, textRows, type BareRow } from './section'
import { tableRow } from './table'
import type { Typography } from './typography'

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

/** Belt, webbing and fittings: what all places have alike is said once, then what each has of its own. */
export const hardwareSections = (
  evaluation: Evaluation,
  setting: Setting,
): readonly (readonly FlowRow[])[] => {
  const { layout, widthMm, type } = setting
  const lists = layout.places.map((place) => ({
    title: `Belt and hardware, ${placeName(place.id, layout)}`,
    lines: placeHardware(
      place,
      evaluation.places.find((each) => each.placeId === place.id),
      layout.units.length,
    ),
  }))
  const [first, ...others] = lists
  if (first === undefined) return []
  const isShared = (line: string): boolean => others.every(({ lines }) => lines.includes(line))
  const shared = others.length === 0 ? [] : first.lines.filter(isShared)
  return [
    { title: 'Belt and hardware, at each place', lines: shared },
    ...lists.map(({ title, lines }) => ({ title, lines: lines.filter((line) => !shared.includes(line)) })),
  ].map(({ title, lines }) =>
    sectionRows(
      title,
      widthMm,
      type,
      lines.flatMap((line) => textRows(line, widthMm, type.body, title)),
    ),
  )
}

const placeHardware = (
  place: Place,
  evaluated: PlaceEvaluation | undefined,
  unit: LengthUnit,
): readonly string[] => {
  const items = hardwareList({
    belt: place.belt,
    anchors: place.anchors,
    orderLengthMm: longestOrderLengths((evaluated?.sittings ?? []).map((sitting) => sitting.quantities)),
  })
  return hardwareLines(items, unit)
}

/** One line for each item; the straps of a pair that are ordered alike share one. */
const hardwareLines = (items: readonly HardwareItem[], unit: LengthUnit): readonly string[] => {
  const straps = new Map<string, StrapId[]>()
  for (const item of items) {
    if (item.kind !== 'webbing') continue
    const order = webbingWords(item, unit)
    straps.set(order, [...(straps.get(order) ?? []), item.strap])
  }
  const strapLines = [...straps].map(
    ([order, alike]) => `${capitalised(strapNames(alike))}: ${order}${alike.length > 1 ? ' each' : ''}`,
  )
  return items.flatMap((item) => {
    if (item.kind === 'belt') return [hardwareWords(item, unit), ...strapLines]
    return item.kind === 'webbing' ? [] : [hardwareWords(item, unit)]
  })
}

/** Both units, each rounded up: webbing that is cut a sixteenth short cannot be let out. */
const atLeastText = (lengthMm: number, unit: LengthUnit): string => {
  const text = (shown: LengthUnit): string => lengthWithUnit(lengthOnScaleMm(lengthMm, shown, 'up'), shown)
  return `${text(unit)} (${text(unit === 'mm' ? 'in' : 'mm')})`
}

/** "shoulder straps" for a left and a right one, else each by its name. */
const strapNames = (straps: readonly StrapId[]): string => {
  const [first, second] = straps
  const isPair =
    straps.length === 2 &&
    first !== undefined &&
    second !== undefined &&
    strapFamily(first) === strapFamily(second) &&
    [first, second].every((strap) => strapSide(strap) !== 'centre')
  return isPair ? `${familyWord(first)} straps` : straps.map(strapName).join(', ')
}

/**
 * A length that must at least be ordered, rounded up to whole 10 mm so that nobody orders too little for a rounding. Our
 * judgement: finer than this no webbing is cut.
 */
const ORDER_STEP_MM = 10
const roundedUp = (lengthMm: number): number => Math.ceil(lengthMm / ORDER_STEP_MM - 1e-9) * ORDER_STEP_MM

const webbingWords = (item: HardwareItem & { readonly kind: 'webbing' }, unit: LengthUnit): string => {
  const width = `${lengthWithUnit(item.widthMm, unit)} wide`
  return item.orderLengthMm === null
    ? `${width}, length unknown (no path)`
    : `${width}, at least ${atLeastText(roundedUp(item.orderLengthMm), unit)}`
}

const hardwareWords = (
  item: Exclude<HardwareItem, { readonly kind: 'webbing' }>,
  unit: LengthUnit,
): string => {
  switch (item.kind) {
    case 'belt':
      return `${item.belt.arrangement}-point harness: ${beltWords(item.belt)}`
    case 'tab': {
      const { count, shear, thicknessMm, holeDiameterMm } = item
      return `${count} × tab, ${shear} shear: plate ${bothUnits(thicknessMm, unit)}, hole Ø ${bothUnits(holeDiameterMm, unit)}`
    }
    case 'tab-bolt':
      return `${item.count} × tab bolt: size, grade, sleeve and torque to the belt maker’s instructions`
    case 'three-bar-slide':
      return `${item.count} × three-bar slide: webbing woven to the belt maker’s instructions`
    case 'guide-hoops':
      return `Guide hoops at both sides of the webbing: ${item.wraps} wrap${item.wraps === 1 ? '' : 's'}`
  }
}

const BUCKLE_WORDS = { 'latch-and-link': 'latch-and-link buckle', 'rotary-cam': 'rotary cam buckle' } as const

const beltWords = (belt: Belt): string =>
  [
    `${belt.material} webbing`,
    BUCKLE_WORDS[belt.buckle],
    `${belt.lapAdjuster} lap adjusters`,
    belt.headAndNeckRestraint ? 'with head-and-neck restraint' : 'no head-and-neck restraint',
  ].join(', ')
