import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compared, type Difference } from './compare'
import { KINDS, kindsOf } from './kinds'
import { randomScene, VARIANTS } from './randomScenes'

/** Random cars for each arrangement, others for each. */
const CASES = Math.max(2000, Number(process.env['FC_RUNS'] ?? 0))

const saidOf = ({ strap, what, by, unit }: Difference): string => `${strap} ${what} ${by.toFixed(4)} ${unit}`

describe('solvePlace against the slow solver', () => {
  const met = new Map<string, number>()

  it.each(VARIANTS)('agrees within 0.05 mm and 0.02° on %s belts', (variant) => {
    let straps = 0
    fc.assert(
      fc.property(randomScene(variant), (given) => {
        const { compared: both, differences, onlyOracle, onlySolver } = compared(given)
        straps += both.length
        for (const kind of both.flatMap((strap) => kindsOf(given, strap)))
          met.set(kind, (met.get(kind) ?? 0) + 1)
        expect({ differences: differences.map(saidOf), onlyOracle, onlySolver }).toEqual({
          differences: [],
          onlyOracle: [],
          onlySolver: [],
        })
      }),
      {
        numRuns: CASES,
        // The first failing car says enough; making it smaller takes minutes.
        endOnFailure: true,
        seed: (fc.readConfigureGlobal().seed ?? 0) + VARIANTS.indexOf(variant),
      },
    )
    expect(straps).toBeGreaterThan(CASES * 2)
  })

  it('has met every kind of mount, opening and way often', () => {
    expect(KINDS.filter((kind) => (met.get(kind) ?? 0) < 40)).toEqual([])
  })
})
