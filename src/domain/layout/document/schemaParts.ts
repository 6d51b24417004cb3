import * as v from 'valibot'

import { LIMITS, type NumberLimits, TEXT_LENGTHS } from './limits'

/*
 * What a layout's description is put together from: each kind of field with its title, its meaning and its unit.
 */

export const limitedNumber = (limits: NumberLimits, title: string, description = '') =>
  v.pipe(
    v.number(),
    v.minValue(limits.min),
    v.maxValue(limits.max),
    // JSON can hold -0; it equals 0 everywhere in the geometry and must not survive as a difference.
    v.transform((value) => (value === 0 ? 0 : value)),
    v.title(title),
    v.description(description),
    v.metadata({ unit: limits.unit }),
  )

export const text = (title: string, description = '', maxLength: number = TEXT_LENGTHS.name) =>
  v.pipe(v.string(), v.maxLength(maxLength), v.title(title), v.description(description))

/** No colon or slash: those join ids into the longer ids of handles, sittings and findings. */
const ID_PATTERN = /^[A-Za-z0-9][A-Za-z0-9._-]*$/

export const id = (title: string) =>
  v.pipe(
    v.string(),
    v.maxLength(TEXT_LENGTHS.id),
    v.regex(ID_PATTERN),
    v.title(title),
    v.metadata({
      wanted: 'an id of letters, digits, dots, hyphens and underscores that starts with a letter or digit',
    }),
  )

/** A calendar date as text; `may-be-empty` where nobody has to know it. That the calendar has the day is checked with the whole layout. */
export const date = (title: string, need: 'may-be-empty' | 'needed') =>
  v.pipe(
    v.string(),
    v.regex(need === 'needed' ? /^\d{4}-\d{2}-\d{2}$/ : /^(\d{4}-\d{2}-\d{2})?$/),
    v.title(title),
    v.description(need === 'needed' ? 'Calendar date (ISO 8601).' : 'Calendar date (ISO 8601), or empty.'),
    v.metadata({
      wanted: need === 'needed' ? 'a date as YYYY-MM-DD' : 'a date as YYYY-MM-DD, or "" for none',
    }),
  )

export const flag = (title: string, description = '') =>
  v.pipe(v.boolean(), v.title(title), v.description(description))

export const choice = <const Options extends readonly (string | number)[]>(
  options: Options,
  title: string,
  description = '',
) => v.pipe(v.picklist(options), v.title(title), v.description(description))

export const list = <Item extends v.GenericSchema>(
  item: Item,
  counts: { readonly min: number; readonly max: number },
  title: string,
  description = '',
) =>
  v.pipe(
    v.array(item),
    v.minLength(counts.min),
    v.maxLength(counts.max),
    v.title(title),
    v.description(description),
  )

export const group = <const Entries extends v.ObjectEntries>(
  entries: Entries,
  title: string,
  description = '',
) => v.pipe(v.strictObject(entries), v.title(title), v.description(description))

export const point = (title: string, description = 'From the datum.') =>
  group(
    {
      xMm: limitedNumber(LIMITS.coordinateMm, 'x', 'Rearward.'),
      yMm: limitedNumber(LIMITS.coordinateMm, 'y', "To the occupant's right."),
      zMm: limitedNumber(LIMITS.coordinateMm, 'z', 'Up.'),
    },
    title,
    description,
  )
