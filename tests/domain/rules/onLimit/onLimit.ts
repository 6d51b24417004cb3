import { ruleSetOf } from '../../../../src/domain/layout/document/ruleSetOf'
import { propertyFindings } from '../../../../src/domain/layout/evaluate/propertyFindings'
import { quantityFindings } from '../../../../src/domain/layout/evaluate/quantityFindings'
import { solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import type { Finding } from '../../../../src/domain/rules/finding'
import type { Subject } from '../../../../src/domain/straps/quantity'
import type { StrapFamily } from '../../../../src/domain/straps/strap'
import { carOf, FACETS, type Facets, type Numbers } from './car'
import { driverOf, settingFor, type WorstReading, worstReading } from './driving'
import type { LIMIT_ROWS } from './rows'

export type Row = (typeof LIMIT_ROWS)[number]

/** A hair, in the unit of what is measured: far more than rounding, far less than anybody can build. */
const HAIR = 1e-6

/** The facets under which a row's rule speaks, with what its driver needs, nothing else changed. */
export const facetsFor = ([, , measured, family, , , , , , when]: Row): Facets => {
  // Points are not driven.
  const driven = measured === 'belt-points' ? {} : driverOf(measured, family ?? 'lap').facets
  const base = { ...FACETS, ...driven }
  return {
    reclineDeg: when.beyond === undefined ? base.reclineDeg : 35,
    points: when.points?.[0] ?? base.points,
    restraint: when.restraint ?? base.restraint,
    thigh: when.thigh ?? base.thigh,
    diagonal: when.diagonal ?? base.diagonal,
    adjustable: when.adjustable ?? base.adjustable,
    mount: when.mount ?? base.mount,
    tube: when.tube ?? base.tube,
    dusty: base.dusty,
  }
}

/** The subject that is driven to the limit. */
const subjectOf = ([, , measured, family, , , , , , when]: Row): Subject => {
  const first = when.straps?.[0]
  if (first !== undefined) return first
  const of: StrapFamily = family ?? 'lap'
  if (measured === 'body-clearance') return 'body'
  const isOfPair =
    measured.endsWith('-spacing') || measured.endsWith('-mirror') || measured === 'shoulder-junction'
  if (isOfPair) return `${of}-pair`
  return of === 'sub' && when.points?.[0] === 5 ? 'sub-centre' : `${of}-left`
}

/** Everything that a row's rule says about a car, as evaluateLayout finds it but without zones, which would only add the room left. */
export const findingsIn = (layout: Layout, [, ruleId]: Row): readonly Finding[] => {
  const [place] = layout.places
  const rule = ruleSetOf(layout)?.rules.find(({ id }) => id === ruleId)
  if (place === undefined || rule === undefined || rule.kind === 'stated') return []
  if (rule.kind === 'property') return propertyFindings(layout, place, rule)
  const sittings = solvedSittings(layout, place)
  return quantityFindings(
    { layout, place, sittings, zoneCases: new Map(), rules: [rule], extent: 'what-moves' },
    rule,
  )
}

/** The finding about the row's subject; for what is typed the first one of the rule. */
const findingIn = (layout: Layout, row: Row): Finding | undefined => {
  const found = findingsIn(layout, row)
  return found.find(({ subject }) => subject === subjectOf(row)) ?? found[0]
}

/** A car driven to a limit or a hair beside it, with what its rule says there. */
export interface DrivenCar {
  /** 0 on the limit, −1 a hair inside it, +1 a hair outside. */
  readonly outward: -1 | 0 | 1
  /** The typed number that it was driven by. */
  readonly setting: number
  /** How far the worst value ended from where it was driven to. */
  readonly missedBy: number
  readonly worst: WorstReading
  readonly finding: Finding | undefined
}

/** Cars exactly on a limit, a hair inside it and a hair outside it, under the rule's own set, their numbers changed as `changed` says. */
export const carsAtLimit = (
  row: Row,
  side: 'min' | 'max',
  limit: number,
  changed: (numbers: Numbers) => Numbers = (numbers) => numbers,
): readonly DrivenCar[] => {
  const [set, , measured, family] = row
  const driver = driverOf(measured, family ?? 'lap')
  const facets = facetsFor(row)
  const carAt = (setting: number): Layout => carOf(set, facets, changed(driver.numbersAt(setting)))
  const known = new Map<number, WorstReading | null>()
  const readingAt = (setting: number): WorstReading | null => {
    const found = known.get(setting)
    if (found !== undefined) return found
    const fresh = worstReading(carAt(setting), measured, family, subjectOf(row), side)
    known.set(setting, fresh)
    return fresh
  }
  return ([0, -1, 1] as const).map((outward) => {
    const target = limit + outward * (side === 'min' ? -HAIR : HAIR)
    const setting = settingFor(target, driver, (each) => readingAt(each)?.value ?? null)
    const worst = readingAt(setting)
    if (worst === null) throw new Error(`no number at ${setting}`)
    return {
      outward,
      setting,
      missedBy: Math.abs(worst.value - target),
      worst,
      finding: findingIn(carAt(setting), row),
    }
  })
}
