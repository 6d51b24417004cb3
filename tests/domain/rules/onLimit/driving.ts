import { solvedSittings, quantityIn } from '../../../../src/domain/layout/evaluate/solvedSittings'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { propertyValues } from '../../../../src/domain/rules/properties'
import { PROPERTY_IDS, type PropertyId } from '../../../../src/domain/rules/rule'
import type { QuantityId, Subject } from '../../../../src/domain/straps/quantity'
import type { StrapFamily } from '../../../../src/domain/straps/strap'
import { type Facets, type Numbers, NUMBERS } from './car'

type Measured = QuantityId | PropertyId

/** One typed number that moves what is measured: the car's numbers at a setting, between the two ends where a limit is looked for. */
export interface Driver {
  readonly numbersAt: (setting: number) => Numbers
  readonly from: number
  readonly to: number
  readonly facets?: Partial<Facets>
}

type Drivers = Readonly<Partial<Record<Measured, Driver>>>

type Moved = Partial<Numbers['shoulder']>

const moving = (
  family: StrapFamily,
  from: number,
  to: number,
  moved: (setting: number) => Moved,
): Driver => ({
  from,
  to,
  numbersAt: (setting) => ({ ...NUMBERS, [family]: { ...NUMBERS[family], ...moved(setting) } }),
})

const typing = (from: number, to: number, typed: (setting: number) => Partial<Numbers>): Driver => ({
  from,
  to,
  numbersAt: (setting) => ({ ...NUMBERS, ...typed(setting) }),
})

const radians = (deg: number): number => (deg * Math.PI) / 180

/** The lap anchor 280 mm from the hip point, seen from the side at this angle below horizontal. */
const lapAround = (from: number, to: number): Driver =>
  moving('lap', from, to, (deg) => ({
    xMm: 280 * Math.cos(radians(deg)),
    zMm: -280 * Math.sin(radians(deg)),
  }))

const withSlots = (driver: Driver, slotted: StrapFamily): Driver => ({
  ...driver,
  // Long slots for narrow webbing: nothing but the slots’ long sides bends the straps.
  numbersAt: (setting) => ({
    ...driver.numbersAt(setting),
    slotted,
    slotLengthMm: slotted === 'sub' ? 160 : 60,
    webbingMm: 50,
  }),
})

const onBar: Partial<Facets> = { tube: 'harness-bar' }

const shoulderHeight: Driver = moving('shoulder', 900, -200, (zMm) => ({ zMm }))
const shoulderAcross: Driver = moving('shoulder', 10, 250, (yMm) => ({ yMm }))
const lapAcross: Driver = moving('lap', 60, 300, (yMm) => ({ yMm }))
const subFore: Driver = moving('sub', -800, 250, (xMm) => ({ xMm }))
const askew: Driver = typing(0, 40, (askewMm) => ({ askewMm }))
const barDiameter: Driver = typing(15, 60, (outsideDiameterMm) => ({ outsideDiameterMm }))
const barWall: Driver = { ...typing(0.5, 6, (wallMm) => ({ wallMm })), facets: onBar }

const SHOULDER: Drivers = {
  'shoulder-drop': shoulderHeight,
  'shoulder-to-spine': shoulderHeight,
  'shoulder-height': shoulderHeight,
  'shoulder-above-hip': shoulderHeight,
  'shoulder-behind-fk': shoulderHeight,
  'shoulder-rim-drop': typing(900, 200, (zMm) => ({
    rimHeightMm: 480,
    shoulder: { ...NUMBERS.shoulder, zMm },
  })),
  // The shoulders are ahead of the hip only in a seat that leans forward.
  'shoulder-behind-hip': {
    ...moving('shoulder', 300, -30, (xMm) => ({ xMm, zMm: 250 })),
    facets: { reclineDeg: -10 },
  },
  'shoulder-plan': shoulderAcross,
  'shoulder-spacing': shoulderAcross,
  'shoulder-mirror': askew,
  'shoulder-reference-plan': shoulderAcross,
  'shoulder-length-behind-seat': moving('shoulder', 200, 600, (xMm) => ({ xMm })),
  'shoulder-junction': typing(20, 400, (tailMm) => ({
    tailMm,
    shoulder: { ...NUMBERS.shoulder, xMm: 650, yMm: 0 },
  })),
}

const LAP_AND_SUB: Drivers = {
  'lap-angle': lapAround(12, 95),
  'lap-shifted-angle': lapAround(12, 95),
  'lap-over-asis': lapAround(12, 95),
  'lap-spacing': lapAcross,
  'lap-mirror': askew,
  'sub-mirror': askew,
  'lap-off-centre': lapAcross,
  'sub-to-vertical': subFore,
  'sub-to-chest': subFore,
  'sub-spacing': moving('sub', 20, 90, (yMm) => ({ yMm })),
  'sub-to-lap': moving('sub', 180, 450, (xMm) => ({ ...NUMBERS.lap, xMm })),
}

