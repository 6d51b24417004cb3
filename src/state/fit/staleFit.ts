import { isSameValue } from '../sameValue'
import type { FitQuestion } from './fitMessages'

/** All of a layout that a count of who fits looks at: not the job, nor the names, the units, other variants or who sits there now. */
const counted = ({ layout, placeId }: FitQuestion): unknown => {
  const { job: _job, datum: _datum, units: _units, variants: _variants, reviews: _reviews, ...rest } = layout
  const { places, ...car } = rest
  const place = places.find(({ id }) => id === placeId)
  if (place === undefined) return car
  const { name: _name, occupants: _occupants, ...seated } = place
  return { ...car, place: seated }
}

/** Whether a count of one layout still holds for another. */
export const isSameCount = (a: FitQuestion, b: FitQuestion): boolean =>
  a.placeId === b.placeId && (a.layout === b.layout || isSameValue(counted(a), counted(b)))
