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
    fine: 'Small hoops keep the wrapped belt in its place.',
    limit: TYPED,
  },
  'wrap-bar-diameter': {
    topic: 'How thick the bar in the belt’s loop is',
    number: 'The diameter of the bar that the belt is wrapped round.',
    faults: {
      low: {
        fact: 'The belt is wrapped round a thin bar.',
        means: 'A thin bar bends the belt sharply and lessens what it can hold.',
      },
      high: typedLimit('The bar in the belt’s loop is thicker than the workshop’s own limit.'),
    },
    fine: 'The bar in the belt’s loop is thick enough not to bend the belt sharply.',
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
    fine: 'The belt is wrapped round a tube that does not touch the ground.',
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
    fine: 'The end of the belt can turn with you.',
    limit: NO_STRENGTH,
  },
  'eye-thread': {
    topic: 'How thick the eye bolt is',
    number: 'The diameter of the bolt’s thread.',
    faults: {
      low: { fact: 'The eye bolt is thin.', means: 'A thin thread bends and strips, and holds nobody then.' },
      high: typedLimit('The eye bolt is thicker than the workshop’s own limit.'),
    },
    fine: 'The eye bolt is as thick as asked for.',
    limit: NO_STRENGTH,
  },
  'tab-thickness': {
    topic: 'How thick the metal tab is',
    number: 'The thickness of the tab that holds the belt.',
    faults: {
      low: { fact: 'The metal tab is thin.', means: 'A thin tab tears at its hole, and holds nobody then.' },
      high: typedLimit('The metal tab is thicker than the workshop’s own limit.'),
    },
    fine: 'The tab is as thick as asked for.',
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
    fine: 'The belt’s bolt is held on both sides, so that it does not bend.',
    limit: NO_STRENGTH,
  },
  'tab-to-tube': {
    topic: 'How far from its tube the belt is fixed',
    number: 'The distance from the hole to the outside of the tube that the fitting is on.',
    faults: {
      low: {
        fact: 'The hole would lie inside the tube.',
        means: 'There is no room for it; the drawing is wrong there.',
      },
      high: {
        fact: 'The hole lies far from its tube.',
        means: 'The fitting is then a long lever that bends, or the drawing is wrong there.',
      },
    },
    fine: 'The fitting sits close to its tube.',
    limit: NO_STRENGTH,
  },
  'sub-to-lap': {
    topic: 'Whether the crotch belts are fixed beside the lap belt',
    number: 'The distance from where the crotch belt is fixed to where the lap belt is.',
    faults: {
      low: typedLimit('The crotch belts are fixed nearer to the lap belt than the workshop’s own limit.'),
      high: {
        fact: 'The crotch belts, which you sit on, are fixed far from the lap belt.',
        means: 'They then do less to pull your hips down and back together with it.',
      },
    },
    fine: 'The crotch belts pull your hips down and back together with the lap belt.',
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
    fine: 'Each shoulder belt has a fixing of its own.',
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
  fine: 'The bar that carries the shoulder belts is as large as asked for.',
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
