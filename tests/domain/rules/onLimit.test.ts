import { describe, expect, it } from 'vitest'

import { RULE_SETS } from '../../../src/domain/rules/ruleSets'
import { ARRANGEMENTS } from '../../../src/domain/straps/strap'
import { carOf, FACETS, NUMBERS } from './onLimit/car'
import { carsAtLimit, facetsFor, findingsIn } from './onLimit/onLimit'
import { LIMIT_ROWS } from './onLimit/rows'

/** Points come in whole numbers and are tried one by one below. */
const DRIVEN = LIMIT_ROWS.filter(([, , measured]) => measured !== 'belt-points')

/** A lap strap past the vertical has no path at all, see below. */
const isUpright = (measured: string, limit: number): boolean => measured === 'lap-angle' && limit === 90

const SIDES = DRIVEN.flatMap((row) => {
  const [, ruleId, measured, , min, max] = row
  return [
    ...(min === null ? [] : [{ ruleId, side: 'min' as const, limit: min, row }]),
    ...(max === null || isUpright(measured, max) ? [] : [{ ruleId, side: 'max' as const, limit: max, row }]),
  ]
})

it('has every limit of every set that is a number', () => {
  const limited = RULE_SETS.flatMap(({ id, rules }) =>
    rules
      .filter((rule) => rule.kind !== 'stated' && (rule.min !== null || rule.max !== null))
      .map((rule) => `${id}/${rule.id}`),
  )
  expect(LIMIT_ROWS.map(([set, ruleId]) => `${set}/${ruleId}`).toSorted()).toEqual(limited.toSorted())
})

describe('a car exactly on the limit', () => {
  it.each(SIDES)('keeps $ruleId at its $side $limit and breaks it a hair beyond', ({ row, side, limit }) => {
    const [, , , , min, max, level, document, status] = row
    for (const { outward, missedBy, worst, finding } of carsAtLimit(row, side, limit)) {
      expect(missedBy).toBeLessThan(1e-9)
      expect(finding).toMatchObject({
        limit: { min, max, wanted: null },
        level,
        source: { document, status },
        worstSitting: worst.sittingId,
        value: worst.value,
      })
      expect(finding?.verdict).toBe(outward === 1 ? 'broken' : 'clear')
    }
  })
})

describe.each(DRIVEN.flatMap((row) => (isUpright(row[2], row[5] ?? 0) ? [{ ruleId: row[1], row }] : [])))(
  '$ruleId, which lets a lap strap stand upright',
  ({ row }) => {
    const verdictAt = (xMm: number) => {
      const car = carOf(row[0], FACETS, { ...NUMBERS, lap: { ...NUMBERS.lap, xMm } })
      const found = findingsIn(car, row).find(({ subject }) => subject === 'lap-left')
      return { verdict: found?.verdict, problem: found?.problem?.kind ?? null, value: found?.value }
    }

    it('keeps the upright strap and never calls the one past it clear', () => {
      expect(verdictAt(0)).toEqual({ verdict: 'clear', problem: null, value: 90 })
      expect(verdictAt(1e-6)).toMatchObject({ verdict: 'clear', problem: null })
      for (const xMm of [-1e-6, -1, -30]) expect(['broken', 'unchecked']).toContain(verdictAt(xMm).verdict)
      expect(verdictAt(-30).problem).toBe('lap-anchor-not-behind')
    })
  },
)

describe('points, which come in whole numbers', () => {
  it.each(
    LIMIT_ROWS.filter(([, , measured]) => measured === 'belt-points').map((row) => ({ ruleId: row[1], row })),
  )('are asked for by $ruleId in the number that its document gives', ({ row }) => {
    const [set, , , , min, , level, document, status, when] = row
    for (const points of ARRANGEMENTS) {
      const found = findingsIn(carOf(set, { ...facetsFor(row), points }, NUMBERS), row)
      const asked = { value: points, limit: { min, max: null }, level, source: { document, status } }
      const verdict = points < (min ?? 0) ? 'broken' : 'clear'
      expect(found).toMatchObject(when.points?.includes(points) === false ? [] : [{ ...asked, verdict }])
    }
  })
})
