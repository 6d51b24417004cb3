import { pointDifference } from '../../geometry/point'
import { measuredPoint } from '../../measure/measuredPoint'
import type { Measurement, Readings } from '../../measure/measurement'
import type { Scatter } from '../../measure/scatter'
import { MM_PER_INCH } from '../../units/length'

/** How far a measured point may really be from where its readings put it, along each axis, mm ≥ 0. */
export interface UncertaintyMm {
  readonly x: number
  readonly y: number
  readonly z: number
}

/** Marks on a tape, mm: whole millimetres, or sixteenths of an inch. Common practice, no source. */
const MARKS_MM = { mm: 1, inch: MM_PER_INCH / 16 } as const

/** Rounding of what was typed and kept. */
const ROUNDING_MM = 1e-6

const isMultiple = (value: number, step: number): boolean =>
  Math.abs(value - step * Math.round(value / step)) < ROUNDING_MM

/**
 * Whether lengths were read from a tape with inches: all of them lie on sixteenths, and not all on tenths of a millimetre too, as those
 * of a metric tape would. Told by the readings alone, so that no verdict changes when lengths are shown in another unit.
 */
const isInchTape = (measurement: Measurement): boolean => {
  const lengths = lengthsOf(measurement)
  return lengths.every((mm) => isMultiple(mm, MARKS_MM.inch)) && !lengths.every((mm) => isMultiple(mm, 0.1))
}

const lengthsOf = (measurement: Measurement): Readings => {
  switch (measurement.kind) {
    case 'coordinates':
      return [...measurement.xMm, ...measurement.yMm, ...measurement.zMm]
    case 'tapes':
      return [
        ...measurement.tapes.flatMap(({ lengthsMm }) => lengthsMm),
        ...(measurement.coordinate?.readingsMm ?? []),
      ]
    case 'angle':
      return [
        ...measurement.lengthMm,
        ...(measurement.aside.kind === 'y' ? measurement.aside.readingsMm : []),
      ]
  }
}

/** A tape is read to its nearest mark, so up to half a division off, mm. */
export const tapeReadMm = (measurement: Measurement): number =>
  MARKS_MM[isInchTape(measurement) ? 'inch' : 'mm'] / 2

/** What an angle finder is read to, degrees, either way. Our judgement; makers of good ones claim less, worn ones have more. */
const ANGLE_READ_DEG = 0.5

/** What readings of an angle may be off by: half their spread, at least what the angle finder is read to. */
export const angleReadOff = ({ spread }: Scatter): number => Math.max(spread / 2, ANGLE_READ_DEG)

/**
 * How far off a measured point may be along each axis: every list of readings is moved up and down by what it may be off, and what
 * that moves the point by is added up, so that errors which all help each other are counted. Lengths may be off by as much as tapes
 * disagree among each other as well. Null when the readings give no point, or would give none any more within that error: then nothing
 * is certain. Derived here; errors that add up rather than errors that partly cancel, because a limit is kept or not.
 */
export const uncertaintyMm = (measurement: Measurement): UncertaintyMm | null => {
  const measured = measuredPoint(measurement)
  if (!measured.ok) return null
  const { point, scatters, residualMm } = measured.value
  const readMm = tapeReadMm(measurement)
  let sum: UncertaintyMm = { x: 0, y: 0, z: 0 }
  for (const [index, scatter] of scatters.entries()) {
    const off =
      scatter.unit === 'mm' ? Math.max(scatter.spread / 2, readMm, residualMm ?? 0) : angleReadOff(scatter)
    let most: UncertaintyMm = { x: 0, y: 0, z: 0 }
    for (const by of [off, -off]) {
      const moved = measuredPoint(withReadingsMoved(measurement, index, by))
      if (!moved.ok) return null
      const { x, y, z } = pointDifference(moved.value.point, point)
      most = {
        x: Math.max(most.x, Math.abs(x)),
        y: Math.max(most.y, Math.abs(y)),
        z: Math.max(most.z, Math.abs(z)),
      }
    }
    sum = { x: sum.x + most.x, y: sum.y + most.y, z: sum.z + most.z }
  }
  return sum
}

/** The measurement with one of its lists of readings moved, counted as its scatters are. */
const withReadingsMoved = (measurement: Measurement, index: number, by: number): Measurement => {
  const moved = (readings: Readings, at: number): Readings =>
    at === index ? readings.map((value) => value + by) : readings
  switch (measurement.kind) {
    case 'coordinates': {
      const { xMm, yMm, zMm } = measurement
      return { ...measurement, xMm: moved(xMm, 0), yMm: moved(yMm, 1), zMm: moved(zMm, 2) }
    }
    case 'tapes': {
      const { coordinate } = measurement
      const tapes = measurement.tapes.map((tape, at) => ({ ...tape, lengthsMm: moved(tape.lengthsMm, at) }))
      const at = tapes.length
      return {
        ...measurement,
        tapes,
        coordinate:
          coordinate === null ? null : { ...coordinate, readingsMm: moved(coordinate.readingsMm, at) },
      }
    }
    case 'angle': {
      const { aside } = measurement
      return {
        ...measurement,
        stringDeg: moved(measurement.stringDeg, 0),
        lengthMm: moved(measurement.lengthMm, 1),
        aside:
          aside.kind === 'y'
            ? { ...aside, readingsMm: moved(aside.readingsMm, 2) }
            : { ...aside, readingsDeg: moved(aside.readingsDeg, 2) },
      }
    }
  }
}
