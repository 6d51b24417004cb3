import type { Occupant, Sex } from '../../body/occupant'
import {
  measureColumns,
  type PersonMeasure,
  SURVEY_MEASURES,
  type SurveyedPerson,
} from '../../body/survey/surveyed'
import type { RuleLevel, RuleSet } from '../../rules/rule'
import type { QuantityId } from '../../straps/quantity'
import type { Layout, Place } from '../document/layout'
import { propertyFindings } from '../evaluate/propertyFindings'
import { type FitCase, fitCase, placeForOne, type SeatPosition } from './fitRules'
import { type Outcome, type PersonVerdicts, personVerdicts, worstOutcome } from './personVerdicts'
import { limitingMeasure, type RankedMeasure, rankedMeasure, type Separation } from './separation'

/** How many people of one sex stand how; they add up to all of that sex. */
export interface Tally {
  readonly passing: number
  readonly broken: number
  readonly unchecked: number
}

/** One question put to everybody, answered. */
export interface Fit {
  readonly tally: Readonly<Record<Sex, Tally>>
  /** In the order of the people. */
  readonly outcomes: readonly Outcome[]
  /** The body measure that tells best who passes; null with too few people on a side. */
  readonly limiting: Separation<PersonMeasure> | null
  /** How many people do not pass in each seat position, in the order of the positions. */
  readonly notPassingAt: readonly number[]
}

/** One rule over everybody. */
export interface RuleFit extends Fit {
  readonly ruleId: string
  readonly quantity: QuantityId
  readonly level: RuleLevel
  /** The rule's own words. */
  readonly says: string
}

/** All rules of one level and of the levels above it, over everybody: a person passes who passes every one of them. */
interface OverallFit extends Fit {
  readonly level: RuleLevel
  /** How many rules that is, at least one. */
  readonly ruleCount: number
}

/** A hardware rule that is broken whoever sits there, and therefore is not part of any count. */
interface BrokenHardware {
  readonly ruleId: string
  readonly level: RuleLevel
}

/** What the picture needs of a person. */
interface PicturedPerson {
  readonly sex: Sex
  readonly statureMm: number
  readonly massKg: number
}

/** A place tried by everybody in a survey, in every seat position. */
export interface WhoFits {
  readonly placeId: string
  readonly ruleSetId: string
  readonly people: readonly PicturedPerson[]
  readonly positions: readonly SeatPosition[]
  readonly rules: readonly RuleFit[]
  /** Must alone; must and should; everything. Those without any rule are left out: nobody was asked anything. */
  readonly overall: readonly OverallFit[]
  readonly brokenHardware: readonly BrokenHardware[]
}

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

/** Rules of this level and of those above it. */
const isAtLeast = (level: RuleLevel, least: RuleLevel): boolean =>
  LEVELS.indexOf(level) <= LEVELS.indexOf(least)

const tallied = (people: readonly Occupant[], outcomes: readonly Outcome[]): Readonly<Record<Sex, Tally>> => {
  const tally = {
    female: { passing: 0, broken: 0, unchecked: 0 },
    male: { passing: 0, broken: 0, unchecked: 0 },
  }
  for (const [index, person] of people.entries()) tally[person.sex][outcomes[index] ?? 'unchecked'] += 1
  return tally
}

/** The answers for the chosen rules taken together. */
const fitOf = (
  people: readonly Occupant[],
  measures: readonly RankedMeasure<PersonMeasure>[],
  positionCount: number,
  verdicts: readonly PersonVerdicts[],
  ruleIndexes: readonly number[],
): Fit => {
  const outcomes = verdicts.map(({ overall }) =>
    worstOutcome(ruleIndexes.map((index) => overall[index] ?? null)),
  )
  const notPassingAt = Array.from(
    { length: positionCount },
    (_, position) =>
      verdicts.filter(
        ({ byPosition }) =>
          worstOutcome(ruleIndexes.map((index) => byPosition[index]?.[position] ?? null)) !== 'passing',
      ).length,
  )
  const passes = outcomes.map((outcome) => outcome === 'passing')
  return {
    tally: tallied(people, outcomes),
    outcomes,
    limiting: limitingMeasure(measures, passes),
    notPassingAt,
  }
}

const brokenHardware = (layout: Layout, place: Place, ruleSet: RuleSet): readonly BrokenHardware[] =>
  ruleSet.rules.flatMap((rule) =>
    rule.kind === 'property' &&
    propertyFindings(layout, placeForOne(place), rule).some(({ verdict }) => verdict === 'broken')
      ? [{ ruleId: rule.id, level: rule.level }]
      : [],
  )

/** The answer made of everybody's verdicts, which are in the order of the people. */
export const whoFitsFrom = (
  fit: FitCase,
  ruleSet: RuleSet,
  people: readonly Occupant[],
  verdicts: readonly PersonVerdicts[],
): WhoFits => {
  const columns = measureColumns(people)
  const measures = SURVEY_MEASURES.map((measure) => rankedMeasure(measure, columns[measure]))
  const answer = (ruleIndexes: readonly number[]): Fit =>
    fitOf(people, measures, fit.positions.length, verdicts, ruleIndexes)
  return {
    placeId: fit.place.id,
    ruleSetId: ruleSet.id,
    people: people.map(({ sex, statureMm, massKg }) => ({ sex, statureMm, massKg })),
    positions: fit.positions,
    rules: fit.rules.map(({ rule }, index) => ({
      ruleId: rule.id,
      quantity: rule.quantity,
      level: rule.level,
      says: rule.says,
      ...answer([index]),
    })),
    overall: LEVELS.flatMap((level) => {
      const indexes = fit.rules.flatMap(({ rule }, index) => (isAtLeast(rule.level, level) ? [index] : []))
      return indexes.length === 0 ? [] : [{ level, ruleCount: indexes.length, ...answer(indexes) }]
    }),
    brokenHardware: brokenHardware(fit.layout, fit.place, ruleSet),
  }
}

/** A place tried by these people, in every seat position, against a rule set; in one go, for those who need not wait politely. */
export const whoFits = (
  layout: Layout,
  place: Place,
  ruleSet: RuleSet,
  people: readonly SurveyedPerson[],
): WhoFits => {
  const fit = fitCase(layout, place, ruleSet)
  return whoFitsFrom(
    fit,
    ruleSet,
    people,
    people.map((person) => personVerdicts(fit, person)),
  )
}
