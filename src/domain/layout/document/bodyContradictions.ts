import { bodyOf } from '../../body/body'
import { HIP_AHEAD_OF_BACK_MM } from '../../body/leg'
import type { Body, BodyMeasure, Occupant } from '../../body/occupant'
import type { Contradiction } from './contradiction'
import { MEASURE_LIMITS, type NumberLimits } from './limits'
import type { FieldPath } from './problem'
import { measureWords } from './placeSchema'

/** One measure that is larger than another by at least so much in every body. */
interface Order {
  readonly larger: BodyMeasure
  readonly smaller: BodyMeasure
  readonly byMm: number
  /** Two typed values only: a prediction is too uncertain beside this one. */
  readonly onlyTyped?: true
}

/*
 * Every limit here is our judgement, well beyond the 1,200 people of the two surveys (body/survey): what nobody has, not what is
 * rare. The least (or most) among them stands beside each, where it was surveyed or follows from what was.
 */

const ORDERS: readonly Order[] = [
  // 118 mm: the neck lies between.
  {
    larger: 'headCentreAboveHipMm',
    smaller: 'hipToShoulderMm',
    byMm: 50,
  },
  // 222 mm: head and neck.
  {
    larger: 'sittingHeightMm',
    smaller: 'midShoulderHeightMm',
    byMm: 120,
  },
  // 101 mm: the hip joint lies that far above the seat, and people slump.
  {
    larger: 'midShoulderHeightMm',
    smaller: 'hipToShoulderMm',
    byMm: 20,
    onlyTyped: true,
  },
  // 205 mm: half a head and the hip joint's height.
  {
    larger: 'sittingHeightMm',
    smaller: 'headCentreAboveHipMm',
    byMm: 80,
    onlyTyped: true,
  },
  // 81 mm: the bones lie inside the hips.
  {
    larger: 'hipBreadthMm',
    smaller: 'frontHipBoneBreadthMm',
    byMm: 20,
  },
  // 155 mm: two upper arms.
  {
    larger: 'bideltoidBreadthMm',
    smaller: 'shoulderStrapSpacingMm',
    byMm: 60,
  },
  // 278 mm: the knee's top is the thigh's end, above the shank.
  { larger: 'kneeHeightMm', smaller: 'thighClearanceMm', byMm: 150 },
  // 252 mm.
  { larger: 'buttockKneeMm', smaller: 'abdominalDepthMm', byMm: 100 },
  // 25 mm: the hip joint lies inside the thigh.
  {
    larger: 'thighClearanceMm',
    smaller: 'hipHeightMm',
    byMm: 5,
  },
]

/** Shares of the stature. */
const SHARES = [
  { measure: 'sittingHeightMm', least: 0.42, most: 0.62 }, // 0.474…0.570
  { measure: 'midShoulderHeightMm', least: 0.25, most: 0.45 }, // 0.302…0.397
  { measure: 'buttockKneeMm', least: 0.27, most: 0.48 }, // 0.324…0.420
  { measure: 'kneeHeightMm', least: 0.23, most: 0.4 }, // 0.289…0.343
] as const satisfies readonly {
  readonly measure: BodyMeasure
  readonly least: number
  readonly most: number
}[]

/** The shoulder's top curves at most this share of the hip-to-shoulder length; 0.17 on the student template. */
const MOST_SHOULDER_SHARE = 0.4

/** The lap strap lies at most this far ahead of the belly's front, mm; 93 by prediction among the people surveyed. */
const MOST_LAP_AHEAD_MM = 150

const rounded = (value: number): string => String(Math.round(value * 10) / 10)

const REMEDY = 'Measure both again, or leave one of them empty to have it predicted.'

const isTyped = ({ measured }: Occupant, measure: BodyMeasure): boolean => measured[measure] !== undefined

/** A value with where it is from: typed ones need no word. */
const valueWords = (occupant: Occupant, body: Body, measure: BodyMeasure): string =>
  `${rounded(body[measure])} mm${isTyped(occupant, measure) ? '' : ' (predicted)'}`

const orderContradictions = (occupant: Occupant, body: Body, path: FieldPath): readonly Contradiction[] =>
  ORDERS.flatMap(({ larger, smaller, byMm, onlyTyped }) => {
    const [at, second] = [larger, smaller].filter((measure) => isTyped(occupant, measure))
    if (at === undefined || (onlyTyped && second === undefined)) return []
    if (body[larger] >= body[smaller] + byMm) return []
    const other = at === larger ? smaller : larger
    const beside = `${rounded(body[at])} mm is too ${at === larger ? 'little' : 'much'} beside a ${measureWords(other)} of ${valueWords(occupant, body, other)}`
    const says = `${beside}; it is at least ${byMm} mm ${at === larger ? 'more' : 'less'} in everybody`
    return [{ path: [...path, 'measured', at], received: occupant.measured[at], says, remedy: REMEDY }]
  })

