import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { markPath, marksPath, PICTURE, pictureScales } from '../../../src/panels/fit/pictureScale'

const person = fc.record({
  statureMm: fc.double({ min: 1200, max: 2300, noNaN: true }),
  massKg: fc.double({ min: 30, max: 250, noNaN: true }),
})
const units = fc.record({
  length: fc.constantFrom('mm' as const, 'in' as const),
  mass: fc.constantFrom('kg' as const, 'lb' as const),
})

describe('picture of who fits', () => {
  it('has room for everybody, and taller is further right, heavier further up', () => {
    fc.assert(
      fc.property(fc.array(person, { minLength: 1, maxLength: 12 }), units, (people, shown) => {
        const { x, y } = pictureScales(people, shown)
        for (const { statureMm, massKg } of people) {
          expect(x.at(statureMm)).toBeGreaterThanOrEqual(PICTURE.left - 1e-6)
          expect(x.at(statureMm)).toBeLessThanOrEqual(PICTURE.width - PICTURE.right + 1e-6)
          expect(y.at(massKg)).toBeGreaterThanOrEqual(PICTURE.top - 1e-6)
          expect(y.at(massKg)).toBeLessThanOrEqual(PICTURE.height - PICTURE.bottom + 1e-6)
        }
        expect(x.at(1900)).toBeGreaterThan(x.at(1600))
        expect(y.at(90)).toBeLessThan(y.at(60))
        for (const { ticks } of [x, y]) {
          expect(ticks.length).toBeGreaterThan(1)
          expect(ticks.length).toBeLessThanOrEqual(7)
          expect(new Set(ticks.map(({ words }) => words)).size).toBe(ticks.length)
        }
      }),
    )
  })

  it('marks round numbers of the unit shown, where they are', () => {
    const people = [
      { statureMm: 1448, massKg: 36 },
      { statureMm: 2042, massKg: 137 },
    ]
    const metric = pictureScales(people, { length: 'mm', mass: 'kg' })
    // Some 1400 to 2090 mm: fourteen fifties are too many, so by hundreds. 32 to 141 kg by twenties.
    expect(metric.x.ticks.map(({ words }) => words)).toEqual([
      '1400',
      '1500',
      '1600',
      '1700',
      '1800',
      '1900',
      '2000',
    ])
    expect(metric.y.ticks.map(({ words }) => words)).toEqual(['40', '60', '80', '100', '120', '140'])
    expect(metric.x.ticks[2]?.at).toBeCloseTo(metric.x.at(1600), 9)
    const imperial = pictureScales(people, { length: 'in', mass: 'lb' })
    // 1448 mm = 57.0 in, 2042 mm = 80.4 in; 36 kg = 79.4 lb, 137 kg = 302 lb.
    expect(imperial.x.ticks.map(({ words }) => words)).toEqual(['56', '60', '64', '68', '72', '76', '80'])
    expect(imperial.y.ticks.map(({ words }) => words)).toEqual([
      '80',
      '120',
      '160',
      '200',
      '240',
      '280',
      '320',
    ])
    expect(imperial.x.ticks[2]?.at).toBeCloseTo(imperial.x.at(64 * 25.4), 9)
  })

  it('tells outcomes by shape, each mark within 6 of its place, one for each person', () => {
    const shapes = ['ring', 'cross', 'triangle', 'diamond'] as const
    expect(new Set(shapes.map((shape) => markPath(shape, 50, 50))).size).toBe(4)
    const people = [
      { statureMm: 1600, massKg: 60 },
      { statureMm: 1700, massKg: 70 },
    ]
    const scales = pictureScales(people, { length: 'mm', mass: 'kg' })
    expect(marksPath('triangle', people, scales).match(/z/g)).toHaveLength(2)
    expect(marksPath('ring', [], scales)).toBe('')
  })
})
