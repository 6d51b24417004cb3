import type { RuleSet, RuleSource, SourceStatus } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const circular = (phrase: string | null): RuleSource => ({
  document: 'FAA AC 21-34',
  section: 'shoulder harness installation',
  edition: '4 June 1993',
  status: 'second-hand',
  phrase,
})

const pamphlet = (): RuleSource => ({
  document: 'FAA aeromedical leaflet on belts and harnesses',
  section: 'lap belt',
  edition: 'unofficial copy',
  status: 'second-hand',
  phrase: 'about 55 degrees with the centerline',
})

const part = (
  document: string,
  section: string,
  phrase: string | null,
  status: SourceStatus = 'read',
): RuleSource => ({
  document,
  section,
  edition: '2014 and 2019 page images',
  status,
  phrase,
})

/** Light aircraft. Source: FAA AC 21-34 as builders’ lists quote it, a leaflet, and 14 CFR 29.785. */
export const AVIATION_RULES: RuleSet = {
  id: 'aviation-us',
  name: 'Light aircraft, US',
  edition: 'AC 21-34 of 1993 and others',
  group: 'Aviation and military',
  about: 'What aviation asks of shoulder harnesses; it allows rising straps, which motor sport does not.',
  rules: [
    limitRule({
      id: 'aviation-shoulder-drop',
      orders: 'should',
      source: circular('between −5 degrees and +30 degrees'),
      says: 'Behind the shoulder the strap runs between 30° above and 5° below the horizontal.',
      why: REASON.shoulderFall,
      caveat:
        'Aviation counts a rise as plus. One reporter measures from square to the seat back, another from the shoulder; the horizontal is our choice.',
      quantity: 'shoulder-drop',
      family: 'shoulder',
      min: -30,
      max: 5,
    }),
    limitRule({
      id: 'aviation-lap-angle',
      orders: 'should',
      source: pamphlet(),
      says: 'Worn with a harness whose buckle is in the middle, the lap belt stands at about 55° to the aircraft’s centre line, here 50° to 60°.',
      why: REASON.lapAngle,
      caveat: 'The ±5° is our reading of "about"; that the leaflet is the agency’s is from memory.',
      quantity: 'lap-angle',
      family: 'lap',
      min: 50,
      max: 60,
    }),
    statedRule({
      id: 'aviation-split',
      orders: 'must',
      source: part(
        '14 CFR 29.785(g)',
        '(g)',
        '60-percent load to the safety belt and at least a 40-percent load',
      ),
      says: 'Of the combined load the belt is designed for at least 60 % and the shoulder harness for at least 40 %.',
      why: REASON.strength,
      caveat: 'Strength is not checked here.',
    }),
    statedRule({
      id: 'aviation-fitting-factor',
      orders: 'must',
      source: part('14 CFR 29.785(f)(2)', '(f)(2)', 'multiplied by a factor of 1.33'),
      says: 'Attachments are designed for 1.33 times the inertia load of a person of at least 170 lb.',
      why: REASON.strength,
    }),
    statedRule({
      id: 'aviation-shoulder-test-load',
      orders: 'advice',
      source: {
        document: 'FAA AC 43.13-2B',
        section: 'table 9-1',
        edition: 'as quoted in a pilots’ forum',
        status: 'second-hand',
        phrase: 'minimum static test load of 704 pounds',
      },
      says: 'A shoulder harness attachment of an older light aircraft is accepted at a static test load of 704 lbf (3,132 N).',
      why: REASON.strength,
      caveat: 'Strength is not checked here.',
    }),
    statedRule({
      id: 'aviation-side-load',
      orders: 'advice',
      source: {
        document: 'FAA policy ACE-00-23.561-01',
        section: 'attachment to a tube',
        edition: 'as quoted in a forum',
        status: 'second-hand',
        phrase: null,
      },
      says: 'A tube that is already in compression can buckle when a belt pulls on it sideways.',
      why: REASON.strength,
      caveat: 'The same holds of a harness bar that is also a brace of the cage.',
    }),
    statedRule({
      id: 'aviation-stays-on',
      orders: 'must',
      source: part('14 CFR 25.562', '(c)(3), (4)', null),
      says: 'In the test the strap stays on the shoulder and the lap belt on the pelvis.',
      why: REASON.lapLow,
    }),
  ],
}

const military = (document: string, section: string, phrase: string | null): RuleSource => ({
  document,
  section,
  edition: 'as stored',
  status: 'read',
  phrase,
})

/** Aircraft crew seats. Source: MIL-S-58095A, MIL-S-85510, MIL-S-25073A, the pages that were read. */
export const MILITARY_SEAT_RULES: RuleSet = {
  id: 'military-crew-seats',
  name: 'Military crew seats, US',
  edition: 'MIL-S-58095A, 85510, 25073A',
  group: 'Aviation and military',
  about:
    'Sentences on fittings and straps that were read; the anchor angles are drawings and were not. Only the width of guides is checked.',
  rules: [
    statedRule({
      id: 'military-tie-down',
      orders: 'must',
      source: military('MIL-S-58095A', '3.11.7.2', 'between 14 to 15 inches (35 to 38 cm)'),
      says: 'The centre tie-down strap is anchored on the seat’s centre line 14 in to 15 in (350–380 mm) ahead of the seat reference point.',
      why: 'It keeps the buckle down.',
      caveat: 'Not checked: the seat reference point is not the hip point. Far ahead of what racing does.',
    }),
    statedRule({
      id: 'military-pivot',
      orders: 'must',
      source: military('MIL-S-58095A', '3.11.7.1', 'plus and minus 20 degrees'),
      says: 'A lap belt fitting can swing 20° either way in side view; MIL-S-85510 asks for 30°.',
      why: 'A strap that cannot turn is loaded on one edge.',
    }),
    propertyRule({
      id: 'military-guide-width',
      orders: 'must',
      source: military('MIL-S-58095A', '3.11.7.3', null),
      says: 'A webbing guide is at most 0.5 in (13 mm) wider than the strap.',
      why: 'In a wide guide the webbing wanders to one end and is loaded along one edge.',
      caveat: 'The slot in the seat stands for the guide.',
      property: 'slot-spare',
      max: 13,
    }),
    statedRule({
      id: 'military-guide',
      orders: 'must',
      source: military('MIL-S-58095A', '3.11.7.3', null),
      says: 'The edges of webbing guides have a radius of 0.25 in (6 mm) or more.',
      why: REASON.edge,
    }),
    statedRule({
      id: 'military-wrap-radius',
      orders: 'must',
      source: military('MIL-S-58095A', '3.11.7.4', null),
      says: 'Webbing is wrapped at buckles, anchors and adjusters over a radius of 0.062 in (1.6 mm) or more.',
      why: REASON.edge,
    }),
    statedRule({
      id: 'military-lap-pull',
      orders: 'must',
      source: military('MIL-S-25073A', 'pp. 5–6', 'inclined 40 degrees up from the floor plane'),
      says: 'Lap belt mounts are loaded with 1,440 lbf forward and 40° up from the floor, shoulder mounts with 900 lbf forward.',
      why: REASON.strength,
      caveat: 'A direction of a test load, not a limit for anchors.',
    }),
  ],
}
