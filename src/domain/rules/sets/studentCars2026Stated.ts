import type { RuleCondition, RuleLevel, RuleSource, StatedRule } from '../rule'
import { studentDerivativeSource, studentSource } from './studentCarsSource'

interface Statement {
  readonly id: string
  readonly level: RuleLevel
  readonly source: RuleSource
  readonly says: string
  readonly why: string
  readonly caveat?: string
  readonly when?: RuleCondition
}

const stated = ({ when = {}, caveat, ...rest }: Statement): StatedRule => ({
  kind: 'stated',
  when,
  caveat: caveat ?? null,
  ...rest,
})

const TEAR = 'An anchorage that tears out or bends away holds nobody.'

/** Rules of the student car book that were read but cannot be seen in the drawing; stated so that nobody takes silence for approval. */
export const STUDENT_STATED_RULES: readonly StatedRule[] = [
  stated({
    id: 'student-one-system',
    level: 'must',
    source: studentSource('T.2.2', null),
    says: 'All parts of the belt are of one system and one maker, unmodified and adjustable while seated.',
    why: 'Mixed parts were never tested together.',
  }),
  stated({
    id: 'student-one-release',
    level: 'should',
    source: studentDerivativeSource('release, section number not recorded', null),
    says: 'One release frees every strap, arm restraints included.',
    why: 'Rescuers and the wearer have seconds.',
    caveat: 'Read in the European derivative of these rules.',
  }),
  stated({
    id: 'student-label-year',
    level: 'must',
    source: studentSource('T.2.2', null),
    says: 'The belt is used in or before the year on its label; 31 December of the competition year is allowed.',
    why: 'Webbing loses strength with age, sun and dirt.',
  }),
  stated({
    id: 'student-reclined-adjusters',
    level: 'must',
    source: studentSource('T.2.3', null),
    when: { reclineAboveDeg: 30 },
    says: 'In a reclined seat the anti-submarine straps have quick adjusters, or there are two sets of them.',
    why: 'They can then be set tight for every driver.',
  }),
  stated({
    id: 'student-lap-position-in-seat',
    level: 'should',
    source: studentSource('T.2.5', '0 – 75 mm forward'),
    says: 'At the bottom of the seat, the centre line of the lap strap lies 0 mm to 75 mm forward of where back and bottom meet.',
    why: 'There the strap lies over the pelvis and not over the thighs.',
    caveat: 'The 2014 edition has 76 mm (3 in).',
  }),
  stated({
    id: 'student-lap-pivot',
    level: 'must',
    source: studentSource('T.2.5', null),
    says: 'The bolt that the lap strap turns on is a shouldered one, or an eye bolt.',
    why: 'A strap that cannot turn is loaded on one edge.',
  }),
  stated({
    id: 'student-six-point-option-b',
    level: 'advice',
    source: studentSource('T.2.7 (option b)', null),
    when: { arrangements: [6, 7], thighStraps: 'rearward' },
    says: 'Instead of straight down or rearward, the anti-submarine straps may run under the driver’s thighs to mounts at or near the lap anchorages.',
    why: 'It is the other accepted way to hold the pelvis.',
    caveat: 'It is checked once the belt says that its thigh straps run under the thighs.',
  }),
  stated({
    id: 'student-sub-ground',
    level: 'must',
    source: studentSource('T.2.7', null),
    says: 'No belt can touch the ground.',
    why: 'A strap that drags on the ground is pulled or worn through.',
  }),
  stated({
    id: 'student-tab-load',
    level: 'must',
    source: studentSource('T.2.4', '15 kN … 30 kN'),
    says: 'A tab, bracket or eye holds 15 kN for one belt and 30 kN for two, in pull-out and tear-out.',
    why: TEAR,
    caveat: 'Strength is not checked here.',
  }),
  stated({
    id: 'student-composite-load',
    level: 'must',
    source: studentSource('F.7', null),
    says: 'An attachment to a composite structure holds 15 kN for each shoulder, lap or anti-submarine strap, 30 kN over both shoulder straps, and 30 kN where lap and anti-submarine mounts are shared or closer than 125 mm.',
    why: TEAR,
    caveat:
      'Strength is not checked here. The 2021 edition asks for 13 kN, 6.5 kN for anti-submarine straps and 19.5 kN for shared points, and for 60 mm² of steel in every section of a tab, 90 mm² where shared.',
  }),
  stated({
    id: 'student-belt-standard',
    level: 'must',
    source: studentSource('T.2.2', null),
    says: 'A belt to FIA 8853-2016 is accepted; narrower shoulder straps only with a head-and-neck restraint.',
    why: 'A narrow strap must stay in the channel of the restraint.',
    caveat: 'The widths of that standard were not read.',
  }),
  stated({
    id: 'student-fasteners',
    level: 'must',
    source: studentSource('T.2.4–T.2.7, T.8.2', null),
    says: 'Brackets have at least two 6 mm critical fasteners; belt bolts are the smaller of the maker’s size and 10 mm for lap and shoulder or 8 mm for anti-submarine straps; grade 8.8 or SAE grade 5 at least.',
    why: TEAR,
  }),
  stated({
    id: 'student-eye-bolts',
    level: 'must',
    source: studentSource('T.2.4', null),
    says: 'An eye bolt is of one piece and aligned so that the clip turns freely; with the belt as its locking feature it has at least ten threads in.',
    why: 'An eye pulled sideways bends and breaks.',
  }),
  stated({
    id: 'student-bar-continuous',
    level: 'must',
    source: studentSource('F.6', null),
    says: 'The shoulder bar is one uncut continuous closed steel tube, fixed to the main hoop at both sides, and loaded by nothing but the belts.',
    why: TEAR,
    caveat: 'Head restraint, firewall, seat and light bodywork may hang on it too.',
  }),
  stated({
    id: 'student-bar-bent',
    level: 'must',
    source: studentSource('F.6', null),
    says: 'A bent shoulder bar has braces from its bends to the main hoop, at 30° or more in side view.',
    why: 'A bend straightens under load and lets the shoulders go forward.',
  }),
  stated({
    id: 'student-firewall',
    level: 'must',
    source: studentSource('T.1', null),
    says: 'All belt attachments are on the driver’s side of the firewall.',
    why: 'Fire must not reach the straps.',
  }),
  stated({
    id: 'student-edges',
    level: 'must',
    source: studentSource('belt routing, section number not recorded', null),
    says: 'Straps pass no sharp edge; seat slots are rolled or grommeted.',
    why: 'Loaded webbing is cut by an edge at once.',
  }),
]
