import type { Limit } from '../../rules/finding'
import type { PropertyId } from '../../rules/rule'
import { PLAIN_FIXINGS } from './plainFixings'
import { type PlainFault, type PlainProperty, typedLimit, TYPED_ONLY as TYPED } from './plainWords'

const BELT_WORDS = {
  'belt-points': {
    topic: 'How many belts meet at your buckle',
    number: 'How many belt ends the buckle holds.',
    faults: {
      low: {
        fact: 'Fewer belts meet at your buckle than asked for.',
        means:
          'Each belt has its own task: with three one shoulder is free; with four nothing holds the lap belt down; one crotch belt holds that down but not your hips back.',
      },
      high: typedLimit('More belts meet at your buckle than the workshop’s own limit.'),
    },
    aim: 'both shoulders are held, and the lap belt stays down',
    limit: TYPED,
  },
  'belt-buckle': {
    topic: 'What kind of buckle it is',
    number: 'How the buckle opens: a lever that holds links together, or a knob that is turned.',
    faults: {
      'rotary-cam': {
        fact: 'The buckle is one with a knob that is turned.',
        means: 'Dust and mud can clog it, so that it does not lock, or does not let you out.',
      },
    },
    aim: 'the buckle locks, and lets you out, with dirt in it',
    limit: TYPED,
  },
  'belt-material': {
    topic: 'What the belts are woven of',
    number: 'The fibre on the label.',
    faults: {
      nylon: {
        fact: 'The belts are of nylon.',
        means: 'Nylon stretches clearly more under load, takes up water and ages fast in the sun.',
      },
    },
    aim: 'the belts stretch and age as they are known to',
    limit: TYPED,
  },
  'belt-lap-adjuster': {
    topic: 'Which way the lap belt is pulled tight',
    number: 'Whether the loose end is pulled up or down.',
    faults: {
      'pull-down': {
        fact: 'The lap belt is tightened by pulling down.',
        means: 'Those adjusters jam between the seat and your hip, and the belt stays loose.',
      },
    },
    aim: 'you or a helper can pull the lap belt tight',
    limit: TYPED,
  },
  'belt-head-and-neck': {
    topic: 'Whether something holds your head',
    number: 'Whether a head-and-neck restraint is worn, the collar that ties the helmet to your shoulders.',
    faults: {
      no: {
        fact: 'No head-and-neck restraint is planned, the collar that ties the helmet to your shoulders.',
        means: 'When your shoulders are held the head goes on, and the neck alone holds it.',
      },
    },
    aim: 'your neck does not have to hold your head alone; it helps only when it is worn',
    limit: TYPED,
  },
  'belt-joined': {
    topic: 'Whether the shoulder belts are two',
    number: 'Whether both shoulder belts are sewn into one behind your neck.',
    faults: {
      yes: {
        fact: 'Both shoulder belts are joined into one behind your neck.',
        means: 'They press on your neck, and hold one shoulder less when you are thrown to a side.',
      },
    },
    aim: 'nothing presses your neck, and each shoulder is held',
    limit: TYPED,
  },
  'straps-crossed': {
    topic: 'Whether the two belts cross',
    number: 'Whether the left belt ends on the right and the right one on the left.',
    faults: {
      yes: {
        fact: 'The two belts cross each other.',
        means: 'They chafe on each other and pull you to the wrong side.',
      },
      no: {
        fact: 'The two shoulder belts do not cross each other.',
        means: 'With only four belts at the buckle they then slip off the shoulders more easily.',
      },
    },
    aim: 'the belts neither chafe on each other nor slip off',
    limit: 'It is read off the drawing.',
  },
  'webbing-width': {
    topic: 'How wide the belt is',
    number: 'The width of the belt.',
    faults: {
      low: {
        fact: 'The belt is narrower than asked for.',
        means: 'A narrow belt presses along a line instead of a band.',
      },
      high: typedLimit('The belt is wider than the workshop’s own limit.'),
    },
    aim: 'the belt presses on a band and not along a line',
    limit: TYPED,
  },
  'strap-slot': {
    topic: 'Whether the belt goes through the seat',
    number: 'Whether the belt is led through an opening in the seat.',
    faults: {
      no: {
        fact: 'The belt is led over the side of the seat instead of through it.',
        means: 'It is longer, moves about and lies in the wrong place.',
      },
    },
    aim: 'the belt lies in its place and takes the short way',
    limit: 'Whether the edges of the opening are smooth has to be felt on the seat.',
  },
  'slot-spare': {
    topic: 'Whether the belt fits its opening in the seat',
    number: 'How much longer the opening is than the belt is wide.',
    faults: {
      low: {
        fact: 'The opening in the seat is shorter than asked for.',
        means: 'A belt that has to be folded to go through wears along the fold and jams.',
      },
      high: {
        fact: 'The opening in the seat is longer than asked for.',
        means: 'The belt can wander to one end and be loaded along one edge.',
      },
    },
    aim: 'the belt lies flat in its opening and does not wander',
    limit: 'Whether the edges of the opening are smooth has to be felt on the seat.',
  },
} as const satisfies Partial<Record<PropertyId, PlainProperty>>

const PROPERTIES: Readonly<Record<PropertyId, PlainProperty>> = {
  ...BELT_WORDS,
  ...PLAIN_FIXINGS,
}

export const plainProperty = (id: PropertyId): PlainProperty => PROPERTIES[id]

/** What nobody but the workshop itself would ask for. */
const OTHERWISE = typedLimit('It is not what the workshop’s own limit asks for.')

/** What is so and what it means where the value is outside its limit. */
export const plainPropertyFault = (id: PropertyId, value: number | string, limit: Limit): PlainFault => {
  const { faults } = PROPERTIES[id]
  const key = typeof value === 'string' ? value : limit.min !== null && value < limit.min ? 'low' : 'high'
  return faults[key] ?? OTHERWISE
}
