import { describe, expect, it } from 'vitest'

import { findingTally } from '../../../../src/domain/layout/compare/comparedFindings'
import { comparedNumbers } from '../../../../src/domain/layout/compare/comparedNumbers'
import { partDifferences } from '../../../../src/domain/layout/compare/comparedPart'
import { comparedParts } from '../../../../src/domain/layout/compare/comparedParts'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import {
  fieldByText,
  fieldName,
  fieldValueText,
} from '../../../../src/domain/layout/wording/compareFieldWords'
import {
  COMPARE_CAUTION,
  comparedFindingName,
  comparedNumberName,
  comparedPartName,
  findingCell,
  numberText,
  partShiftText,
  tallyLines,
  turnMark,
  turnText,
} from '../../../../src/domain/layout/wording/compareWords'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const lapAt = (xMm: number, zMm: number): Layout =>
  flatLayout([flatPlace({ anchors: [...tabPair('lap', { xMm, yMm: 220, zMm })] })])

const MM = { length: 'mm', force: 'N', mass: 'kg' } as const
const INCHES = { length: 'in', force: 'lbf', mass: 'lb' } as const

describe('words of differences', () => {
  it('say a shift as a welder does, in the unit of the shop, with the mm beside inches', () => {
    const [left] = partDifferences(comparedParts([lapAt(200, -200), lapAt(230, -240)]), 0, 1)
    expect(left?.part === undefined ? '' : comparedPartName(left.part, [lapAt(200, -200)])).toBe(
      'Left lap tab',
    )
    expect(left === undefined ? null : partShiftText(left, 'mm')).toBe('lies 50 mm elsewhere')
    const [x, z] = left?.fields ?? []
    expect(x === undefined ? '' : `${fieldName(x)}: ${fieldByText(x, MM)}`).toBe(
      'x, rearward: 30 mm rearward',
    )
    expect(z === undefined ? '' : `${fieldName(z)}: ${fieldByText(z, MM)}`).toBe('z, up: 40 mm down')
    expect(z === undefined ? '' : fieldValueText(z.field, z.after, MM)).toBe('−240 mm')
    // 40 / 25.4 = 1.5748 in: 1 9/16 in is 1.5625.
    expect(z === undefined ? '' : fieldByText(z, INCHES)).toBe('1 9/16 in (40 mm) down')
  })

  it('name what only one of them has', () => {
    const plan = lapAt(200, -200)
    const more: Layout = { ...plan, tubes: [crossTube('bar', 0, 0)] }
    const [only] = partDifferences(comparedParts([plan, more]), 0, 1)
    expect(only === undefined ? '' : partShiftText(only, 'mm')).toBeNull()
    expect(only === undefined ? '' : comparedPartName(only.part, [plan, more])).toBe('Test bar')
  })

  it('call an anchor by its form only while all variants fix it so', () => {
    const tab = lapAt(200, -200)
    const clevis: Layout = {
      ...tab,
      places: tab.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) => ({
          ...anchor,
          mount: { ...anchor.mount, form: 'clevis' as const },
        })),
      })),
    } as Layout
    const parts = comparedParts([tab, clevis])
    expect(parts[0] === undefined ? '' : comparedPartName(parts[0], [tab, clevis])).toBe('Left lap anchor')
  })

  it('name every part, field and number of every example without a raw id', () => {
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const other = exampleLayout('rock-buggy.layout.json')
      for (const part of comparedParts([layout, other])) {
        expect(comparedPartName(part, [layout, other])).toMatch(/^[A-Z]/)
        for (const field of part.fields) {
          expect(fieldName(field)).toMatch(/^[a-z]/)
          for (const value of field.values) expect(fieldValueText(field.field, value, MM)).not.toBe('')
        }
      }
      const variants = [layout, other].map((each) => ({ layout: each, evaluation: layoutNumbers(each) }))
      for (const number of comparedNumbers(variants, 0)) {
        expect(comparedNumberName(number, [layout, other])).toContain(': ')
        expect(numberText(number, number.values[0] ?? null, 'mm')).not.toMatch(/NaN|undefined/)
      }
    }
  })
})

describe('words of findings beside each other', () => {
  const layout = exampleLayout('everything-wrong.layout.json')
  const findings = layoutNumbers(layout).places.flatMap((place) => place.findings)

  it('say verdict, value, what is asked and never a room that is not known', () => {
    for (const finding of findings) {
      const cell = findingCell(finding, layout)
      expect(cell.value).toMatch(/\(asked: .+\)$/)
      expect(cell.room === null || finding.roomMm !== 'pending').toBe(true)
      expect(comparedFindingName(finding, layout)).toMatch(/^[A-Z].*: /)
    }
  })

  it('count by level and add nothing up to one number', () => {
    const [first, ...rest] = tallyLines(findingTally(findings), layout)
    expect(first).toMatch(/^\d+ broken \(must\)$/)
    expect(rest.join(' ')).toContain('not checked')
    expect(tallyLines(findingTally([]), layout)[0]).toBe('nothing broken')
  })

  it('say better or worse than which variant, with a sign, and neither for what was not checked', () => {
    expect(turnText('newly-broken', 'Low')).toBe('worse: kept in Low')
    expect([turnMark('newly-broken'), turnMark('mended'), turnMark('newly-unchecked')]).toEqual([
      '▼',
      '▲',
      '',
    ])
    expect(turnText('newly-unchecked', 'Low')).toContain('neither better nor worse')
    expect(turnText('unchanged', 'Low')).toBeNull()
    expect(COMPARE_CAUTION).toContain('No variant is called the best')
  })
})
