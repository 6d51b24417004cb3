import type { QuantityId } from '../../straps/quantity'
import { type PlainWords, typedLimit } from './plainWords'

const SLIDES_UNDER =
  'In a hard stop your hips can slide under it, and it rides up on to your belly, which cannot bear it.'
const SLIDES_FORWARD = 'In a hard stop your hips slide forward first, before the belt holds them.'
const HIP_LIMIT =
  'It is worked out from your measurements and for a tight belt; where your own hip bones are has to be felt.'

const LAP_ANGLE_FAULTS = {
  low: { fact: 'The lap belt lies too flat.', means: SLIDES_UNDER },
  high: { fact: 'The lap belt stands too steep.', means: SLIDES_FORWARD },
}

export const PLAIN_LAP = {
  'lap-angle': {
    topic: 'How the lap belt holds your hips',
    number:
      'How steeply the belt rises from where it is fixed to your hip, seen from the side; 90° is upright.',
    ...LAP_ANGLE_FAULTS,
    fine: 'The lap belt pulls down and back on your hips, so that they stay in the seat.',
    limit: HIP_LIMIT,
  },
  'lap-run-angle': {
    topic: 'How the lap belt leaves your hips',
    number: 'How steeply the belt rises where it comes to your body, seen from the side; 90° is upright.',
    ...LAP_ANGLE_FAULTS,
    fine: 'The lap belt leaves your hips down and back.',
    limit: HIP_LIMIT,
  },
  'lap-shifted-angle': {
    topic: 'How the lap belt holds your hips, as road rules count it',
    number: 'How steeply the belt rises to a point that road rules set a little ahead of your hip.',
    ...LAP_ANGLE_FAULTS,
    fine: 'The lap belt rises as steeply as the road rule asks.',
    limit: 'It is counted to a point that road rules set for every seat, not to your own hip bone.',
  },
  'lap-spacing': {
    topic: 'How far apart the lap belt is fixed',
    number: 'The distance across the seat between the two places where the lap belt is fixed.',
    low: {
      fact: 'The two sides of the lap belt are fixed close together.',
      means: 'They pinch your hips and do not hold them sideways.',
    },
    high: typedLimit('The lap belt is fixed further apart than the workshop’s own limit.'),
    fine: 'The lap belt is fixed wide enough to hold your hips sideways.',
    limit: 'It says nothing about how wide your own hips are.',
  },
  'lap-mirror': {
    topic: 'Whether both sides of the lap belt match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('Both sides of the lap belt match more closely than the workshop’s own limit.'),
    high: {
      fact: 'The lap belt is not fixed alike on both sides.',
      means: 'One side takes more of the pull than the other and can turn your hips.',
    },
    fine: 'Both sides of the lap belt are fixed alike, so that they share the pull.',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
  'lap-off-centre': {
    topic: 'How far from the middle of the seat the lap belt is fixed',
    number: 'How far each side is fixed from the middle of the seat.',
    low: {
      fact: 'The lap belt is fixed close to the middle of the seat.',
      means: 'It pinches your hips and does not hold them sideways.',
    },
    high: typedLimit('The lap belt is fixed further out than the workshop’s own limit.'),
    fine: 'The lap belt is fixed far enough out to hold your hips sideways.',
    limit: 'It says nothing about how wide your own hips are.',
  },
  'lap-over-asis': {
    topic: 'Whether the lap belt lies on bone or on your belly',
    number: 'How far the belt lies above the point of your front hip bone; minus when it is below.',
    low: {
      fact: 'The lap belt lies low, on your thighs.',
      means: 'It then holds your legs instead of your hips, and your hips go forward first.',
    },
    high: {
      fact: 'The lap belt lies above your hip bones, on your belly.',
      means: 'Bone can bear the belt. The belly cannot, and what lies behind it is hurt.',
    },
    fine: 'The lap belt lies low across the hip bones, which can bear it.',
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
      fact: 'The crotch belt runs forward of the line down your chest.',
      means: UNDER_LAP_BELT,
    },
    high: {
      fact: 'The crotch belt runs far back from the line down your chest.',
      means: 'It then gives before it holds, and the shoulder belts draw the lap belt up on to your belly.',
    },
    fine: 'The crotch belt takes up the pull of the shoulder belts at once, and the lap belt stays down.',
    limit: 'It is worked out at rest; how a crotch belt sits between your own legs has to be tried.',
  },
  'sub-to-vertical': {
    topic: 'Which way the crotch belt pulls',
    number: 'How far the belt between your legs leans back from straight down; minus when it leans forward.',
    low: { fact: 'The crotch belt is fixed too far forward.', means: UNDER_LAP_BELT },
    high: {
      fact: 'The crotch belt is fixed too far back.',
      means: 'It then gives before it holds, and the lap belt can be drawn up on to your belly.',
    },
    fine: 'The crotch belt pulls the way it is asked to, and helps to hold your hips down and back.',
    limit: 'It is worked out at rest; how a crotch belt sits between your own legs has to be tried.',
  },
  'sub-spacing': {
    topic: 'How far apart the crotch belts are fixed',
    number: 'The distance across the seat between the two places where the crotch belts are fixed.',
    low: {
      fact: 'The two crotch belts are fixed close together.',
      means: 'They then lie across your groin instead of round your thighs.',
    },
    high: {
      fact: 'The two crotch belts are fixed far apart.',
      means: 'They then lie away from where they are meant to run round your thighs.',
    },
    fine: 'The crotch belts are as far apart as asked, to lie round your thighs.',
    limit: 'How they sit between your own legs has to be tried.',
  },
  'sub-mirror': {
    topic: 'Whether the two crotch belts match',
    number: 'How far the left and the right fixing differ, forward and back and in height.',
    low: typedLimit('The crotch belts match more closely than the workshop’s own limit.'),
    high: {
      fact: 'The two crotch belts are not fixed alike.',
      means: 'One takes more of the pull than the other.',
    },
    fine: 'Both crotch belts are fixed alike, so that they share the pull.',
    limit: 'It compares the drawing only; what is welded has to be measured.',
  },
} as const satisfies Partial<Record<QuantityId, PlainWords>>
