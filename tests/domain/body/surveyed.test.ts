import { describe, expect, it } from 'vitest'
import type { Sex } from '../../../src/domain/body/occupant'
import { SURVEY_MEASURES, surveyedPeople } from '../../../src/domain/body/survey/surveyed'
import survey from '../../../src/domain/body/survey/surveyPeople.json'
import { MEASURE_LIMITS } from '../../../src/domain/layout/document/limits'
import { surveyPeople } from '../../support/surveyPeople'

const people = surveyedPeople()
const SEXES: readonly Sex[] = ['female', 'male']
const YEARS = [1988, 2012] as const

/** A raw column of the data file, read without any code of the program. */
const rawColumn = (year: 1988 | 2012, sex: Sex, name: string): readonly number[] => {
  const at = (survey.columns[year] as readonly string[]).indexOf(name)
  expect(at).toBeGreaterThanOrEqual(0)
  return survey.people[year][sex].map((row) => (row as readonly number[])[at] ?? Number.NaN)
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

const standardError = (values: readonly number[]): number => {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)) / (values.length - 1))
}

const shareWithin = (values: readonly number[], low: number, high: number): number =>
  values.filter((value) => value >= low && value <= high).length / values.length

/** 3.3 standard errors of a share counted on `count` people: one sample in a thousand lies further off. */
const shareTolerance = (share: number, count: number): number =>
  3.3 * Math.sqrt((share * (1 - share)) / count)

