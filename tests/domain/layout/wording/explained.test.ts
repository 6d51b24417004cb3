import { describe, expect, it } from 'vitest'
import { quantityFormula, viewCaption } from '../../../../src/domain/layout/wording/explained'
import { QUANTITY_IDS } from '../../../../src/domain/straps/quantity'

describe('quantityFormula', () => {
  it.each(QUANTITY_IDS)('gives formula, sign and source of %s', (id) => {
    const { formula, sign, source } = quantityFormula(id)
    expect(formula).not.toBe('')
    // Signs and sources are sentences.
    expect(sign).toMatch(/\.$/)
    expect(source).toMatch(/\.$/)
  })

  it('says which figures were read and which are from memory', () => {
    // 49 CFR 571.210 S4.3.1.1(b): "64 mm forward of and 10 mm above" the reference point.
    expect(quantityFormula('lap-shifted-angle').source).toContain('64 mm forward of and 10 mm above')
    expect(quantityFormula('shoulder-reference-plan').source).toContain('120 mm from memory')
  })
})

describe('viewCaption', () => {
  it('tells each way of looking apart', () => {
    const views = ['side', 'top', 'behind', 'true', 'strip', 'forces'] as const
    expect(new Set(views.map(viewCaption)).size).toBe(views.length)
  })
})
