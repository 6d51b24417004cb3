import type { RuleSet, RuleSource } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'
import { studentDerivativeSource } from './studentCarsSource'
import { DERIVATIVE_STATED } from './studentDerivativeStated'

const of2014 = (section: string, phrase: string | null): RuleSource => ({
  document: 'Formula SAE Rules',
  section,
  edition: '2014',
  status: 'read',
  phrase,
})

const FALL_PHRASE = 'between 10° above the horizontal and 20° below'
const RECLINED_PHRASE = 'between 60° and 80°'

/** Source: Formula SAE Rules 2014, p. 51. */
export const STUDENT_CARS_2014_RULES: RuleSet = {
  id: 'student-cars-2014',
  name: 'Student car rules 2014',
  edition: 'Formula SAE Rules 2014',
  group: 'Student cars',
  about: 'One page of the 2014 student car rules; superseded, kept for comparison.',
  rules: [
    limitRule({
      id: 'student-2014-shoulder-drop',
      orders: 'must',
      source: of2014('T5.4.4', FALL_PHRASE),
      says: 'From the shoulder rearward the strap runs between 10° above and 20° below the horizontal.',
      why: REASON.shoulderFall,
      quantity: 'shoulder-drop',
      family: 'shoulder',
      min: -10,
      max: 20,
    }),
    limitRule({
      id: 'student-2014-shoulder-spacing',
      orders: 'must',
      source: of2014('T5.4', null),
      says: 'The two shoulder mounts are 178 mm to 229 mm (7 in to 9 in) apart, centre to centre.',
      why: REASON.shoulderSpacing,
      caveat: 'The 2026 edition has 175–235 mm.',
      quantity: 'shoulder-spacing',
      family: 'shoulder',
      min: 178,
      max: 229,
    }),
    limitRule({
      id: 'student-2014-lap-reclined',
      orders: 'must',
      source: of2014('T5.3.6', RECLINED_PHRASE),
      when: { reclineAboveDeg: 30 },
      says: 'In a reclined seat, more than 30°, the lap strap stands at 60° to 80° to the horizontal.',
      why: REASON.lapAngle,
      caveat: 'The 30° for "reclined" is that of the 2026 edition.',
      quantity: 'lap-angle',
      family: 'lap',
      min: 60,
      max: 80,
    }),
    statedRule({
      id: 'student-2014-lap-position',
      orders: 'should',
      source: of2014('T5.3', null),
      says: 'At the bottom of the seat the lap strap lies 0 mm to 76 mm (3 in) forward of where back and bottom meet.',
      why: REASON.lapLow,
    }),
    statedRule({
      id: 'student-2014-braces',
      orders: 'must',
      source: of2014('T5.4.1', null),
      says: 'Shoulder straps are not mounted on the braces of the main hoop without extra bracing.',
      why: REASON.strength,
    }),
  ],
}

const LAP_CAVEAT = 'The line is taken here from the last contact before the body to the hip point.'

