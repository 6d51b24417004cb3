import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Sex } from '../../../src/domain/body/occupant'
import { predictedSizeMm, REGRESSIONS, type SurveyMeasure } from '../../../src/domain/body/regressions'
import { surveyPeople } from '../../support/surveyPeople'

/** Which column of which extract measures what. */
const COLUMNS: readonly {
  readonly file: string
  readonly column: string
  readonly measure: SurveyMeasure
}[] = [
  ...(
    [
      ['midshoulder_height_sitting_mm', 'midShoulderHeightMm'],
      ['derived_trochanterion_height_above_seat_mm', 'trochanterHeightMm'],
      ['bispinous_breadth_mm', 'frontHipBoneBreadthMm'],
    ] as const
  ).map(([column, measure]) => ({ file: 'survey-1988-people.csv', column, measure })),
  ...(
    [
      ['sitting_height_mm', 'sittingHeightMm'],
      ['biacromial_breadth_mm', 'biacromialBreadthMm'],
      ['shoulder_length_mm', 'shoulderLengthMm'],
      ['head_length_mm', 'headLengthMm'],
      ['hip_breadth_sitting_mm', 'hipBreadthMm'],
      ['bideltoid_breadth_mm', 'bideltoidBreadthMm'],
      ['chest_depth_mm', 'chestDepthMm'],
      ['abdominal_extension_depth_sitting_mm', 'abdominalDepthMm'],
      ['thigh_clearance_mm', 'thighClearanceMm'],
      ['buttock_knee_length_mm', 'buttockKneeMm'],
      ['knee_height_sitting_mm', 'kneeHeightMm'],
    ] as const
  ).map(([column, measure]) => ({ file: 'survey-2012-people.csv', column, measure })),
]

const CASES = COLUMNS.flatMap((column) =>
  (['female', 'male'] as const).map((sex: Sex) => ({ ...column, sex })),
)

/** Measured minus predicted of every real person of that sex in the extract, mm. */
const residualsMm = ({ file, column, measure, sex }: (typeof CASES)[number]): readonly number[] =>
  surveyPeople(file)
    .filter((person) => person.sex === sex)
    .map(({ values }) => {
      const predictedMm = predictedSizeMm(sex, measure, values['stature_mm'] ?? NaN, values['mass_kg'] ?? NaN)
      return (values[column] ?? NaN) - predictedMm
    })

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

describe('predictedSizeMm', () => {
  // Sixty real people of each sex from the two surveys (tests/data); they are a sample of those the lines were fitted to, so the
  // mean of their residuals must lie within three standard errors of 0 and their spread near the one stated.
  it.each(CASES)('has no bias on measured people: $sex $measure', (row) => {
    const residuals = residualsMm(row)
    const { residualSdMm } = REGRESSIONS[row.sex][row.measure]
    expect(residuals).toHaveLength(60)
    expect(Math.abs(mean(residuals))).toBeLessThan((3 * residualSdMm) / Math.sqrt(residuals.length))
  })

  it.each(CASES)('spreads as stated on measured people: $sex $measure', (row) => {
    const residuals = residualsMm(row)
    const { residualSdMm } = REGRESSIONS[row.sex][row.measure]
    const middle = mean(residuals)
    const sdMm = Math.sqrt(
      residuals.reduce((sum, residual) => sum + (residual - middle) ** 2, 0) / (residuals.length - 1),
    )
    expect(sdMm / residualSdMm).toBeGreaterThan(0.8)
    expect(sdMm / residualSdMm).toBeLessThan(1.2)
  })

  // A least-squares line passes through the means of the people it was fitted to. Means of the 1988 survey, computed from its
  // 2 208 women and 1 774 men (the two statures and masses also published, from memory).
  it.each([
    {
      sex: 'male' as const,
      measure: 'trochanterHeightMm' as const,
      statureMm: 1755.8,
      massKg: 78.5,
      meanMm: 86,
    },
    {
      sex: 'female' as const,
      measure: 'trochanterHeightMm' as const,
      statureMm: 1629.4,
      massKg: 62,
      meanMm: 84,
    },
    {
      sex: 'male' as const,
      measure: 'frontHipBoneBreadthMm' as const,
      statureMm: 1755.8,
      massKg: 78.5,
      meanMm: 231,
    },
    {
      sex: 'female' as const,
      measure: 'frontHipBoneBreadthMm' as const,
      statureMm: 1629.4,
      massKg: 62,
      meanMm: 220,
    },
  ])(
    'passes through the mean of the surveyed people: $sex $measure',
    ({ sex, measure, statureMm, massKg, meanMm }) => {
      expect(Math.abs(predictedSizeMm(sex, measure, statureMm, massKg) - meanMm)).toBeLessThan(0.6)
    },
  )

  it('is a size above nothing for anybody, and far from the floor for people', () => {
    const people = fc.record({
      sex: fc.constantFrom<Sex>('female', 'male'),
      statureMm: fc.double({ min: 1200, max: 2200, noNaN: true }),
      bodyMassIndex: fc.double({ min: 16, max: 50, noNaN: true }),
    })
    fc.assert(
      fc.property(people, ({ sex, statureMm, bodyMassIndex }) => {
        const massKg = bodyMassIndex * (statureMm / 1000) ** 2
        for (const { measure } of COLUMNS) {
          expect(predictedSizeMm(sex, measure, statureMm, massKg)).toBeGreaterThan(40)
        }
      }),
    )
    expect(predictedSizeMm('female', 'abdominalDepthMm', 4000, 1)).toBe(10)
  })
})
