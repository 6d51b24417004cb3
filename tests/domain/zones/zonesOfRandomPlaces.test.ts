import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { VARIANTS } from '../straps/oracle/randomScenes'
import { casesOf, randomSittings, WIDE_RULES } from './randomPlaces'
import { compareZone, evenNumbers, nothingCompared, tooMany } from './zoneTrials'

/** Random places of each arrangement. `FC_RUNS` sets a long run. */
const SCENES = Math.max(6, Number(process.env['FC_RUNS'] ?? 0) / 50)

/** Places of the plane asked about in each. */
const PLACES = 150

/** Places that keep every rule outside a zone are room that is there and not shown: at most one of so many; measured one of 2,000. */
const ONE_MISSED_IN = 500

describe('zones of random places against the places solved anew in every sitting', () => {
  it.each(VARIANTS.map((variant, index) => ({ variant, index })))(
    '$variant: no place in a zone breaks a rule but in narrow strips',
    ({ variant, index }) => {
      const seed = (fc.readConfigureGlobal().seed ?? 0) + index
      const compared = nothingCompared()
      for (const [turn, sittings] of fc
        .sample(randomSittings(variant), { numRuns: SCENES, seed })
        .entries()) {
        const next = evenNumbers(seed + 1000 * turn)
        const cases = casesOf(sittings, turn % 2 === 1)
        const zoneCase = cases[turn % cases.length]
        if (zoneCase === undefined) throw new Error('an arrangement has straps')
        for (const elevation of ['side', 'top'] as const)
          compareZone(compared, WIDE_RULES, zoneCase, elevation, PLACES, next)
      }
      expect(compared.unsafe).toEqual([])
      expect(tooMany(compared.narrow, compared.asked / 1000)).toEqual([])
      expect(tooMany(compared.missed, compared.asked / ONE_MISSED_IN)).toEqual([])
      expect(compared.kept).toBeGreaterThan(0)
    },
  )
})
