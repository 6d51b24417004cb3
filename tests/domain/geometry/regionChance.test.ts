import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { type AxisError, errorDensity, errorNodes, errorShare } from '../../../src/domain/geometry/axisError'
import { planePoint } from '../../../src/domain/geometry/plane'
import { gaussNodes } from '../../../src/domain/geometry/quadrature'
import { boxRegion, regionClipped } from '../../../src/domain/geometry/region'
import { regionChance } from '../../../src/domain/geometry/regionChance'

const even = (halfWidth: number): AxisError => ({ spread: 'even', halfWidth })
const small = (halfWidth: number): AxisError => ({ spread: 'mostly-small', halfWidth })

describe('gaussNodes', () => {
  it('has the tabulated nodes and weights of three points', () => {
    // Abramowitz and Stegun, table 25.4, n = 3 (from memory): ±0.774597 with 5/9 and 0 with 8/9.
    const nodes = gaussNodes(3)
    expect(nodes.map(({ at }) => at)[0]).toBeCloseTo(0.774_596_669, 9)
    expect(nodes.map(({ at }) => at)[1]).toBeCloseTo(0, 12)
    expect(nodes.map(({ weight }) => weight)[0]).toBeCloseTo(5 / 9, 12)
    expect(nodes.map(({ weight }) => weight)[1]).toBeCloseTo(8 / 9, 12)
  })

  it.each([2, 5, 12, 32])('integrates powers of x up to 2·%d − 1 exactly', (count) => {
    for (let power = 0; power < 2 * count; power += 1) {
      const sum = gaussNodes(count).reduce((total, { at, weight }) => total + weight * at ** power, 0)
      expect(sum).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 10)
    }
  })
})

describe('errorShare', () => {
  it('follows the table of the normal distribution, cut at two standard deviations', () => {
    // ± 2 is σ = 1. Φ(1) = 0.841345, Φ(2) = 0.977250, so the share below 1 is (0.841345 − 0.022750)/0.954500 = 0.857617.
    expect(errorShare(small(2), 1)).toBeCloseTo(0.857_617, 5)
    expect(errorShare(small(2), 0)).toBeCloseTo(0.5, 12)
    expect(errorShare(small(2), -1)).toBeCloseTo(1 - 0.857_617, 5)
  })

  it('is 0 at the lower end, 1 at the upper, and stays there', () => {
    for (const axis of [even(3), small(3)]) {
      expect([-4, -3, 3, 4].map((error) => errorShare(axis, error))).toEqual([0, 0, 1, 1])
    }
  })

  it('has its density as slope', () => {
    for (const axis of [even(3), small(3)])
      for (const at of [-2.5, -1, 0, 0.7, 2.9]) {
        const slope = (errorShare(axis, at + 1e-5) - errorShare(axis, at - 1e-5)) / 2e-5
        expect(errorDensity(axis, at)).toBeCloseTo(slope, 6)
      }
  })
})

describe('errorNodes', () => {
  it('has the mean and the spread of the error', () => {
    // Even: h²/3. Cut normal, σ = h/2 = 1, cut at ±2: 1 − 2·2·φ(2)/0.954500 = 1 − 4·0.0539910/0.9545 = 0.773741.
    // Source: variance of a truncated normal distribution (from memory).
    const variance = (axis: AxisError): number =>
      errorNodes(axis, 12).reduce((sum, { error, weight }) => sum + weight * error * error, 0)
    expect(variance(even(3))).toBeCloseTo(3, 9)
    expect(variance(small(2))).toBeCloseTo(0.773_741, 5)
    expect(errorNodes(small(2), 5).reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12)
  })
})

describe('regionChance', () => {
  const plane = boxRegion(planePoint(-100, -100), planePoint(100, 100))

  it('is the share of the area for even errors', () => {
    // The half-plane u + v ≤ 0 of the box ± 2, ± 4 about (1, 1): v ≤ −u, u from −1 to 3, v from −3: area ∫(−u + 3)du = 8 of 32.
    const halved = regionClipped(plane, [{ nu: Math.SQRT1_2, nv: Math.SQRT1_2, offsetMm: 0 }])
    const chance = regionChance(halved, { at: planePoint(1, 1), uError: even(2), vError: even(4) })
    expect(chance).toBeCloseTo(8 / 32, 12)
  })

  it('is a product where the region is a rectangle', () => {
    const box = boxRegion(planePoint(-1, -50), planePoint(50, 1))
    const [uError, vError] = [small(2), small(4)]
    const chance = regionChance(box, { at: planePoint(0, 0), uError, vError })
    expect(chance).toBeCloseTo((1 - errorShare(uError, -1)) * errorShare(vError, 1), 9)
  })

  it('is 1 when the whole box is inside, 0 when none of it is, and adds up over pieces', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0.1, max: Math.PI - 0.1, noNaN: true }),
        fc.constantFrom(even, small),
        (offsetMm, angle, kind) => {
          const point = { at: planePoint(0, 0), uError: kind(3), vError: kind(2) }
          const [nu, nv] = [Math.cos(angle), Math.sin(angle)]
          const one = regionChance(regionClipped(plane, [{ nu, nv, offsetMm }]), point)
          const other = regionChance(regionClipped(plane, [{ nu: -nu, nv: -nv, offsetMm: -offsetMm }]), point)
          expect(one + other).toBeCloseTo(1, 6)
          const reach = 3 * Math.abs(nu) + 2 * Math.abs(nv)
          // Wholly inside, wholly outside, or somewhere between.
          const [least, most] = offsetMm > reach ? [1, 1] : offsetMm < -reach ? [0, 0] : [0, 1]
          expect(one).toBeGreaterThanOrEqual(least - 1e-6)
          expect(one).toBeLessThanOrEqual(most)
        },
      ),
    )
  })
})
