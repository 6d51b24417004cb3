import type { MeasuredValues } from './predicted'

/**
 * The flat figure of a large man that student-competition rules lay into the seat: a Ø200 hip circle on the seat, a Ø200
 * shoulder circle with its centre 490 mm from the hip's, and a Ø300 head-with-helmet circle 280 mm further, all in line.
 * Source: Formula SAE rules 2026, F.5.6.
 */
export const STUDENT_TEMPLATE_MEASURES = {
  hipHeightMm: 200 / 2,
  hipToShoulderMm: 490 + 200 / 2,
  shoulderArcRadiusMm: 200 / 2,
  headCentreAboveHipMm: 490 + 280,
  helmetRadiusMm: 300 / 2,
} as const satisfies MeasuredValues
