import * as v from 'valibot'

import { TAB_FORMS } from '../../straps/anchor'
import { STRAP_IDS } from '../../straps/strap'
import { LIMITS } from './limits'
import { choice, flag, group, id, limitedNumber, point } from './schemaParts'

const tabMount = group(
  {
    kind: v.pipe(v.literal('tab'), v.title('kind')),
    form: v.exactOptional(
      choice(
        TAB_FORMS,
        'form',
        'One plate, a clevis of two (always double shear), or a welded threaded insert whose bolt axis is the normal of the plane (always single shear); a plate when left out.',
      ),
    ),
    point: point('point', 'Centre of the hole in the middle of the plate, from the datum.'),
    planDeg: limitedNumber(LIMITS.turnDeg, 'turn in plan', "Turn of the tab's plane about the vertical."),
    leanDeg: limitedNumber(LIMITS.leanDeg, 'lean', "Lean of the tab's plane from upright."),
    thicknessMm: limitedNumber(LIMITS.thicknessMm, 'plate thickness'),
    holeDiameterMm: limitedNumber(LIMITS.holeDiameterMm, 'hole diameter'),
    widthMm: v.exactOptional(
      limitedNumber(
        LIMITS.tabWidthMm,
        'width',
        'Of the plate, square to the line from its hole to the tube; of an insert its outside diameter. Left out: 15 mm of steel all round the hole, an insert twice its thread.',
      ),
    ),
    edgeDistanceMm: v.exactOptional(
      limitedNumber(
        LIMITS.edgeDistanceMm,
        'edge distance',
        "From the hole's centre to the end of the plate beyond it. Left out: 15 mm from the hole's edge.",
      ),
    ),
    gapMm: v.exactOptional(
      limitedNumber(
        LIMITS.clevisGapMm,
        'clevis gap',
        'Clear between the two plates of a clevis. Left out: 8 mm.',
      ),
    ),
    shear: choice(['single', 'double'], 'shear'),
    tubeId: v.pipe(
      v.nullable(id('tube')),
      v.title('tube'),
      v.description('The tube it is welded to; null for the floor or another structure.'),
    ),
  },
  'mount',
  'A welded or bolted tab.',
)

const wrapMount = group(
  {
    kind: v.pipe(v.literal('wrap'), v.title('kind')),
    tubeId: id('tube'),
    point: point('point', "On the tube's centre line, from the datum."),
    over: choice(['over', 'under'], 'side of the tube'),
    guideHoops: flag('guide hoops'),
  },
  'mount',
  'A strap looped round a tube.',
)

const eyeMount = group(
  {
    kind: v.pipe(v.literal('eye'), v.title('kind')),
    point: point('point', 'Centre of the eye, from the datum.'),
    planDeg: limitedNumber(
      LIMITS.turnDeg,
      'shank plan turn',
      'Turn about the vertical of the shank, from its thread to the eye; 0 rearward, + to the right.',
    ),
    riseDeg: limitedNumber(LIMITS.leanDeg, 'shank rise', 'Of the same axis above horizontal.'),
    threadDiameterMm: limitedNumber(LIMITS.threadDiameterMm, 'thread diameter'),
    eyeDiameterMm: limitedNumber(LIMITS.eyeDiameterMm, 'eye diameter', 'Inside.'),
    tubeId: v.pipe(
      v.nullable(id('tube')),
      v.title('tube'),
      v.description('The tube that carries its boss; null for the floor or another structure.'),
    ),
  },
  'mount',
  "An eye bolt that the strap's end fitting is hooked into.",
)

/** The description of what a strap ends on. */
export const mount = v.pipe(v.variant('kind', [tabMount, wrapMount, eyeMount]), v.title('mount'))

/** The description of one anchor with what its strap ends on. */
export const anchor = group(
  {
    id: id('id'),
    strap: choice(STRAP_IDS, 'strap'),
    mount,
  },
  'anchor',
)
