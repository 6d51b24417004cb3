import * as v from 'valibot'

import { BODY_MEASURES, type BodyMeasure } from '../../body/occupant'
import { STRAP_IDS } from '../../straps/strap'
import { anchor } from './anchorSchema'
import { asWelded } from './asWeldedSchema'
import { beltRecords } from './beltRecordSchema'
import { belt } from './beltSchema'
import { type Layout, LAYOUT_VERSION } from './layout'
import { COUNTS, LIMITS, MEASURE_LIMITS, TEXT_LENGTHS } from './limits'
import { confirmedDocuments, ownRuleSets } from './ruleSetSchema'
import { tapePoints } from './tapePointSchema'
import { choice, flag, group, id, limitedNumber, list, point, text } from './schemaParts'
import { tolerance } from './toleranceSchema'

/*
 * The one description of a layout file. Reading, the words of its messages and the published JSON Schema all come from it:
 * a title is the field's name in words, a description what it means. With the files it is put together from the only ones of the domain that use a package.
 */

const seatNumber = (title: string, description: string) =>
  limitedNumber(LIMITS.seatCoordinateMm, title, description)

const seatXMm = seatNumber('x', 'Square to the torso line, rearward from the hip point.')
const seatYMm = seatNumber('y', 'To the right of the hip point.')
const seatZMm = seatNumber('z', 'Along the torso line, up from the hip point.')

const tube = group(
  {
    id: id('id'),
    name: text('name'),
    role: choice(['harness-bar', 'cage', 'floor'], 'role'),
    points: list(point('point'), COUNTS.tubePoints, 'centre-line points'),
    outsideDiameterMm: limitedNumber(LIMITS.outsideDiameterMm, 'outside diameter'),
    wallMm: limitedNumber(LIMITS.wallMm, 'wall thickness'),
  },
  'tube',
  'A round chassis tube as the polyline of its centre line.',
)

const slot = group(
  {
    id: id('id'),
    straps: list(choice(STRAP_IDS, 'strap'), COUNTS.slotStraps, 'straps', 'The straps that pass through it.'),
    face: choice(['back', 'side', 'cushion'], 'face', 'Which surface of the shell it is cut in.'),
    centre: group({ xMm: seatXMm, yMm: seatYMm, zMm: seatZMm }, 'centre', 'In the seat frame.'),
    lengthMm: limitedNumber(LIMITS.slotLengthMm, 'long side'),
    heightMm: limitedNumber(LIMITS.slotHeightMm, 'short side'),
    turnDeg: limitedNumber(LIMITS.turnDeg, 'turn', 'Turn of the rectangle in its own face.'),
  },
  'slot',
  'A rectangular opening in the seat shell.',
)

const seat = group(
  {
    hipPoint: point('hip point', 'With the slide at 0, from the datum.'),
    hipHeightMm: limitedNumber(LIMITS.hipHeightMm, 'hip height', 'Hip point above the compressed cushion.'),
    reclineDeg: limitedNumber(LIMITS.reclineDeg, 'recline', 'Torso line from vertical, + rearward.'),
    slide: group(
      {
        forwardMm: limitedNumber(LIMITS.slideMm, 'forward travel'),
        rearwardMm: limitedNumber(LIMITS.slideMm, 'rearward travel'),
      },
      'slide',
      'Travel from the drawn position; 0 and 0 is a fixed seat.',
    ),
    reclineRange: group(
      {
        uprightDeg: limitedNumber(LIMITS.reclineDeg, 'most upright'),
        reclinedDeg: limitedNumber(LIMITS.reclineDeg, 'most reclined'),
      },
      'recline range',
      'Holds the drawn recline; equal ends mean a fixed back.',
    ),
    sideOutline: list(
      group({ xMm: seatXMm, zMm: seatZMm }, 'point'),
      COUNTS.outlinePoints,
      'side outline',
      'Closed outline of the shell in side elevation, seat frame.',
    ),
    topOutline: list(
      group({ xMm: seatXMm, yMm: seatYMm }, 'point'),
      COUNTS.outlinePoints,
      'top outline',
      'Closed outline of the shell from above, seat frame at recline 0.',
    ),
    backrestRim: group({ xMm: seatXMm, zMm: seatZMm }, 'backrest rim', 'Upper rim, seat frame.'),
    shellThicknessMm: v.exactOptional(
      limitedNumber(
        LIMITS.shellThicknessMm,
        'shell thickness',
        'Of the shell where its slots are cut, half on each side of their middle; 0, a thin sheet, when left out.',
      ),
    ),
    slots: list(slot, COUNTS.slots, 'slots'),
  },
  'seat',
)

const measured = group(
  Object.fromEntries(
    BODY_MEASURES.map((measure) => [
      measure,
      v.exactOptional(limitedNumber(MEASURE_LIMITS[measure], measureWords(measure))),
    ]),
  ) as Record<BodyMeasure, v.ExactOptionalSchema<ReturnType<typeof limitedNumber>, undefined>>,
  'measured values',
  'Each one replaces the value computed from sex, stature and mass.',
)

/** "hipToShoulderMm" as "hip to shoulder": the names of the body values are chosen so that they read as words. */
export function measureWords(measure: BodyMeasure): string {
  return measure.replace(/(Mm|Deg)$/, '').replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)
}

const occupant = group(
  {
    id: id('id'),
    name: text('name'),
    sex: choice(['female', 'male'], 'sex'),
    statureMm: limitedNumber(LIMITS.statureMm, 'stature'),
    massKg: limitedNumber(LIMITS.massKg, 'mass'),
    measured,
  },
  'occupant',
)

const place = group(
  {
    id: id('id'),
    name: text('name'),
    seat,
    occupants: list(occupant, COUNTS.occupants, 'occupants'),
    belt,
    anchors: list(anchor, COUNTS.anchors, 'anchors', 'At most one for each strap.'),
    mirrored: group(
      { shoulder: flag('shoulder pair'), lap: flag('lap pair'), sub: flag('anti-submarine pair') },
      'mirrored pairs',
      'Which pairs move as one.',
    ),
  },
  'place',
)

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
    tubes: list(tube, COUNTS.tubes, 'tubes'),
    tapePoints: v.exactOptional(tapePoints),
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

const fieldIssue = (issue: v.BaseIssue<unknown>): FieldIssue => {
  const last = issue.path?.at(-1)
  const path = (issue.path ?? []).map((item) => item.key as string | number)
  if (last?.origin !== 'key') return { path, kind: 'value', received: issue.input }
  // A list where a group of named fields belongs would otherwise be reported as its first missing field.
  if (Array.isArray(last.input)) return { path: path.slice(0, -1), kind: 'value', received: last.input }
  return { path, kind: issue.expected === 'never' ? 'unknown-field' : 'missing', received: last.value }
}
