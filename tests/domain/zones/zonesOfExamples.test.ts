import { describe, expect, it } from 'vitest'
import { chosenRuleSet } from '../../../src/domain/layout/document/ruleSetOf'
import { zoneCases } from '../../../src/domain/layout/evaluate/ruleContexts'
import { solvedSittings } from '../../../src/domain/layout/evaluate/solvedSittings'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { compareZone, evenNumbers, nothingCompared, tooMany } from './zoneTrials'

/** Places asked about in each plane of each anchor. `FC_RUNS` sets a long run. */
const PLACES = Math.max(48, Number(process.env['FC_RUNS'] ?? 0))

describe('zones of the examples against their places solved anew in every sitting', () => {
  it.each(exampleIndex)(
    '$title: no place in a zone breaks a rule, and next to none outside keeps all',
    ({ file }) => {
      const layout = exampleLayout(file)
      const rules = chosenRuleSet(layout).rules.flatMap((rule) => (rule.kind === 'quantity' ? [rule] : []))
      const next = evenNumbers(file.length)
      const compared = nothingCompared()
      for (const place of layout.places)
        for (const zoneCase of zoneCases(layout, place, solvedSittings(layout, place)).values())
          for (const elevation of ['side', 'top'] as const)
            compareZone(compared, rules, zoneCase, elevation, PLACES, next)
      expect(compared.unsafe).toEqual([])
      expect(tooMany(compared.narrow, compared.asked / 1000)).toEqual([])
      expect(tooMany(compared.missed, compared.asked / 1000)).toEqual([])
      expect(compared.asked > 0).toBe(layout.places.some(({ anchors }) => anchors.length > 0))
    },
  )
})
