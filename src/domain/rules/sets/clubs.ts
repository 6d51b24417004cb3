import type { RuleSet, RuleSource } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const clubRacing = (phrase: string | null): RuleSource => ({
  document: 'NASA (US club racing) rules',
  section: '3.6.2.5',
  edition: 'year not stated in the quotation',
  status: 'second-hand',
  phrase,
})

/** US club racing. Source: NASA 3.6.2.5 as quoted in an endurance-racing forum; it follows the international wording. */
export const CLUB_RACING_RULES: RuleSet = {
  id: 'us-club-racing',
  name: 'US club racing (NASA 3.6.2.5)',
  edition: 'year not stated',
  group: 'Clubs',
  about: 'A US club’s harness paragraph that follows the international wording, quoted second-hand.',
  rules: [
    limitRule({
      id: 'club-racing-rim-drop',
      orders: 'must',
      source: clubRacing(null),
      says: 'From the backrest rim the shoulder straps fall no more than 45°.',
      why: REASON.shoulderFall,
      caveat:
        'Measured from the rim, not the shoulder. A strap that rises to the rear is not spoken of, so any rise passes.',
      quantity: 'shoulder-rim-drop',
      family: 'shoulder',
      max: 45,
    }),
    limitRule({
      id: 'club-racing-rim-drop-recommended',
      orders: 'should',
      source: clubRacing(null),
      says: 'A fall of no more than 10° from the backrest rim is recommended.',
      why: REASON.shoulderFall,
      caveat: 'A strap that rises to the rear is not spoken of, so any rise passes.',
      quantity: 'shoulder-rim-drop',
      family: 'shoulder',
      max: 10,
    }),
    limitRule({
      id: 'club-racing-plan',
      orders: 'must',
      source: clubRacing(null),
      says: 'Seen from above, each shoulder strap runs within 20° of the seat’s centre line.',
      why: REASON.shoulderPlan,
      quantity: 'shoulder-plan',
      family: 'shoulder',
      min: -20,
      max: 20,
    }),
    statedRule({
      id: 'club-racing-behind-seat',
      orders: 'must',
      source: clubRacing('minimum of 20 inches behind the seat back'),
      says: 'Where the seat gives no lateral restraint, the shoulder straps are mounted at least 20 in (508 mm) behind the seat back, along the belt.',
      why: 'A longer strap lets a body that the seat does not hold swing less off its line.',
      caveat:
        'Not checked, because the tool does not know whether the seat holds sideways. Dirt speedway 2010 asks for at most 250 mm instead.',
    }),
  ],
}

const generalRules = (edition: string, section: string, phrase: string | null): RuleSource => ({
  document: 'SCCA General Competition Rules',
  section,
  edition,
  status: 'second-hand',
  phrase,
})

/** Source: SCCA General Competition Rules 2007 (spacing) and January 2005 (widths), each as others quoted them. */
export const GENERAL_COMPETITION_RULES: RuleSet = {
  id: 'us-general-competition-2007',
  name: 'US General Competition Rules 2005–2007',
  edition: '2005 and 2007, as quoted',
  group: 'Clubs',
  about: 'Mount spacing and strap widths of a US club’s general rules, quoted second-hand.',
  rules: [
    limitRule({
      id: 'gcr-shoulder-spacing',
      orders: 'must',
      source: generalRules('2007', 'figure 1, p. 80', '4" to 6" center-to-center'),
      says: 'The two shoulder mounts are 4 in to 6 in (101.6 mm to 152.4 mm) apart, centre to centre.',
      why: REASON.shoulderSpacing,
      caveat: 'No spacing also meets the student car rules, 175–235 mm.',
      quantity: 'shoulder-spacing',
      family: 'shoulder',
      min: 101.6,
      max: 152.4,
    }),
    ...(
      [
        ['lap', 75, 'Lap', '3 in'],
        ['shoulder', 75, 'Shoulder', 'about 3 in'],
        ['sub', 50, 'Anti-submarine', 'about 2 in'],
      ] as const
    ).map(([family, min, name, inches]) =>
      propertyRule({
        id: `gcr-${family}-webbing`,
        orders: 'must',
        source: generalRules('January 2005', '§20', null),
        when: { arrangements: [5] },
        says: `With a 5-point belt, ${name.toLowerCase()} webbing is ${inches} wide, here at least ${min} mm.`,
        why: REASON.webbing,
        caveat: `Webbing called ${inches.replace('about ', '')} is sold as ${min} mm or a little more, so ${min} mm passes; that is our reading.`,
        property: 'webbing-width',
        family,
        min,
      }),
    ),
    propertyRule({
      id: 'gcr-material',
      orders: 'must',
      source: generalRules('January 2005', '§20', null),
      says: 'Straps are nylon or polyester.',
      why: 'Other fibres stretch or age differently.',
      property: 'belt-material',
      wanted: ['polyester', 'nylon'],
    }),
    propertyRule({
      id: 'gcr-reclined-points',
      orders: 'should',
      source: generalRules('January 2005', '§20', null),
      when: { reclineAboveDeg: 30 },
      says: 'In a semi-reclined seat six or seven points are recommended.',
      why: 'A reclined pelvis slides under a lap strap more easily and needs both thigh straps.',
      caveat:
        'The quotation gives no angle for "semi-reclined"; more than 30° is our reading, as in the student car rules.',
      property: 'belt-points',
      min: 6,
    }),
    statedRule({
      id: 'gcr-arm-restraints',
      orders: 'must',
      source: generalRules('January 2005', '§20', null),
      says: 'Open cars have arm restraints.',
      why: 'Arms fly out of an open car that rolls over.',
    }),
  ],
}

