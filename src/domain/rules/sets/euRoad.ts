import type { QuantityRule, Rule, RuleSet, RuleSource, SourceStatus } from '../rule'
import { limitRule, statedRule } from './making'
import { REASON } from './reasons'

const EDITION = 'as amended to 96/38/EC'

const directive = (section: string, phrase: string | null, status: SourceStatus = 'read'): RuleSource => ({
  document: 'Directive 76/115/EEC, Annex I',
  section,
  edition: EDITION,
  status,
  phrase,
})

const R_CAVEAT =
  'Written from the design point R; here it is held against the hip point of every person in every seat position, which asks more.'

/** What is asked of upper anchorages whatever the vehicle's class. `key` keeps the ids of the sets apart. */
const upperRules = (key: string): readonly Rule[] => [
  limitRule({
    id: `eu-${key}-upper-height`,
    orders: 'must',
    source: directive('4.1.4, 4.4.4', '450 mm vertically above point R'),
    says: 'The upper effective anchorage is at least 450 mm above the hip point (point C).',
    why: REASON.shoulderHeight,
    caveat: `${R_CAVEAT} Where the shoulder’s distance from the seat’s middle S is 280 mm or more and the other formula is chosen, C is at 500 mm.`,
    quantity: 'shoulder-above-hip',
    family: 'shoulder',
    min: 450,
  }),
  limitRule({
    id: `eu-${key}-upper-behind`,
    orders: 'must',
    source: directive('4.4.4', null),
    says: 'The upper effective anchorage is behind the upright plane across the car through the hip point: 0 mm or more.',
    why: REASON.shoulderHeight,
    caveat: R_CAVEAT,
    quantity: 'shoulder-behind-hip',
    family: 'shoulder',
    min: 0,
  }),
  limitRule({
    id: `eu-${key}-upper-plane`,
    orders: 'must',
    source: directive('4.4.4.3', null),
    says: 'The upper effective anchorage is behind the plane FK, 0 mm or more: it crosses the torso line at 120° at the point B, 260 mm + S above the hip point along that line, S being the anchorage’s distance from the seat’s middle.',
    why: 'Ahead of it the strap would leave the shoulder before it has gone round it.',
    caveat: `${R_CAVEAT} The figure was not read: of the two planes at 120° the one that falls rearward is taken, because only that one has a rear side. From S = 280 mm on 260 mm + 0.8 S may be chosen instead; here always 260 mm + S.`,
    quantity: 'shoulder-behind-fk',
    family: 'shoulder',
    min: 0,
  }),
]

/** Likewise of lower anchorages. */
const lowerRules = (key: string): readonly Rule[] => [
  limitRule({
    id: `eu-${key}-lap-spacing`,
    orders: 'must',
    source: directive('4.4.3.5', 'not be less than 350 mm'),
    says: 'The two lap anchorages are at least 350 mm apart across the seat.',
    why: REASON.lapSpacing,
    caveat: 'US road law asks for 165 mm.',
    quantity: 'lap-spacing',
    family: 'lap',
    min: 350,
  }),
  limitRule({
    id: `eu-${key}-lap-off-centre`,
    orders: 'must',
    source: directive('4.4.3.5', null),
    says: 'Each lap anchorage is at least 120 mm from the middle plane of the seat.',
    why: REASON.lapSpacing,
    quantity: 'lap-off-centre',
    family: 'lap',
    min: 120,
  }),
  statedRule({
    id: `eu-${key}-guide`,
    orders: 'must',
    source: directive('4.4.4.1', null),
    says: 'Where a strap guide leads the strap, the effective upper anchorage is found from the point J: 530 mm up the torso line, then sideways and up to the shoulder.',
    why: 'The guide, not the bolt, gives the strap its direction.',
    caveat: 'The tool takes the edge of a seat slot or rim that bends the strap, in the same sense.',
  }),
]

const lapRule = (
  rule: Pick<QuantityRule, 'id' | 'says' | 'caveat' | 'when'> & {
    readonly orders: 'must' | 'advice'
    readonly source: RuleSource
    readonly min: number
    readonly max: number
  },
): QuantityRule => {
  const { caveat, ...rest } = rule
  return limitRule({
    ...rest,
    caveat:
      `${caveat ?? ''} The angle is that of the side-view projection, to the hip point of every person in every seat position.`.trim(),
    why: REASON.lapAngle,
    quantity: 'lap-angle',
    family: 'lap',
  })
}