const DERIVATIVE_CHECKED = [
  limitRule({
    id: 'student-derivative-shoulder-drop',
    orders: 'must',
    source: studentDerivativeSource('T5.5.5', FALL_PHRASE),
    says: 'From the shoulder rearward the strap runs between 10° above and 20° below the horizontal.',
    why: REASON.shoulderFall,
    quantity: 'shoulder-drop',
    family: 'shoulder',
    min: -10,
    max: 20,
  }),
  limitRule({
    id: 'student-derivative-shoulder-spacing',
    orders: 'must',
    source: studentDerivativeSource('T5.5', null),
    says: 'The two shoulder mounts are 180 mm to 230 mm apart, centre to centre.',
    why: REASON.shoulderSpacing,
    quantity: 'shoulder-spacing',
    family: 'shoulder',
    min: 180,
    max: 230,
  }),
  limitRule({
    id: 'student-derivative-lap-upright',
    orders: 'must',
    source: studentDerivativeSource('T5.4.4', 'between 45° and 65° to the horizontal'),
    when: { reclineAtMostDeg: 30 },
    says: 'With the seat back reclined 30° or less, the lap strap stands at 45° to 65° to the horizontal.',
    why: REASON.lapAngle,
    caveat: LAP_CAVEAT,
    quantity: 'lap-angle',
    family: 'lap',
    min: 45,
    max: 65,
  }),
  limitRule({
    id: 'student-derivative-lap-reclined',
    orders: 'must',
    source: studentDerivativeSource('T5.4.4', RECLINED_PHRASE),
    when: { reclineAboveDeg: 30 },
    says: 'With the seat back reclined more than 30°, the lap strap stands at 60° to 80° to the horizontal.',
    why: REASON.lapAngle,
    caveat: LAP_CAVEAT,
    quantity: 'lap-angle',
    family: 'lap',
    min: 60,
    max: 80,
  }),
  limitRule({
    id: 'student-derivative-sub-angle',
    orders: 'should',
    source: studentDerivativeSource('T5.6.1', 'up to 20° rearwards'),
    when: { arrangements: [6, 7], straps: ['sub-left', 'sub-right'] },
    says: 'The two anti-submarine straps go vertically (0°) down from the groin or up to 20° rearward.',
    why: REASON.sub,
    caveat:
      'Whether these rules also allow straps that the driver sits on, as the 2026 rules do, was not read.',
    quantity: 'sub-to-vertical',
    family: 'sub',
    min: 0,
    max: 20,
  }),
  limitRule({
    id: 'student-derivative-sub-spacing',
    orders: 'should',
    source: studentDerivativeSource('T5.6.1', 'approximately 100 mm apart'),
    when: { arrangements: [6, 7] },
    says: 'The two anti-submarine mounts are about 100 mm apart, here 90 mm to 110 mm.',
    why: 'So the straps lie round the thighs and not across the groin.',
    caveat:
      'The ±10 mm is our reading of "approximately", and so is that it is meant across the car: the text names no direction.',
    quantity: 'sub-spacing',
    family: 'sub',
    min: 90,
    max: 110,
  }),
  ...(['lap', 'sub'] as const).map((family) =>
    propertyRule({
      id: `student-derivative-${family}-through-seat`,
      orders: 'must',
      source: studentDerivativeSource('T5.3.3', null),
      says: `${family === 'lap' ? 'Lap' : 'Anti-submarine'} straps pass through the seat, not over its sides.`,
      why: REASON.throughSeat,
      property: 'strap-slot',
      family,
      wanted: ['yes'],
    }),
  ),
  ...(
    [
      ['lap', 50],
      ['sub', 50],
    ] as const
  ).map(([family, min]) =>
    propertyRule({
      id: `student-derivative-${family}-webbing`,
      orders: 'must',
      source: studentDerivativeSource('T5.1.1', null),
      when: { arrangements: [6] },
      says: `${family === 'lap' ? 'Lap' : 'Anti-submarine'} webbing of a 6-point belt is at least ${min} mm wide.`,
      why: REASON.webbing,
      property: 'webbing-width',
      family,
      min,
    }),
  ),
  propertyRule({
    id: 'student-derivative-shoulder-webbing',
    orders: 'must',
    source: studentDerivativeSource('T5.1.1, T5.2.1', null),
    when: { arrangements: [6], headAndNeckRestraint: false },
    says: 'Without a head-and-neck restraint, shoulder webbing of a 6-point belt is at least 75 mm wide.',
    why: REASON.webbing,
    caveat: 'With one, certified 50 mm webbing is allowed.',
    property: 'webbing-width',
    family: 'shoulder',
    min: 75,
  }),
]

/** Source: a Formula Student derivative of the student car rules, February 2025, section T5. */
export const STUDENT_DERIVATIVE_2025_RULES: RuleSet = {
  id: 'student-derivative-2025',
  name: 'Student cars, European derivative 2025',
  edition: 'February 2025',
  group: 'Student cars',
  about: 'The belt section of a European derivative of the student car rules.',
  rules: [...DERIVATIVE_CHECKED, ...DERIVATIVE_STATED],
}

/** Source: Baja SAE rules of 2013–2016, part B article 9, from memory. */
export const STUDENT_OFF_ROAD_RULES: RuleSet = {
  id: 'student-off-road-2013',
  name: 'Student off-road cars 2013–2016',
  edition: 'Baja SAE 2013–2016',
  group: 'Student cars',
  about: 'The closest published rule to a student off-road buggy; its clause is from memory.',
  rules: [
    limitRule({
      id: 'student-off-road-shoulder-height',
      orders: 'must',
      source: {
        document: 'Baja SAE rules',
        section: 'part B, article 9',
        edition: '2013–2016',
        status: 'memory',
        phrase: null,
      },
      says: 'For every driver the shoulder anchors are 0 in to 4 in (0 mm to 101.6 mm) below the shoulder.',
      why: REASON.shoulderHeight,
      caveat: 'The contents page of the rule book was seen, the clause was not.',
      quantity: 'shoulder-height',
      family: 'shoulder',
      min: 0,
      max: 101.6,
    }),
  ],
}
