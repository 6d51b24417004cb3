import type { Rule, RuleSet, RuleSource } from '../rule'
import { limitRule, statedRule } from './making'
import { REASON } from './reasons'

const EDITION = 'electronic text as stored, date not recorded'

const section210 = (section: string, phrase: string | null): RuleSource => ({
  document: '49 CFR 571.210',
  section,
  edition: EDITION,
  status: 'read',
  phrase,
})

const section209 = (section: string): RuleSource => ({
  document: '49 CFR 571.209',
  section,
  edition: EDITION,
  status: 'read',
  phrase: null,
})

const ANGLE_PHRASE = 'not less than 30 degrees and not more than 75 degrees'
const ANGLE_WHY = 'Below that the pelvis slides under the strap; above it the strap holds the pelvis late.'
const ANGLE_CAVEAT =
  'Written for road vehicles; not demanded of a vehicle that passes the crash test of 571.208 S5.1. A 1991 letter quotes an older edition with 20–75°. The angle is taken in side view.'

const CHECKED: readonly Rule[] = [
  {
    kind: 'quantity',
    id: 'us-210-lap-fixed-seat',
    level: 'must',
    source: section210('S4.3.1.1(a)', ANGLE_PHRASE),
    when: { seatAdjustable: false },
    says: 'With a fixed seat, the line from the lap anchorage to the hip point rises forward at 30° to 75°.',
    why: ANGLE_WHY,
    caveat: `${ANGLE_CAVEAT} The hip point of the seated occupant stands in for the seating reference point.`,
    quantity: 'lap-angle',
    family: 'lap',
    min: 30,
    max: 75,
  },
  {
    kind: 'quantity',
    id: 'us-210-lap-adjustable-seat',
    level: 'must',
    source: section210('S4.3.1.1(b)', ANGLE_PHRASE),
    when: { seatAdjustable: true },
    says: 'With an adjustable seat, the line from the lap anchorage to the point 64 mm ahead of and 10 mm above the hip point rises forward at 30° to 75°.',
    why: ANGLE_WHY,
    caveat: `${ANGLE_CAVEAT} The shift was read as "64 mm forward of and 10 mm above" one seating reference point; here it is held against every seat position and person, which asks more.`,
    quantity: 'lap-shifted-angle',
    family: 'lap',
    min: 30,
    max: 75,
  },
  {
    kind: 'quantity',
    id: 'us-210-lap-spacing',
    level: 'must',
    source: section210('S4.3.1.4', 'at least 165 mm apart laterally'),
    when: {},
    says: 'The two lap anchorages are at least 165 mm apart across the seat, bolt hole to bolt hole.',
    why: 'Closer together they pinch the pelvis and stop holding it sideways.',
    caveat:
      'School-bus seats have other figures. The European text read asks for 350 mm and for 120 mm either side of the seat centre.',
    quantity: 'lap-spacing',
    family: 'lap',
    min: 165,
    max: null,
  },
  {
    kind: 'property',
    id: 'us-209-webbing-width',
    level: 'must',
    source: section209('S4.2(a)'),
    when: {},
    says: 'Webbing is at least 46 mm wide.',
    why: 'Narrow webbing loads the body along a line instead of a band.',
    caveat: 'From the standard for belts, 571.209, which goes with the one for anchorages.',
    property: 'webbing-width',
    family: null,
    min: 46,
    max: null,
    wanted: null,
  },
]

const BELT_CHECKED: readonly Rule[] = [
  limitRule({
    id: 'us-209-lap-low',
    orders: 'must',
    source: {
      ...section209('S4.1(c)'),
      phrase: 'without shifting the pelvic restraint into the abdominal region',
    },
    says: 'The lap strap stays below the belly: its height over the front hip bones is 0 mm or less.',
    why: REASON.lapLow,
    caveat:
      'Said of what the torso belt may do to the lap belt; the height 0 as the limit, and that it holds of the strap as drawn, are our reading.',
    quantity: 'lap-over-asis',
    family: 'lap',
    max: 0,
  }),
]

