import { describe, expect, it } from 'vitest'

import type { QuantityId } from '../../../src/domain/straps/quantity'
import type { Numbers } from './onLimit/car'
import { carsAtLimit, type Row } from './onLimit/onLimit'
import { LIMIT_ROWS } from './onLimit/rows'

/** Along the strap to its anchor, or on the one line that tail and runs of a symmetric pair are from the side. */
const TO_THE_ANCHOR: readonly QuantityId[] = [
  'shoulder-drop',
  'shoulder-to-spine',
  'shoulder-rim-drop',
  'shoulder-height',
  'shoulder-length-behind-seat',
]

/** Where the junction lies, which stands for the upper anchor. */
const AT_THE_JUNCTION: readonly QuantityId[] = ['shoulder-above-hip', 'shoulder-behind-hip']

const isOneOf = (ids: readonly QuantityId[], [, , measured]: Row): boolean =>
  ids.some((id) => id === measured)

const sidesOf = (ids: readonly QuantityId[]) =>
  LIMIT_ROWS.filter((row) => isOneOf(ids, row)).flatMap((row) => {
    const [set, ruleId, , , min, max] = row
    return [
      ...(min === null ? [] : [{ set, ruleId, side: 'min' as const, limit: min, row }]),
      ...(max === null ? [] : [{ set, ruleId, side: 'max' as const, limit: max, row }]),
    ]
  })

/** Both shoulder straps on one tail in the middle of the seat. */
const joined = (numbers: Numbers): Numbers => ({
  ...numbers,
  tailMm: 80,
  shoulder: { ...numbers.shoulder, yMm: 0 },
})

/** Joined straps driven by their tail: what drives separate ones apart is its length. */
const byTail = (numbers: Numbers): Numbers => ({
  ...numbers,
  tailMm: numbers.shoulder.yMm,
  shoulder: { ...numbers.shoulder, xMm: 600, yMm: 0 },
})

const DRIVEN = [
  ...sidesOf([...TO_THE_ANCHOR, ...AT_THE_JUNCTION]).map((each) => ({ ...each, changed: joined })),
  ...sidesOf(['shoulder-plan']).flatMap((each) =>
    each.side === 'max' ? [{ ...each, changed: byTail }] : [],
  ),
]

describe('a car with joined shoulder straps exactly on the limit', () => {
  it.each(DRIVEN)(
    'keeps $ruleId of $set at its $side $limit and breaks it a hair beyond',
    ({ row, side, limit, changed }) => {
      for (const { outward, missedBy, worst, finding } of carsAtLimit(row, side, limit, changed)) {
        expect(missedBy).toBeLessThan(1e-9)
        expect(finding).toMatchObject({ value: worst.value, worstSitting: worst.sittingId })
        expect(finding?.verdict).toBe(outward === 1 ? 'broken' : 'clear')
      }
    },
  )

  it.each(
    // The runs spread on their way to the shoulders: they are longer than they look from the side.
    sidesOf(TO_THE_ANCHOR.filter((id) => id !== 'shoulder-length-behind-seat')),
  )('meets the $side of $ruleId of $set where it would without its tail', ({ row, side, limit }) => {
    const [onLimit] = carsAtLimit(row, side, limit, joined)
    const [untailed] = carsAtLimit(row, side, limit, (numbers) => ({ ...joined(numbers), tailMm: null }))
    expect(onLimit?.setting).toBeCloseTo(untailed?.setting ?? NaN, 6)
  })

  it('has limits on everything that is asked of joined straps here', () => {
    expect(new Set(DRIVEN.map(({ row }) => row[2]))).toEqual(
      new Set([...TO_THE_ANCHOR, ...AT_THE_JUNCTION, 'shoulder-plan']),
    )
  })
})
