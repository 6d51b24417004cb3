import * as v from 'valibot'

import { ARRANGEMENTS } from '../../straps/strap'
import { LIMITS, TEXT_LENGTHS } from './limits'
import { choice, flag, group, limitedNumber, text } from './schemaParts'

const adjuster = group(
  {
    fromAnchorMm: limitedNumber(
      LIMITS.adjusterPlaceMm,
      'place along the strap',
      "From the strap's contact at its anchor to the middle of the adjuster's body.",
    ),
    lengthMm: limitedNumber(LIMITS.adjusterLengthMm, 'body length', 'Along the strap.'),
  },
  'adjuster',
)

const adjusters = group(
  { shoulder: v.exactOptional(adjuster), lap: v.exactOptional(adjuster), sub: v.exactOptional(adjuster) },
  'adjusters',
  'Where the adjusters lie, for the families where it is known; alike on both sides.',
)

const bolt = group(
  {
    boltDiameterMm: v.exactOptional(limitedNumber(LIMITS.boltDiameterMm, 'bolt diameter')),
    grade: v.exactOptional(text('grade', 'As stamped on the head or written in the instructions.')),
    torqueNm: v.exactOptional(limitedNumber(LIMITS.torqueNm, 'torque', 'Tightening torque.')),
    source: v.exactOptional(text('source', 'Where it is written.', TEXT_LENGTHS.change)),
  },
  'bolts',
)

const hardware = group(
  { shoulder: v.exactOptional(bolt), lap: v.exactOptional(bolt), sub: v.exactOptional(bolt) },
  'bolts and torque',
  "As the belt maker's instructions give them, for the families where somebody has typed them.",
)

/** The description of one harness. */
export const belt = group(
  {
    arrangement: choice(ARRANGEMENTS, 'arrangement', 'Straps that meet at the buckle.'),
    diagonal: v.exactOptional(
      choice(
        ['left', 'right'],
        'diagonal',
        'Of a 3-point belt only: the shoulder its one shoulder strap runs over; left when left out.',
      ),
    ),
    thighStraps: v.exactOptional(
      choice(
        ['rearward', 'under-thighs'],
        'thigh straps',
        'Of a 6- or 7-point belt only: rearward of the groin through the seat, or under the wearer who sits on them; rearward when left out.',
      ),
    ),
    shoulderTailMm: v.exactOptional(
      limitedNumber(
        LIMITS.shoulderTailMm,
        'tail of joined shoulder straps',
        'Of a belt with two shoulder straps only: they are joined behind the neck into one tail this long from the anchor to the junction; two separate straps when left out.',
      ),
    ),
    adjusters: v.exactOptional(adjusters),
    hardware: v.exactOptional(hardware),
    webbingMm: group(
      {
        shoulder: limitedNumber(LIMITS.webbingMm, 'shoulder'),
        lap: limitedNumber(LIMITS.webbingMm, 'lap'),
        sub: limitedNumber(LIMITS.webbingMm, 'anti-submarine'),
      },
      'webbing width',
    ),
    material: choice(['polyester', 'nylon'], 'webbing material'),
    buckle: choice(['latch-and-link', 'rotary-cam'], 'buckle'),
    lapAdjuster: choice(['pull-up', 'pull-down'], 'lap adjuster'),
    headAndNeckRestraint: flag('head-and-neck restraint'),
    adjusterTailMm: limitedNumber(LIMITS.spareWebbingMm, 'adjuster tail'),
    wrapReturnMm: limitedNumber(LIMITS.spareWebbingMm, 'wrap return'),
  },
  'belt',
)
