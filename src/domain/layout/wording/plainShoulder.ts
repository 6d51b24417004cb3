import type { QuantityId } from '../../straps/quantity'
import { type PlainWords, typedLimit } from './plainWords'

/** What a belt that leaves the shoulder too low does. */
const PRESSED_DOWN =
  'The lower it pulls, the more it presses you down into the seat; in a hard stop that presses on your spine.'
/** What a belt that leaves the shoulder too high does. */
const HELD_LATE = 'It can lift off your shoulder, and then holds you later in a hard stop.'
const TAUT =
  'It is worked out for a tight belt on a body of your measurements, at rest; a loose belt or a soft cushion changes it.'
const SIDEWAYS = 'A belt that runs off sideways can slip along the shoulder or press on the neck.'
const SIDEWAYS_FAULTS = {
  low: { fact: 'Behind you the shoulder belt runs further outward than asked for.', means: SIDEWAYS },
  high: { fact: 'Behind you the shoulder belt runs further inward than asked for.', means: SIDEWAYS },
}
const ROAD_REFERENCE =
  'It is counted from points that road rules set for every seat, not from your own body; the other findings look at yours.'

const DIRECTION_WORDS = {
  'shoulder-drop': {
    topic: 'Which way the shoulder belt leaves your shoulder',
    number: 'How steeply the belt falls behind your shoulder, seen from the side; 0° is level.',
    low: { fact: 'The shoulder belt leaves your shoulder higher than asked for.', means: HELD_LATE },
    high: { fact: 'Behind your shoulder the belt falls more steeply than asked for.', means: PRESSED_DOWN },
    aim: 'the belt holds your shoulder without pressing on your spine',
    limit: TAUT,
  },
  'shoulder-to-spine': {
    topic: 'How the shoulder belt pulls against your back',
    number:
      'How far the belt behind your shoulder is from square to your back; 0° is square, plus is too low.',
    low: {
      fact: 'For the way you sit, the shoulder belt leaves your shoulder higher than asked for.',
      means: HELD_LATE,
    },
    high: {
      fact: 'The shoulder belt pulls down along your back more than asked for.',
      means: PRESSED_DOWN,
    },
    aim: 'the belt holds your shoulder without pressing on your spine',
    limit: TAUT,
  },
  'shoulder-rim-drop': {
    topic: 'How the shoulder belt runs on behind the seat',
    number: 'How steeply the belt falls from the back of the seat to where it is fixed; 0° is level.',
    low: { fact: 'Behind the seat the shoulder belt runs higher than asked for.', means: HELD_LATE },
    high: {
      fact: 'Behind the seat the shoulder belt falls more steeply than asked for.',
      means: PRESSED_DOWN,
    },
    aim: 'the belt holds your shoulder without pressing on your spine',
    limit: TAUT,
  },
  'shoulder-height': {
    topic: 'How high the shoulder belt is fixed',
    number: 'How far below your shoulder the belt is fixed; minus when it is above.',
    low: { fact: 'The shoulder belt is fixed higher than asked for.', means: HELD_LATE },
    high: { fact: 'The shoulder belt is fixed lower than asked for.', means: PRESSED_DOWN },
    aim: 'the belt neither lifts off your shoulder nor presses on your spine',
    limit: TAUT,
  },
  'shoulder-plan': {
    topic: 'Whether the shoulder belt stays on your shoulder',
    number: 'How far the belt behind your shoulder runs sideways, seen from above; 0° is straight rearward.',
    ...SIDEWAYS_FAULTS,
    aim: 'the belt neither slips along your shoulder nor presses on your neck',
    limit: 'It is worked out at rest; how far you can be thrown sideways depends on the seat too.',
  },
  'shoulder-reference-plan': {
    topic: 'Which way the shoulder belt runs, as road rules count it',
    number:
      'How far the belt runs sideways, seen from above, from a shoulder that road rules set for every seat.',
    ...SIDEWAYS_FAULTS,
    aim: 'the belt neither slips along your shoulder nor presses on your neck',
    limit: ROAD_REFERENCE,
  },
  'spine-load-share': {
    topic: 'How much the shoulder belts press on your spine',
    number: 'How much of the pull in the shoulder belts goes down along your back.',
    low: {
      fact: 'The shoulder belts pull down along your back less than the workshop’s own limit.',
      means: HELD_LATE,
    },
    high: {
      fact: 'More of the pull of the shoulder belts goes down along your back than asked for.',
      means: PRESSED_DOWN,
    },
    aim: 'little of the pull goes down along your spine',
    limit: 'It compares two ways to build the car; it does not say how much a spine can bear.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>

const PLACE_WORDS = {
  'shoulder-spacing': {
    topic: 'How far apart the shoulder belts are fixed',
    number: 'The distance between the two places where the shoulder belts are fixed.',
    low: {
      fact: 'The shoulder belts are fixed closer together than asked for.',
      means: 'They can press on your neck.',
    },
    high: {
      fact: 'The shoulder belts are fixed further apart than asked for.',
      means: 'They can slip off your shoulders.',
    },
    aim: 'the belts neither press on your neck nor slip off your shoulders',
    limit: 'It says nothing about how wide your own shoulders are.',
  },
  'shoulder-mirror': {
    topic: 'Whether the two shoulder belts match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('The left and the right shoulder belt match more closely than the workshop’s own limit.'),
    high: {
      fact: 'The left and the right shoulder belt differ more than asked for.',
      means: 'One takes more of the pull than the other and can turn you in the seat.',
    },
    aim: 'both shoulder belts share the pull',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
  'shoulder-free-length': {
    topic: 'How much shoulder belt there is to stretch',
    number: 'How long the belt is from your shoulder to where it is fixed.',
    low: typedLimit('The shoulder belt behind you is shorter than the workshop’s own limit.'),
    high: {
      fact: 'There is more belt behind your shoulder than asked for.',
      means: 'A belt stretches with its length, and so far go your head and chest forward.',
    },
    aim: 'the belt stretches little',
    limit: 'How far a belt really stretches depends on the belt; it is not worked out here.',
  },
  'shoulder-length-behind-seat': {
    topic: 'How much shoulder belt there is behind the seat',
    number: 'How long the belt is from the back of the seat to where it is fixed.',
    low: {
      fact: 'There is less belt behind the seat than asked for.',
      means:
        'In a seat that does not hold you sideways the belt then pulls you aslant; where the seat holds you, short is good.',
    },
    high: {
      fact: 'There is more belt behind the seat than asked for.',
      means: 'A belt stretches with its length, and so far go your head and chest forward.',
    },
    aim: 'the belt stretches little, and does not pull you aslant',
    limit: 'How far a belt really stretches depends on the belt; it is not worked out here.',
  },
  'shoulder-above-hip': {
    topic: 'How high the shoulder belt is fixed, as road rules count it',
    number: 'How far above your hip the belt has its last hold before your body.',
    low: { fact: 'The shoulder belt has its last hold lower than asked for.', means: PRESSED_DOWN },
    high: { fact: 'The shoulder belt has its last hold higher than asked for.', means: HELD_LATE },
    aim: 'the belt neither lifts off your shoulder nor presses on your spine',
    limit: ROAD_REFERENCE,
  },
  'shoulder-behind-hip': {
    topic: 'How far behind you the shoulder belt is fixed, as road rules count it',
    number: 'How far behind your hip the belt has its last hold before your body.',
    low: {
      fact: 'The shoulder belt has its last hold further forward than asked for.',
      means: 'It can then pull you down more than back, or lift off your shoulder.',
    },
    high: typedLimit('The shoulder belt has its last hold further back than the workshop’s own limit.'),
    aim: 'the belt neither lifts off your shoulder nor presses on your spine',
    limit: ROAD_REFERENCE,
  },
  'shoulder-behind-fk': {
    topic: 'Where the shoulder belt is fixed, as road rules draw it',
    number: 'How far the belt’s last hold lies behind a line that road rules draw across your back.',
    low: {
      fact: 'The shoulder belt has its last hold further forward than asked for.',
      means: 'It can then leave your shoulder before it has gone round it, and hold it less.',
    },
    high: typedLimit('The shoulder belt has its last hold further back than the workshop’s own limit.'),
    aim: 'the belt goes round your shoulder before it leaves it',
    limit: ROAD_REFERENCE,
  },
  'shoulder-junction': {
    topic: 'Where the two shoulder belts are joined',
    number: 'How far behind your neck the two shoulder belts come together.',
    low: {
      fact: 'The shoulder belts come together closer to your neck than asked for.',
      means: 'They can press on your neck from both sides.',
    },
    high: typedLimit('The shoulder belts come together further back than the workshop’s own limit.'),
    aim: 'the belts do not press on your neck',
    limit: 'The back of the neck is taken to be where the back of the shoulder is.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>

export const PLAIN_SHOULDER = { ...DIRECTION_WORDS, ...PLACE_WORDS }
