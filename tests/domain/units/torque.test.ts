import { describe, expect, it } from 'vitest'
import {
  NM_PER_LBF_FT,
  parsedTorque,
  torqueProblemText,
  torqueText,
  torqueWithUnit,
} from '../../../src/domain/units/torque'

describe('NM_PER_LBF_FT', () => {
  it('is the pound-force times the foot', () => {
    // 0.453 592 37 kg × 9.806 65 m/s² × 0.3048 m: each exact by definition.
    expect(NM_PER_LBF_FT).toBeCloseTo(0.45359237 * 9.80665 * 0.3048, 14)
    // NIST SP 811, table B.8: 1 lbf·ft = 1.355 818 N·m (from memory).
    expect(NM_PER_LBF_FT).toBeCloseTo(1.355818, 6)
  })
})

describe('torqueText', () => {
  it.each([
    { nm: 40, unit: 'N·m' as const, text: '40 N·m' },
    { nm: 40, unit: 'lbf·ft' as const, text: '29.5 lbf·ft' },
    { nm: 30 * NM_PER_LBF_FT, unit: 'lbf·ft' as const, text: '30 lbf·ft' },
  ])('shows $nm N·m as $text', ({ nm, unit, text }) => expect(torqueWithUnit(nm, unit)).toBe(text))

  it('shows a dash for what is no torque', () => expect(torqueText(NaN, 'N·m')).toBe('–'))
})

describe('parsedTorque', () => {
  it.each([
    { text: '40', unit: 'N·m' as const, nm: 40 },
    { text: '40,5 Nm', unit: 'lbf·ft' as const, nm: 40.5 },
    { text: '30', unit: 'lbf·ft' as const, nm: 30 * NM_PER_LBF_FT },
    { text: '30 ft-lb', unit: 'N·m' as const, nm: 30 * NM_PER_LBF_FT },
    { text: '30 lbf·ft', unit: 'N·m' as const, nm: 30 * NM_PER_LBF_FT },
    { text: '42 N·m', unit: 'lbf·ft' as const, nm: 42 },
  ])('reads $text where $unit is meant', ({ text, unit, nm }) => {
    const parsed = parsedTorque(text, unit)
    expect(parsed.ok && parsed.value).toBeCloseTo(nm, 12)
  })

  it.each(['30 in-lb', '12 kgm', 'tight'])('refuses %s and says so', (text) => {
    const parsed = parsedTorque(text, 'N·m')
    if (parsed.ok) throw new Error('it was taken')
    expect(torqueProblemText(parsed.error)).toContain(text)
  })
})