describe('surveyed people', () => {
  it('are 600 women and 600 men, half of each from either survey, each with an id of their own', () => {
    for (const sex of SEXES) {
      expect(people.filter((person) => person.sex === sex)).toHaveLength(600)
      for (const year of YEARS)
        expect(people.filter((person) => person.sex === sex && person.survey === year)).toHaveLength(300)
    }
    expect(new Set(people.map(({ id }) => id)).size).toBe(1200)
  })

  it.each([
    ['survey-1988-people.csv', 1988],
    ['survey-2012-people.csv', 2012],
  ] as const)('hold the people of the extract %s unchanged', (file, year) => {
    // The extract holds every fifth person of the same samples; its columns are named as in the surveys' files.
    const names: Readonly<Record<string, string>> = {
      stature_mm: 'statureMm',
      mass_kg: 'massKg',
      sitting_height_mm: 'sittingHeightMm',
      midshoulder_height_sitting_mm: 'midShoulderHeightMm',
      bispinous_breadth_mm: 'frontHipBoneBreadthMm',
      biacromial_breadth_mm: 'biacromialBreadthMm',
      shoulder_length_mm: 'shoulderLengthMm',
      head_length_mm: 'headLengthMm',
      hip_breadth_sitting_mm: 'hipBreadthMm',
      bideltoid_breadth_mm: 'bideltoidBreadthMm',
      chest_depth_mm: 'chestDepthMm',
      abdominal_extension_depth_sitting_mm: 'abdominalDepthMm',
      thigh_clearance_mm: 'thighClearanceMm',
      buttock_knee_length_mm: 'buttockKneeMm',
      knee_height_sitting_mm: 'kneeHeightMm',
    }
    const extract = surveyPeople(file)
    for (const sex of SEXES) {
      const ours = extract.filter((person) => person.sex === sex)
      expect(ours).toHaveLength(60)
      for (const [column, name] of Object.entries(names)) {
        if (!Object.hasOwn(ours[0]?.values ?? {}, column)) continue
        const raw = rawColumn(year, sex, name).filter((_, index) => index % 5 === 0)
        expect(raw).toEqual(ours.map(({ values }) => values[column]))
      }
    }
  })

  it.each([
    // Published means of the 1988 survey (Gordon et al. 1989), from memory.
    ['female', 'statureMm', 1629.4],
    ['male', 'statureMm', 1755.8],
    ['female', 'massKg', 62.0],
    ['male', 'massKg', 78.5],
    ['female', 'sittingHeightMm', 852.0],
    ['male', 'sittingHeightMm', 913.9],
  ] as const)('of 1988 have the published mean: %s %s %d', (sex, name, published) => {
    const values = rawColumn(1988, sex, name)
    expect(Math.abs(mean(values) - published)).toBeLessThan(3.3 * standardError(values))
  })

  it.each([
    // Counted on all 1 986 women and 4 082 men of the 2012 survey from which the sample was drawn: the share inside a band.
    ['female', 'hipBreadthMm', 361, 425, 0.68],
    ['male', 'hipBreadthMm', 361, 425, 0.66],
    ['female', 'abdominalDepthMm', 201, 300, 0.79],
    ['male', 'abdominalDepthMm', 201, 300, 0.82],
    // Between the 5th and the 95th percentile of the same people, and below their median.
    ['female', 'bideltoidBreadthMm', 406, 499, 0.9],
    ['male', 'bideltoidBreadthMm', 459, 567, 0.9],
    ['female', 'thighClearanceMm', 145, 191, 0.9],
    ['male', 'buttockKneeMm', 0, 617, 0.5],
  ] as const)('of 2012, %s: %s from %d to %d mm in a share of %d', (sex, name, low, high, share) => {
    const counted = shareWithin(rawColumn(2012, sex, name), low, high)
    // Half a millimetre of rounding moves a share by under 0.01.
    expect(Math.abs(counted - share)).toBeLessThan(shareTolerance(share, 300) + 0.01)
  })

  it.each([
    // 5th, 50th and 95th percentile of the mid-shoulder height of all 2 208 women and 1 774 men of 1988.
    ['female', 539, 583, 630],
    ['male', 583, 630, 677],
  ] as const)(
    'of 1988, %s: mid-shoulder %d, %d, %d mm at the 5th, 50th, 95th percentile',
    (sex, p05, p50, p95) => {
      const values = rawColumn(1988, sex, 'midShoulderHeightMm')
      expect(Math.abs(shareWithin(values, p05, p95) - 0.9)).toBeLessThan(shareTolerance(0.9, 300) + 0.02)
      expect(Math.abs(shareWithin(values, 0, p50) - 0.5)).toBeLessThan(shareTolerance(0.5, 300) + 0.02)
    },
  )

  it('lie inside the box of stature 1525–1870 mm and mass 51.3–110.7 kg as often as all of 2012: 92 % and 91 %', () => {
    for (const [sex, share] of [
      ['female', 0.92],
      ['male', 0.91],
    ] as const) {
      const mass = rawColumn(2012, sex, 'massKg')
      const inside = rawColumn(2012, sex, 'statureMm').filter(
        (stature, index) =>
          stature >= 1525 && stature <= 1870 && (mass[index] ?? 0) >= 51.3 && (mass[index] ?? 0) <= 110.7,
      )
      expect(Math.abs(inside.length / 300 - share)).toBeLessThan(shareTolerance(share, 300) + 0.005)
    }
  })

  it('of 2012 have shoulders 533–644 mm up at their ends as often as all of 2012: 86 % and 90 %', () => {
    for (const [sex, share, toMiddle] of [
      ['female', 0.86, 27.9],
      ['male', 0.9, 29.6],
    ] as const) {
      const ends = people
        .filter((person) => person.survey === 2012 && person.sex === sex)
        .map(({ measured }) => (measured.midShoulderHeightMm ?? Number.NaN) - toMiddle)
      expect(Math.abs(shareWithin(ends, 533, 644) - share)).toBeLessThan(shareTolerance(share, 300) + 0.01)
    }
  })

  it('carry values that a layout may hold, and every measure that is compared', () => {
    for (const { measured, id } of people) {
      for (const [measure, value] of Object.entries(measured)) {
        const limits = MEASURE_LIMITS[measure as keyof typeof MEASURE_LIMITS]
        expect(value >= limits.min && value <= limits.max, `${id} ${measure} ${value}`).toBe(true)
      }
    }
    expect(new Set(SURVEY_MEASURES).size).toBe(SURVEY_MEASURES.length)
  })

  it('derive straps and helmet as the first woman of 1988 shows', () => {
    // Her row: stature 1836, biacromial 393, shoulder length 148, head length 208, mid-shoulder 643, bispinous 256.
    expect(people[0]).toMatchObject({
      statureMm: 1836,
      measured: {
        midShoulderHeightMm: 643,
        shoulderStrapSpacingMm: 245,
        helmetRadiusMm: 154,
        frontHipBoneBreadthMm: 256,
      },
    })
    // First woman of 2012: standing 1356 − (1660 − 875) + 27.9 = 598.9; her front hip bones were not measured.
    const first2012 = people.find(({ survey: year }) => year === 2012)
    expect(first2012?.measured.midShoulderHeightMm).toBeCloseTo(598.9, 6)
    expect(first2012?.measured.frontHipBoneBreadthMm).toBeUndefined()
  })
})
