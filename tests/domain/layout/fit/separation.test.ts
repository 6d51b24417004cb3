import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  FEWEST_ON_A_SIDE,
  limitingMeasure,
  rankedMeasure,
} from '../../../../src/domain/layout/fit/separation'

const ranked = (columns: Readonly<Record<string, readonly number[]>>) =>
  Object.entries(columns).map(([measure, column]) => rankedMeasure(measure, column))

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1)

/** Share of the chosen people whose value lies in a closed stretch. */
const shareInside = (
  values: readonly number[],
  isChosen: (i: number) => boolean,
  low: number,
  high: number,
) => {
  const chosen = values.filter((_, index) => isChosen(index))
  return chosen.filter((value) => value >= low && value <= high).length / chosen.length
}

/** The best stretch by trying every pair of limits: open ones first, closed ones only when better by more than 0.05. */
const triedStrength = (values: readonly number[], passes: readonly boolean[]): number => {
  const gain = (low: number, high: number): number =>
    shareInside(values, (index) => passes[index] === true, low, high) -
    shareInside(values, (index) => passes[index] !== true, low, high)
  const open = Math.max(
    0,
    ...values.flatMap((value) => [
      gain(-Infinity, value),
      gain(value, Infinity),
      // The open stretch just beyond a value, without it.
      -gain(-Infinity, value),
      -gain(value, Infinity),
    ]),
  )
  const closed = Math.max(
    ...values.flatMap((low) => values.map((high) => (low <= high ? gain(low, high) : 0))),
  )
  return closed > open + 0.05 ? closed : open
}

const crowd = fc
  .array(fc.record({ value: fc.integer({ min: 0, max: 12 }), passes: fc.boolean() }), {
    minLength: 12,
    maxLength: 40,
  })
  .filter((all) => {
    const passing = all.filter(({ passes }) => passes).length
    return Math.min(passing, all.length - passing) >= FEWEST_ON_A_SIDE
  })

describe('limiting body measure', () => {
  it('is the measure that tells them apart without a mistake, with the limit at the last who passes', () => {
    const people = upTo(40)
    const found = limitingMeasure(
      ranked({ noise: people.map((n) => (n * 17) % 40), decides: people.map((n) => 500 + n) }),
      people.map((n) => n >= 16),
    )
    expect(found).toEqual({
      measure: 'decides',
      from: 516,
      to: null,
      passing: 25,
      passingInside: 25,
      notPassing: 15,
      notPassingInside: 0,
      strength: 1,
    })
  })

  it('closes the stretch on both sides when people fail at both ends', () => {
    const people = upTo(40)
    const found = limitingMeasure(
      ranked({ height: people }),
      people.map((n) => n >= 11 && n <= 30),
    )
    expect(found).toMatchObject({ from: 11, to: 30, strength: 1 })
  })

  it('keeps people of one value together', () => {
    // Ten at each of 1, 2, 3; of the 2s half pass, as all 3s do and no 1 does: 15 pass, 15 do not.
    const values = upTo(30).map((n) => Math.ceil(n / 10))
    const passes = upTo(30).map((n) => n > 15)
    const found = limitingMeasure(ranked({ values }), passes)
    // From 2 up: 15/15 of those who pass, 5/15 of the others: 2/3. From 3 up: 10/15 and 0/15: 2/3 too.
    expect(found?.strength).toBeCloseTo(2 / 3, 9)
  })

  it('is as strong as the best of all stretches tried one by one', () => {
    fc.assert(
      fc.property(crowd, (all) => {
        const values = all.map(({ value }) => value)
        const passes = all.map(({ passes: is }) => is)
        const found = limitingMeasure(ranked({ values }), passes)
        const low = found?.from ?? -Infinity
        const high = found?.to ?? Infinity
        const strength = found?.strength ?? Number.NaN
        expect(strength).toBeCloseTo(triedStrength(values, passes), 9)
        // What it says about itself is so.
        expect(
          shareInside(values, (index) => passes[index] === true, low, high) -
            shareInside(values, (index) => passes[index] !== true, low, high),
        ).toBeCloseTo(strength, 9)
      }),
    )
  })

  it('does not depend on the scale of a measure, nor on the order of the people', () => {
    fc.assert(
      fc.property(crowd, (all) => {
        const strengthOf = (list: typeof all, scale: (value: number) => number): number | undefined =>
          limitingMeasure(
            ranked({ values: list.map(({ value }) => scale(value)) }),
            list.map(({ passes }) => passes),
          )?.strength
        const plain = strengthOf(all, (value) => value) ?? Number.NaN
        expect(strengthOf(all, (value) => value ** 3 + 7)).toBeCloseTo(plain, 9)
        expect(strengthOf(all.toReversed(), (value) => value)).toBeCloseTo(plain, 9)
      }),
    )
  })

  it('is not named with fewer than five people on a side, and is with five', () => {
    const people = upTo(40)
    const atMost = (limit: number) =>
      limitingMeasure(
        ranked({ height: people }),
        people.map((n) => n > limit),
      )
    expect(atMost(4)).toBeNull()
    expect(atMost(5)).toMatchObject({ from: 6, strength: 1 })
    expect(atMost(35)).toMatchObject({ from: 36 })
    expect(atMost(36)).toBeNull()
  })

  it('is the first named of two that are equal', () => {
    const people = upTo(20)
    const found = limitingMeasure(
      ranked({ first: people, second: people.map((n) => n * 2) }),
      people.map((n) => n > 10),
    )
    expect(found?.measure).toBe('first')
  })
})
