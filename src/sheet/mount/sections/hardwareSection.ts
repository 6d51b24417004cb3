import type { Layout, LengthUnit, Place } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation, PlaceEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { familyWord, placeName, strapName } from '../../../domain/layout/wording/names'
import { capitalised } from '../../../domain/layout/wording/words'
import { type HardwareItem, hardwareList } from '../../../domain/shop/hardwareList'
import { longestOrderLengths } from '../../../domain/shop/orderLengths'
import {
  areShoulderStrapsJoined,
  type Belt,
  diagonalShoulder,
  strapFamily,
  type StrapId,
  strapSide,
  thighStraps,
} from '../../../domain/straps/strap'
import { lengthOnScaleMm, lengthWithUnit } from '../../../domain/units/length'
import { torqueWithUnit } from '../../../domain/units/torque'
import { bothUnits } from '../table/anchorCells'
import type { FlowRow } from '../../page/flow'
import type { Setting } from './partSections'
import { keptTogether, sectionRows, textRows } from '../../page/section'

/** Belt, webbing and fittings: what all places have alike is said once, then what each has of its own. */
export const hardwareSections = (
  evaluation: CheckedEvaluation,
  setting: Setting,
): readonly (readonly FlowRow[])[] => {
  const { layout, widthMm, type } = setting
  const lists = layout.places.map((place) => ({
    title: `Belt and hardware, ${placeName(place.id, layout)}`,
    lines: placeHardware(
      place,
      evaluation.places.find((each) => each.placeId === place.id),
      layout,
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
      keptTogether(lines.flatMap((line) => textRows(line, widthMm, type.body, title))),
    ),
  )
}

const placeHardware = (
  place: Place,
  evaluated: Pick<PlaceEvaluation, 'sittings'> | undefined,
  { tubes, units }: Layout,
): readonly string[] => {
  const items = hardwareList({
    belt: place.belt,
    anchors: place.anchors,
    tubes,
    orderLengthMm: longestOrderLengths((evaluated?.sittings ?? []).map((sitting) => sitting.quantities)),
  })
  return hardwareLines(items, units.length)
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
    case 'shoulder-tail':
      return `Tail of the shoulder straps, one for both: ${lengthWithUnit(item.widthMm, unit)} wide, at least ${atLeastText(roundedUp(item.orderLengthMm), unit)}`
    case 'adjuster': {
      const { count, family, fromAnchorMm, lengthMm } = item
      const place = `${bothUnits(fromAnchorMm, unit)} along the strap from its anchor`
      return `${count} × ${FAMILY_WORDS[family]} adjuster: body ${bothUnits(lengthMm, unit)} long, its middle ${place}`
    }
    case 'tab':
      return tabWords(item, unit)
    case 'bolts':
      return boltWords(item, unit)
    case 'eye-bolt':
      return `${item.count} × eye bolt, forged in one piece: thread Ø ${bothUnits(item.threadDiameterMm, unit)}, eye Ø ${bothUnits(item.eyeDiameterMm, unit)} inside`
    case 'tab-bolt':
      return `${item.count} × tab bolt: size, grade, sleeve and torque to the belt maker’s instructions`
    case 'three-bar-slide':
      return `${item.count} × three-bar slide: webbing woven to the belt maker’s instructions`
    case 'guide-hoops':
      return `Guide hoops at both sides of the webbing: ${item.wraps} wrap${item.wraps === 1 ? '' : 's'}`
  }
}

const FAMILY_WORDS = { shoulder: 'shoulder', lap: 'lap', sub: 'anti-submarine' } as const

/** To be filled in by hand: nothing here is ever guessed. */
const BLANK = '____________'

/** What the builder typed from the belt maker's instructions, with a blank for everything that is not typed. */
const boltWords = (
  { family, count, bolt }: HardwareItem & { readonly kind: 'bolts' },
  unit: LengthUnit,
): string => {
  const { boltDiameterMm, grade, torqueNm, source } = bolt ?? {}
  const typed = [
    `Ø ${boltDiameterMm === undefined ? BLANK : bothUnits(boltDiameterMm, unit)}`,
    `grade ${grade ?? BLANK}`,
    `torque ${torqueNm === undefined ? BLANK : bothTorques(torqueNm, unit)}`,
  ].join(', ')
  const from =
    bolt === null
      ? 'To be taken from the belt maker’s instructions'
      : `As typed by the builder from: ${source ?? BLANK}`
  return `${capitalised(FAMILY_WORDS[family])} straps, ${count} bolt${count === 1 ? '' : 's'}: ${typed}. ${from}.`
}

const bothTorques = (torqueNm: number, unit: LengthUnit): string => {
  const [first, second] = unit === 'mm' ? (['N·m', 'lbf·ft'] as const) : (['lbf·ft', 'N·m'] as const)
  return `${torqueWithUnit(torqueNm, first)} (${torqueWithUnit(torqueNm, second)})`
}

const tabWords = (item: HardwareItem & { readonly kind: 'tab' }, unit: LengthUnit): string => {
  const { form, count, shear, thicknessMm, holeDiameterMm } = item
  const [thick, wide] = [bothUnits(thicknessMm, unit), bothUnits(holeDiameterMm, unit)]
  switch (form) {
    case 'plate':
      return `${count} × tab, ${shear} shear: plate ${thick}, hole Ø ${wide}`
    case 'clevis':
      return `${count} × clevis, double shear: two plates ${thick}, hole Ø ${wide}`
    case 'insert':
      return `${count} × welded threaded insert, single shear: ${thick} long, thread Ø ${wide}`
  }
}

const BUCKLE_WORDS = { 'latch-and-link': 'latch-and-link buckle', 'rotary-cam': 'rotary cam buckle' } as const

const beltWords = (belt: Belt): string =>
  [
    ...runWords(belt),
    `${belt.material} webbing`,
    BUCKLE_WORDS[belt.buckle],
    `${belt.lapAdjuster} lap adjusters`,
    belt.headAndNeckRestraint ? 'with head-and-neck restraint' : 'no head-and-neck restraint',
  ].join(', ')

/** What its number of points alone does not say about a belt. */
const runWords = (belt: Belt): readonly string[] => [
  ...(belt.arrangement === 3 ? [`over the ${diagonalShoulder(belt)} shoulder`] : []),
  ...(areShoulderStrapsJoined(belt) ? ['shoulder straps joined into one tail'] : []),
  ...(thighStraps(belt) === 'under-thighs' ? ['thigh straps under the thighs, sat on'] : []),
]
