import * as v from 'valibot'

import { asWelded } from './asWeldedSchema'
import { beltRecords } from './beltRecordSchema'
import { type Layout, LAYOUT_VERSION } from './layout'
import { COUNTS, TEXT_LENGTHS } from './limits'
import { photos } from './photoSchema'
import { place, tube } from './placeSchema'
import type { ReviewEntry } from './review'
import { answerEntries, reviews } from './reviewSchema'
import { confirmedDocuments, ownRuleSets } from './ruleSetSchema'
import { tapePoints } from './tapePointSchema'
import { choice, flag, group, id, list, text } from './schemaParts'
import { tolerance } from './toleranceSchema'
import { variants } from './variantSchema'

/*
 * The one description of a layout file. Reading, the words of its messages and the published JSON Schema all come from it:
 * a title is the field's name in words, a description what it means. With the files it is put together from the only ones of the domain that use a package.
 */

const calendarDate = () =>
  v.pipe(
    v.string(),
    v.regex(/^(\d{4}-\d{2}-\d{2})?$/),
    v.title('date'),
    v.description('Calendar date (ISO 8601), or empty.'),
    v.metadata({ wanted: 'a date as YYYY-MM-DD, or "" for none' }),
  )

const revision = group(
  {
    revision: text('revision'),
    date: calendarDate(),
    by: text('by'),
    change: text('change', 'What was changed.', TEXT_LENGTHS.change),
  },
  'revision',
)

const job = group(
  {
    name: text('name'),
    car: text('car'),
    customer: text('customer'),
    date: calendarDate(),
    revision: text('revision'),
    preparedBy: text('prepared by'),
    notes: text('notes', '', TEXT_LENGTHS.notes),
    revisions: v.exactOptional(
      list(
        revision,
        COUNTS.revisions,
        'revisions',
        'What was changed, oldest first; left out while none are kept.',
      ),
    ),
  },
  'job',
)

const layoutSchema = group(
  {
    version: v.pipe(v.literal(LAYOUT_VERSION), v.title('version'), v.description('Version of this format.')),
    job,
    datum: text('datum', 'Where the datum is, in words a welder can find it by.'),
    units: group(
      {
        length: choice(['mm', 'in'], 'length'),
        force: choice(['N', 'daN', 'lbf'], 'force'),
        mass: choice(['kg', 'lb'], 'mass'),
      },
      'units',
      'What is shown; the file itself is always in mm, degrees and kg.',
    ),
    dustyOrMuddyUse: flag('dusty or muddy use'),
    ruleSetId: id('rule set'),
    ownRuleSets: v.exactOptional(ownRuleSets),
    confirmedDocuments: v.exactOptional(confirmedDocuments),
    tolerance: v.exactOptional(tolerance),
    asWelded: v.exactOptional(asWelded),
    belts: v.exactOptional(beltRecords),
    variants: v.exactOptional(variants),
    reviews: v.exactOptional(reviews),
    tubes: list(tube, COUNTS.tubes, 'tubes'),
    tapePoints: v.exactOptional(tapePoints),
    photos: v.exactOptional(photos),
    notMeasured: v.exactOptional(
      list(
        id('question'),
        COUNTS.notMeasured,
        'not measured',
        'Questions of the first layout whose numbers still stand where they started; left out where it did not come of questions.',
      ),
    ),
    places: list(place, COUNTS.places, 'places'),
  },
  'layout',
  "Everything about one car's restraint mounting. Vehicle axes: x rearward, y to the occupant's right, z up, from the datum.",
)

/** The description as plain data, for the words of messages and for the JSON Schema. */
export const LAYOUT_FIELDS: unknown = layoutSchema

/** One field that does not fit the description. `path` leads to it from the top of the file. */
export interface FieldIssue {
  readonly path: readonly (string | number)[]
  readonly kind: 'missing' | 'unknown-field' | 'value'
  readonly received: unknown
}

/** What the description says about `input`: the layout, or every field that does not fit. */
export const readFields = (
  input: unknown,
): { readonly layout: Layout } | { readonly issues: readonly FieldIssue[] } => {
  const result = v.safeParse(layoutSchema, input)
  if (result.success) return { layout: result.output }
  return { issues: result.issues.map(fieldIssue) }
}

/** What the description says about the entries of a customer's answer: the entries, or every field that does not fit, from `reviews` on. */
export const readAnswerEntries = (
  input: unknown,
): { readonly entries: readonly ReviewEntry[] } | { readonly issues: readonly FieldIssue[] } => {
  const result = v.safeParse(answerEntries, input)
  if (result.success) return { entries: result.output }
  const issues = result.issues.map(fieldIssue)
  return { issues: issues.map((issue) => ({ ...issue, path: ['reviews', ...issue.path] })) }
}

const fieldIssue = (issue: v.BaseIssue<unknown>): FieldIssue => {
  const last = issue.path?.at(-1)
  const path = (issue.path ?? []).map((item) => item.key as string | number)
  if (last?.origin !== 'key') return { path, kind: 'value', received: issue.input }
  // A list where a group of named fields belongs would otherwise be reported as its first missing field.
  if (Array.isArray(last.input)) return { path: path.slice(0, -1), kind: 'value', received: last.input }
  return { path, kind: issue.expected === 'never' ? 'unknown-field' : 'missing', received: last.value }
}
