import type { QuantityRule, Rule, RuleSet } from '../rule'
import { STUDENT_HARDWARE_RULES } from './studentCars2026Hardware'
import { studentSource } from './studentCarsSource'
import { STUDENT_STATED_RULES } from './studentCars2026Stated'

const SHOULDER: readonly QuantityRule[] = [
  {
    kind: 'quantity',
    id: 'student-shoulder-drop',
    level: 'must',
    source: studentSource('T.2.6', 'between 10° above the horizontal and 20° below'),
    when: {},
    says: 'From the shoulder rearward to the mount or a structural guide, the shoulder strap runs between 10° above and 20° below the horizontal.',
    why: 'A strap that falls too steeply presses the spine together; one that rises too much holds the shoulders late.',
    caveat:
      'Other documents allow a fall of 45°, 40°, 10° or 5°, measured from the backrest rim or from square to the spine; aviation asks for a rising strap.',
    quantity: 'shoulder-drop',
    family: 'shoulder',
    min: -10,
    max: 20,
  },
  {
    kind: 'quantity',
    id: 'student-shoulder-spacing',
    level: 'must',
    source: studentSource('T.2.6', 'between 175 mm and 235 mm'),
    when: {},
    says: 'The two shoulder mounts are 175 mm to 235 mm apart, centre to centre.',
    why: 'Too close, the straps press on the neck; too wide, they slip off the shoulders.',
    caveat:
      'No spacing meets every rule book: one club rule asks for 102–152 mm (quoted second-hand), dirt speedway 2010 for at most 150 mm, the 2014 student rules for 178–229 mm.',
    quantity: 'shoulder-spacing',
    family: 'shoulder',
    min: 175,
    max: 235,
  },
]

const CLEAR_CAVEAT = 'The rule gives no distance; the 0 mm is the strap’s middle line against the drawn tube.'

const LAP_WHY =
  'A flatter strap lets the pelvis slide under it and rides up on to the belly; a steeper one lets the pelvis slide forward.'

const LAP: readonly QuantityRule[] = [
  {
    kind: 'quantity',
    id: 'student-lap-angle-upright',
    level: 'must',
    source: studentSource('T.2.5, T.2.1 d', 'between 45° and 65° to the horizontal'),
    when: { reclineAtMostDeg: 30 },
    says: 'With the seat back reclined 30° or less, the lap strap stands at 45° to 65° to the horizontal in side view.',
    why: LAP_WHY,
    caveat:
      'The rule speaks of the "lap belt side-view angle" and shows it in a figure that could not be read; the line is taken here from the last contact before the body to the hip point.',
    quantity: 'lap-angle',
    family: 'lap',
    min: 45,
    max: 65,
  },
  {
    kind: 'quantity',
    id: 'student-lap-angle-reclined',
    level: 'must',
    source: studentSource('T.2.5, T.2.1 e', 'between 60° and 80°'),
    when: { reclineAboveDeg: 30 },
    says: 'With the seat back reclined more than 30°, the lap strap stands at 60° to 80° to the horizontal in side view.',
    why: LAP_WHY,
    caveat:
      'The line is taken here from the last contact before the body to the hip point. The posture limit is the line through hip and shoulder centres.',
    quantity: 'lap-angle',
    family: 'lap',
    min: 60,
    max: 80,
  },
  {
    kind: 'quantity',
    id: 'student-lap-straight',
    level: 'must',
    source: studentSource('T.2.5', null),
    when: {},
    says: 'The lap strap runs straight from its mount to the body and touches no seat hole or other structure.',
    why: 'A strap bent by a hole straightens under load, gives slack and chafes.',
    caveat:
      'The rule says straight; a bend of up to 1° passes here, a tolerance of ours for drawing and measuring. Contact with tubes has a limit of its own; with the floor, the body or the seat’s cover it is not checked.',
    quantity: 'slot-bend',
    family: 'lap',
    min: null,
    max: 1,
  },
  {
    kind: 'quantity',
    id: 'student-lap-clear',
    level: 'must',
    source: studentSource('T.2.5', null),
    when: {},
    says: 'The lap strap touches no structure on its way: 0 mm or more to every tube but its own.',
    why: 'A strap bent by a tube straightens under load, gives slack and chafes.',
    caveat: CLEAR_CAVEAT,
    quantity: 'tube-clearance',
    family: 'lap',
    min: 0,
    max: null,
  },
  {
    kind: 'quantity',
    id: 'student-lap-below-hip-bones',
    level: 'must',
    source: studentSource('T.2.5', null),
    when: {},
    says: 'The lap strap passes across the pelvis below the front hip bones, never over the belly.',
    why: 'Bone can carry the strap; the belly cannot, and what lies behind it is hurt.',
    caveat:
      'The height 0 as the limit is our reading; the bone points of a real person must be felt, not computed.',
    quantity: 'lap-over-asis',
    family: 'lap',
    min: null,
    max: 0,
  },
]

