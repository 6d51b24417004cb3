import * as v from 'valibot'

import { BODY_MEASURES, type BodyMeasure } from '../../body/occupant'
import { STRAP_IDS } from '../../straps/strap'
import { anchor } from './anchorSchema'
import { belt } from './beltSchema'
import { COUNTS, LIMITS, MEASURE_LIMITS } from './limits'
import { choice, flag, group, id, limitedNumber, list, point, text } from './schemaParts'

/*
 * What is built: the tubes and the places. A layout says it of the variant that is drawn, and each of its other variants of its own.
 */

const seatNumber = (title: string, description: string) =>
  limitedNumber(LIMITS.seatCoordinateMm, title, description)

const seatXMm = seatNumber('x', 'Square to the torso line, rearward from the hip point.')
const seatYMm = seatNumber('y', 'To the right of the hip point.')
const seatZMm = seatNumber('z', 'Along the torso line, up from the hip point.')

export const tube = group(
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

export const place = group(
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
