import type { Body, BodyMeasure, Occupant, Sex } from '../occupant'
import { bodyOf } from '../body'
import { HELMET_THICKNESS_MM } from '../predicted'
import survey from './surveyPeople.json'

/** The year of the survey that measured a person. */
type SurveyYear = 1988 | 2012

/** One real, nameless person of a survey as an occupant whose tape values are the surveyed ones. */
export interface SurveyedPerson extends Occupant {
  readonly survey: SurveyYear
}

/**
 * From the end of the shoulder, as the 2012 survey gives it, to the middle of the shoulder, mm, + up. The 2012 survey measured
 * the shoulder's end standing only; above the seat it is standing height − (stature − sitting height). The 1988 survey measured
 * both ways: so derived it comes out higher than measured sitting by 0.6 (women) and 2.9 mm (men), and the middle of the
 * shoulder lies 28.5 and 32.5 mm above its end. Source: our means over the 2 208 women and 1 774 men of 1988 (Gordon et al. 1989);
 * 28.5 − 0.6 and 32.5 − 2.9. A single person differs from it by 10 to 11 mm (one standard deviation).
 */
const SHOULDER_END_TO_MIDDLE_MM: Readonly<Record<Sex, number>> = { female: 27.9, male: 29.6 }

type Row = Readonly<Record<string, number>>

const valueIn = (row: Row, column: string): number => {
  const value = row[column]
  if (value === undefined) throw new Error(`the survey has no column ${column}`)
  return value
}

/** Middle of the shoulder above the seat, mm: measured in 1988, derived in 2012 (see SHOULDER_END_TO_MIDDLE_MM). */
const midShoulderMm = (row: Row, year: SurveyYear, sex: Sex): number =>
  year === 1988
    ? valueIn(row, 'midShoulderHeightMm')
    : valueIn(row, 'standingShoulderHeightMm') -
      (valueIn(row, 'statureMm') - valueIn(row, 'sittingHeightMm')) +
      SHOULDER_END_TO_MIDDLE_MM[sex]

/** What goes into a person's `measured` as it was surveyed. */
const AS_SURVEYED = [
  'sittingHeightMm',
  'hipBreadthMm',
  'bideltoidBreadthMm',
  'chestDepthMm',
  'abdominalDepthMm',
  'thighClearanceMm',
  'buttockKneeMm',
  'kneeHeightMm',
] as const satisfies readonly BodyMeasure[]

const measuredOf = (row: Row, year: SurveyYear, sex: Sex): Occupant['measured'] => ({
  ...Object.fromEntries(AS_SURVEYED.map((measure) => [measure, valueIn(row, measure)])),
  midShoulderHeightMm: midShoulderMm(row, year, sex),
  shoulderStrapSpacingMm: valueIn(row, 'biacromialBreadthMm') - valueIn(row, 'shoulderLengthMm'),
  helmetRadiusMm: valueIn(row, 'headLengthMm') / 2 + HELMET_THICKNESS_MM,
  ...(year === 1988 ? { frontHipBoneBreadthMm: valueIn(row, 'frontHipBoneBreadthMm') } : {}),
})

const peopleOf = (year: SurveyYear, sex: Sex): readonly SurveyedPerson[] =>
  survey.people[year][sex].map((cells, index) => {
    const row: Row = Object.fromEntries(
      survey.columns[year].map((name, column) => [name, cells[column] ?? Number.NaN]),
    )
    return {
      id: `${year}-${sex}-${index + 1}`,
      name: '',
      survey: year,
      sex,
      statureMm: valueIn(row, 'statureMm'),
      massKg: valueIn(row, 'massKg'),
      measured: measuredOf(row, year, sex),
    }
  })

/**
 * The 600 women and 600 men, 300 of each survey: 1988 women, 1988 men, 2012 women, 2012 men. They were soldiers under weight
 * standards, aged 17 to 58, and not a builder's customers. Sources and licence status: surveyPeople.json and README.md here.
 */
export const surveyedPeople = (): readonly SurveyedPerson[] => [
  ...peopleOf(1988, 'female'),
  ...peopleOf(1988, 'male'),
  ...peopleOf(2012, 'female'),
  ...peopleOf(2012, 'male'),
]

/**
 * What can be told of a person with a tape and a scale and was surveyed. In the order in which it is named first where two
 * measures tell equally much. Only 1988 measured the front hip bones; for the others that breadth is predicted.
 */
export const SURVEY_MEASURES = [
  'midShoulderHeightMm',
  'sittingHeightMm',
  'shoulderStrapSpacingMm',
  'bideltoidBreadthMm',
  'chestDepthMm',
  'abdominalDepthMm',
  'hipBreadthMm',
  'frontHipBoneBreadthMm',
  'thighClearanceMm',
  'buttockKneeMm',
  'kneeHeightMm',
  'helmetRadiusMm',
  'statureMm',
  'massKg',
] as const satisfies readonly (BodyMeasure | 'statureMm' | 'massKg')[]

export type PersonMeasure = (typeof SURVEY_MEASURES)[number]

/** One measure of one person, mm or kg > 0. */
const measureOf = (person: Occupant, body: Body, measure: PersonMeasure): number =>
  measure === 'statureMm' || measure === 'massKg' ? person[measure] : body[measure]

/** Every measure of every person as a column, in the order of the people. */
export const measureColumns = (
  people: readonly Occupant[],
): Readonly<Record<PersonMeasure, readonly number[]>> => {
  const bodies = people.map((person) => ({ person, body: bodyOf(person) }))
  const columns = SURVEY_MEASURES.map((measure) => [
    measure,
    bodies.map(({ person, body }) => measureOf(person, body, measure)),
  ])
  return Object.fromEntries(columns) as Record<PersonMeasure, readonly number[]>
}
