import { describe, expect, it } from 'vitest'

import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import type { LayoutProblem } from '../../../../src/domain/layout/document/problem'
import { exampleLayout, type Path, rockBuggyWith } from '../../../support/exampleLayouts'

const BELT: Path = ['places', 0, 'belt']

const problemsOf = (input: unknown): readonly LayoutProblem[] => {
  const parsed = parseLayout(input)
  return parsed.ok ? [] : parsed.error
}

describe('what a belt of an arrangement can have, through parseLayout', () => {
  it.each([
    {
      arrangement: 3,
      part: { shoulderTailMm: 150 },
      at: 'shoulderTailMm',
      message: /one shoulder strap, so there is nothing to join/,
    },
    {
      arrangement: 3,
      part: { thighStraps: 'rearward' },
      at: 'thighStraps',
      message: /a 3-point belt has no pair of thigh straps/,
    },
    {
      arrangement: 4,
      part: { thighStraps: 'under-thighs' },
      at: 'thighStraps',
      message: /a 4-point belt has no pair of thigh straps/,
    },
    {
      arrangement: 5,
      part: { thighStraps: 'under-thighs' },
      at: 'thighStraps',
      message: /a 5-point belt has no pair of thigh straps/,
    },
    {
      arrangement: 4,
      part: { adjusters: { sub: { fromAnchorMm: 100, lengthMm: 60 } } },
      at: 'adjusters.sub',
      message: /a 4-point belt has no anti-submarine straps to adjust/,
    },
    {
      arrangement: 4,
      part: { hardware: { sub: { torqueNm: 40 } } },
      at: 'hardware.sub',
      message: /a 4-point belt has no anti-submarine straps to bolt/,
    },
  ])(
    'refuses $at on a $arrangement-point belt and says how to mend it',
    ({ arrangement, part, at, message }) => {
      const { belt } = exampleLayout('rock-buggy.layout.json').places[0] ?? {}
      const problems = problemsOf(rockBuggyWith(BELT, { ...belt, arrangement, ...part }))
      expect(problems.map(({ path }) => path)).toEqual([`places[0].belt.${at}`])
      expect(problems[0]?.message).toMatch(message)
      expect(problems[0]?.remedy).toMatch(/^Take the field out, or /)
    },
  )

  it.each([
    { arrangement: 3, diagonal: 'right', adjusters: { shoulder: { fromAnchorMm: 30, lengthMm: 60 } } },
    { arrangement: 4, shoulderTailMm: 150 },
    { arrangement: 4, hardware: { lap: { boltDiameterMm: 11.1, grade: '8', torqueNm: 40, source: 'Card' } } },
    { arrangement: 5, adjusters: { sub: { fromAnchorMm: 120, lengthMm: 40 } } },
    { arrangement: 6, thighStraps: 'under-thighs' },
    { arrangement: 7, thighStraps: 'rearward', shoulderTailMm: 90 },
  ])('takes $arrangement points with what such a belt can have, and gives it back as it was', (part) => {
    const { belt } = exampleLayout('rock-buggy.layout.json').places[0] ?? {}
    const parsed = parseLayout(rockBuggyWith(BELT, { ...belt, ...part }))
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
    expect(parsed.value.places[0]?.belt).toEqual({ ...belt, ...part })
    expect(parseLayoutText(layoutText(parsed.value))).toEqual(parsed)
  })
})
