import type { PropertyId } from '../../rules/rule'
import { type PlainProperty, typedLimit, TYPED_ONLY as TYPED } from './plainWords'

const NO_STRENGTH =
  'This asks for a size or a shape only. Whether the metal holds is not worked out here; the workshop has to answer for that.'

const FIXING_WORDS = {
  'wrap-guide-hoops': {
    topic: 'Whether the belt stays where it is wrapped',
    number: 'Whether small hoops beside the wrapped belt keep it in place.',
    faults: {
      no: {
        fact: 'Nothing keeps the wrapped belt from sliding along its bar.',
        means: 'It slides sideways, and is then as much too loose.',
      },
    },
    aim: 'the wrapped belt stays in its place',
    limit: TYPED,
  },
  'wrap-bar-diameter': {
    topic: 'How thick the bar in the belt’s loop is',
    number: 'The diameter of the bar that the belt is wrapped round.',
    faults: {
      low: {
        fact: 'The belt is wrapped round a thinner bar than asked for.',
        means: 'A thin bar bends the belt sharply and lessens what it can hold.',
      },
      high: typedLimit('The bar in the belt’s loop is thicker than the workshop’s own limit.'),
    },
    aim: 'the bar does not bend the belt sharply',
    limit: NO_STRENGTH,
  },
  'wrap-tube-role': {
    topic: 'What the belt is wrapped round',
    number: 'Which tube of the car the belt is wrapped round.',
    faults: {
      floor: {
        fact: 'The belt is wrapped round a tube of the floor.',
        means: 'A low tube scrapes the ground, and that cuts the belt.',
      },
    },
    aim: 'the belt is not scraped through on the ground',
    limit: NO_STRENGTH,
  },
  'anchor-form': {
    topic: 'What the belt is fixed by',
    number: 'The kind of fitting at the end of the belt.',
    faults: {
      wrap: {
        fact: 'The belt is wrapped round its bar and cannot turn there.',
        means: 'A belt that cannot turn with you is loaded on one edge.',
      },
    },
    aim: 'the end of the belt can turn with you',
    limit: NO_STRENGTH,
  },
  'eye-thread': {
    topic: 'How thick the eye bolt is',
    number: 'The diameter of the bolt’s thread.',
    faults: {
      low: {
        fact: 'The eye bolt is thinner than asked for.',
        means: 'The thinner the thread, the sooner it bends and strips, and holds nobody then.',
      },
      high: typedLimit('The eye bolt is thicker than the workshop’s own limit.'),
    },
    aim: 'the thread does not bend and strip',
    limit: NO_STRENGTH,
  },
  'tab-thickness': {
    topic: 'How thick the metal tab is',
    number: 'The thickness of the tab that holds the belt.',
    faults: {
      low: {
        fact: 'The metal tab is thinner than asked for.',
        means: 'The thinner the tab, the sooner it tears at its hole, and holds nobody then.',
      },
      high: typedLimit('The metal tab is thicker than the workshop’s own limit.'),
    },
    aim: 'the tab does not tear at its hole',
    limit: NO_STRENGTH,
  },
  'tab-shear': {
    topic: 'How the bolt is held',
    number: 'Whether the belt’s bolt is held on both of its sides or on one.',
    faults: {
      single: {
        fact: 'The belt’s bolt is held on one side only.',
        means: 'It can bend; a bolt that is held on both sides does not.',
      },
    },
    aim: 'the bolt does not bend',
    limit: NO_STRENGTH,
  },
  'tab-to-tube': {
    topic: 'How far from its tube the belt is fixed',
    number: 'The distance from the hole to the outside of the tube that the fitting is on.',
    faults: {
      low: {
        fact: 'The hole lies closer to its tube than asked for, or inside it.',
        means: 'Inside the tube there is no room for it; the drawing may be wrong there.',
      },
      high: {
        fact: 'The hole lies further from its tube than asked for.',
        means: 'The fitting is then a long lever that bends, or the drawing is wrong there.',
      },
    },
    aim: 'the fitting is no long lever, and the drawing is right there',
    limit: NO_STRENGTH,
  },
  'sub-to-lap': {
    topic: 'Whether the crotch belts are fixed beside the lap belt',
    number: 'The distance from where the crotch belt is fixed to where the lap belt is.',
    faults: {
      low: typedLimit('The crotch belts are fixed nearer to the lap belt than the workshop’s own limit.'),
      high: {
        fact: 'The crotch belts, which you sit on, are fixed further from the lap belt than asked for.',
        means: 'They then do less to pull your hips down and back together with it.',
      },
    },
    aim: 'the crotch belts pull your hips down and back together with the lap belt',
    limit: 'It is read off the drawing; what is welded has to be measured.',
  },
  'shoulder-anchorages': {
    topic: 'Whether each shoulder belt has a fixing of its own',
    number: 'Whether the two shoulder belts end at one place or at two.',
    faults: {
      shared: {
        fact: 'Both shoulder belts are fixed at one place.',
        means:
          'They press on your neck and hold one shoulder less; and if that place gives way, both are loose.',
      },
    },
    aim: 'each shoulder is held by itself',
    limit: NO_STRENGTH,
  },
} as const satisfies Partial<Record<PropertyId, PlainProperty>>

/** The bar that carries the shoulder belts, by one of its sizes. */
const bar = (topic: string, number: string): PlainProperty => ({
  topic,
  number,
  faults: {
    low: {
      fact: 'The bar that carries the shoulder belts is smaller than asked for.',
      means: 'It takes the pull of both your shoulders; a bar that bends away lets them go forward.',
    },
    high: typedLimit('The bar that carries the shoulder belts is larger than the workshop’s own limit.'),
  },
  aim: 'the bar does not bend away before the belts are done',
  limit: NO_STRENGTH,
})

const BAR_WORDS = {
  'bar-diameter': bar('How thick the shoulder bar is', 'The outside diameter of the bar.'),
  'bar-wall': bar('How thick the wall of the shoulder bar is', 'The thickness of the tube’s wall.'),
  'bar-area': bar('How much steel is in the shoulder bar', 'The steel in a cut across the bar.'),
  'bar-second-moment': bar(
    'How stiff the shape of the shoulder bar is',
    'A number made of diameter and wall that says how hard the bar’s shape is to bend.',
  ),
} as const satisfies Partial<Record<PropertyId, PlainProperty>>

export const PLAIN_FIXINGS = { ...FIXING_WORDS, ...BAR_WORDS }
