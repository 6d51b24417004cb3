import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import {
  matrixOfSets,
  type MatrixEntry,
  type MatrixRow,
  ruleSetMatrix,
  type RuleSetMatrix,
} from '../../../../src/domain/layout/evaluate/ruleSetMatrix'
import { agreementText, isDisagreement } from '../../../../src/domain/layout/wording/matrixText'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const place = (lapAftMm: number, shoulderHalfMm: number) =>
  flatPlace({
    anchors: [
      ...tabPair('lap', { xMm: lapAftMm, yMm: 200, zMm: -200 }),
      ...tabPair('shoulder', { xMm: 420, yMm: shoulderHalfMm, zMm: 560 }, 'bar'),
    ],
  })
const layoutOf = (lapAftMm: number, shoulderHalfMm: number): Layout =>
  flatLayout([place(lapAftMm, shoulderHalfMm)], { tubes: [crossTube('bar', 420, 560)] })
const matrixOf = (layout: Layout): RuleSetMatrix => {
  const [first] = layout.places
  if (first === undefined) throw new Error('no place')
  return ruleSetMatrix(layout, first)
}
const rowOf = (matrix: RuleSetMatrix, measured: string, subject: string): MatrixRow => {
  const row = matrix.rows.find((each) => each.measured === measured && each.subject === subject)
  if (row === undefined) throw new Error(`no row ${measured} ${subject}`)
  return row
}
const entryOf = (row: MatrixRow, ruleId: string): MatrixEntry | undefined =>
  row.entries.find(({ rule }) => rule.id === ruleId)

describe('ruleSetMatrix', () => {
  it('shows one lap angle under every set that limits it', () => {
    // atan(200/350) = 29.745°: inside 20–75 (as quoted in 1991) and 20–80 (EU, rear seats), outside 30–75 (US now), 45–65
    // (students 2026, upright) and 45–60 (workshop).
    const row = rowOf(matrixOf(layoutOf(350, 75)), 'lap-angle', 'lap-left')
    const verdicts = Object.fromEntries(row.entries.map(({ rule, verdict }) => [rule.id, verdict]))
    expect(verdicts).toMatchObject({
      'us-210-1991-lap': 'clear',
      'eu-rear-lap': 'clear',
      'us-210-lap-fixed-seat': 'broken',
      'student-lap-angle-upright': 'broken',
      'workshop-lap-angle': 'broken',
    })
    for (const { value } of row.entries) expect(value).toBeCloseTo(29.7449, 4)
    expect(row.agreement).toBe('split')
    expect(agreementText(row)).toMatch(/^Sources disagree: broken under \d+ of \d+\.$/)
  })

  it('takes the worst value over every position of the seat', () => {
    const still = place(200, 75)
    const layout = flatLayout([
      { ...still, seat: { ...still.seat, slide: { forwardMm: 60, rearwardMm: 40 } } },
    ])
    // Workshop wedge 45–60°: forward 60 mm atan(200/260) = 37.569° is 7.431° outside, rearward 40 mm 51.340° inside.
    // EU rear seats 20–80°: of 37.569° and 51.340° the first is nearer to its limit, by 17.569°.
    const row = rowOf(matrixOf(layout), 'lap-angle', 'lap-left')
    expect(entryOf(row, 'workshop-lap-angle')?.value).toBeCloseTo(37.5686, 4)
    expect(entryOf(row, 'eu-rear-lap')?.value).toBeCloseTo(37.5686, 4)
    expect(entryOf(row, 'eu-rear-lap')?.verdict).toBe('clear')
  })

  it('says that no spacing of the shoulder anchors keeps both the student rules and dirt speedway', () => {
    // 175–235 mm (Formula SAE 2026 T.2.6, read) against at most 150 mm (NZ Speedway 2010, read): nothing in common.
    for (const halfMm of [75, 100]) {
      const row = rowOf(matrixOf(layoutOf(200, halfMm)), 'shoulder-spacing', 'shoulder-pair')
      expect(row.agreement).toBe('no-value')
      expect(entryOf(row, 'student-shoulder-spacing')?.verdict).toBe(halfMm === 100 ? 'clear' : 'broken')
      expect(entryOf(row, 'speedway-shoulder-spacing')?.verdict).toBe(halfMm === 75 ? 'clear' : 'broken')
    }
  })

  it.each([
    'workshop-practice',
    'student-cars-2026',
    'us-road-anchorages-571-210',
    'rally-america',
    'us-pro-rally-1998',
    'new-jersey-13-62',
    'aviation-us',
  ])(
    'agrees with the findings under %s',
    (ruleSetId) => {
      const layout = layoutOf(210, 88)
      const matrix = matrixOf(layout)
      const [evaluated] = evaluateLayout({ ...layout, ruleSetId }, { extent: 'what-moves' }).places
      const found = (evaluated?.findings ?? []).map(
        ({ ruleId, subject, value, verdict }) =>
          `${ruleId}/${subject} ${value} ${verdict === 'tight' ? 'clear' : verdict}`,
      )
      const shown = matrix.rows.flatMap(({ subject, entries }) =>
        entries
          .filter(({ setId }) => setId === ruleSetId)
          .map(({ rule, value, verdict }) => `${rule.id}/${subject} ${value} ${verdict}`),
      )
      expect(shown.toSorted()).toEqual(found.toSorted())
    },
    60_000,
  )

  it('leaves out sets that only state things, and can be cut down to some of them', () => {
    const matrix = matrixOf(layoutOf(200, 75))
    expect(matrix.sets.map(({ id }) => id)).not.toContain('military-crew-seats')
    const two = matrixOfSets(matrix, new Set(['student-cars-2026', 'student-cars-2014']))
    expect(two.sets.map(({ id }) => id)).toEqual(['student-cars-2026', 'student-cars-2014'])
    // 175–235 mm and 178–229 mm have 178–229 mm in common; both are broken at 150 mm.
    expect(rowOf(two, 'shoulder-spacing', 'shoulder-pair').agreement).toBe('broken')
    expect(matrixOfSets(matrix, new Set())).toEqual({ sets: [], rows: [] })
  })

  it('has a sentence for every way in which sets can stand to each other', () => {
    const entries = rowOf(matrixOf(layoutOf(200, 75)), 'lap-angle', 'lap-left').entries
    const kinds = ['no-value', 'split', 'kept', 'broken', 'unchecked'] as const
    const texts = kinds.map((agreement) => agreementText({ agreement, entries }))
    expect(new Set(texts).size).toBe(kinds.length)
    expect(kinds.filter(isDisagreement)).toEqual(['no-value', 'split'])
  })

  it('shows what could not be computed as unchecked, never as kept', () => {
    const row = rowOf(matrixOf(flatLayout([flatPlace()])), 'lap-angle', 'lap-left')
    expect(new Set(row.entries.map(({ verdict, value }) => `${verdict} ${value}`))).toEqual(
      new Set(['unchecked null']),
    )
    expect(row.agreement).not.toBe('kept')
  })
})
