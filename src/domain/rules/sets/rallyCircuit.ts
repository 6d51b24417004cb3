import type { RuleSet, RuleSource, SourceStatus } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const EDITION = 'texts of 1996 and December 2012'

const source = (section: string, phrase: string | null, status: SourceStatus = 'read'): RuleSource => ({
  document: 'FIA Appendix J, Article 253',
  section,
  edition: EDITION,
  status,
  phrase,
})

const beltStandard = (): RuleSource => ({
  document: 'FIA standard 8853/98',
  section: 'strap widths',
  edition: '1998',
  status: 'second-hand',
  phrase: null,
})

const RIM_CAVEAT =
  'Measured from the upper rim of the backrest (or the slot), not from the shoulder as most others do. Written for production-based cars with a cage.'

const SHOULDER = [
  limitRule({
    id: 'fia-shoulder-rim-drop',
    orders: 'must',
    source: source('253-6.2', 'more than 45'),
    says: 'From the backrest rim the shoulder straps run rearward and downward, 0° to 45° below the horizontal.',
    why: REASON.shoulderFall,
    caveat: `${RIM_CAVEAT} The 0° is implied by "downwards".`,
    quantity: 'shoulder-rim-drop',
    family: 'shoulder',
    min: 0,
    max: 45,
  }),
  limitRule({
    id: 'fia-shoulder-rim-drop-recommended',
    orders: 'should',
    source: source('253-6.2', 'should not exceed 10'),
    says: 'The fall behind the backrest rim should be no more than 10°.',
    why: REASON.shoulderFall,
    caveat: RIM_CAVEAT,
    quantity: 'shoulder-rim-drop',
    family: 'shoulder',
    max: 10,
  }),
  limitRule({
    id: 'fia-shoulder-rim-drop-bar',
    orders: 'must',
    source: source('253-6.2, straps taken to a bar across the car', null, 'memory'),
    when: { tube: 'harness-bar' },
    says: 'Straps taken to a bar across the car fall 10° to 45° from the backrest rim.',
    why: REASON.shoulderFall,
    caveat: `${RIM_CAVEAT} Speaks of straps whose anchor is on a tube drawn as a harness bar; with the recommendation above only 10° itself is left.`,
    quantity: 'shoulder-rim-drop',
    family: 'shoulder',
    min: 10,
    max: 45,
  }),
  limitRule({
    id: 'fia-shoulder-plan',
    orders: 'must',
    source: source('253-6.2', '20 divergent or convergent'),
    says: 'Seen from above, each shoulder strap runs within 20° of the seat’s centre line, converging or diverging.',
    why: REASON.shoulderPlan,
    quantity: 'shoulder-plan',
    family: 'shoulder',
    min: -20,
    max: 20,
  }),
]

const BAR_CAVEAT =
  'Two sizes are remembered, 38 × 2.5 mm and 40 × 2 mm in cold-drawn seamless steel; only what both have in common is checked.'

