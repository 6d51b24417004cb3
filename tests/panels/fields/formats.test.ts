import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ANGLE_FORMAT, lengthFormat, massFormat } from '../../../src/panels/fields/formats'

describe('lengthFormat', () => {
  // 12 3/8 in = 12.375 × 25.4 mm = 314.325 mm (international inch of 1959).
  it('reads fractions of an inch where the shop works in inches', () => {
    expect(lengthFormat('in').parse('12 3/8')).toEqual({ ok: true, value: expect.closeTo(314.325, 9) })
  })

  it('says what is wrong with a text that is no length', () => {
    const parsed = lengthFormat('mm').parse('about a foot')
    expect(parsed.ok ? '' : parsed.error).toContain('about a foot')
  })

  it('reads back what it shows, to the tenth of a mm or the sixteenth of an inch it shows', () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (mm) => {
        for (const [unit, halfStepMm] of [
          ['mm', 0.05],
          ['in', 25.4 / 32],
        ] as const) {
          const format = lengthFormat(unit)
          const parsed = format.parse(format.text(mm))
          expect(parsed.ok ? Math.abs(parsed.value - mm) : Infinity).toBeLessThan(halfStepMm + 1e-6)
        }
      }),
    )
  })
})

describe('ANGLE_FORMAT', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['-3°', -3],
    ['20 deg', 20],
  ])('reads %s as %s degrees', (text, expectedDeg) => {
    expect(ANGLE_FORMAT.parse(text)).toEqual({ ok: true, value: expectedDeg })
  })

  it.each(['', 'steep', '12 mm'])('refuses "%s" with a sentence', (text) => {
    const parsed = ANGLE_FORMAT.parse(text)
    expect(parsed.ok ? '' : parsed.error).toMatch(/Type/)
  })
})

describe('massFormat', () => {
  // 100 lb = 45.359237 kg exactly.
  it('reads pounds', () => {
    expect(massFormat('lb').parse('100')).toEqual({ ok: true, value: expect.closeTo(45.359237, 9) })
  })
})
