import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import { chanceText, toleranceText } from '../../../../src/domain/layout/wording/toleranceText'
import type { Finding } from '../../../../src/domain/rules/finding'
import type { WeldTolerance } from '../../../../src/domain/rules/tolerance'
import { toleranceLine } from '../../../../src/sheet/mount/sections/toleranceLine'
import { evaluationReport } from '../../../../src/cli/evaluationReport'
import { exampleLayout } from '../../../support/exampleLayouts'

const tolerance: WeldTolerance = { xMm: 5, yMm: 4, zMm: 3, tabDeg: 2, reclineDeg: 1, spread: 'even' }

const layout: Layout = { ...exampleLayout('trail-car-two-seat.layout.json'), tolerance }
const evaluation = evaluateLayout(layout)
const findings: readonly Finding[] = evaluation.places.flatMap((place) => place.findings)

describe('chanceText', () => {
  it.each([
    { chance: 0.0001, text: 'under 1 %' },
    { chance: 0.0099, text: 'under 1 %' },
    { chance: 0.01, text: 'about 1 %' },
    { chance: 0.254, text: 'about 25 %' },
    { chance: 0.99, text: 'about 99 %' },
    { chance: 0.9999, text: 'over 99 %' },
  ])('says $chance as "$text", never none and never all', ({ chance, text }) => {
    expect(chanceText(chance)).toBe(text)
  })
})

describe('toleranceText', () => {
  it('lists each error with its ± in the length unit', () => {
    expect(toleranceText(tolerance, 'mm')).toBe(
      '± 5 mm in x, ± 4 mm in y, ± 3 mm in z, tabs ± 2°, recline ± 1°',
    )
    expect(toleranceText(tolerance, 'in')).toMatch(/^± 3\/16 in in x, /)
  })
})

describe('what a weld error can do', () => {
  it('is said of every finding that has a number, in one sentence', () => {
    const said = findings.filter(({ withinTolerance }) => withinTolerance !== undefined)
    expect(said.length).toBeGreaterThan(20)
    for (const finding of said) {
      const text = findingSentence(finding, layout).withinTolerance
      expect(text).toMatch(/^(Could leave|Stays within|With the weld|Could not be checked).*\.$/)
      expect(text).not.toMatch(/NaN|undefined|null|Infinity/)
    }
  })

  it('is a list of the limits that could be left, on the sheet', () => {
    const line = toleranceLine(layout, evaluation) ?? ''
    const leaving = findings.filter(
      ({ verdict, withinTolerance }) =>
        (verdict === 'clear' || verdict === 'tight') && withinTolerance?.canLeave === true,
    )
    expect(leaving.length).toBeGreaterThan(0)
    expect(line.split('; ').length).toBe(leaving.length)
    expect(line).toMatch(/^Weld and measuring error ± .* could leave the limits: .*\.$/)
  })

  it('is left out everywhere while nobody has typed an error', () => {
    const { tolerance: _typed, ...untyped } = layout
    const bare = evaluateLayout(untyped)
    expect(toleranceLine(untyped, bare)).toBeNull()
    const all = bare.places.flatMap((place) => place.findings)
    expect(all.every((finding) => findingSentence(finding, untyped).withinTolerance === null)).toBe(true)
    expect(evaluationReport('a', untyped).findings.some((finding) => 'withinTolerance' in finding)).toBe(
      false,
    )
  })

  it('is in the printed evaluation with the same numbers', () => {
    const printed = evaluationReport('a', layout).findings
    expect(printed.flatMap(({ withinTolerance }) => withinTolerance ?? [])).toEqual(
      findings.flatMap(({ withinTolerance }) => withinTolerance ?? []),
    )
  })
})