const trackDays = (phrase: string | null): RuleSource => ({
  document: 'Marque-club driver-education minimum standard',
  section: 'harness',
  edition: 'pages of 2007–2009',
  status: 'read',
  phrase,
})

/** Source: two regional pages of a marque club, 2007–2009. */
export const TRACK_DAY_RULES: RuleSet = {
  id: 'marque-club-track-days',
  name: 'Marque-club track days 2007–2009',
  edition: 'pages of 2007–2009',
  group: 'Clubs',
  about: 'A minimum standard for driver education on race tracks.',
  rules: [
    limitRule({
      id: 'track-day-shoulder-drop',
      orders: 'should',
      source: trackDays('at most 40 degrees down from horizontal'),
      says: 'The shoulder straps leave square to the spine, or fall at most 40° from the horizontal.',
      why: REASON.shoulderFall,
      caveat:
        'Only the 40° is checked; it is the wider of the two in any seat reclined less than 40°. A strap that rises to the rear is not spoken of, so any rise passes.',
      quantity: 'shoulder-drop',
      family: 'shoulder',
      max: 40,
    }),
    statedRule({
      id: 'track-day-age',
      orders: 'should',
      source: trackDays(null),
      says: 'Belts are replaced every 5 years.',
      why: REASON.age,
    }),
  ],
}

const australia = (phrase: string | null): RuleSource => ({
  document: 'Australian national Schedule I, harnesses',
  section: '§2',
  edition: 'edition not recorded',
  status: 'read',
  phrase,
})

/** Source: Schedule I of the Australian national rules, harnesses. */
export const AUSTRALIA_RULES: RuleSet = {
  id: 'australia-schedule-i',
  name: 'Australia, Schedule I',
  edition: 'edition not recorded',
  group: 'Clubs',
  about: 'The harness schedule of the Australian national rules, as far as it was read.',
  rules: [
    limitRule({
      id: 'australia-shoulder-drop',
      orders: 'must',
      source: australia('greater than 45° to the horizontal from the occupants shoulder'),
      says: 'From the occupant’s shoulder the straps fall no more than 45° from the horizontal.',
      why: REASON.shoulderFall,
      caveat:
        'The rules for head-and-neck restraints apply on top; they could not be read. A strap that rises to the rear is not spoken of, so any rise passes.',
      quantity: 'shoulder-drop',
      family: 'shoulder',
      max: 45,
    }),
    limitRule({
      id: 'australia-junction',
      orders: 'must',
      source: australia("at least 150mm behind the wearer's neck"),
      says: 'Two shoulder straps that join before a common mount join at least 150 mm behind the wearer’s neck.',
      why: REASON.joined,
      caveat:
        'Other rule books forbid joined straps altogether. Measured from the back of the shoulders, where the neck begins.',
      quantity: 'shoulder-junction',
      family: 'shoulder',
      min: 150,
    }),
    statedRule({
      id: 'australia-cage-bolt',
      orders: 'must',
      source: australia(null),
      says: 'A harness bolt does not also fix the cage to the shell.',
      why: REASON.strength,
    }),
  ],
}

const scrutineers = (): RuleSource => ({
  document: 'UK scrutineers’ news sheet',
  section: 'frontal head restraints',
  edition: 'about 2015',
  status: 'second-hand',
  phrase: '10° to and below the horizontal',
})

/** Source: a news sheet for UK scrutineers of about 2015, as quoted in a club forum. */
export const UK_SCRUTINEERS_RULES: RuleSet = {
  id: 'uk-scrutineers-2015',
  name: 'UK scrutineers, about 2015',
  edition: 'about 2015',
  group: 'Clubs',
  about: 'One sentence for cars with a head-and-neck restraint, quoted second-hand.',
  rules: [
    limitRule({
      id: 'uk-scrutineers-shoulder-drop',
      orders: 'should',
      source: scrutineers(),
      when: { headAndNeckRestraint: true },
      says: 'With a head-and-neck restraint the shoulder straps fall 0° to about 10° below the horizontal.',
      why: 'The strap has to hold the restraint down on the shoulders without loading the spine more than needed.',
      caveat: 'The wording is loose; "about 10° below horizontal" is our reading, with 0° as its other end.',
      quantity: 'shoulder-drop',
      family: 'shoulder',
      min: 0,
      max: 10,
    }),
  ],
}
