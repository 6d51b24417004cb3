import type { QuantityId } from '../../straps/quantity'
import { type PlainWords, typedLimit } from './plainWords'

const SLIDES_UNDER =
  'In a hard stop your hips can slide under it, and it can ride up on to your belly, which cannot bear it.'
const SLIDES_FORWARD = 'In a hard stop your hips can slide forward first, before the belt holds them.'
const HIP_LIMIT =
  'It is worked out from your measurements and for a tight belt; where your own hip bones are has to be felt.'

const LAP_ANGLE_FAULTS = {
  low: { fact: 'The lap belt lies flatter than asked for.', means: SLIDES_UNDER },
  high: { fact: 'The lap belt stands steeper than asked for.', means: SLIDES_FORWARD },
}

export const PLAIN_LAP = {
  'lap-angle': {
    topic: 'How the lap belt holds your hips',
    number:
      'How steeply the belt rises from where it is fixed to your hip, seen from the side; 90° is upright.',
    ...LAP_ANGLE_FAULTS,
    aim: 'your hips neither slide under the lap belt nor forward before it holds',
    limit: HIP_LIMIT,
  },
  'lap-run-angle': {
    topic: 'How the lap belt leaves your hips',
    number: 'How steeply the belt rises where it comes to your body, seen from the side; 90° is upright.',
    ...LAP_ANGLE_FAULTS,
    aim: 'your hips neither slide under the lap belt nor forward before it holds',
    limit: HIP_LIMIT,
  },
  'lap-shifted-angle': {
    topic: 'How the lap belt holds your hips, as road rules count it',
    number: 'How steeply the belt rises to a point that road rules set a little ahead of your hip.',
    ...LAP_ANGLE_FAULTS,
    aim: 'your hips neither slide under the lap belt nor forward before it holds',
    limit: 'It is counted to a point that road rules set for every seat, not to your own hip bone.',
  },
  'lap-spacing': {
    topic: 'How far apart the lap belt is fixed',
    number: 'The distance across the seat between the two places where the lap belt is fixed.',
    low: {
      fact: 'The two sides of the lap belt are fixed closer together than asked for.',
      means: 'They can pinch your hips and hold them less sideways.',
    },
    high: typedLimit('The lap belt is fixed further apart than the workshop’s own limit.'),
    aim: 'the lap belt does not pinch your hips, and holds them sideways',
    limit: 'It says nothing about how wide your own hips are.',
  },
  'lap-mirror': {
    topic: 'Whether both sides of the lap belt match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('Both sides of the lap belt match more closely than the workshop’s own limit.'),
    high: {
      fact: 'Both sides of the lap belt differ more than asked for.',
      means: 'One side takes more of the pull than the other and can turn your hips.',
    },
    aim: 'both sides share the pull',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
  'lap-off-centre': {
    topic: 'How far from the middle of the seat the lap belt is fixed',
    number: 'How far each side is fixed from the middle of the seat.',
    low: {
      fact: 'The lap belt is fixed closer to the middle of the seat than asked for.',
      means: 'It can pinch your hips and hold them less sideways.',
    },
    high: typedLimit('The lap belt is fixed further out than the workshop’s own limit.'),
    aim: 'the lap belt does not pinch your hips, and holds them sideways',
    limit: 'It says nothing about how wide your own hips are.',
  },
  'lap-over-asis': {
    topic: 'Whether the lap belt lies on bone or on your belly',
    number: 'How far the belt lies above the point of your front hip bone; minus when it is below.',
    low: {
      fact: 'The lap belt lies lower than asked for.',
      means:
        'On the thighs it would hold your legs instead of your hips, and your hips would go forward first.',
    },
    high: {
      fact: 'The lap belt lies higher than asked for.',
      means:
        'Above the hip bones it lies on your belly. Bone can bear the belt; the belly cannot, and what lies behind it is hurt.',
    },
    aim: 'the belt lies on bone, which can bear it, and not on your belly',
    limit: HIP_LIMIT,
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>

const UNDER_LAP_BELT =
  'It then does less to keep your hips from sliding under the lap belt, which rides up on to your belly.'

export const PLAIN_CROTCH = {
  'sub-to-chest': {
    topic: 'Whether the crotch belt goes on where the shoulder belts end',
    number:
      'How far the crotch belt turns away from the line of the shoulder belts down your chest; 0° is in line.',
    low: {
      fact: 'The crotch belt runs further forward than asked for.',
      means: UNDER_LAP_BELT,
    },
    high: {
      fact: 'The crotch belt runs further back than asked for.',
      means: 'It then gives before it holds, and the shoulder belts draw the lap belt up on to your belly.',
    },
    aim: 'the crotch belt takes up the pull of the shoulder belts at once, and the lap belt stays down',
    limit: 'It is worked out at rest; how a crotch belt sits between your own legs has to be tried.',
  },
  'sub-to-vertical': {
    topic: 'Which way the crotch belt pulls',
    number: 'How far the belt between your legs leans back from straight down; minus when it leans forward.',
    low: { fact: 'The crotch belt is fixed further forward than asked for.', means: UNDER_LAP_BELT },
    high: {
      fact: 'The crotch belt is fixed further back than asked for.',
      means: 'It then gives before it holds, and the lap belt can be drawn up on to your belly.',
    },
    aim: 'your hips do not slide under the lap belt',
    limit: 'It is worked out at rest; how a crotch belt sits between your own legs has to be tried.',
  },
  'sub-spacing': {
    topic: 'How far apart the crotch belts are fixed',
    number: 'The distance across the seat between the two places where the crotch belts are fixed.',
    low: {
      fact: 'The two crotch belts are fixed closer together than asked for.',
      means: 'They can then lie across your groin instead of round your thighs.',
    },
    high: {
      fact: 'The two crotch belts are fixed further apart than asked for.',
      means: 'They then lie away from where they are meant to run round your thighs.',
    },
    aim: 'the crotch belts lie round your thighs and not across your groin',
    limit: 'How they sit between your own legs has to be tried.',
  },
  'sub-mirror': {
    topic: 'Whether the two crotch belts match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('The crotch belts match more closely than the workshop’s own limit.'),
    high: {
      fact: 'The two crotch belts differ more than asked for.',
      means: 'One takes more of the pull than the other.',
    },
    aim: 'both share the pull',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>
