import type { QuantityId } from '../../straps/quantity'
import { type PlainWords, typedLimit } from './plainWords'

const TEARS =
  'A belt that is loaded on one edge starts to tear there, and a tear goes on through the rest of it.'
const NO_STRENGTH =
  'Whether the metal holds is not worked out here at all; the workshop has to answer for that.'
const AT_REST =
  'It is worked out for your measurements, sitting still; in a crash a body moves far, and how far is not worked out here.'

/** What is asked of any belt, of its fittings, and of the tubes about the person. */
export const PLAIN_FITTINGS = {
  'slot-bend': {
    topic: 'Whether the belt runs straight through the seat',
    number: 'How far the opening in the seat bends the tight belt out of its straight line; 0° is straight.',
    low: typedLimit('The opening in the seat bends this belt less than the workshop’s own limit.'),
    high: {
      fact: 'The opening in the seat bends this belt more than asked for.',
      means:
        'In a hard stop the belt pulls itself straight, which gives slack just then, and its edge wears.',
    },
    aim: 'the belt has no slack hidden at the seat and no worn edge',
    limit: 'Whether the edges of the opening are smooth has to be felt on the seat.',
  },
  'wrap-square': {
    topic: 'How the belt meets the bar it is wrapped round',
    number: 'The angle between the belt and the bar; 90° is square.',
    low: {
      fact: 'The belt meets its bar more aslant than asked for.',
      means: `It bunches up and creeps along the bar. ${TEARS}`,
    },
    high: typedLimit('The belt meets its bar more squarely than the workshop’s own limit.'),
    aim: 'the whole width of the belt carries',
    limit: NO_STRENGTH,
  },
  'tab-twist': {
    topic: 'Whether the metal tab points along the belt',
    number: 'How far the belt pulls out of the flat of the tab that holds it; 0° is in line.',
    low: typedLimit('The belt pulls more nearly along its tab than the workshop’s own limit.'),
    high: {
      fact: 'The belt pulls its metal tab further sideways than asked for.',
      means: `A tab that is pulled sideways bends. ${TEARS}`,
    },
    aim: 'the tab is pulled along and not bent',
    limit: NO_STRENGTH,
  },
  'shank-angle': {
    topic: 'Which way the belt pulls its eye bolt',
    number: 'The angle between the belt and the bolt that holds it; 0° is straight out.',
    low: typedLimit('The belt pulls more nearly along its eye bolt than the workshop’s own limit.'),
    high: {
      fact: 'The belt pulls its eye bolt further sideways than asked for.',
      means: 'An eye bolt that is pulled sideways bends and can break at its thread.',
    },
    aim: 'the eye bolt is pulled along and not bent',
    limit: NO_STRENGTH,
  },
  'adjuster-clearance': {
    topic: 'Whether the adjuster is free',
    number: 'How far the buckle that sets the belt’s length is from the seat, your body and the main buckle.',
    low: {
      fact: 'The adjuster lies closer to the seat, your body or the buckle than asked for.',
      means: 'It cannot be pulled well there, can press on you, and can be pushed open.',
    },
    high: typedLimit('The adjuster is further from everything than the workshop’s own limit.'),
    aim: 'you can pull the adjuster, and nothing pushes it open or into you',
    limit: 'Where an adjuster really ends up depends on how far you pull the belt.',
  },
  'tube-clearance': {
    topic: 'Whether the belt has a free way',
    number:
      'How near the tight belt passes to a tube that it is not fixed to; minus when it would go through.',
    low: {
      fact: 'The belt passes closer to a tube than asked for, or would have to go through it.',
      means: 'It chafes there, or is led another way than the one drawn.',
    },
    high: typedLimit('The belt is further from the tubes than the workshop’s own limit.'),
    aim: 'nothing bends or chafes the belt on its way',
    limit: 'Only tubes that are drawn are looked at.',
  },
  'helmet-clearance': {
    topic: 'Room about your head',
    number: 'The smallest distance between your helmet and a tube, sitting still.',
    low: {
      fact: 'Your helmet is closer to a tube than asked for.',
      means: 'Your head can strike it when you are thrown about.',
    },
    high: typedLimit('Your helmet is further from the tubes than the workshop’s own limit.'),
    aim: 'your head does not meet a tube at once',
    limit: AT_REST,
  },
  'body-clearance': {
    topic: 'Room about your body',
    number: 'The smallest distance between you and a tube, sitting still; minus when a tube would be in you.',
    low: {
      fact: 'A tube is closer to you than asked for, or where your body is.',
      means: 'You cannot sit like that, or you strike the tube; or the drawing is wrong there.',
    },
    high: typedLimit('You are further from the tubes than the workshop’s own limit.'),
    aim: 'no tube is where you sit',
    limit: AT_REST,
  },
  'strap-length': {
    topic: 'How long the belt has to be',
    number: 'The length of belt to order, with what goes round the bar and through the adjuster.',
    low: typedLimit('The belt to order is shorter than the workshop’s own limit.'),
    high: typedLimit('The belt to order is longer than the workshop’s own limit.'),
    aim: 'the belt that is ordered fits its way',
    limit: 'How far your own adjuster takes it in is up to the belt’s maker.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>
