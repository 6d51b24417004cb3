import type { RuleSet, RuleSource } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const rallyAmerica = (phrase: string | null): RuleSource => ({
  document: 'Rally America rules',
  section: 'shoulder harness H.1',
  edition: 'edition not recorded',
  status: 'second-hand',
  phrase,
})

/** A tight club rally rule. Source: Rally America, shoulder harness H.1, as quoted in an endurance-racing forum. */
export const RALLY_AMERICA_RULES: RuleSet = {
  id: 'rally-america',
  name: 'Rally America',
  edition: 'edition not recorded',
  group: 'Rally and circuit',
  about: 'The shoulder harness rule of a US rally series, quoted second-hand.',
  rules: [
    limitRule({
      id: 'rally-america-shoulder-drop',
      orders: 'must',
      source: rallyAmerica('between horizontal and 10° below'),
      says: 'The shoulder straps run rearward between level (0°) and 10° below the horizontal.',
      why: REASON.shoulderFall,
      quantity: 'shoulder-drop',
      family: 'shoulder',
      min: 0,
      max: 10,
    }),
    limitRule({
      id: 'rally-america-square',
      orders: 'must',
      source: rallyAmerica(null),
      says: 'They leave square to the back of the seat, within 5° either way.',
      why: REASON.shoulderFall,
      caveat:
        'The rule says perpendicular; the 5° is our tolerance and the torso line stands for the back of the seat. In a seat reclined more than 15° both limits cannot be kept.',
      quantity: 'shoulder-to-spine',
      family: 'shoulder',
      min: -5,
      max: 5,
    }),
    statedRule({
      id: 'rally-america-short',
      orders: 'must',
      source: rallyAmerica(null),
      says: 'Shoulder straps are as short as practical.',
      why: REASON.shoulderLength,
      caveat: 'The rule names no length.',
    }),
    propertyRule({
      id: 'rally-america-y-straps',
      orders: 'must',
      source: rallyAmerica(null),
      says: 'Shoulder straps do not join behind the neck (no Y-type).',
      why: REASON.joined,
      caveat: 'A cross strap between two separate straps (H-type) is allowed.',
      property: 'belt-joined',
      wanted: ['no'],
    }),
  ],
}

const proRally = (phrase: string | null): RuleSource => ({
  document: 'US club Pro Rally rules',
  section: 'harness, section not recorded',
  edition: '1998',
  status: 'second-hand',
  phrase,
})

/** Source: American rally rules 2.3.4 as an amateur team's page quotes them. */
export const ARA_RALLY_RULES: RuleSet = {
  id: 'ara-rally',
  name: 'American rally (ARA 2.3.4)',
  edition: 'edition not recorded',
  group: 'Rally and circuit',
  about: 'One sentence that points to other documents, quoted second-hand. Nothing is checked.',
  rules: [
    statedRule({
      id: 'ara-anchor-locations',
      orders: 'must',
      source: {
        document: 'ARA rally rules',
        section: '2.3.4',
        edition: 'edition not recorded',
        status: 'second-hand',
        phrase: null,
      },
      says: 'Anchors lie where the SFI installation guide, FIA Article 253-6.2 or the belt maker’s instructions, shown on demand, put them.',
      why: 'The maker has tried the belt where its instructions put it.',
      caveat: 'Choose the FIA set to have its limits checked.',
    }),
  ],
}

/** A club rally rule of the 1990s. Source: US Pro Rally rules of 1998 as reported on a mailing list that September. */
export const PRO_RALLY_1998_RULES: RuleSet = {
  id: 'us-pro-rally-1998',
  name: 'US Pro Rally 1998',
  edition: '1998',
  group: 'Rally and circuit',
  about: 'US club rally rules of 1998, as one entrant reported them; superseded, kept for comparison.',
  rules: [
    limitRule({
      id: 'pro-rally-shoulder-drop',
      orders: 'must',
      source: proRally('not be more than 40 degrees'),
      says: 'The shoulder straps fall 0° to 40° below the horizontal, between level and square to the seat back.',
      why: REASON.shoulderFall,
      caveat: 'The lower limit 0° is the horizontal side of the wedge that the report describes.',
      quantity: 'shoulder-drop',
      family: 'shoulder',
      min: 0,
      max: 40,
    }),
    limitRule({
      id: 'pro-rally-shoulder-wedge',
      orders: 'must',
      source: proRally(null),
      says: 'They fall no further than square to the seat back: 0° or less below it.',
      why: REASON.shoulderFall,
      caveat:
        'The report describes the allowed wedge as lying between the horizontal and the line square to the seat back; the torso line stands for the seat back. In an upright seat that leaves only level, and the 40° count only in a seat reclined further than that.',
      quantity: 'shoulder-to-spine',
      family: 'shoulder',
      max: 0,
    }),
    limitRule({
      id: 'pro-rally-shoulder-height',
      orders: 'must',
      source: proRally(null),
      says: 'The shoulder anchors are not above the shoulder: 0 mm or more below its top.',
      why: REASON.shoulderHeight,
      quantity: 'shoulder-height',
      family: 'shoulder',
      min: 0,
    }),
    limitRule({
      id: 'pro-rally-lap-angle',
      orders: 'must',
      source: proRally('between vertical and 45 degrees from vertical'),
      says: 'The lap strap stands between 45° and vertical (90°) in side view.',
      why: REASON.lapAngle,
      quantity: 'lap-angle',
      family: 'lap',
      min: 45,
      max: 90,
    }),
    limitRule({
      id: 'pro-rally-sub',
      orders: 'must',
      source: proRally(null),
      says: 'The anti-submarine strap is not past the vertical in use: 0° or more rearward of it; best at the lap anchors.',
      why: REASON.sub,
      caveat:
        'The words "past the vertical" are read here as forward of it, because the lap anchors behind are called best.',
      quantity: 'sub-to-vertical',
      family: 'sub',
      min: 0,
    }),
  ],
}
