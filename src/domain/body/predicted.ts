import type { Body, BodyMeasure, Sex } from './occupant'
import { predictedSizeMm, type SurveyMeasure } from './regressions'

/** Body values that somebody measured; each takes the place of a predicted one. */
export type MeasuredValues = Readonly<Partial<Record<BodyMeasure, number>>>

/**
 * Sitting in a car shortens the trunk against sitting erect on a bench.
 * Source: our judgement, range 0.90–1.00; the skin at the neck of two crash-test dummies lies at 0.94 and 0.96 of the erect height.
 */
const SLUMP = 0.95

/**
 * Height of the hip joint above the compressed seat for the small reference woman, growing to the large reference man, and held
 * at the ends of what a body can do. Source: hip joint of the small-female and large-male frontal dummies, 97 mm at 1 511 mm
 * stature and 103 mm at 1 869 mm, measured in published models; the limits 92 and 106 are our judgement. Uncertain by ±15 mm.
 */
export const hipHeightMm = (statureMm: number): number =>
  Math.min(106, Math.max(92, 97 + (6 * (statureMm - 1511)) / 358))

/**
 * Radius of the shoulder's top as a share of hip-to-shoulder length. Source: student-competition rules 2026, F.5.6: a template
 * with a Ø200 shoulder circle whose centre is 490 mm from the hip, hence 590 mm to its top; to scale it with the person is our judgement.
 */
const SHOULDER_RADIUS_SHARE = 100 / 590

/**
 * Helmet shell and padding around the head. Source: derived from the same template's Ø300 head with helmet and the mean male
 * head length of 200 mm (the 2012 survey): (300 − 200)/2.
 */
export const HELMET_THICKNESS_MM = 50

/**
 * How far the pelvis leans back from its standing attitude in a seat. Source: our judgement, range 0–40°; no published figure
 * for deep off-road seats was found. It is taken as the tilt at the drawn recline and does not change from sitting to sitting.
 */
const DEFAULT_PELVIS_TILT_DEG = 20

/**
 * Flesh and clothing between the front hip bone and the lap strap. Source: our judgement after Jones, Ebert and Reed,
 * ATLAS-2016-15 (abstract): straps put on by people of body mass index 25 lie 31 and 33 mm from the bone; 118 and 68 mm at 40.
 */
const DEFAULT_LAP_TISSUE_MM = 30

/**
 * Every body value from sex, stature and mass, with the measured ones in their place; what is derived from other values follows
 * the measured ones. All values finite and, but for the tilt, above zero for stature and mass above zero.
 */
export const bodyFrom = (sex: Sex, statureMm: number, massKg: number, measured: MeasuredValues): Body => {
  const surveyed = (measure: SurveyMeasure): number => predictedSizeMm(sex, measure, statureMm, massKg)
  const sizeMm = (measure: SurveyMeasure & BodyMeasure): number => measured[measure] ?? surveyed(measure)

  const sittingHeightMm = sizeMm('sittingHeightMm')
  const midShoulderHeightMm = sizeMm('midShoulderHeightMm')
  const trochanterHeightMm = surveyed('trochanterHeightMm')
  // A typed height below the hip would turn the trunk upside down: at least a hand's breadth of trunk is kept.
  const trunkMm = (topMm: number): number => Math.max(100, SLUMP * (topMm - trochanterHeightMm))
  const hipToShoulderMm = measured.hipToShoulderMm ?? trunkMm(midShoulderHeightMm)
  const halfHeadMm = surveyed('headLengthMm') / 2

  return {
    sittingHeightMm,
    midShoulderHeightMm,
    hipToShoulderMm,
    shoulderArcRadiusMm: measured.shoulderArcRadiusMm ?? hipToShoulderMm * SHOULDER_RADIUS_SHARE,
    // The strap lies halfway between the neck and the shoulder's end on each side: 2·(breadth/2 − length/2).
    shoulderStrapSpacingMm:
      measured.shoulderStrapSpacingMm ??
      Math.max(0, surveyed('biacromialBreadthMm') - surveyed('shoulderLengthMm')),
    headCentreAboveHipMm: measured.headCentreAboveHipMm ?? trunkMm(sittingHeightMm) - halfHeadMm,
    helmetRadiusMm: measured.helmetRadiusMm ?? halfHeadMm + HELMET_THICKNESS_MM,
    hipHeightMm: measured.hipHeightMm ?? hipHeightMm(statureMm),
    frontHipBoneBreadthMm: sizeMm('frontHipBoneBreadthMm'),
    pelvisTiltDeg: measured.pelvisTiltDeg ?? DEFAULT_PELVIS_TILT_DEG,
    lapTissueMm: measured.lapTissueMm ?? DEFAULT_LAP_TISSUE_MM,
    hipBreadthMm: sizeMm('hipBreadthMm'),
    bideltoidBreadthMm: sizeMm('bideltoidBreadthMm'),
    chestDepthMm: sizeMm('chestDepthMm'),
    abdominalDepthMm: sizeMm('abdominalDepthMm'),
    thighClearanceMm: sizeMm('thighClearanceMm'),
    buttockKneeMm: sizeMm('buttockKneeMm'),
    kneeHeightMm: sizeMm('kneeHeightMm'),
  }
}

/** The body of the middle person of that sex, stature and mass; nobody in particular has it. */
export const predictedBody = (sex: Sex, statureMm: number, massKg: number): Body =>
  bodyFrom(sex, statureMm, massKg, {})
