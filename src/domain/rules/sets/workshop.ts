import type { QuantityRule, RuleSet } from '../rule'
import { WORKSHOP_ACROSS_RULES } from './workshopAcross'
import { WORKSHOP_HARDWARE_RULES } from './workshopHardware'
import { WORKSHOP_PLAUSIBLE_RULES } from './workshopPlausible'
import { tradeSource } from './workshopSource'

const LAP_ANGLE: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-lap-angle',
  level: 'should',
  source: tradeSource('lap tab wedge'),
  when: {},
  says: 'Seen from the side, the lap strap rises forward from its tab to the hip point at 45° to 60°.',
  why: 'A flatter strap lets the pelvis dive under it and rides up on to the belly; a steeper one lets the pelvis slide forward first.',
  caveat:
    'Published limits differ: 45–65° upright and 60–80° reclined (student cars 2026), 30–75° (US road anchorages), 45–90° (a 1998 club rally rule, quoted second-hand). One published sled study found more sliding under the strap the shallower its angle, over 20–75°, but names no single safe angle.',
  quantity: 'lap-angle',
  family: 'lap',
  min: 45,
  max: 60,
}

const LAP_SLOT: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-lap-straight',
  level: 'should',
  source: tradeSource('lap strap lies right by itself'),
  when: {},
  says: 'The lap strap runs straight through its seat slot, bent by no more than 3°.',
  why: 'A strap that the slot bends straightens under load, gives slack when it is needed least, and chafes on the edge.',
  caveat:
    'The trade says "straight" without a figure; the 3° is our tolerance. Student car rules 2026 ask for a straight line that touches no seat hole. A strap whose anchor lies on the body’s side of its slot counts as straight: see on the car that it really runs through the slot, and that a seat without slots leaves the strap free.',
  quantity: 'slot-bend',
  family: 'lap',
  min: null,
  max: 3,
}

const LAP_LOW: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-lap-below-hip-bones',
  level: 'should',
  source: tradeSource('lap strap lies right by itself'),
  when: {},
  says: 'The lap strap crosses the front hip bones at or below their points, never above them on the belly.',
  why: 'Bone can carry the strap; the belly cannot, and what lies behind it is hurt.',
  caveat:
    'The height 0 as the limit is ours; where the bone points lie in a real person must be felt, not computed. Where the flesh over them was not measured, 30 mm are taken up to a body mass index of 30, and heavier people are left unchecked; one study (Jones, Ebert and Reed, abstract) found people of a body mass index of 40 to put the strap 118 mm above and 68 mm ahead of them. The often quoted pelvis 7,000 lbf against belly 700–800 lbf is not supported by published tests: belly injuries at 6.0–6.8 kN belt load, 50 % risk of pelvis fracture at 5.5–6.2 kN in women, set-ups differ.',
  quantity: 'lap-over-asis',
  family: 'lap',
  min: null,
  max: 0,
}

const SHOULDER_CAVEAT =
  'The trade gives one angle; the ±5° about it is our tolerance. Published limits are measured from the horizontal and disagree: falling at most 45°, 40°, 20°, 10° or 5° by document, rising up to 10° (student cars) or 30° (one aviation circular, quoted second-hand).'

const SHOULDER_SQUARE: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-shoulder-square',
  level: 'should',
  source: tradeSource('shoulder straps square to the spine'),
  when: { headAndNeckRestraint: false },
  says: 'The shoulder straps leave the shoulders square to the spine, within 5° either way.',
  why: 'Mounted too low, tightening them pulls the wearer down and forward and loads the spine; too high, they hold late and lift off the shoulder.',
  caveat: SHOULDER_CAVEAT,
  quantity: 'shoulder-to-spine',
  family: 'shoulder',
  min: -5,
  max: 5,
}

