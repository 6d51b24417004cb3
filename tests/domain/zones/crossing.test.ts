import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crossingShare } from '../../../src/domain/zones/crossing'

type Margin = (share: number) => number

/** The share found, and how often was asked for it. */
const found = (marginAt: Margin, toShare: number): { readonly share: number; readonly asks: number } => {
  let asks = 0
  const share = crossingShare(
    (at) => {
      asks += 1
      return marginAt(at)
    },
    marginAt(0),
    marginAt(1),
    toShare,
  )
  return { share, asks }
}

/** Halvings that alone would find a share to so much. */
const halvings = (toShare: number): number => Math.ceil(Math.log2(1 / toShare))

describe('crossingShare', () => {
  it('finds where a straight margin changes its sign with two or three looks', () => {
    // 0.3 − s is 0 at 0.3. The first secant meets it; a look a quarter of the tolerance beside it closes the bracket.
    const { share, asks } = found((at) => 0.3 - at, 1e-6)
    expect(share).toBeLessThanOrEqual(0.3)
    expect(share).toBeGreaterThanOrEqual(0.3 - 1e-6)
    expect(asks).toBeLessThanOrEqual(3)
  })

  it('gives the kept end whichever side is kept', () => {
    const up = found((at) => at - 0.3, 1e-6).share
    expect(up).toBeGreaterThanOrEqual(0.3)
    expect(up).toBeLessThanOrEqual(0.3 + 1e-6)
  })

  it.each<readonly [string, Margin, number]>([
    // cos 2s is 0 at π/4; e^(−s) is at 0.4 the bound e^(−0.4).
    ['cos 2s', (at) => Math.cos(2 * at), Math.PI / 4],
    ['an exponential', (at) => Math.exp(-at) - Math.exp(-0.4), 0.4],
  ])(
    'finds the root of %s to a ten-millionth with far fewer looks than by halving',
    (_name, margin, root) => {
      const { share, asks } = found(margin, 1e-7)
      expect(share).toBeLessThanOrEqual(root)
      expect(share).toBeGreaterThanOrEqual(root - 1e-7)
      expect(asks).toBeLessThanOrEqual(12)
    },
  )

  it.each<readonly [string, number, number]>([
    ['between two numbers', 5, -3],
    ['from numbers to nothing', 5, -Infinity],
    ['from no tube at all to one', Infinity, -3],
    ['between two answers without a measure', Infinity, -Infinity],
    ['to where there is no number', 5, NaN],
  ])('finds a jump %s, nearly as fast as by halving', (_name, kept, broken) => {
    const { share, asks } = found((at) => (at < 0.37 ? kept : broken), 1e-5)
    expect(share).toBeLessThan(0.37)
    expect(share).toBeGreaterThan(0.37 - 1e-5)
    expect(asks).toBeLessThanOrEqual(halvings(1e-5) + 3)
  })

  it('carries on the broken side’s slope where only that side has a measure', () => {
    // No measure up to 0.37, from there broken by b + b²/5, b the way beyond: the last two looks there show the root ever better.
    const { share, asks } = found((at) => {
      const beyond = at - 0.37
      return beyond <= 0 ? Infinity : -beyond - beyond ** 2 / 5
    }, 1e-6)
    expect(share).toBeLessThanOrEqual(0.37)
    expect(share).toBeGreaterThan(0.37 - 1e-6)
    expect(asks).toBeLessThan(halvings(1e-6) / 2)
  })

  it('always ends, with the kept end of a bracket no wider than asked for, in a bounded number of looks', () => {
    const place = fc.double({ min: 0.001, max: 0.999, noNaN: true })
    const power = fc.double({ min: 0.2, max: 5, noNaN: true })
    const scale = fc.double({ min: 1e-3, max: 1e3, noNaN: true })
    const step = fc.constantFrom(0, 0, 1, Infinity)
    fc.assert(
      fc.property(
        fc.record({
          place,
          power,
          scale,
          above: step,
          below: step,
          exponent: fc.integer({ min: 2, max: 8 }),
        }),
        ({ place: root, power: bend, scale: times, above, below, exponent }) => {
          const toShare = 10 ** -exponent
          const margin: Margin = (at) =>
            at <= root ? times * (root - at) ** bend + above : -times * (at - root) ** bend - below - 1e-300
          const { share, asks } = found(margin, toShare)
          expect(margin(share)).toBeGreaterThanOrEqual(0)
          expect(margin(Math.min(1, share + toShare))).toBeLessThan(0)
          // Every third look is a halving, and there are never more than 80.
          expect(asks).toBeLessThanOrEqual(Math.min(80, 3 * halvings(toShare) + 3))
        },
      ),
    )
  })
})
