import type { MeasuredAnchor } from '../../measure/asWeldedRecord'
import type { Measurement, Readings } from '../../measure/measurement'
import { angleText } from '../../units/angle'
import { type LengthUnit, lengthWithUnit } from '../../units/length'
import type { AnchorReading } from '../asWelded/anchorReading'
import type { AnchorDeviation, PositionDeviation } from '../asWelded/deviation'
import { wayText } from './amounts'
import {
  measureProblemText,
  readingOfText,
  residualText,
  scatterText,
  scatterWarning,
  sensitivityWarning,
} from './measureWords'
import { judgedLength } from './weldedWords'
import { capitalised } from './words'

/** Readings one after the other: "1352.5 mm, 1353 mm"; "not read" where there are none. */
const read = (readings: Readings, text: (value: number) => string): string =>
  readings.length === 0 ? 'not read' : readings.map(text).join(', ')

const measurementLines = (measurement: Measurement, unit: LengthUnit): readonly string[] => {
  const lengths = (readings: Readings): string => read(readings, (mm) => lengthWithUnit(mm, unit))
  const angles = (readings: Readings): string => read(readings, angleText)
  switch (measurement.kind) {
    case 'coordinates':
      return [
        `x ${lengths(measurement.xMm)}`,
        `y ${lengths(measurement.yMm)}`,
        `z ${lengths(measurement.zMm)}`,
      ]
    case 'tapes': {
      const { tapes, coordinate } = measurement
      return [
        ...tapes.map(({ from, lengthsMm }) => `Tape from ${from.name}: ${lengths(lengthsMm)}`),
        ...(coordinate === null ? [] : [`${coordinate.axis} ${lengths(coordinate.readingsMm)}`]),
      ]
    }
    case 'angle': {
      const { from, stringDeg, lengthMm, runs, aside } = measurement
      const across =
        aside.kind === 'y'
          ? `to the right ${lengths(aside.readingsMm)}`
          : `seen from above ${angles(aside.readingsDeg)} to the right`
      return [
        `String from ${from.name}, ${runs}: ${angles(stringDeg)} from level, ${lengths(lengthMm)} long, ${across}`,
      ]
    }
  }
}

/** Everything that was read at one anchor, one line for each tool that was laid on; empty where nothing was. */
export const readingLines = (
  { measurement, planDeg, leanDeg }: MeasuredAnchor,
  unit: LengthUnit,
): readonly string[] => [
  ...(measurement === null ? [] : measurementLines(measurement, unit)),
  ...(planDeg === undefined ? [] : [`Tab turned in plan ${read(planDeg, angleText)}`]),
  ...(leanDeg === undefined ? [] : [`Tab leaned ${read(leanDeg, angleText)}`]),
]

/** How many readings, how far they are apart, whether tapes disagree, and what that makes the position sure to; null without a position. */
export const qualityText = (deviation: AnchorDeviation, unit: LengthUnit): string | null => {
  const { reading, position } = deviation
  if (reading.position?.ok !== true || position === null) return null
  const { scatters, residualMm } = reading.position.value
  const count = scatters.reduce((sum, scatter) => sum + scatter.count, 0)
  const spread = (of: 'mm' | 'deg'): number =>
    Math.max(0, ...scatters.flatMap((scatter) => (scatter.unit === of ? [scatter.spread] : [])))
  const parts = [
    `${count} readings`,
    ...(count === scatters.length ? ['each thing read once'] : []),
    ...(spread('mm') > 0 ? [`lengths up to ${judgedLength(spread('mm'), unit)} apart`] : []),
    ...(spread('deg') > 0 ? [`angles up to ${angleText(spread('deg'))} apart`] : []),
    ...(residualMm === null ? [] : [`tapes disagree by up to ${judgedLength(residualMm, unit)}`]),
  ]
  return `${parts.join(', ')}; ${sureText(position, unit)}`
}

const sureText = ({ x, y, z }: PositionDeviation, unit: LengthUnit): string => {
  if (x.uncertainty === null || y.uncertainty === null || z.uncertainty === null)
    return 'how sure the position is cannot be told'
  const [inX, inY, inZ] = [x, y, z].map(({ uncertainty }) => judgedLength(uncertainty ?? 0, unit))
  return `by its readings ± ${inX} in x, ± ${inY} in y, ± ${inZ} in z`
}

/** Why the readings of an entry give no position, or its angles no mean, and what to do; null where they do. */
export const problemOf = (reading: AnchorReading, unit: LengthUnit): string | null => {
  const failed = [reading.position, reading.planDeg, reading.leanDeg].find((result) => result?.ok === false)
  return failed?.ok === false ? measureProblemText(failed.error, unit) : null
}

/** Everything to say about how well an anchor was measured, each a sentence; `isWarning`: it should be measured again. */
export const qualityLines = (
  { reading }: AnchorDeviation,
  unit: LengthUnit,
): readonly { readonly text: string; readonly isWarning: boolean }[] => {
  const { position, planDeg, leanDeg, entry } = reading
  if (position?.ok !== true || entry.measurement === null) return []
  const { scatters, sensitivity } = position.value
  const angles = [planDeg, leanDeg].flatMap((angle) => (angle?.ok === true ? [angle.value] : []))
  const all = [...scatters, ...angles]
  const warnings = [
    ...all.map((scatter) => scatterWarning(scatter, unit)),
    sensitivityWarning(sensitivity, unit, entry.measurement.kind),
  ].flatMap((text) => (text === null ? [] : [{ text, isWarning: true }]))
  const repeated = all
    .filter(({ count }) => count > 1)
    .map((scatter) => ({
      text: `${capitalised(readingOfText(scatter.of))}: ${scatterText(scatter, unit)}.`,
      isWarning: false,
    }))
  const residual = residualText(position.value, unit)
  const moves = `1 mm of error in what was read moves the point by up to ${wayText(sensitivity.mmPerMm, unit)}.`
  return [
    ...warnings,
    ...repeated,
    ...(residual === null ? [] : [{ text: residual, isWarning: false }]),
    ...(entry.measurement.kind === 'tapes' ? [{ text: moves, isWarning: false }] : []),
  ]
}
