import type { BodyMeasure } from '../../body/occupant'

/** A closed interval for a typed number, in the unit that the field's name ends with. */
export interface NumberLimits {
  readonly min: number
  readonly max: number
  readonly unit: 'mm' | '°' | 'kg' | 'N·m' | ''
}

const mm = (min: number, max: number): NumberLimits => ({ min, max, unit: 'mm' })
const deg = (min: number, max: number): NumberLimits => ({ min, max, unit: '°' })

/**
 * What a layout may hold. Every limit here is our judgement, with no source: wide enough for any buggy and any adult, narrow
 * enough to catch a slipped decimal point or inches typed as millimetres. They say nothing about what is safe.
 */
export const LIMITS = {
  coordinateMm: mm(-20_000, 20_000),
  seatCoordinateMm: mm(-3_000, 3_000),
  hipHeightMm: mm(20, 300),
  reclineDeg: deg(-10, 80),
  slideMm: mm(0, 600),
  slotLengthMm: mm(5, 500),
  slotHeightMm: mm(2, 300),
  turnDeg: deg(-180, 180),
  leanDeg: deg(-90, 90),
  statureMm: mm(1_200, 2_300),
  massKg: { min: 30, max: 250, unit: 'kg' },
  webbingMm: mm(15, 100),
  spareWebbingMm: mm(0, 1_000),
  outsideDiameterMm: mm(6, 150),
  wallMm: mm(0.5, 25),
  thicknessMm: mm(0.5, 60),
  holeDiameterMm: mm(3, 60),
  tabWidthMm: mm(5, 200),
  edgeDistanceMm: mm(3, 150),
  clevisGapMm: mm(1, 60),
  threadDiameterMm: mm(4, 40),
  eyeDiameterMm: mm(5, 80),
  shellThicknessMm: mm(0, 60),
  shoulderTailMm: mm(20, 2_000),
  adjusterPlaceMm: mm(0, 3_000),
  adjusterLengthMm: mm(5, 300),
  boltDiameterMm: mm(3, 40),
  torqueNm: { min: 0.1, max: 500, unit: 'N·m' },
  ruleLimit: { min: -1_000_000, max: 1_000_000, unit: '' },
  weldErrorMm: mm(0, 50),
  angleErrorDeg: deg(0, 15),
  inspectEveryMonths: { min: 1, max: 60, unit: '' },
  tapeMm: mm(1, 20_000),
  pictureSidePx: { min: 16, max: 8_192, unit: '' },
  pictureCoordinatePx: { min: 0, max: 8_192, unit: '' },
  photoLengthMm: mm(1, 40_000),
  opacity: { min: 0, max: 1, unit: '' },
  variantIndex: { min: 0, max: 3, unit: '' },
} as const satisfies Record<string, NumberLimits>

/** Limits of the body values that may be typed; our judgement as above. */
export const MEASURE_LIMITS = {
  sittingHeightMm: mm(500, 1_300),
  midShoulderHeightMm: mm(300, 950),
  hipToShoulderMm: mm(200, 900),
  shoulderArcRadiusMm: mm(0, 200),
  shoulderStrapSpacingMm: mm(40, 500),
  headCentreAboveHipMm: mm(300, 1_200),
  helmetRadiusMm: mm(80, 250),
  hipHeightMm: LIMITS.hipHeightMm,
  frontHipBoneBreadthMm: mm(100, 450),
  pelvisTiltDeg: deg(-30, 90),
  lapTissueMm: mm(0, 300),
  hipBreadthMm: mm(200, 900),
  bideltoidBreadthMm: mm(250, 900),
  chestDepthMm: mm(100, 700),
  abdominalDepthMm: mm(100, 800),
  thighClearanceMm: mm(60, 400),
  buttockKneeMm: mm(350, 900),
  kneeHeightMm: mm(300, 800),
} as const satisfies Record<BodyMeasure, NumberLimits>

/** Consecutive points of a tube are at least this far apart, so that every piece has a direction. Our judgement. */
export const TUBE_POINT_SPACING_MM = 1

/** A wrap lies on its tube's centre line within this distance: room for rounding on the drawing. Our judgement. */
export const WRAP_OFF_TUBE_MM = 1

/** How many of each a file may hold; our judgement, so that a damaged file cannot make the page stand still. */
export const COUNTS = {
  tubes: { min: 0, max: 300 },
  tubePoints: { min: 2, max: 60 },
  tapePoints: { min: 0, max: 60 },
  photos: { min: 0, max: 8 },
  notMeasured: { min: 0, max: 40 },
  places: { min: 1, max: 8 },
  otherVariants: { min: 0, max: 3 },
  occupants: { min: 1, max: 24 },
  anchors: { min: 0, max: 7 },
  slots: { min: 0, max: 12 },
  slotStraps: { min: 1, max: 7 },
  ownRuleSets: { min: 0, max: 20 },
  rules: { min: 0, max: 300 },
  arrangements: { min: 1, max: 5 },
  wantedWords: { min: 1, max: 10 },
  confirmedDocuments: { min: 0, max: 100 },
  revisions: { min: 0, max: 60 },
  outlinePoints: { min: 3, max: 200 },
  asWelded: { min: 0, max: 50 },
  beltRecords: { min: 0, max: 100 },
  beltEntries: { min: 0, max: 1_000 },
  measuredAnchors: { min: 0, max: 200 },
  readings: { min: 0, max: 20 },
  tapes: { min: 0, max: 8 },
  reviews: { min: 0, max: 2_000 },
  answerEntries: { min: 2, max: 201 },
  reviewedVariants: { min: 1, max: 4 },
  reviewedParts: { min: 0, max: 500 },
  toldBroken: { min: 1, max: 100 },
} as const

/** Longest texts, in characters; our judgement. */
export const TEXT_LENGTHS = {
  id: 60,
  partId: 200,
  name: 200,
  change: 400,
  comment: 2_000,
  notes: 10_000,
} as const

/** `value` moved to the nearest end of the limits when it lies outside them. */
export const limited = (value: number, limits: NumberLimits): number =>
  Math.min(limits.max, Math.max(limits.min, value))