const SUB: readonly QuantityRule[] = [
  {
    kind: 'quantity',
    id: 'student-sub-five-point',
    level: 'must',
    source: studentSource('T.2.7', 'no more than 20°'),
    when: { arrangements: [5] },
    says: 'With a 5-point belt the anti-submarine strap runs in line with the chest-to-groin line or up to 20° forward of it.',
    why: 'There it takes up the pull of the shoulder straps before the lap strap is drawn up.',
    caveat:
      'The figure that shows the second leg of the angle could not be read; forward of the line is our reading of "in line with or slightly forward of".',
    quantity: 'sub-to-chest',
    family: 'sub',
    min: -20,
    max: 0,
  },
  {
    kind: 'quantity',
    id: 'student-sub-six-point',
    level: 'must',
    source: studentSource('T.2.7 (option a)', 'up to 20° rearwards'),
    when: { arrangements: [6, 7], thighStraps: 'rearward', straps: ['sub-left', 'sub-right'] },
    says: 'With a 6-point belt the anti-submarine straps go vertically down from the groin or up to 20° rearward.',
    why: 'Straps that pull down or back keep the pelvis from sliding under the lap strap.',
    caveat:
      'Holding the thigh straps of a 7-point belt to it is our reading. Straps that the driver sits on are option b and have a limit of their own.',
    quantity: 'sub-to-vertical',
    family: 'sub',
    min: 0,
    max: 20,
  },
  {
    kind: 'quantity',
    id: 'student-sub-spacing',
    level: 'should',
    source: studentSource('T.2.7 (option a)', 'approximately 100 mm apart'),
    when: { arrangements: [6, 7], thighStraps: 'rearward' },
    says: 'The two anti-submarine mounts are about 100 mm apart.',
    why: 'So the straps lie round the thighs and not across the groin.',
    caveat:
      'For "approximately" 90 mm to 110 mm is taken here; the ±10 mm is our reading, and so is that it is meant across the car: the text names no direction.',
    quantity: 'sub-spacing',
    family: 'sub',
    min: 90,
    max: 110,
  },
  {
    kind: 'quantity',
    id: 'student-sub-straight',
    level: 'must',
    source: studentSource('T.2.7', null),
    when: { arrangements: [5, 6, 7] },
    says: 'Anti-submarine straps run straight from the mount to the buckle or the first contact with the body and touch no seat hole or structure.',
    why: 'A strap bent by a hole straightens under load, gives slack and chafes.',
    caveat:
      'The rule says straight; a bend of up to 1° passes here, a tolerance of ours for drawing and measuring. Contact with tubes has a limit of its own; with the floor, the body or the seat’s cover it is not checked.',
    quantity: 'slot-bend',
    family: 'sub',
    min: null,
    max: 1,
  },
  {
    kind: 'quantity',
    id: 'student-sub-clear',
    level: 'must',
    source: studentSource('T.2.7', null),
    when: { arrangements: [5, 6, 7] },
    says: 'Anti-submarine straps touch no structure on their way: 0 mm or more to every tube but their own.',
    why: 'A strap bent by a tube straightens under load, gives slack and chafes.',
    caveat: CLEAR_CAVEAT,
    quantity: 'tube-clearance',
    family: 'sub',
    min: 0,
    max: null,
  },
]

const SUB_OPTION_B: readonly Rule[] = [
  {
    kind: 'property',
    id: 'student-sub-at-lap',
    level: 'must',
    source: studentSource('T.2.7 (option b)', null),
    when: { arrangements: [6, 7], thighStraps: 'under-thighs' },
    says: 'Anti-submarine straps that the driver sits on are mounted at or near the lap anchorages, here within 125 mm of them.',
    why: 'From there they pull the pelvis down and back, together with the lap strap.',
    caveat:
      'For "near" the 125 mm are our reading: the same rules ask for the strength of a shared mount where lap and anti-submarine mounts are closer than that (F.7).',
    property: 'sub-to-lap',
    family: 'sub',
    min: null,
    max: 125,
    wanted: null,
  },
  {
    kind: 'stated',
    id: 'student-sub-option-b',
    level: 'must',
    source: studentSource('T.2.7 (option b)', null),
    when: { arrangements: [6, 7], thighStraps: 'under-thighs' },
    says: 'Such straps come up round the groin to the buckle, with the driver sitting on them.',
    why: 'Otherwise they would only hold the buckle down.',
    caveat: null,
  },
]

const POSTURE: readonly Rule[] = [
  {
    kind: 'property',
    id: 'student-reclined-points',
    level: 'must',
    source: studentSource('T.2.3', null),
    when: { reclineAboveDeg: 30 },
    says: 'With the seat back reclined more than 30°, the belt has six or seven points.',
    why: 'A reclined pelvis slides under a lap strap more easily and needs both thigh straps.',
    caveat: null,
    property: 'belt-points',
    family: null,
    min: 6,
    max: null,
    wanted: null,
  },
]

/** Belt geometry and hardware for student-built race cars. Source: Formula SAE Rules 2026 V1, the sections that were read. */
export const STUDENT_CARS_2026_RULES: RuleSet = {
  id: 'student-cars-2026',
  name: 'Student car rules 2026',
  edition: 'Formula SAE Rules 2026 V1',
  group: 'Student cars',
  about:
    'The belt sections of the 2026 student car rules that were read as text; section numbers came through a text conversion, so check them in the printed document.',
  rules: [
    ...SHOULDER,
    ...LAP,
    ...SUB,
    ...SUB_OPTION_B,
    ...POSTURE,
    ...STUDENT_HARDWARE_RULES,
    ...STUDENT_STATED_RULES,
  ],
}
