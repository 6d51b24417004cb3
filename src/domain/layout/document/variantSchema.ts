import { COUNTS, LIMITS } from './limits'
import { place, tube } from './placeSchema'
import { group, id, limitedNumber, list, text } from './schemaParts'

const NAME_WORDS = 'Not empty, and no other variant is called so.'

const drawn = group(
  {
    id: id('id'),
    name: text('name', NAME_WORDS),
    index: limitedNumber(LIMITS.variantIndex, 'index', 'Where it stands among all variants, counted from 0.'),
  },
  'drawn variant',
  'The variant whose tubes and places the layout itself holds.',
)

const variant = group(
  {
    id: id('id'),
    name: text('name', NAME_WORDS),
    tubes: list(tube, COUNTS.tubes, 'tubes'),
    places: list(place, COUNTS.places, 'places'),
  },
  'variant',
  'Another way to build the same car: its tubes and its places with all that is in them.',
)

/** The description of the variants of a car. */
export const variants = group(
  { drawn, others: list(variant, COUNTS.otherVariants, 'other variants', 'In their order.') },
  'variants',
  'Up to four ways to build the car; left out while there is only one that nothing names. All else in the layout holds for each of them.',
)
