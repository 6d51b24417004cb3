import { err, ok, type Result } from '../result'
import type { Readings } from './measurement'
import type { MeasureProblem, ReadingOf } from './measureProblem'

/** Readings of one thing beside each other. */
export interface Scatter {
  readonly of: ReadingOf
  /** Unit of `mean`, `spread` and `offBy`. */
  readonly unit: 'mm' | 'deg'
  /** How many readings, at least 1. */
  readonly count: number
  /** Arithmetic mean of all readings; this is what counts. */
  readonly mean: number
  /** Largest less smallest, ≥ 0; 0 for a single reading. */
  readonly spread: number
  /** The spread is more than `FAR_APART`: read again. */
  readonly isWide: boolean
  /** The one reading that is far from its fellows while they agree; null when there is none or no telling which. It still counts. */
  readonly stray: { readonly index: number; readonly value: number; readonly offBy: number } | null
}

/**
 * Readings of one thing further apart than this are worth another look: several times what a tape or an angle finder is read
 * to. Our judgement.
 */
export const FAR_APART = { mm: 5, deg: 2 } as const

/** A stray reading is this many times further off than its fellows are apart. Our judgement. */
const STRAY_TIMES = 3

/** What a reading may be; both ends belong to it. */
export interface ReadingRange {
  readonly min: number
  readonly max: number
  /** The reading must be more than 0 as well. */
  readonly isLength: boolean
}

/** Mean and scatter of readings, after every one of them was found to be a number in its range. */
export const scatterOf = (
  of: ReadingOf,
  unit: Scatter['unit'],
  readings: Readings,
  range: ReadingRange,
): Result<Scatter, MeasureProblem> => {
  if (readings.length === 0) return err({ kind: 'no-readings', of })
  for (const [index, value] of readings.entries()) {
    if (!Number.isFinite(value)) return err({ kind: 'not-finite', of, index })
    if (range.isLength && value <= 0) return err({ kind: 'not-above-zero', of, index, value })
    const { min, max } = range
    if (value < min || value > max) return err({ kind: 'out-of-range', of, index, value, min, max })
  }
  const mean = readings.reduce((sum, value) => sum + value, 0) / readings.length
  const spread = Math.max(...readings) - Math.min(...readings)
  const isWide = spread > FAR_APART[unit]
  return ok({ of, unit, count: readings.length, mean, spread, isWide, stray: strayReading(readings, unit) })
}

/**
 * The reading furthest from the mean of the others, if it is further off than `FAR_APART` and than three times what the others
 * are apart. Needs three readings: of two nobody can say which is wrong. Our judgement; the usual tests for stray values
 * (Dixon, Grubbs) say nothing useful of so few readings that are rounded to the tape's marks.
 */
const strayReading = (readings: Readings, unit: Scatter['unit']): Scatter['stray'] => {
  if (readings.length < 3) return null
  let furthest: { index: number; value: number; offBy: number; apart: number } | null = null
  for (const [index, value] of readings.entries()) {
    const others = readings.filter((_, other) => other !== index)
    const offBy = value - others.reduce((sum, other) => sum + other, 0) / others.length
    const apart = Math.max(...others) - Math.min(...others)
    if (furthest === null || Math.abs(offBy) > Math.abs(furthest.offBy))
      furthest = { index, value, offBy, apart }
  }
  if (furthest === null) return null
  const { index, value, offBy, apart } = furthest
  const isStray = Math.abs(offBy) > Math.max(FAR_APART[unit], STRAY_TIMES * apart)
  return isStray ? { index, value, offBy } : null
}
