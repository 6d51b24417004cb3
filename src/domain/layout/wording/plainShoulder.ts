import type { QuantityId } from '../../straps/quantity'
import { type PlainWords, typedLimit } from './plainWords'

/** What a belt that leaves the shoulder too low does. */
const PRESSED_DOWN =
  'Pulled tight, it presses you down into the seat; in a hard stop that presses on your spine.'
/** What a belt that leaves the shoulder too high does. */
const HELD_LATE = 'It can lift off your shoulder and holds you later than it should in a hard stop.'
const TAUT =
  'It is worked out for a tight belt on a body of your measurements, at rest; a loose belt or a soft cushion changes it.'
const SIDEWAYS = 'A belt that runs off sideways slips along the shoulder or presses on the neck.'
const SIDEWAYS_FAULTS = {
  low: { fact: 'Behind you the shoulder belt runs outward.', means: SIDEWAYS },
  high: { fact: 'Behind you the shoulder belts run together.', means: SIDEWAYS },
}
const ROAD_REFERENCE =
  'It is counted from points that road rules set for every seat, not from your own body; the other findings look at yours.'

const DIRECTION_WORDS = {
  'shoulder-drop': {
    topic: 'Which way the shoulder belt leaves your shoulder',
    number: 'How steeply the belt falls behind your shoulder, seen from the side; 0° is level.',
    low: { fact: 'The shoulder belt rises behind your shoulder.', means: HELD_LATE },
    high: { fact: 'The shoulder belt falls steeply behind your shoulder.', means: PRESSED_DOWN },
    fine: 'The belt leaves your shoulder rearward, so that it holds you back and presses little on your spine.',
    limit: TAUT,
  },
  'shoulder-to-spine': {
    topic: 'How the shoulder belt pulls against your back',
    number:
      'How far the belt behind your shoulder is from square to your back; 0° is square, plus is too low.',
    low: { fact: 'The shoulder belt leaves your shoulder too high for the way you sit.', means: HELD_LATE },
    high: {
      fact: 'The shoulder belt pulls down along your back.',
      means: PRESSED_DOWN,
    },
    fine: 'The belt pulls about square to your back, so that it holds you and presses little on your spine.',
    limit: TAUT,
  },
  'shoulder-rim-drop': {
    topic: 'How the shoulder belt runs on behind the seat',
    number: 'How steeply the belt falls from the back of the seat to where it is fixed; 0° is level.',
    low: { fact: 'Behind the seat the shoulder belt rises.', means: HELD_LATE },
    high: { fact: 'Behind the seat the shoulder belt falls steeply.', means: PRESSED_DOWN },
    fine: 'Behind the seat the belt runs on without pulling down on your shoulders.',
    limit: TAUT,
  },
  'shoulder-height': {
    topic: 'How high the shoulder belt is fixed',
    number: 'How far below your shoulder the belt is fixed; minus when it is above.',
    low: { fact: 'The shoulder belt is fixed high above your shoulder.', means: HELD_LATE },
    high: { fact: 'The shoulder belt is fixed far below your shoulder.', means: PRESSED_DOWN },
    fine: 'The belt is fixed at a height that suits your shoulder.',
    limit: TAUT,
  },
  'shoulder-plan': {
    topic: 'Whether the shoulder belt stays on your shoulder',
    number: 'How far the belt behind your shoulder runs sideways, seen from above; 0° is straight rearward.',
    ...SIDEWAYS_FAULTS,
    fine: 'Seen from above the belt runs nearly straight rearward, so that it stays where it lies.',
    limit: 'It is worked out at rest; how far you can be thrown sideways depends on the seat too.',
  },
  'shoulder-reference-plan': {
    topic: 'Which way the shoulder belt runs, as road rules count it',
    number:
      'How far the belt runs sideways, seen from above, from a shoulder that road rules set for every seat.',
    ...SIDEWAYS_FAULTS,
    fine: 'Seen from above the belt runs as the road rule asks.',
    limit: ROAD_REFERENCE,
  },
  'spine-load-share': {
    topic: 'How much the shoulder belts press on your spine',
    number: 'How much of the pull in the shoulder belts goes down along your back.',
    low: { fact: 'The shoulder belts pull you upward along your back.', means: HELD_LATE },
    high: {
      fact: 'Much of the pull of the shoulder belts goes down along your back.',
      means: PRESSED_DOWN,
    },
    fine: 'Little of the pull of the shoulder belts goes down along your back.',
    limit: 'It compares two ways to build the car; it does not say how much a spine can bear.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>

const PLACE_WORDS = {
  'shoulder-spacing': {
    topic: 'How far apart the shoulder belts are fixed',
    number: 'The distance between the two places where the shoulder belts are fixed.',
    low: { fact: 'The shoulder belts are fixed close together.', means: 'They can press on your neck.' },
    high: { fact: 'The shoulder belts are fixed far apart.', means: 'They can slip off your shoulders.' },
    fine: 'They are as far apart as asked, so that they lie beside your neck and stay on your shoulders.',
    limit: 'It says nothing about how wide your own shoulders are.',
  },
  'shoulder-mirror': {
    topic: 'Whether the two shoulder belts match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('The left and the right shoulder belt match more closely than the workshop’s own limit.'),
    high: {
      fact: 'The left and the right shoulder belt are not fixed alike.',
      means: 'One takes more of the pull than the other and can turn you in the seat.',
    },
    fine: 'Both shoulder belts are fixed alike, so that they share the pull.',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
  'shoulder-free-length': {
    topic: 'How much shoulder belt there is to stretch',
    number: 'How long the belt is from your shoulder to where it is fixed.',
    low: typedLimit('The shoulder belt behind you is shorter than the workshop’s own limit.'),
    high: {
      fact: 'There is much belt behind your shoulder.',
      means: 'A belt stretches with its length, and so far go your head and chest forward.',
    },
    fine: 'The belt behind your shoulder is short, so that it stretches little.',
    limit: 'How far a belt really stretches depends on the belt; it is not worked out here.',
  },
  'shoulder-length-behind-seat': {
    topic: 'How much shoulder belt there is behind the seat',
    number: 'How long the belt is from the back of the seat to where it is fixed.',
    low: {
      fact: 'There is little belt behind the seat.',
      means:
        'In a seat that does not hold you sideways the belt then pulls you aslant; where the seat holds you, short is good.',
    },
    high: {
      fact: 'There is much belt behind the seat.',
      means: 'A belt stretches with its length, and so far go your head and chest forward.',
    },
    fine: 'The belt behind the seat is as long as asked.',
    limit: 'How far a belt really stretches depends on the belt; it is not worked out here.',
  },
  'shoulder-above-hip': {
    topic: 'How high the shoulder belt is fixed, as road rules count it',
    number: 'How far above your hip the belt has its last hold before your body.',
    low: { fact: 'The shoulder belt has its last hold low down.', means: PRESSED_DOWN },
    high: { fact: 'The shoulder belt has its last hold high up.', means: HELD_LATE },
    fine: 'The belt has its last hold as high as the rule asks.',
    limit: ROAD_REFERENCE,
  },
  'shoulder-behind-hip': {
    topic: 'How far behind you the shoulder belt is fixed, as road rules count it',
    number: 'How far behind your hip the belt has its last hold before your body.',
    low: {
      fact: 'The shoulder belt has its last hold too far forward.',
      means: 'It then pulls you down more than back, or lifts off your shoulder.',
    },
    high: typedLimit('The shoulder belt has its last hold further back than the workshop’s own limit.'),
    fine: 'The belt has its last hold as far behind you as the rule asks.',
    limit: ROAD_REFERENCE,
  },
  'shoulder-behind-fk': {
    topic: 'Where the shoulder belt is fixed, as road rules draw it',
    number: 'How far the belt’s last hold lies behind a line that road rules draw across your back.',
    low: {
      fact: 'The shoulder belt has its last hold ahead of the line that the road rule draws.',
      means: 'It then leaves your shoulder before it has gone round it, and does not hold it.',
    },
    high: typedLimit('The shoulder belt has its last hold further back than the workshop’s own limit.'),
    fine: 'The belt has its last hold where the road rule wants it.',
    limit: ROAD_REFERENCE,
  },
  'shoulder-junction': {
    topic: 'Where the two shoulder belts are joined',
    number: 'How far behind your neck the two shoulder belts come together.',
    low: {
      fact: 'The shoulder belts come together close behind your neck.',
      means: 'They can press on your neck from both sides.',
    },
    high: typedLimit('The shoulder belts come together further back than the workshop’s own limit.'),
    fine: 'The belts come together well behind your neck.',
    limit: 'The back of the neck is taken to be where the back of the shoulder is.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>

export const PLAIN_SHOULDER = { ...DIRECTION_WORDS, ...PLACE_WORDS }
