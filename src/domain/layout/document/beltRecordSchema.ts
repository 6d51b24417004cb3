import * as v from 'valibot'

import { BELT_FACTS, BELT_STANDARDS, INSPECTION_RESULTS, RELEASERS } from '../../care/beltRecord'
import { BELT_YEARS } from '../../care/entryProblems'
import { INSPECTION_ITEMS, type InspectionItemId } from '../../care/inspection'
import { COUNTS, LIMITS, TEXT_LENGTHS } from './limits'
import { choice, group, id, limitedNumber, list, text } from './schemaParts'

/*
 * What a layout file holds about belts that are or were fitted: their labels and everything that happened to them.
 */

const dated = (pattern: RegExp, title: string, description: string, wanted: string) =>
  v.pipe(v.string(), v.regex(pattern), v.title(title), v.description(description), v.metadata({ wanted }))

const day = (title: string, description: string) =>
  dated(/^\d{4}-\d{2}-\d{2}$/, title, description, 'a date as YYYY-MM-DD')

const result = (title: string) => choice(INSPECTION_RESULTS, title)

const results = group(
  Object.fromEntries(
    INSPECTION_ITEMS.map((item) => [item.id, v.exactOptional(result(item.name.toLowerCase()))]),
  ) as Record<InspectionItemId, v.ExactOptionalSchema<ReturnType<typeof result>, undefined>>,
  'results',
  'What was found of each thing; what is left out was not looked at.',
)

const said = {
  id: id('id'),
  date: day('date', 'When it happened, ISO 8601.'),
  by: text('by'),
  note: text('note', '', TEXT_LENGTHS.notes),
}

const kind = <const Kind extends string>(name: Kind) => v.pipe(v.literal(name), v.title('kind'))

const entry = v.pipe(
  v.variant('kind', [
    group({ kind: kind('inspection'), ...said, results }, 'entry', 'The belt was looked over.'),
    group({ kind: kind('cleaning'), ...said }, 'entry', 'The belt was cleaned.'),
    group({ kind: kind('crash'), ...said }, 'entry', 'A crash, roll-over or hard landing while it was worn.'),
    group(
      { kind: kind('released'), ...said, lookedAtBy: choice(RELEASERS, 'looked at by') },
      'entry',
      'Looked at and put back into use.',
    ),
    group({ kind: kind('retired'), ...said }, 'entry', 'Taken out of the car for good.'),
    group({ kind: kind('note'), ...said }, 'entry'),
    group(
      {
        kind: kind('corrected'),
        ...said,
        fact: choice(BELT_FACTS, 'fact'),
        from: text('from', 'As it stood before; empty where nothing was known.'),
        to: text('to', 'As it stands from then on.'),
      },
      'entry',
      'A fact of the label or the fitting was changed; the note says why.',
    ),
    group(
      { kind: kind('struck'), ...said, entryId: id('struck entry') },
      'entry',
      'Takes back an earlier entry, which stays; the note says why.',
    ),
  ]),
  v.title('entry'),
)

const beltRecord = group(
  {
    id: id('id'),
    placeId: id('place'),
    name: text('name', 'What the shop calls it.'),
    standard: choice(BELT_STANDARDS, 'standard', 'On the label.'),
    serial: text('serial', 'Serial or batch number on the label.'),
    manufactured: dated(
      /^(\d{4}(-\d{2}(-\d{2})?)?)?$/,
      'manufactured',
      'Date of manufacture on the label: the day, the month or the year, as far as it can be read; or empty.',
      'a date as YYYY-MM-DD, YYYY-MM or YYYY, or "" where it cannot be read',
    ),
    labelYear: v.nullable(
      limitedNumber(
        { ...BELT_YEARS, unit: '' },
        'label year',
        'The last year of use that the label itself states; null where it states none.',
      ),
    ),
    fitted: dated(
      /^(\d{4}-\d{2}-\d{2})?$/,
      'fitted',
      'When it was fitted, ISO 8601, or empty.',
      'a date as YYYY-MM-DD, or "" for none',
    ),
    inspectEveryMonths: v.exactOptional(
      limitedNumber(
        LIMITS.inspectEveryMonths,
        'inspect every',
        'Whole months, the shop’s own choice; left out when it wants no reminder.',
      ),
    ),
    entries: list(
      entry,
      COUNTS.beltEntries,
      'entries',
      'In the order they were entered; only ever added to.',
    ),
  },
  'belt',
  'A belt that is or was fitted, with its history.',
)

export const beltRecords = list(
  beltRecord,
  COUNTS.beltRecords,
  'belts',
  'Records of belts, those of places that were removed among them; left out when there are none.',
)
