import type { RuleSet, RuleSource } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const speedway = (section: string, phrase: string | null): RuleSource => ({
  document: 'NZ Speedway rule book',
  section,
  edition: '2010',
  status: 'read',
  phrase,
})

const SHOULDER = [
  limitRule({
    id: 'speedway-shoulder-drop',
    orders: 'must',
    source: speedway('S2-4 (v) and T11-6 (v)', 'between 1 (one) degree and 10 (ten) degrees'),
    says: 'From the top of the shoulder the straps fall 1° to 10° to their mount.',
    why: REASON.shoulderFall,
    caveat: 'The only rule book read that forbids exactly level.',
    quantity: 'shoulder-drop',
    family: 'shoulder',
    min: 1,
    max: 10,
  }),
  limitRule({
    id: 'speedway-shoulder-spacing',
    orders: 'must',
    source: speedway('harness mounting', 'no more than 150mm apart'),
    says: 'The shoulder mounts or guides are no more than 150 mm apart.',
    why: REASON.shoulderSpacing,
    caveat: 'No spacing also meets the student car rules, 175–235 mm.',
    quantity: 'shoulder-spacing',
    family: 'shoulder',
    max: 150,
  }),
  limitRule({
    id: 'speedway-behind-seat',
    orders: 'must',
    source: speedway('harness mounting', 'within 250mm of the back of the seat'),
    says: 'The shoulder mounts or guides are within 250 mm of the back of the seat.',
    why: REASON.shoulderLength,
    caveat:
      'Measured here along the strap from where it leaves the backrest, which is never less than the straight distance.',
    quantity: 'shoulder-length-behind-seat',
    family: 'shoulder',
    max: 250,
  }),
]

const LAP_AND_WRAP = [
  limitRule({
    id: 'speedway-lap-below-hip-bones',
    orders: 'must',
    source: speedway('lap belt', null),
    says: 'The lap belt lies across the pelvis, its height over the front hip bones 0 mm or less.',
    why: REASON.lapLow,
    caveat:
      'The height 0 as the limit is our reading; the bone points of a real person must be felt, not computed.',
    quantity: 'lap-over-asis',
    family: 'lap',
    max: 0,
  }),
  ...(['shoulder', 'lap', 'sub'] as const).map((family) =>
    limitRule({
      id: `speedway-${family}-wrap-square`,
      orders: 'must',
      source: speedway('wrap-round fitting', 'at 90 degrees to the line of the belt'),
      when: { mount: 'wrap' },
      says: 'A tube that a belt is wrapped round lies at 90° to the line of the belt; 85° or more passes here.',
      why: REASON.wrap,
      caveat: 'The 5° is our tolerance for drawing and measuring.',
      quantity: 'wrap-square',
      family,
      min: 85,
    }),
  ),
  limitRule({
    id: 'speedway-direct-pull',
    orders: 'must',
    source: speedway('item (i)', null),
    says: 'The crotch strap’s anchor gives a direct pull from the buckle: bent by its seat slot no more than 3°.',
    why: REASON.sub,
    caveat:
      'The rule says direct; the 3° is our tolerance for drawing and measuring, and only a seat slot is looked at. A strap without a slot in the drawing is not checked.',
    quantity: 'slot-bend',
    family: 'sub',
    max: 3,
  }),
  propertyRule({
    id: 'speedway-wrap-bar',
    orders: 'must',
    source: speedway('wrap-round fitting, item (o)', '25mm minimum diameter'),
    when: { mount: 'wrap' },
    says: 'A separate bar for a wrap is at least 25 mm in diameter, solid or tube.',
    why: 'A thin bar bends the webbing sharply and cuts what it can hold.',
    property: 'wrap-bar-diameter',
    min: 25,
  }),
  ...(['lap', 'sub'] as const).map((family) =>
    propertyRule({
      id: `speedway-${family}-through-seat`,
      orders: 'must',
      source: speedway('p. 90', null),
      says: `${family === 'lap' ? 'Lap' : 'Crotch'} straps pass through the seat, not over its sides.`,
      why: REASON.throughSeat,
      caveat: 'Another section of the same book, p. 92, allows straps over the sides.',
      property: 'strap-slot',
      family,
      wanted: ['yes'],
    }),
  ),
]

const STRAPS_AND_EYES = [
  propertyRule({
    id: 'speedway-y-straps',
    orders: 'must',
    source: speedway('item (y)', null),
    says: 'Shoulder straps do not join behind the neck (no Y-type).',
    why: REASON.joined,
    property: 'belt-joined',
    wanted: ['no'],
  }),
  ...(['shoulder', 'lap', 'sub'] as const).map((family) =>
    limitRule({
      id: `speedway-${family}-eye-in-line`,
      orders: 'must',
      source: speedway('mounts', null),
      when: { mount: 'eye' },
      says: 'An eye bolt is in line with the webbing, within 5°.',
      why: REASON.eye,
      caveat:
        'The rule says in line; the 5° is our tolerance for drawing and measuring. The line is that of the shank; how the eye is turned about it has to be seen on the car.',
      quantity: 'shank-angle',
      family,
      max: 5,
    }),
  ),
]

