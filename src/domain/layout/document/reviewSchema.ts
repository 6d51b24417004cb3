import * as v from 'valibot'

import { COUNTS, TEXT_LENGTHS } from './limits'
import { date, group, id, list, text } from './schemaParts'

/*
 * What a layout file and the answer to a proposal hold of the talk with the customer.
 */

const hexadecimal = (pattern: RegExp, wanted: string, description: string) =>
  v.pipe(
    v.string(),
    v.regex(pattern),
    v.title('fingerprint'),
    v.description(description),
    v.metadata({ wanted }),
  )

const fingerprint = () =>
  hexadecimal(
    /^[0-9a-f]{16,64}$/,
    '16 to 64 lower-case hexadecimal digits',
    'Changes with anything that bears on the person who sits there.',
  )

/** An id that may be empty, or the id of a handle, which joins ids by colons. */
const reference = (title: string, description: string, pattern: RegExp, wanted: string) =>
  v.pipe(
    v.string(),
    v.maxLength(TEXT_LENGTHS.partId),
    v.regex(pattern),
    v.title(title),
    v.description(description),
    v.metadata({ wanted }),
  )

const variantId = () =>
  reference(
    'variant',
    'The id of a variant; empty where the layout had none.',
    /^([A-Za-z0-9][A-Za-z0-9._-]*)?$/,
    'the id of a variant, or "" for none',
  )

const kind = <const Kind extends string>(name: Kind) => v.pipe(v.literal(name), v.title('kind'))

const said = {
  id: id('id'),
  date: date('date', 'needed'),
  by: text('by', 'Who said it.'),
}

const partId = (title: string, description: string) =>
  reference(title, description, /^([A-Za-z0-9][A-Za-z0-9._:-]*)?$/, 'the id of a part, or "" for the whole')

const partPrint = group(
  {
    partId: partId('part', 'An anchor, a tube, a seat, … of the drawing.'),
    fingerprint: hexadecimal(
      /^[0-9a-f]{8,64}$/,
      '8 to 64 lower-case hexadecimal digits',
      'Changes with that part.',
    ),
  },
  'part',
)

const seen = { variantId: variantId(), name: text('name'), fingerprint: fingerprint() }

const reviewed = group(
  {
    ...seen,
    parts: v.exactOptional(
      list(partPrint, COUNTS.reviewedParts, 'parts', 'Each part as it was; left out where nobody kept it.'),
    ),
  },
  'shown variant',
)

const shown = group(
  {
    kind: kind('shown'),
    ...said,
    to: text('to'),
    variants: list(reviewed, COUNTS.reviewedVariants, 'variants', 'As they were when they were shown.'),
  },
  'entry',
  'A version of the layout was put before the customer.',
)

const comment = group(
  {
    kind: kind('comment'),
    ...said,
    shownId: id('shown'),
    variantId: variantId(),
    partId: partId('part', 'The part of the drawing it is pinned to; empty: about the whole.'),
    text: text('text', '', TEXT_LENGTHS.comment),
  },
  'entry',
  'A question or a remark.',
)

const decision = <const Kind extends string>(name: Kind, description: string) =>
  group(
    {
      kind: kind(name),
      ...said,
      shownId: id('shown'),
      variantId: variantId(),
      fingerprint: fingerprint(),
      text: text('text', '', TEXT_LENGTHS.comment),
      toldBroken: v.exactOptional(
        list(
          id('rule'),
          COUNTS.toldBroken,
          'told broken',
          'Rules that order something and were broken, which was said before; left out where there were none.',
        ),
      ),
    },
    'entry',
    description,
  )

const agreed = decision('agreed', 'The customer agreed to a variant.')
const changeAsked = decision('change-asked', 'The customer asked for a change.')

export const reviews = list(
  v.pipe(v.variant('kind', [shown, comment, agreed, changeAsked]), v.title('entry')),
  COUNTS.reviews,
  'reviews',
  'What the customer was shown and said, oldest first; only ever added to, left out while nothing was shown.',
)

/** What the customer was shown and said to it. */
export const answerEntries = list(
  v.pipe(v.variant('kind', [shown, comment, agreed, changeAsked]), v.title('entry')),
  COUNTS.answerEntries,
  'entries',
  'What the customer was shown, then what was said to it.',
)
