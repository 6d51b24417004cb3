import { NO_VALUE, tenthsText } from './numberText'

/**
 * Degrees everywhere; radians exist only inside this file, beside Math's functions.
 * Source of the ratio: SI brochure, 9th ed., table 8 (1° = π/180 rad).
 */
const RADIANS_PER_DEGREE = Math.PI / 180

export const sinDeg = (angleDeg: number): number => Math.sin(angleDeg * RADIANS_PER_DEGREE)
export const cosDeg = (angleDeg: number): number => Math.cos(angleDeg * RADIANS_PER_DEGREE)
export const tanDeg = (angleDeg: number): number => Math.tan(angleDeg * RADIANS_PER_DEGREE)

/** Inverse sine, range [-90°, 90°]; arguments a rounding error outside [-1, 1] count as the end of the range. */
export const asinDeg = (ratio: number): number =>
  Math.asin(Math.min(1, Math.max(-1, ratio))) / RADIANS_PER_DEGREE

/** Inverse cosine, range [0°, 180°]; arguments a rounding error outside [-1, 1] count as the end of the range. */
export const acosDeg = (ratio: number): number =>
  Math.acos(Math.min(1, Math.max(-1, ratio))) / RADIANS_PER_DEGREE

/** Angle of the vector (adjacent, opposite), range (-180°, 180°]; 0° for the zero vector. */
export const atan2Deg = (opposite: number, adjacent: number): number => {
  const angleDeg = Math.atan2(opposite, adjacent) / RADIANS_PER_DEGREE
  return angleDeg === -180 ? 180 : angleDeg
}

/** The same direction in the half-open range (-180°, 180°]. */
export const wrappedDeg = (angleDeg: number): number => {
  const turned = angleDeg - 360 * Math.ceil((angleDeg - 180) / 360)
  return turned === 0 ? 0 : turned
}

/** For people, without the degree sign (for a field that shows its unit beside it): `12.5`, at 0.1°, a true minus sign. */
export const degreesText = (angleDeg: number): string =>
  Number.isFinite(angleDeg) ? tenthsText(angleDeg) : NO_VALUE

/** For people: `12.5°`, at 0.1°, a trailing .0 dropped, a true minus sign. A dash when there is no angle to show. */
export const angleText = (angleDeg: number): string =>
  Number.isFinite(angleDeg) ? `${tenthsText(angleDeg)}°` : NO_VALUE
