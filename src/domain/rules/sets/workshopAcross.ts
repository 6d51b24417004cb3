import type { Rule } from '../rule'
import { limitRule, propertyRule } from './making'
import { REASON } from './reasons'
import { tradeSource } from './workshopSource'

const OWN_SIDE =
  'The trade takes it for granted and has no words for it; it is here because every angle seen from the side is the same when left and right are mixed up.'

/**
 * Where the anchors lie across the seat. The trade has no figures for it, so two of other documents stand here as advice: without
 * any, two lap anchors in the middle of the seat would break nothing.
 */
export const WORKSHOP_ACROSS_RULES: readonly Rule[] = [
  ...(
    [
      ['lap', 'lap straps'],
      ['sub', 'thigh straps'],
    ] as const
  ).map(([family, straps]) =>
    propertyRule({
      id: `workshop-${family}-own-sides`,
      orders: 'should',
      source: tradeSource('left and right'),
      says: `The two ${straps} are anchored each on its own side and do not cross.`,
      why: 'Crossed, they chafe on each other and pull the pelvis to the wrong side.',
      caveat: OWN_SIDE,
      property: 'straps-crossed',
      family,
      wanted: ['no'],
    }),
  ),
  limitRule({
    id: 'workshop-lap-spacing',
    orders: 'advice',
    source: {
      document: '49 CFR 571.210',
      section: 'S4.3.1.4',
      edition: 'electronic text as stored, date not recorded',
      status: 'read',
      phrase: 'at least 165 mm apart laterally',
    },
    says: 'The two lap anchors are at least 165 mm apart across the seat.',
    why: REASON.lapSpacing,
    caveat:
      'A figure of US road law, here as advice; the trade has none of its own. Beside a person they lie further apart than that by themselves.',
    quantity: 'lap-spacing',
    family: 'lap',
    min: 165,
  }),
  limitRule({
    id: 'workshop-shoulder-plan',
    orders: 'advice',
    source: {
      document: 'FIA Appendix J, Article 253',
      section: '253-6.2',
      edition: 'texts of 1996 and December 2012',
      status: 'read',
      phrase: '20 divergent or convergent',
    },
    says: 'Seen from above, each shoulder strap runs within 20° of straight rearward.',
    why: REASON.shoulderPlan,
    caveat:
      'A figure of rally and circuit rules, here as advice; the trade has none of its own. Straps crossed on purpose break it where they are short.',
    quantity: 'shoulder-plan',
    family: 'shoulder',
    min: -20,
    max: 20,
  }),
]