const BELT_STATED: readonly Rule[] = [
  statedRule({
    id: 'us-209-two-belts',
    orders: 'must',
    source: section209('S4.3(c)(2)'),
    says: 'Hardware that takes the ends of two belts holds 26,689 N.',
    why: REASON.strength,
    caveat: 'Strength is tested, not drawn; the tool does not check it.',
  }),
  statedRule({
    id: 'us-209-plate',
    orders: 'must',
    source: section209('S4.1(f)'),
    says: 'A universal reinforcing plate is of 1.5 mm steel and 2,580 mm² at least, its hole 15 mm or more from the edge, its corners rounded to 6 mm or more.',
    why: REASON.strength,
    caveat: 'The tool does not know the plates.',
  }),
  statedRule({
    id: 'us-209-tilt-lock',
    orders: 'must',
    source: section209('S4.3(f)'),
    says: 'A tilt-lock adjuster holds with 30° or more between its base and the webbing.',
    why: 'Flatter than that it lets the webbing slip through.',
    caveat: 'The tool does not know how an adjuster locks.',
  }),
]

const STATED: readonly Rule[] = [
  {
    kind: 'stated',
    id: 'us-210-torso-figure',
    level: 'must',
    source: section210('S4.3.2', null),
    when: {},
    says: 'The upper end of the torso belt lies inside the zone of Figure 1, with the seat fully back and down and its back most upright.',
    why: 'The zone keeps the strap on the shoulder without pressing it down.',
    caveat:
      'Figure 1 is a drawing that could not be read, so no shoulder limit of this document is checked here.',
  },
  {
    kind: 'stated',
    id: 'us-210-seat-frame',
    level: 'must',
    source: section210('S4.3.1.2', null),
    when: {},
    says: 'Where the belt bears on the seat frame, the angle is taken to that contact and the anchorage lies aft of the rearmost one.',
    why: 'The contact, not the tab, is what gives the strap its direction.',
    caveat: 'The tool takes the angle from the edge of a seat slot that bends the strap, in the same sense.',
  },
  {
    kind: 'stated',
    id: 'us-210-lap-load',
    level: 'must',
    source: section210('S4.2.1, S5.1', null),
    when: {},
    says: 'Anchorages of a lap belt alone hold 22,241 N (5,000 lbf).',
    why: 'An anchorage that tears out holds nobody.',
    caveat: 'Strength is tested, not drawn; the tool does not check it.',
  },
  {
    kind: 'stated',
    id: 'us-210-lap-and-shoulder-load',
    level: 'must',
    source: section210('S4.2.2, S5.2', null),
    when: {},
    says: 'Anchorages of lap and shoulder belts together hold 13,345 N (3,000 lbf) on each belt at once.',
    why: 'An anchorage that tears out holds nobody.',
    caveat: 'Strength is tested, not drawn; the tool does not check it.',
  },
  {
    kind: 'stated',
    id: 'us-210-neighbours',
    level: 'must',
    source: section210('S4.2.4(b)', 'within 305 mm'),
    when: {},
    says: 'Anchorages of neighbouring seats with bolt holes within 305 mm are loaded together.',
    why: 'Two people in one crash pull on a shared bar at the same time.',
    caveat: 'Strength is tested, not drawn; the tool does not check it.',
  },
  {
    kind: 'stated',
    id: 'us-209-bolts',
    level: 'must',
    source: section209('S4.3(c)(1), S4.1(f)'),
    when: {},
    says: 'A bolt securing a pelvic belt holds 40,034 N and is 7/16-20 UNF-2A, 1/2-13 UNC-2A or a metric equal.',
    why: 'One bolt may carry the whole end of a belt.',
    caveat: 'The tool does not know the bolts.',
  },
]

/** Lap anchorage positions of US road vehicles. Source: 49 CFR 571.210 and, for webbing and bolts, 571.209. */
export const US_ROAD_210_RULES: RuleSet = {
  id: 'us-road-anchorages-571-210',
  name: 'US road anchorages, 49 CFR 571.210',
  edition: EDITION,
  group: 'Road vehicles',
  about:
    'Where US law puts the lap belt anchorages of road vehicles; it has no limit here for harness shoulder straps or anti-submarine straps.',
  rules: [...CHECKED, ...BELT_CHECKED, ...STATED, ...BELT_STATED],
}