const STATED = [
  [
    'matched',
    'parts',
    'All parts of a belt are of one system and one maker, unmodified and adjustable while seated.',
    'Mixed parts were never tested together.',
  ],
  ['not-on-seat', 'item (n)', 'No belt is anchored to the seat or its supports.', REASON.strength],
  [
    'three-bar',
    'wrap-round fitting',
    'Wrapped webbing is secured by a heavy three-bar slide of the webbing’s width.',
    'Webbing that is not secured creeps out under load.',
  ],
  ['edges', 'routing', 'No sharp edges; seat slots are rolled or grommeted.', REASON.edge],
  [
    'swivel',
    'mounts',
    'No chain link or D-shackle, no twist, and every mount can swivel.',
    'A strap loaded on one edge starts to tear and goes on.',
  ],
] as const

/** Dirt speedway. Source: New Zealand Speedway rule book 2010, pp. 90–94 and 160. */
export const SPEEDWAY_2010_RULES: RuleSet = {
  id: 'speedway-nz-2010',
  name: 'Dirt speedway, New Zealand 2010',
  edition: '2010',
  group: 'Off-road and dirt',
  about: 'Open-wheel and stock classes on dirt ovals; the pages on harnesses were read.',
  rules: [
    ...SHOULDER,
    ...LAP_AND_WRAP,
    ...STRAPS_AND_EYES,
    ...STATED.map(([id, section, says, why]) =>
      statedRule({ id: `speedway-${id}`, orders: 'must', source: speedway(section, null), says, why }),
    ),
    statedRule({
      id: 'speedway-hole-edge',
      orders: 'must',
      source: speedway('plates', 'greater distance than 25mm from plate edge'),
      says: 'A bolt hole is more than 25 mm from the edge of its plate.',
      why: REASON.strength,
    }),
    statedRule({
      id: 'speedway-age',
      orders: 'must',
      source: speedway('item (aa)', null),
      says: 'Webbing is renewed 5 years after manufacture.',
      why: REASON.age,
    }),
  ],
}

const midget = (section: string): RuleSource => ({
  document: 'USAC quarter-midget rules',
  section,
  edition: '2009',
  status: 'read',
  phrase: null,
})

/** Small open-wheel cars for young drivers. Source: USAC quarter-midget rules 724, as a news item of April 2009 prints them. */
export const QUARTER_MIDGET_2009_RULES: RuleSet = {
  id: 'usac-quarter-midget-2009',
  name: 'USAC quarter midget 2009',
  edition: '2009',
  group: 'Off-road and dirt',
  about: 'Small open-wheel cars for young drivers.',
  rules: [
    limitRule({
      id: 'quarter-midget-lap',
      orders: 'must',
      source: midget('724-C'),
      says: 'The lap belt lies across the pelvis, never on the abdomen: its height over the front hip bones is 0 mm or less.',
      why: REASON.lapLow,
      caveat: 'The height 0 as the limit is our reading.',
      quantity: 'lap-over-asis',
      family: 'lap',
      max: 0,
    }),
    statedRule({
      id: 'quarter-midget-shoulder',
      orders: 'must',
      source: midget('724-J'),
      says: 'The shoulder straps are attached close behind head and neck to a strong chassis member.',
      why: REASON.shoulderLength,
      caveat: 'No number is given.',
    }),
    statedRule({
      id: 'quarter-midget-age',
      orders: 'must',
      source: midget('724-K'),
      says: 'Belts are date-stamped and at most 4 years old.',
      why: REASON.age,
    }),
  ],
}

/** Desert racing. Source: SCORE competition regulations, CR 1. */
export const DESERT_RULES: RuleSet = {
  id: 'desert-score',
  name: 'Desert racing (SCORE)',
  edition: 'edition not recorded',
  group: 'Off-road and dirt',
  about: 'Only one sentence of its rules on restraints was read; its harness clauses were not.',
  rules: [
    propertyRule({
      id: 'desert-head-and-neck',
      orders: 'must',
      source: {
        document: 'SCORE competition regulations',
        section: 'CR 1',
        edition: 'edition not recorded',
        status: 'read',
        phrase: null,
      },
      says: 'In a four-wheel vehicle a head-and-neck restraint to SFI 38.1 or an FIA standard is worn.',
      why: REASON.neck,
      caveat: 'Whether the restraint meets the standard the tool cannot know.',
      property: 'belt-head-and-neck',
      wanted: ['yes'],
    }),
  ],
}