const HARDWARE: Drivers = {
  'shank-angle': typing(1, 40, (shankOffDeg) => ({ shankOffDeg })),
  'adjuster-clearance': typing(40, 400, (adjusterMm) => ({ adjusterMm })),
  'webbing-width': typing(30, 100, (webbingMm) => ({ webbingMm })),
  'wrap-bar-diameter': barDiameter,
  'tab-to-tube': { ...typing(0, 300, (tubeBelowMm) => ({ tubeBelowMm })), facets: onBar },
  // In front of the chest, where no strap is.
  'body-clearance': typing(-600, 0, (xMm) => ({ nearTube: { xMm, zMm: 300 } })),
  'bar-diameter': { ...barDiameter, facets: onBar },
  'bar-second-moment': { ...barDiameter, facets: onBar },
  'bar-wall': barWall,
  'bar-area': barWall,
  'eye-thread': typing(5, 20, (eyeThreadMm) => ({ eyeThreadMm })),
  'tab-thickness': typing(0.5, 10, (tabThicknessMm) => ({ tabThicknessMm })),
}

/** What is driven on the family of the rule. */
const OF_FAMILY: Readonly<Partial<Record<Measured, (family: StrapFamily) => Driver>>> = {
  'slot-bend': (family) =>
    withSlots(
      family === 'lap'
        ? moving('lap', -215, -450, (zMm) => ({ zMm }))
        : moving('sub', 20, 300, (xMm) => ({ xMm })),
      family,
    ),
  'tube-clearance': (family) =>
    family === 'sub'
      ? typing(-200, 0, (xMm) => ({ nearTube: { xMm, zMm: -250 } }))
      : typing(-300, -130, (zMm) => ({ nearTube: { xMm: 100, zMm } })),
  'slot-spare': (family) => typing(50, 150, (slotLengthMm) => ({ slotLengthMm, slotted: family })),
  'wrap-square': (family) => moving(family, -30, 30, (tubeYawDeg) => ({ tubeYawDeg })),
  'tab-twist': (family) => moving(family, -20, 30, (tabPlanDeg) => ({ tabPlanDeg })),
}

const ALIKE: Drivers = { ...SHOULDER, ...LAP_AND_SUB, ...HARDWARE }

/** What drives a measured value; `family` is that of the rule, the lap straps where the rule speaks of all. */
export const driverOf = (measured: Measured, family: StrapFamily): Driver => {
  const driver = ALIKE[measured] ?? OF_FAMILY[measured]?.(family)
  if (driver === undefined) throw new Error(`nothing here drives ${measured}`)
  return driver
}

/** The worst value over the sittings, the least for a lower limit and the most for an upper one, and where it is. */
export interface WorstReading {
  readonly value: number
  readonly sittingId: string | null
}

const isProperty = (measured: Measured): measured is PropertyId =>
  (PROPERTY_IDS as readonly string[]).includes(measured)

/** The worst value of a subject; null where a sitting has none. Properties have one value in all sittings. */
export const worstReading = (
  layout: Layout,
  measured: Measured,
  family: StrapFamily | null,
  subject: Subject | null,
  side: 'min' | 'max',
): WorstReading | null => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  if (isProperty(measured)) {
    const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
    const [first] = propertyValues(measured, family, scene)
    return typeof first?.value === 'number' ? { value: first.value, sittingId: null } : null
  }
  if (subject === null) throw new Error(`${measured} of nothing`)
  const readings = solvedSittings(layout, place).map((solved) => ({
    sittingId: solved.sitting.id,
    value: quantityIn(solved, measured, subject),
  }))
  let worst: WorstReading | null = null
  for (const { value, sittingId } of readings) {
    if (value === null) return null
    if (worst === null || (side === 'min' ? value < worst.value : value > worst.value))
      worst = { value, sittingId }
  }
  return worst
}

/** Settings looked at before the bracket that is narrowed. */
const STEPS = 30

/** As near as a double of this size comes, over the chain from a typed number to an angle. */
const NEAR = 1e-11

interface Bracket {
  readonly low: number
  readonly high: number
}

/** The first two neighbouring settings between which a function passes a target; throws where it never does. */
const bracketFor = (
  target: number,
  { from, to }: Pick<Driver, 'from' | 'to'>,
  valueAt: (setting: number) => number | null,
): Bracket => {
  const at = (step: number): number => from + ((to - from) * step) / STEPS
  for (let step = 0; step < STEPS; step += 1) {
    const before = valueAt(at(step))
    const after = valueAt(at(step + 1))
    if (before !== null && after !== null && before > target !== after > target)
      return { low: at(step), high: at(step + 1) }
  }
  throw new Error(`nothing between ${from} and ${to} gives ${target}`)
}

/**
 * The setting at which a function reaches a target: halving the bracket, by the chord where that is quicker.
 * Source: the Illinois method (from memory); every step keeps the root between its ends.
 */
export const settingFor = (
  target: number,
  driver: Pick<Driver, 'from' | 'to'>,
  valueAt: (setting: number) => number | null,
): number => {
  const offAt = (setting: number): number => {
    const value = valueAt(setting)
    if (value === null) throw new Error(`no number at ${setting}`)
    return value - target
  }
  const { low, high } = bracketFor(target, driver, valueAt)
  let [a, b, offA, offB] = [low, high, offAt(low), offAt(high)]
  for (let turn = 0; turn < 100; turn += 1) {
    const next = turn % 8 === 7 ? (a + b) / 2 : b - (offB * (b - a)) / (offB - offA)
    const off = offAt(next)
    if (Math.abs(off) < NEAR || next === a || next === b) return next
    if (off > 0 === offB > 0) offA /= 2
    else [a, offA] = [b, offB]
    ;[b, offB] = [next, off]
  }
  return b
}
