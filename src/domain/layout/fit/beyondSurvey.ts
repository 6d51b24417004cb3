import { bodyMassIndex } from '../../body/lapFlesh'
import type { Sex } from '../../body/occupant'

/** In what somebody is smaller or larger than everybody surveyed of that sex. */
export type BeyondReason = 'shorter' | 'taller' | 'lighter' | 'heavier' | 'leaner' | 'stouter'

interface Person {
  readonly sex: Sex
  readonly statureMm: number
  readonly massKg: number
}

const bounds = (values: readonly number[]): { readonly low: number; readonly high: number } =>
  values.reduce(({ low, high }, value) => ({ low: Math.min(low, value), high: Math.max(high, value) }), {
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
  })

/**
 * Where a person lies beyond everybody of that sex among `people`, in stature, mass or body mass index; empty when inside in all
 * three. Nothing that was counted says anything about somebody like that. That these three are looked at is our judgement.
 */
export const beyondSurvey = (person: Person, people: readonly Person[]): readonly BeyondReason[] => {
  const same = people.filter(({ sex }) => sex === person.sex)
  const sides = (
    of: (each: Person) => number,
    below: BeyondReason,
    above: BeyondReason,
  ): readonly BeyondReason[] => {
    const { low, high } = bounds(same.map(of))
    const value = of(person)
    return value < low ? [below] : value > high ? [above] : []
  }
  return [
    ...sides(({ statureMm }) => statureMm, 'shorter', 'taller'),
    ...sides(({ massKg }) => massKg, 'lighter', 'heavier'),
    ...sides(bodyMassIndex, 'leaner', 'stouter'),
  ]
}