const HARDWARE = [
  propertyRule({
    id: 'fia-bar-diameter',
    orders: 'must',
    source: source('253-6.2, bar across the car', null, 'memory'),
    says: 'The bar that carries the shoulder straps is at least 38 mm in outside diameter.',
    why: REASON.strength,
    caveat: BAR_CAVEAT,
    property: 'bar-diameter',
    min: 38,
  }),
  propertyRule({
    id: 'fia-bar-wall',
    orders: 'must',
    source: source('253-6.2, bar across the car', null, 'memory'),
    says: 'Its wall is at least 2 mm thick; at 38 mm diameter it is 2.5 mm.',
    why: REASON.strength,
    caveat: BAR_CAVEAT,
    property: 'bar-wall',
    min: 2,
  }),
  propertyRule({
    id: 'fia-bar-second-moment',
    orders: 'must',
    source: source('253-6.2, bar across the car', null, 'memory'),
    says: 'It is no weaker in bending than the thinner of the two sizes: at least 43,215 mm⁴.',
    why: REASON.strength,
    caveat: `${BAR_CAVEAT} The second moment of area of 40 × 2 mm, 43,215.7 mm⁴, is worked out here; without it 38 × 2 mm, which is neither size, would pass.`,
    property: 'bar-second-moment',
    min: 43_215,
  }),
  propertyRule({
    id: 'fia-four-point-crossed',
    orders: 'must',
    source: source('253-6.2, 1996', null),
    when: { arrangements: [4] },
    says: 'With four points the shoulder straps are crossed symmetrically.',
    why: 'A crossed pair stays on the shoulders.',
    caveat:
      'Crossed is read here as: the left strap is anchored to the right of the right one. Whether they cross in the middle of the seat is left to the eye.',
    property: 'straps-crossed',
    family: 'shoulder',
    wanted: ['yes'],
  }),
  propertyRule({
    id: 'fia-one-shoulder-point',
    orders: 'must',
    source: source('253-6.2', 'prohibited for shoulder straps', 'second-hand'),
    says: 'The two shoulder straps never share one anchorage.',
    why: REASON.joined,
    caveat:
      'Anchors nearer together than 10 mm, and straps joined into one tail, count as one anchorage here.',
    property: 'shoulder-anchorages',
    family: 'shoulder',
    wanted: ['separate'],
  }),
  propertyRule({
    id: 'fia-lap-through-seat',
    orders: 'must',
    source: source('253-6.2', null, 'memory'),
    says: 'Lap straps pass through the seat, not over its sides.',
    why: REASON.throughSeat,
    property: 'strap-slot',
    family: 'lap',
    wanted: ['yes'],
  }),
  propertyRule({
    id: 'fia-sub-through-seat',
    orders: 'must',
    source: source('253-6.2', null, 'memory'),
    says: 'Anti-submarine straps pass through the seat, not over its sides.',
    why: REASON.throughSeat,
    property: 'strap-slot',
    family: 'sub',
    wanted: ['yes'],
  }),
  ...(
    [
      ['shoulder', 70],
      ['lap', 44],
      ['sub', 44],
    ] as const
  ).map(([family, min]) =>
    propertyRule({
      id: `fia-${family}-webbing`,
      orders: 'must',
      source: beltStandard(),
      says: `${family === 'shoulder' ? 'Shoulder' : family === 'lap' ? 'Lap' : 'Crotch'} webbing is at least ${min} mm wide.`,
      why: REASON.webbing,
      caveat: 'As a team’s page and a club’s list give the 1998 belt standard; newer standards differ.',
      property: 'webbing-width',
      family,
      min,
    }),
  ),
]

const STATED = [
  statedRule({
    id: 'fia-not-on-seat',
    orders: 'must',
    source: source('253-6.2', 'prohibited for the seat belts to be anchored to the seats'),
    says: 'No belt is anchored to the seat or its supports.',
    why: REASON.strength,
    caveat:
      'US road law covers anchorages on the seat; the tool does not know what a tab without a tube is welded to.',
  }),
  statedRule({
    id: 'fia-cage-points',
    orders: 'advice',
    source: source('253-6.1, December 2012', null),
    says: 'A national body may approve harness mounting points on the cage if they are tested.',
    why: REASON.strength,
    caveat: 'A permission, not a demand.',
  }),
  statedRule({
    id: 'fia-head-restraint',
    orders: 'must',
    source: source('253-6.2, 1996', null),
    says: 'No harness on a seat without a head restraint, or with one that has no openings for the straps.',
    why: 'Straps round the outside of a head restraint slip off the shoulders.',
  }),
  statedRule({
    id: 'fia-sub-drawings',
    orders: 'should',
    source: source('253-6.2, drawings 253-61 and 253-64', null),
    says: 'Crotch straps follow the drawings of recommended positions; those of a 6-point belt run upright or rearward.',
    why: REASON.sub,
    caveat: 'The drawings could not be read.',
  }),
  statedRule({
    id: 'fia-anchor-load',
    orders: 'must',
    source: source('253-6.2', null, 'memory'),
    says: 'Each anchorage holds 1,470 daN, that of a crotch strap 720 daN, a shared one (never of shoulder straps) the sum.',
    why: REASON.strength,
    caveat: 'Strength is not checked here.',
  }),
  statedRule({
    id: 'fia-plates-and-bolts',
    orders: 'must',
    source: source('253-6.2', null, 'memory'),
    says: 'New anchorages have a steel plate of 40 cm² and 3 mm at least; bolts in welded bar inserts are M12 class 8.8 or 7/16 UNF.',
    why: REASON.strength,
  }),
  statedRule({
    id: 'fia-rear-axle',
    orders: 'must',
    source: source('253-6.2', null, 'memory'),
    says: 'New shoulder anchorages in the shell are as near the rear-wheel centre line as possible.',
    why: REASON.strength,
    caveat: 'Only for closed cars whose series anchorages cannot be used.',
  }),
]

/** Rally and circuit harnesses. Source: FIA Appendix J, Article 253-6.2, as far as its texts of 1996 and 2012 were read. */
export const RALLY_CIRCUIT_RULES: RuleSet = {
  id: 'rally-circuit-253',
  name: 'Rally and circuit, FIA Article 253',
  edition: EDITION,
  group: 'Rally and circuit',
  about:
    'The harness article for production-based rally and circuit cars; only parts of it were read, the loads and the bar are from memory.',
  rules: [...SHOULDER, ...HARDWARE, ...STATED],
}