const SHOULDER_RESTRAINT: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-shoulder-with-restraint',
  level: 'should',
  source: tradeSource('shoulder straps with a head-and-neck restraint'),
  when: { headAndNeckRestraint: true },
  says: 'With a head-and-neck restraint the shoulder straps fall about 10° below square to the spine, between 5° and 15°.',
  why: 'The strap has to hold the restraint down on the shoulders without loading the spine more than needed.',
  caveat: `${SHOULDER_CAVEAT} The maker of the restraint has the last word.`,
  quantity: 'shoulder-to-spine',
  family: 'shoulder',
  min: 5,
  max: 15,
}

const THIGH_STRAPS: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-thigh-straps-behind',
  level: 'should',
  source: tradeSource('thigh straps behind the groin'),
  when: { arrangements: [6, 7], straps: ['sub-left', 'sub-right'] },
  says: 'The two thigh straps anchor behind the groin: they lean rearward from vertical, 0° or more.',
  why: 'Only from behind can they hold the pelvis back; from ahead they just keep the buckle down.',
  caveat:
    'The trade gives no figure; 0° only says which side. Student car rules 2026 allow up to 20° rearward.',
  quantity: 'sub-to-vertical',
  family: 'sub',
  min: 0,
  max: null,
}

const CENTRE_STRAP: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-centre-strap-in-line',
  level: 'should',
  source: tradeSource('centre strap continues the shoulder straps'),
  when: { arrangements: [5, 7], straps: ['sub-centre'] },
  says: 'The centre strap continues the line of the shoulder straps down the chest, within 10° either way.',
  why: 'In line with them it takes up their pull straight away, before the lap strap is drawn up on to the belly.',
  caveat:
    'The trade says "continues the line"; the ±10° is our tolerance. Student car rules 2026 allow up to 20° forward of that line and nothing rearward; an aviation tie-down strap sits much further forward.',
  quantity: 'sub-to-chest',
  family: 'sub',
  min: -10,
  max: 10,
}

const WRAP_SQUARE: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-wrap-square',
  level: 'should',
  source: tradeSource('wraps on the harness bar'),
  when: { mount: 'wrap' },
  says: 'A strap wrapped round a bar meets it square: 85° or more between strap and bar.',
  why: 'A strap that meets the bar aslant bunches to one edge, creeps along the bar and starts to tear.',
  caveat:
    'The 5° is our tolerance. A dirt speedway rule book of 2010 was read to ask for "at 90 degrees to the line of the belt".',
  quantity: 'wrap-square',
  family: null,
  min: 85,
  max: null,
}

const TAB_TWIST: QuantityRule = {
  kind: 'quantity',
  id: 'workshop-tab-in-line',
  level: 'should',
  source: tradeSource('tab ends turn with the strap'),
  when: { mount: 'tab' },
  says: 'The plane of every tab contains the line of pull, within 5°.',
  why: 'A tab pulled out of its plane bends, and a strap loaded on one edge starts to tear and goes on.',
  caveat: 'The trade asks for no twist; the 5° is our tolerance for what a welder can set.',
  quantity: 'tab-twist',
  family: null,
  min: null,
  max: 5,
}

/**
 * Workshop practice: the trade's rules of thumb, and some of our own that say so. Source: common practice, no source; no rule of it is
 * a `must`.
 */
export const WORKSHOP_RULES: RuleSet = {
  id: 'workshop-practice',
  name: 'Workshop practice',
  edition: 'rules of thumb of the trade, no edition',
  group: 'Trade',
  about:
    'What off-road fabricators and seat builders go by, with some limits of our own that are marked as such; it has no published source and replaces no rule book.',
  rules: [
    SHOULDER_SQUARE,
    SHOULDER_RESTRAINT,
    LAP_ANGLE,
    LAP_SLOT,
    LAP_LOW,
    THIGH_STRAPS,
    CENTRE_STRAP,
    WRAP_SQUARE,
    TAB_TWIST,
    ...WORKSHOP_ACROSS_RULES,
    ...WORKSHOP_PLAUSIBLE_RULES,
    ...WORKSHOP_HARDWARE_RULES,
  ],
}
