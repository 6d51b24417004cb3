import type { RuleSet, RuleSource } from '../rule'
import { limitRule } from './making'
import { REASON } from './reasons'

/** Source: a letter to the agency of 19 June 1991 that quotes 49 CFR 571.210 as it then stood. */
export const US_ROAD_1991_RULES: RuleSet = {
  id: 'us-road-210-before-1992',
  name: 'US road anchorages, as quoted in 1991',
  edition: 'as quoted on 19 June 1991',
  group: 'Road vehicles',
  about: 'The older lap angle limits of the US standard; superseded, kept for comparison.',
  rules: [
    limitRule({
      id: 'us-210-1991-lap',
      orders: 'must',
      source: {
        document: '49 CFR 571.210, older edition',
        section: 'S4.3.1',
        edition: 'as quoted in 1991',
        status: 'second-hand',
        phrase: 'not less than 20 and not more than 75',
      },
      says: 'The line from the lap anchorage to the hip point rises forward at 20° to 75°.',
      why: REASON.lapAngle,
      caveat: 'The present edition has 30–75°.',
      quantity: 'lap-angle',
      family: 'lap',
      min: 20,
      max: 75,
    }),
  ],
}

const schoolBus = (section: string): RuleSource => ({
  document: '49 CFR 571.210',
  section,
  edition: 'electronic text as stored, date not recorded',
  status: 'read',
  phrase: null,
})

/** Source: 49 CFR 571.210 S4.1.3.2(a) and S4.3.1.4, school-bus seats. */
export const US_SCHOOL_BUS_RULES: RuleSet = {
  id: 'us-school-bus-210',
  name: 'US school-bus seats, 49 CFR 571.210',
  edition: 'electronic text as stored, date not recorded',
  group: 'Road vehicles',
  about: 'A second published height for an upper anchorage; not meant for cars.',
  rules: [
    limitRule({
      id: 'us-school-bus-torso',
      orders: 'must',
      source: schoolBus('S4.1.3.2(a)'),
      says: 'The torso belt’s anchor point is at least 520 mm above the hip point.',
      why: REASON.shoulderHeight,
      caveat:
        'For a small occupant’s adjusted position it is 400 mm. The hip point stands in for the seating reference point.',
      quantity: 'shoulder-above-hip',
      family: 'shoulder',
      min: 520,
    }),
    limitRule({
      id: 'us-school-bus-lap-spacing',
      orders: 'must',
      source: schoolBus('S4.3.1.4'),
      says: 'The two lap anchorages are at least 330 mm apart across the seat.',
      why: REASON.lapSpacing,
      caveat: 'On seats with a flexible number of places 280 mm.',
      quantity: 'lap-spacing',
      family: 'lap',
      min: 330,
    }),
  ],
}
