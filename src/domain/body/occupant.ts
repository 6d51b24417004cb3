export type Sex = 'female' | 'male'

/**
 * The single body values that a typed measurement may override. Lengths in mm, masses in kg, angles in degrees.
 * Everything not typed comes from sex, stature and mass (see regressions.ts).
 */
export const BODY_MEASURES = [
  'sittingHeightMm',
  'midShoulderHeightMm',
  'hipToShoulderMm',
  'shoulderArcRadiusMm',
  'shoulderStrapSpacingMm',
  'headCentreAboveHipMm',
  'helmetRadiusMm',
  'hipHeightMm',
  'frontHipBoneBreadthMm',
  'pelvisTiltDeg',
  'lapTissueMm',
  'hipBreadthMm',
  'bideltoidBreadthMm',
  'chestDepthMm',
  'abdominalDepthMm',
  'thighClearanceMm',
  'buttockKneeMm',
  'kneeHeightMm',
] as const

export type BodyMeasure = (typeof BODY_MEASURES)[number]

/** One person who will sit at a place, as typed by the builder. */
export interface Occupant {
  readonly id: string
  readonly name: string
  readonly sex: Sex
  readonly statureMm: number
  readonly massKg: number
  readonly measured: Readonly<Partial<Record<BodyMeasure, number>>>
}

/** Every body value the tool uses, measured or predicted; all finite. */
export type Body = Readonly<Record<BodyMeasure, number>>
