import { describe, expect, it } from 'vitest'
import { forceText, forceWithUnit, N_PER_LBF } from '../../../src/domain/units/force'

describe('N_PER_LBF', () => {
  it('is the exact pound times the standard acceleration of gravity', () => {
    // 0.453 592 37 kg × 9.806 65 m/s²: both exact by definition (3rd CGPM 1901; international pound 1959).
    expect(N_PER_LBF).toBeCloseTo(0.45359237 * 9.80665, 14)
  })
})

describe('forceText and forceWithUnit', () => {
  it.each([
    // Pairs printed side by side in 49 CFR 571.210 (S4.2): "22,241 N (5,000 pounds)", "13,345 N (3,000 pounds)".
    { lbf: 5000, newtons: '22241' },
    { lbf: 3000, newtons: '13345' },
  ])('$lbf lbf is $newtons N, as the law prints it', ({ lbf, newtons }) => {
    expect(forceText(lbf * N_PER_LBF, 'N')).toBe(newtons)
    expect(forceText(Number(newtons), 'lbf')).toBe(String(lbf))
  })

  it.each([
    // 14 CFR 25.562 limits in lbf (figures from memory) by the exact ratio.
    { forceN: 7784.4, unit: 'lbf' as const, text: '1750 lbf' },
    { forceN: 14_700, unit: 'daN' as const, text: '1470 daN' },
    { forceN: 14_705, unit: 'daN' as const, text: '1471 daN' },
    { forceN: -0.4, unit: 'N' as const, text: '0 N' },
    { forceN: -12.5, unit: 'N' as const, text: '−13 N' },
  ])('shows $forceN N as $text', ({ forceN, unit, text }) => {
    expect(forceWithUnit(forceN, unit)).toBe(text)
  })

  it('shows a dash for what is not a force', () => {
    expect(forceText(NaN, 'N')).toBe('–')
    expect(forceText(-Infinity, 'lbf')).toBe('–')
  })
})
