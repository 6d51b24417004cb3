import type { Sex } from './occupant'

/**
 * Body sizes as straight-line functions of stature and mass, fitted by least squares to two surveys of real people.
 *
 * Source II: Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel: Methods and Summary Statistics,
 * NATICK/TR-15/007 (2014); 1 986 women and 4 082 men.
 * Source I: Gordon et al., 1988 Anthropometric Survey of U.S. Army Personnel, NATICK/TR-89/044 (1989; report number from
 * memory); 2 208 women and 1 774 men. It alone measured the middle of the shoulder sitting and the front hip bones.
 *
 * The fits are ours: they are computed from the people measured, not printed in the reports. The people were soldiers under
 * weight rules, aged 17 to 58: heavy people lie beyond the data, and for them the figures are carried on in a straight line.
 */
export interface Regression {
  readonly interceptMm: number
  /** mm per mm of stature. */
  readonly perStature: number
  /** mm per kg of body mass. */
  readonly perKgMm: number
  /** Spread of real people of one stature and mass about the line, mm (one standard deviation). */
  readonly residualSdMm: number
}

/**
 * What the surveys predict. Heights are above the surface sat on; `trochanterHeightMm` is the upper edge of the thigh bone's
 * outer knob, derived as standing height minus (stature − sitting height).
 */
export type SurveyMeasure =
  | 'sittingHeightMm'
  | 'midShoulderHeightMm'
  | 'trochanterHeightMm'
  | 'frontHipBoneBreadthMm'
  | 'biacromialBreadthMm'
  | 'shoulderLengthMm'
  | 'headLengthMm'
  | 'hipBreadthMm'
  | 'bideltoidBreadthMm'
  | 'chestDepthMm'
  | 'abdominalDepthMm'
  | 'thighClearanceMm'
  | 'buttockKneeMm'
  | 'kneeHeightMm'

const regression = (
  interceptMm: number,
  perStature: number,
  perKgMm: number,
  residualSdMm: number,
): Regression => ({ interceptMm, perStature, perKgMm, residualSdMm })

/** Source: the surveys above; I for the three marked so, II for all others. */
export const REGRESSIONS: Readonly<Record<Sex, Readonly<Record<SurveyMeasure, Regression>>>> = {
  female: {
    sittingHeightMm: regression(215.348, 0.394039, -0.00597, 21.33),
    midShoulderHeightMm: regression(99.603, 0.281482, 0.41525, 19.2), // I
    trochanterHeightMm: regression(70.113, 0.000476, 0.21427, 13.9), // I
    frontHipBoneBreadthMm: regression(88.468, 0.057415, 0.61068, 19.04), // I
    biacromialBreadthMm: regression(131.989, 0.128293, 0.36067, 14.72),
    shoulderLengthMm: regression(36.639, 0.05841, 0.05382, 9.43),
    headLengthMm: regression(134.295, 0.027872, 0.1496, 6.82),
    hipBreadthMm: regression(305.585, -0.052404, 2.63754, 18.06),
    bideltoidBreadthMm: regression(386.785, -0.062651, 2.44346, 14.2),
    chestDepthMm: regression(277.812, -0.116339, 2.34728, 15.25),
    abdominalDepthMm: regression(316.634, -0.169744, 2.79583, 16.9),
    thighClearanceMm: regression(148.304, -0.037059, 1.17927, 7.56),
    buttockKneeMm: regression(86.401, 0.250834, 1.41262, 17.22),
    kneeHeightMm: regression(-62.418, 0.337644, 0.35214, 12.6),
  },
  male: {
    sittingHeightMm: regression(216.689, 0.393277, 0.1277, 22.33),
    midShoulderHeightMm: regression(156.78, 0.242879, 0.59962, 19.28), // I
    trochanterHeightMm: regression(53.864, 0.024839, -0.14129, 14.4), // I
    frontHipBoneBreadthMm: regression(131.87, 0.020264, 0.81342, 17.15), // I
    biacromialBreadthMm: regression(204.589, 0.091679, 0.58554, 14.47),
    shoulderLengthMm: regression(39.583, 0.062739, 0.00012, 9.6),
    headLengthMm: regression(144.731, 0.024537, 0.13657, 6.3),
    hipBreadthMm: regression(261.425, -0.027158, 1.93594, 14.11),
    bideltoidBreadthMm: regression(433.461, -0.061005, 2.15262, 14.91),
    chestDepthMm: regression(258.127, -0.089379, 1.78534, 12.36),
    abdominalDepthMm: regression(335.301, -0.170718, 2.56263, 18.12),
    thighClearanceMm: regression(165.929, -0.040436, 1.00025, 8.37),
    buttockKneeMm: regression(52.696, 0.286626, 0.72355, 15.95),
    kneeHeightMm: regression(-64.759, 0.341531, 0.22348, 12.37),
  },
}

/**
 * A straight line carried far beyond the people measured would end below nothing; no size is let under this. It is never
 * reached by a person (at 1 200 mm and 30 kg the smallest size is over 40 mm). Our judgement.
 */
const SMALLEST_SIZE_MM = 10

/** The middle size of people of that sex, stature and mass, mm > 0. */
export const predictedSizeMm = (
  sex: Sex,
  measure: SurveyMeasure,
  statureMm: number,
  massKg: number,
): number => {
  const { interceptMm, perStature, perKgMm } = REGRESSIONS[sex][measure]
  return Math.max(SMALLEST_SIZE_MM, interceptMm + perStature * statureMm + perKgMm * massKg)
}