/** Front seats of light goods vehicles. Source: Directive 76/115/EEC as amended to 96/38/EC, Annex I 4.4.3.3–4.4.4. */
export const EU_LIGHT_GOODS_RULES: RuleSet = {
  id: 'eu-76-115-light-goods',
  name: 'EU 76/115, front seats of light goods vehicles',
  edition: EDITION,
  group: 'Road vehicles',
  about: 'European belt anchorages for the front seats of goods vehicles up to 3.5 t.',
  rules: [
    lapRule({
      id: 'eu-light-goods-lap',
      orders: 'must',
      source: directive('4.4.3.3–4.4.3.4', '60 ± 10º'),
      when: { seatAdjustable: false },
      says: 'Where the seat is fixed, the lap strap stands at 60° ± 10°, that is 50° to 70°.',
      caveat: 'Said of an angle that is the same in all positions.',
      min: 50,
      max: 70,
    }),
    ...upperRules('light-goods'),
    ...lowerRules('light-goods'),
  ],
}

/** Rear and bench seats. Source: Directive 76/115/EEC as amended to 96/38/EC, Annex I 4.4.3.4. */
export const EU_REAR_SEATS_RULES: RuleSet = {
  id: 'eu-76-115-rear',
  name: 'EU 76/115, rear and bench seats',
  edition: EDITION,
  group: 'Road vehicles',
  about: 'European belt anchorages for rear and bench seats of vehicles other than cars.',
  rules: [
    lapRule({
      id: 'eu-rear-lap',
      orders: 'advice',
      source: directive('4.4.3.4', 'between 20 and 80º'),
      when: {},
      says: 'The lap strap may stand at 20° to 80°.',
      caveat: 'The document says "may".',
      min: 20,
      max: 80,
    }),
    ...upperRules('rear'),
    ...lowerRules('rear'),
  ],
}

/** Buses and coaches. Source: Directive 76/115/EEC as amended to 96/38/EC, Annex I 4.4.3.4. */
export const EU_BUS_RULES: RuleSet = {
  id: 'eu-76-115-bus',
  name: 'EU 76/115, other seats of buses',
  edition: EDITION,
  group: 'Road vehicles',
  about: 'European belt anchorages for seats of buses and coaches other than the front ones.',
  rules: [
    lapRule({
      id: 'eu-bus-lap',
      orders: 'must',
      source: directive('4.4.3.4', 'between 45 and 90 degrees'),
      when: {},
      says: 'The lap strap stands at 45° to 90°.',
      caveat: null,
      min: 45,
      max: 90,
    }),
    ...upperRules('bus'),
    ...lowerRules('bus'),
  ],
}

/** Light vehicles. Source of the wedge: read in a legal corpus; that it belongs to Reg. (EU) 3/2014 Annex XI is from memory. */
export const EU_LIGHT_VEHICLE_RULES: RuleSet = {
  id: 'eu-light-vehicles-3-2014',
  name: 'EU light vehicles, 3/2014',
  edition: '2014',
  group: 'Road vehicles',
  about: 'One figure for harness anchorages, which belongs by its number to the rules for light vehicles.',
  rules: [
    limitRule({
      id: 'eu-light-vehicle-wedge',
      orders: 'must',
      source: {
        document: 'Regulation (EU) 3/2014, Annex XI',
        section: 'figure 11-P2-2',
        edition: '2014',
        status: 'memory',
        phrase: 'outward angle of 10° and an inward angle of 20°',
      },
      says: 'Seen from above, each upper harness anchorage lies in a wedge behind the shoulder’s reference point, from 10° outward to 20° inward of straight rearward.',
      why: REASON.shoulderPlan,
      caveat:
        'The words with the numbers were read, the document they belong to is from memory. The reference point is 530 mm up the torso line (read) and 120 mm sideways (from memory).',
      quantity: 'shoulder-reference-plan',
      family: 'shoulder',
      min: -10,
      max: 20,
    }),
  ],
}
