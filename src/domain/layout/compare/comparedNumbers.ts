import { type QuantityId, type QuantityUnit, quantityUnit, type Subject } from '../../straps/quantity'
import type { ShownPlace } from '../evaluate/evaluation'
import type { EvaluatedVariant } from './comparedFindings'
import { matchedPlaces } from './comparedParts'
import type { Matched } from './matched'

/** One computed number of a variant over all sittings of a place, in the quantity's unit. */
export interface NumberOfVariant {
  readonly least: number
  readonly most: number
  /** Worst by a rule that speaks of it: furthest beyond its limit, or nearest to it; null where no rule speaks of it. */
  readonly worst: number | null
}

/** The same number of the same strap of the same place in several variants. */
export interface ComparedNumber {
  /** Unique among the compared ones. */
  readonly key: string
  readonly quantity: QuantityId
  readonly subject: Subject
  /** The id of the place in each variant. */
  readonly placeIds: Matched<string>
  readonly values: Matched<NumberOfVariant>
}

const numbersOf = (place: ShownPlace): ReadonlyMap<string, NumberOfVariant> => {
  const numbers = new Map<string, NumberOfVariant>()
  for (const { quantities } of place.sittings) {
    for (const { id, subject, value } of quantities) {
      const key = `${id}/${subject}`
      const before = numbers.get(key)
      numbers.set(key, {
        least: Math.min(before?.least ?? value, value),
        most: Math.max(before?.most ?? value, value),
        worst: null,
      })
    }
  }
  // Findings come worst first: the first that speaks of a number says which of its values counts.
  for (const { quantity, subject, value } of place.findings.toReversed()) {
    const key = `${quantity}/${subject}`
    const number = numbers.get(key)
    if (number !== undefined && typeof value === 'number') numbers.set(key, { ...number, worst: value })
  }
  return numbers
}

/** The one number that stands for all sittings: the worst by a rule, or the only one there is; null where there are several alike. */
export const standsFor = (number: NumberOfVariant | null): number | null =>
  number === null ? null : (number.worst ?? (number.most - number.least <= ALIKE ? number.least : null))

/** Closer than this, in the quantity's unit, two are alike: well below what is shown. Our judgement. */
const ALIKE = 1e-6

/** Whether two variants have the same number in every sitting, as far as its ends and its worst tell. */
const isSameNumber = (a: NumberOfVariant | null, b: NumberOfVariant | null): boolean => {
  if (a === null || b === null) return a === b
  const ends = Math.max(Math.abs(a.least - b.least), Math.abs(a.most - b.most))
  return ends <= ALIKE && Math.abs((standsFor(a) ?? 0) - (standsFor(b) ?? 0)) <= ALIKE
}

/** Whether any two variants differ in a number. */
export const doesNumberDiffer = ({ values }: ComparedNumber): boolean =>
  values.some((value) => !isSameNumber(value, values[0] ?? null))

/** Of one variant less that of another, in the quantity's unit; null where either has not one number that stands for all sittings. */
export const numberBy = ({ values }: ComparedNumber, from: number, to: number): number | null => {
  const before = standsFor(values[from] ?? null)
  const after = standsFor(values[to] ?? null)
  return before === null || after === null ? null : after - before
}

/**
 * What counts alike when differences are put in order: at the end of half a metre of strap a degree is some 10 mm, and turns about 0.02 of
 * a strap's tension. Our judgement; it orders a list and judges nothing.
 */
const ALIKE_SIZES: Readonly<Record<QuantityUnit, number>> = { deg: 1, mm: 10, ratio: 0.02 }

/** How much a number changes between any variant and the one at `base`, in the sizes above. */
const changeSize = ({ quantity, values }: ComparedNumber, base: number): number => {
  const unit = ALIKE_SIZES[quantityUnit(quantity)]
  const before = values[base] ?? null
  const sizes = values.map((after) => {
    if (before === null || after === null) return before === after ? 0 : Number.MAX_VALUE
    const [from, to] = [standsFor(before), standsFor(after)]
    if (from !== null && to !== null) return Math.abs(to - from) / unit
    return Math.max(Math.abs(after.least - before.least), Math.abs(after.most - before.most)) / unit
  })
  return Math.max(...sizes)
}

/** Every computed number of several variants beside the same one of the others, what differs most from the one at `base` first. */
export const comparedNumbers = (
  variants: readonly EvaluatedVariant[],
  base: number,
): readonly ComparedNumber[] => {
  const rows = matchedPlaces(variants.map(({ layout }) => layout)).flatMap((places, placeRow) => {
    const numbers = places.map((place, variant) => {
      const found = variants[variant]?.evaluation.places.find(({ placeId }) => placeId === place?.id)
      return found === undefined ? new Map<string, NumberOfVariant>() : numbersOf(found)
    })
    const keys = new Set(numbers.flatMap((own) => [...own.keys()]))
    return [...keys].map((key): ComparedNumber => {
      const [quantity, subject] = key.split('/') as [QuantityId, Subject]
      return {
        key: `${placeRow}/${key}`,
        quantity,
        subject,
        placeIds: places.map((place) => place?.id ?? null),
        values: numbers.map((own) => own.get(key) ?? null),
      }
    })
  })
  return rows.toSorted((a, b) => changeSize(b, base) - changeSize(a, base))
}
