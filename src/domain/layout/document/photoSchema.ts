import * as v from 'valibot'

import { LENGTH_MARKS, type MarkId, RECTANGLE_MARKS } from '../../measure/photo/photo'
import { COUNTS, LIMITS } from './limits'
import { choice, flag, group, id, limitedNumber, list, text } from './schemaParts'

const MARK_TITLES: Readonly<Record<MarkId, string>> = {
  lengthFrom: 'first end of the known length',
  lengthTo: 'second end of the known length',
  levelFrom: 'start of the level or plumb line',
  levelTo: 'end of the level or plumb line',
  known: 'the point whose place is known',
  frontLow: 'corner toward the front, low on the drawing',
  rearLow: 'corner toward the rear, low on the drawing',
  rearHigh: 'corner toward the rear, high on the drawing',
  frontHigh: 'corner toward the front, high on the drawing',
  checkFrom: 'first end of the check length',
  checkTo: 'second end of the check length',
}

const picturePoint = (title: string) =>
  group(
    {
      xPx: limitedNumber(
        LIMITS.pictureCoordinatePx,
        'x',
        'To the right from the left edge of the picture, px.',
      ),
      yPx: limitedNumber(LIMITS.pictureCoordinatePx, 'y', 'Down from the upper edge of the picture, px.'),
    },
    title,
    'On the picture.',
  )

const marks = <const Id extends MarkId>(ids: readonly Id[]) =>
  group(
    Object.fromEntries(ids.map((mark) => [mark, v.exactOptional(picturePoint(MARK_TITLES[mark]))])) as Record<
      Id,
      v.ExactOptionalSchema<ReturnType<typeof picturePoint>, undefined>
    >,
    'crosses',
    'Those that were put on the picture so far.',
  )

const knownLength = (title: string, description: string) =>
  v.exactOptional(limitedNumber(LIMITS.photoLengthMm, title, description))

const place = v.exactOptional(
  group(
    {
      uMm: limitedNumber(LIMITS.coordinateMm, 'u', 'Rearward from the datum.'),
      vMm: limitedNumber(
        LIMITS.coordinateMm,
        'v',
        "From the datum, up in the side elevation, to the occupant's right in the top elevation.",
      ),
    },
    'place',
    'Where the known point or corner is on the drawing; left out until it was typed.',
  ),
)

const lengthCalibration = group(
  {
    kind: v.pipe(v.literal('known-length'), v.title('kind')),
    marks: marks(LENGTH_MARKS),
    runs: choice(
      ['level', 'plumb'],
      'line',
      'Level: from front to rear. Plumb: upward, in the top elevation from left to right.',
    ),
    lengthMm: knownLength('known length', 'Between its two crosses; left out until it was typed.'),
    place,
  },
  'calibration',
  'A known length, a level line and a known point, for a camera that looked squarely.',
)

const rectangleCalibration = group(
  {
    kind: v.pipe(v.literal('rectangle'), v.title('kind')),
    marks: marks(RECTANGLE_MARKS),
    widthMm: knownLength('width', 'From front to rear; left out until it was typed.'),
    heightMm: knownLength('height', 'From low to high on the drawing; left out until it was typed.'),
    turnDeg: v.exactOptional(
      limitedNumber(
        LIMITS.turnDeg,
        'turn',
        'Of the rectangle, anticlockwise on the drawing; 0 when left out.',
      ),
    ),
    corner: choice(RECTANGLE_MARKS, 'corner', 'The corner whose place is known.'),
    place,
  },
  'calibration',
  'The four corners of a known rectangle, for a camera that looked from anywhere.',
)

const photo = group(
  {
    id: id('id'),
    elevation: choice(['side', 'top'], 'elevation', 'Which one it lies under.'),
    pictureId: id('picture, kept on the device it was chosen on'),
    name: text('name', 'Of the picture file that was chosen.'),
    size: group(
      {
        widthPx: limitedNumber(LIMITS.pictureSidePx, 'width', 'px.'),
        heightPx: limitedNumber(LIMITS.pictureSidePx, 'height', 'px.'),
      },
      'size',
      'Of the picture as it is kept, upright.',
    ),
    mirrored: flag('mirrored', 'Taken from the other side of the car.'),
    calibration: v.pipe(v.variant('kind', [lengthCalibration, rectangleCalibration]), v.title('calibration')),
    check: v.exactOptional(
      group(
        {
          marks: marks(['checkFrom', 'checkTo']),
          lengthMm: knownLength('check length', 'As measured on the car; left out until it was typed.'),
        },
        'check',
        'A second known length that shows how well the scale fits.',
      ),
    ),
    cameraDistanceMm: knownLength(
      'camera distance',
      'Of the lens from the calibrated plane; left out while nobody typed it.',
    ),
    opacity: limitedNumber(LIMITS.opacity, 'opacity', '0 is not to be seen, 1 hides the paper.'),
    shown: flag('shown'),
    locked: flag('locked', 'Its crosses and numbers stay as they are.'),
  },
  'photo',
  'A photograph under one elevation; the picture itself is kept on the device.',
)

/** The description of the photos under the drawing. */
export const photos = list(
  photo,
  COUNTS.photos,
  'photos',
  'Photographs under the drawing, without their pictures; left out when there are none.',
)