const shareContradictions = (occupant: Occupant, path: FieldPath): readonly Contradiction[] =>
  SHARES.flatMap(({ measure, least, most }) => {
    const value = occupant.measured[measure]
    const share = (value ?? 0) / occupant.statureMm
    if (value === undefined || (share >= least && share <= most)) return []
    const from = rounded(least * occupant.statureMm)
    const to = rounded(most * occupant.statureMm)
    const says = `${rounded(value)} mm cannot be with a stature of ${rounded(occupant.statureMm)} mm; with that it is ${from} to ${to} mm`
    const remedy = 'Measure it and the stature again, or leave it empty to have it predicted.'
    return [{ path: [...path, 'measured', measure], received: value, says, remedy }]
  })

const shoulderContradictions = (
  occupant: Occupant,
  body: Body,
  path: FieldPath,
): readonly Contradiction[] => {
  const { shoulderArcRadiusMm, hipToShoulderMm } = body
  if (!isTyped(occupant, 'shoulderArcRadiusMm')) return []
  if (shoulderArcRadiusMm <= MOST_SHOULDER_SHARE * hipToShoulderMm) return []
  const says = `${rounded(shoulderArcRadiusMm)} mm is too much beside a hip to shoulder of ${valueWords(occupant, body, 'hipToShoulderMm')}; it is at most ${rounded(MOST_SHOULDER_SHARE * hipToShoulderMm)} mm`
  return [
    {
      path: [...path, 'measured', 'shoulderArcRadiusMm'],
      received: shoulderArcRadiusMm,
      says,
      remedy: REMEDY,
    },
  ]
}

/** The lap strap lies where bone and flesh put it; far ahead of the belly nothing of the person is left. */
const lapContradictions = (occupant: Occupant, body: Body, path: FieldPath): readonly Contradiction[] => {
  const { lapTissueMm, abdominalDepthMm } = body
  if (!isTyped(occupant, 'lapTissueMm')) return []
  // Bone from the hip joint: posed.ts, Bell et al. 1990, 0.19 ahead and 0.30 above, as shares of the bones' breadth.
  const boneMm = Math.hypot(0.19, 0.3) * body.frontHipBoneBreadthMm
  const aheadOfBellyMm = HIP_AHEAD_OF_BACK_MM + boneMm + lapTissueMm - abdominalDepthMm
  if (aheadOfBellyMm <= MOST_LAP_AHEAD_MM) return []
  const mostMm = lapTissueMm - (aheadOfBellyMm - MOST_LAP_AHEAD_MM)
  const says = `${rounded(lapTissueMm)} mm would put the lap strap ${rounded(aheadOfBellyMm)} mm ahead of the belly, with an abdominal depth of ${valueWords(occupant, body, 'abdominalDepthMm')}; it is at most ${rounded(mostMm)} mm`
  return [{ path: [...path, 'measured', 'lapTissueMm'], received: lapTissueMm, says, remedy: REMEDY }]
}

/**
 * Where measured values of one person cannot all be true, with each other, with the stature or with what is predicted beside them. A
 * person of whom nothing was measured is never refused. Source of the limits: our judgement, see above.
 */
export const bodyContradictions = (occupant: Occupant, path: FieldPath): readonly Contradiction[] => {
  if (Object.keys(occupant.measured).length === 0) return []
  const body = bodyOf(occupant)
  return [
    ...shareContradictions(occupant, path),
    ...orderContradictions(occupant, body, path),
    ...shoulderContradictions(occupant, body, path),
    ...lapContradictions(occupant, body, path),
  ]
}

/** Kept from the limits by, mm, so that rounding of the last digit does not lead past them. */
const WITHIN_MM = 1e-6

/**
 * The hip-to-shoulder lengths that can be typed for this person beside the other measured values, mm, or null where there are
 * none. Formula: the contradictions above, solved for this measure.
 */
export const hipToShoulderLimits = (occupant: Occupant): NumberLimits | null => {
  const body = bodyOf(occupant)
  const most = ORDERS.filter(
    ({ larger, smaller, onlyTyped }) =>
      smaller === 'hipToShoulderMm' && (onlyTyped !== true || isTyped(occupant, larger)),
  ).map(({ larger, byMm }) => body[larger] - byMm - WITHIN_MM)
  const leastMm = isTyped(occupant, 'shoulderArcRadiusMm')
    ? body.shoulderArcRadiusMm / MOST_SHOULDER_SHARE + WITHIN_MM
    : 0
  const limits = {
    ...MEASURE_LIMITS.hipToShoulderMm,
    min: Math.max(MEASURE_LIMITS.hipToShoulderMm.min, leastMm),
    max: Math.min(MEASURE_LIMITS.hipToShoulderMm.max, ...most),
  }
  return limits.min <= limits.max ? limits : null
}
