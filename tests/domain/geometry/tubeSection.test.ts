import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { tubeAreaMm2, tubeSecondMomentMm4 } from '../../../src/domain/geometry/tubeSection'

/** ∫∫ dA and ∫∫ y² dA over the ring by thin strips across the diameter (midpoint rule). */
const byStrips = (odMm: number, idMm: number): { areaMm2: number; secondMm4: number } => {
  const strips = 200_000
  const chord = (diameterMm: number, yMm: number): number =>
    Math.abs(yMm) >= diameterMm / 2 ? 0 : 2 * Math.sqrt((diameterMm / 2) ** 2 - yMm * yMm)
  let areaMm2 = 0
  let secondMm4 = 0
  for (let index = 0; index < strips; index += 1) {
    const dyMm = odMm / strips
    const yMm = -odMm / 2 + (index + 0.5) * dyMm
    const dA = (chord(odMm, yMm) - chord(idMm, yMm)) * dyMm
    areaMm2 += dA
    secondMm4 += yMm * yMm * dA
  }
  return { areaMm2, secondMm4 }
}

describe('tubeAreaMm2 and tubeSecondMomentMm4', () => {
  it.each([
    { odMm: 38.1, wallMm: 2.41 },
    { odMm: 44.45, wallMm: 3.05 },
    { odMm: 25.4, wallMm: 2.4 },
  ])('of $odMm × $wallMm are the integrals over the ring', ({ odMm, wallMm }) => {
    const expected = byStrips(odMm, odMm - 2 * wallMm)
    expect(tubeAreaMm2(odMm, wallMm)).toBeCloseTo(expected.areaMm2, 3)
    expect(tubeSecondMomentMm4(odMm, wallMm) / expected.secondMm4).toBeCloseTo(1, 6)
  })

  it('meets the smallest frame tube of the published student rules', () => {
    // SAE student rulebook 2026, F.3.4.1 size A: round 25.0 × 2.5, at least 11 320 mm⁴ and 173 mm² (rounded by the publisher).
    expect(tubeAreaMm2(25, 2.5)).toBeGreaterThan(173)
    expect(tubeSecondMomentMm4(25, 2.5)).toBeGreaterThan(11_320)
    // π/64·(25⁴ − 20⁴) = 11 320.8 and π/4·(25² − 20²) = 176.7 by hand.
    expect(tubeSecondMomentMm4(25, 2.5)).toBeCloseTo(11_320.8, 1)
    expect(tubeAreaMm2(25, 2.5)).toBeCloseTo(176.7, 1)
  })

  it('counts a wall of half the diameter or more as solid, and nothing as nothing', () => {
    expect(tubeAreaMm2(20, 10)).toBeCloseTo(Math.PI * 100, 9)
    expect(tubeAreaMm2(20, 30)).toBe(tubeAreaMm2(20, 10))
    expect(tubeAreaMm2(20, 0)).toBe(0)
    expect(tubeSecondMomentMm4(0, 3)).toBe(0)
    expect(tubeAreaMm2(-5, 3)).toBe(0)
  })

  it('grow with the wall, and by k² and k⁴ when the tube grows by k', () => {
    const size = fc.double({ min: 10, max: 60, noNaN: true })
    const share = fc.double({ min: 0.01, max: 0.49, noNaN: true })
    fc.assert(
      fc.property(size, share, fc.double({ min: 0.5, max: 3, noNaN: true }), (odMm, wallShare, k) => {
        const wallMm = odMm * wallShare
        expect(tubeAreaMm2(odMm, wallMm * 1.01)).toBeGreaterThan(tubeAreaMm2(odMm, wallMm))
        expect(tubeAreaMm2(odMm * k, wallMm * k) / tubeAreaMm2(odMm, wallMm)).toBeCloseTo(k ** 2, 6)
        expect(tubeSecondMomentMm4(odMm * k, wallMm * k) / tubeSecondMomentMm4(odMm, wallMm)).toBeCloseTo(
          k ** 4,
          6,
        )
      }),
    )
  })
})
