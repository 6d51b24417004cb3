import * as v from 'valibot'

import { STRAP_IDS } from '../../straps/strap'
import { mount } from './anchorSchema'
import { COUNTS, LIMITS, type NumberLimits, TEXT_LENGTHS } from './limits'
import { choice, date, group, id, limitedNumber, list, point, text } from './schemaParts'
import { tolerance } from './toleranceSchema'

const readings = (limits: NumberLimits, title: string, description: string) =>
  list(limitedNumber(limits, 'reading'), COUNTS.readings, title, description)

const coordinate = (title: string, description: string) =>
  readings(LIMITS.coordinateMm, title, `${description} Every reading, from the datum; averaged.`)

const knownPoint = (title: string) =>
  group({ name: text('name'), point: point('point') }, title, 'As it was known when the reading was taken.')

const byCoordinates = group(
  {
    kind: v.pipe(v.literal('coordinates'), v.title('kind')),
    xMm: coordinate('x', 'Rearward.'),
    yMm: coordinate('y', "To the occupant's right."),
    zMm: coordinate('z', 'Up.'),
  },
  'measurement',
  'Straight from the datum along the three axes.',
)

const tape = group(
  {
    from: knownPoint('known point'),
    lengthsMm: readings(LIMITS.tapeMm, 'length', 'Straight from the known point; every reading.'),
  },
  'tape',
)

const byTapes = group(
  {
    kind: v.pipe(v.literal('tapes'), v.title('kind')),
    tapes: list(tape, COUNTS.tapes, 'tapes'),
    coordinate: v.pipe(
      v.nullable(
        group(
          {
            axis: choice(['x', 'y', 'z'], 'axis'),
            readingsMm: coordinate('coordinate', 'Along that axis.'),
          },
          'coordinate',
        ),
      ),
      v.title('coordinate beside the tapes'),
      v.description('Null: none was measured.'),
    ),
    side: v.pipe(
      v.nullable(choice(['normal', 'opposite'], 'side')),
      v.title('side'),
      v.description(
        'Which of two places that fit the tapes is meant: the one on the side of the mirror plane’s normal or the other; null: not chosen.',
      ),
    ),
  },
  'measurement',
  'Tapes pulled straight from known points.',
)

const aside = v.pipe(
  v.variant('kind', [
    group(
      {
        kind: v.pipe(v.literal('y'), v.title('kind')),
        readingsMm: readings(
          LIMITS.coordinateMm,
          'aside',
          'Distance to the right of the known point; every reading.',
        ),
      },
      'aside',
      'As a distance.',
    ),
    group(
      {
        kind: v.pipe(v.literal('plan'), v.title('kind')),
        readingsDeg: readings(
          LIMITS.leanDeg,
          'plan angle',
          'Of the string from the car’s centre-line, + to the right; every reading.',
        ),
      },
      'aside',
      'As an angle seen from above.',
    ),
  ]),
  v.title('aside'),
)

const byAngle = group(
  {
    kind: v.pipe(v.literal('angle'), v.title('kind')),
    from: knownPoint('known point'),
    stringDeg: readings(
      LIMITS.leanDeg,
      'string',
      'True angle of the string from level, + when it rises away from the known point; every reading.',
    ),
    lengthMm: readings(LIMITS.tapeMm, 'length', 'Along the string; every reading.'),
    runs: choice(['forward', 'rearward'], 'way', 'Which way the string runs from the known point.'),
    aside,
  },
  'measurement',
  'A string from a known point with an angle finder on it and a tape along it.',
)

const tabReadings = (title: string, limits: NumberLimits) =>
  v.exactOptional(readings(limits, title, 'Of a tab only; every reading. Left out: not measured.'))

const measuredAnchor = group(
  {
    placeId: id('place'),
    anchorId: id('anchor'),
    strap: choice(STRAP_IDS, 'strap'),
    planned: mount,
    plannedHeld: v.exactOptional(
      point(
        'held point',
        'Of a wrap: where on the outside of its bar the tape was to be held when it was taken into the record, from the datum.',
      ),
    ),
    measurement: v.pipe(
      v.nullable(v.variant('kind', [byCoordinates, byTapes, byAngle])),
      v.title('measurement'),
      v.description('Null while nothing was measured.'),
    ),
    planDeg: tabReadings('measured turn in plan', LIMITS.turnDeg),
    leanDeg: tabReadings('measured lean', LIMITS.leanDeg),
  },
  'measured anchor',
  'An anchor as it was planned when it was taken into the record, and as it was measured.',
)

const record = group(
  {
    id: id('id'),
    name: text('name'),
    date: date('date', 'may-be-empty'),
    measuredBy: text('measured by'),
    notes: text('notes', '', TEXT_LENGTHS.notes),
    plannedRevision: text('planned revision', 'Revision of the mount sheet that was welded from.'),
    plannedVariant: v.exactOptional(
      group(
        { id: id('id'), name: text('name', 'As it was called then.') },
        'planned variant',
        'The variant that was drawn when the record was begun; left out where the car had only one.',
      ),
    ),
    anchors: list(measuredAnchor, COUNTS.measuredAnchors, 'anchors', 'Each at most once.'),
    signed: v.exactOptional(
      group(
        {
          name: text('name'),
          date: date('date', 'needed'),
          tolerance: v.exactOptional(tolerance),
          ruleSetId: id('rule set'),
        },
        'signature',
        'Who closed the record, when, and what it was held against then; left out while it is open.',
      ),
    ),
  },
  'as-welded record',
)

/** The description of what was measured on the car after welding. */
export const asWelded = list(record, COUNTS.asWelded, 'as-welded records')
