import type { Axis, MeasureProblem, NamedTape, ReadingOf } from '../../measure/measureProblem'
import { DISAGREE_MM } from '../../measure/agreement'
import type { MeasuredPoint } from '../../measure/measuredPoint'
import { FAR_APART, type Scatter } from '../../measure/scatter'
import { BAD_MM_PER_DEG, BAD_MM_PER_MM, type Sensitivity } from '../../measure/sensitivity'
import { angleText } from '../../units/angle'
import type { LengthUnit } from '../../units/length'
import { wayText } from './amounts'
import { judgedLength } from './weldedWords'
import { capitalised } from './words'

/** A list of readings by what was read: "the tape from “seat bolt”", "z", "the angle of the string". */
export const readingOfText = (of: ReadingOf): string => {
  switch (of.kind) {
    case 'coordinate':
      return of.axis
    case 'tape':
      return `the tape from ${knownName(of)}`
    case 'string-angle':
      return 'the angle of the string'
    case 'string-length':
      return 'the length of the string'
    case 'aside':
      return of.by === 'y' ? 'how far the string goes aside' : 'the plan angle of the string'
    case 'tab-angle':
      return of.by === 'plan' ? 'the turn of the tab in plan' : 'the lean of the tab'
  }
}

const knownName = ({ index, name }: NamedTape): string =>
  name.trim() === '' ? `known point ${index + 1}` : `“${name.trim()}”`

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

/** What of a value of these readings is shown in: angles or lengths. */
const valueOf = (of: ReadingOf, value: number, unit: LengthUnit): string => {
  const isAngle =
    of.kind === 'string-angle' || of.kind === 'tab-angle' || (of.kind === 'aside' && of.by === 'plan')
  return isAngle ? angleText(value) : judgedLength(value, unit)
}

const AXIS_LINES: Readonly<Record<Axis, string>> = {
  x: 'fore and aft',
  y: 'across the car',
  z: 'plumb over each other',
}

/** Why a measurement gives no position and how to mend it, in plain sentences. Differences are rounded up, so that none shows as 0. */
export const measureProblemText = (problem: MeasureProblem, unit: LengthUnit): string => {
  switch (problem.kind) {
    case 'no-readings':
    case 'not-finite':
    case 'out-of-range':
    case 'not-above-zero':
      return readingProblemText(problem, unit)
    case 'known-point-unusable':
    case 'too-few-tapes':
    case 'too-many-tapes':
    case 'same-point-twice':
    case 'points-in-line':
    case 'points-along-axis':
      return knownPointText(problem, unit)
    case 'tapes-too-short':
    case 'tape-too-long':
    case 'third-tape-misses':
    case 'coordinate-out-of-reach':
      return missText(problem, unit)
    case 'side-not-chosen':
      return `Two places fit these tapes, one on each side of the plane of ${listed(problem.pair.through.map(knownName))}. Choose the side the point lies on, or pull one more tape from a point out of that plane.`
    case 'aside-too-long': {
      const { asideMm, levelRunMm } = problem
      const overMm = Math.abs(asideMm) - levelRunMm
      return `The string goes ${judgedLength(Math.abs(asideMm), unit)} aside, but at its angle its level run is only ${judgedLength(levelRunMm, unit)} long: ${wayText(overMm, unit)} too short. Read the angle, the length and the distance aside again.`
    }
  }
}

type Problem<Kind extends MeasureProblem['kind']> = Extract<MeasureProblem, { readonly kind: Kind }>

const readingProblemText = (
  problem: Problem<'no-readings' | 'not-finite' | 'out-of-range' | 'not-above-zero'>,
  unit: LengthUnit,
): string => {
  const what = readingOfText(problem.of)
  if (problem.kind === 'no-readings') return `There is no reading of ${what} yet. Type at least one.`
  const reading = `Reading ${problem.index + 1} of ${what}`
  switch (problem.kind) {
    case 'not-finite':
      return `${reading} is not a number. Type it again.`
    case 'not-above-zero':
      return `${reading} is ${valueOf(problem.of, problem.value, unit)}, but a length is more than 0. Read it again.`
    case 'out-of-range': {
      const [value, min, max] = [problem.value, problem.min, problem.max].map((each) =>
        valueOf(problem.of, each, unit),
      )
      return `${reading} is ${value}, outside ${min} to ${max}. Check its digits and its unit.`
    }
  }
}

const knownPointText = (
  problem: Problem<
    | 'known-point-unusable'
    | 'too-few-tapes'
    | 'too-many-tapes'
    | 'same-point-twice'
    | 'points-in-line'
    | 'points-along-axis'
  >,
  unit: LengthUnit,
): string => {
  switch (problem.kind) {
    case 'known-point-unusable':
      return `The position of the known point “${problem.name}” cannot be used: a coordinate is no number or further away than anything on a car. Type it again.`
    case 'too-few-tapes': {
      const there = problem.tapes === 1 ? '1 tape' : `${problem.tapes} tapes`
      return `${problem.hasCoordinate ? `${there} and a coordinate do` : `${there} ${problem.tapes === 1 ? 'does' : 'do'}`} not tell a position. Pull three tapes from points that are not in one line, or two and measure one coordinate beside them.`
    }
    case 'too-many-tapes':
      return `${problem.tapes} tapes are more than can be worked out together. Keep the best ${problem.most}.`
    case 'same-point-twice':
      return `${capitalised(knownName(problem.first))} and ${knownName(problem.second)} are one and the same point (${judgedLength(problem.apartMm, unit)} apart). Put both readings into one tape, and pull another tape from elsewhere.`
    case 'points-in-line':
      return `${listed(problem.names.map(knownName))} lie in one line (${judgedLength(problem.offMm, unit)} off it at most), so the point could be anywhere on a ring around that line. Pull a tape from a point well off the line, or measure a coordinate square to it.`
    case 'points-along-axis':
      return `${listed(problem.names.map(knownName))} lie ${AXIS_LINES[problem.axis]}, so ${problem.axis} tells nothing that the tapes do not. Measure another coordinate, or pull a tape from a point off that line.`
  }
}

/** A miss no larger than tapes are read to is no slip: reading again gives the same. */
const readAgain = (missMm: number, what: string): string =>
  missMm <= DISAGREE_MM
    ? 'No more than readings may be off by: the point lies so near the plane of the known points, or the line of two of them, that these readings alone do not tell it. Pull one more tape from a point well out of it.'
    : `Read ${what} again, or check the positions of the points.`

const missText = (
  problem: Problem<'tapes-too-short' | 'tape-too-long' | 'third-tape-misses' | 'coordinate-out-of-reach'>,
  unit: LengthUnit,
): string => {
  switch (problem.kind) {
    case 'tapes-too-short': {
      const { first, second, apartMm, shortMm } = problem
      return `The tapes from ${knownName(first)} and ${knownName(second)} do not meet: the points are ${judgedLength(apartMm, unit)} apart, and together the tapes are ${wayText(shortMm, unit)} too short. ${readAgain(shortMm, 'both')}`
    }
    case 'tape-too-long': {
      const { longer, shorter, apartMm, overMm } = problem
      return `The tape from ${knownName(longer)} is ${wayText(overMm, unit)} too long to end where the one from ${knownName(shorter)} ends: the points are only ${judgedLength(apartMm, unit)} apart. ${readAgain(overMm, 'both')}`
    }
    case 'third-tape-misses': {
      const { first, second, third, lengthMm, nearestMm } = problem
      const way = nearestMm > lengthMm ? 'short' : 'long'
      return `The tape from ${knownName(third)} does not end where those from ${knownName(first)} and ${knownName(second)} meet: it is at least ${wayText(Math.abs(nearestMm - lengthMm), unit)} too ${way}. ${readAgain(Math.abs(nearestMm - lengthMm), 'the three')}`
    }
    case 'coordinate-out-of-reach': {
      const { first, second, axis, coordinateMm, nearestMm } = problem
      return `No place where the tapes from ${knownName(first)} and ${knownName(second)} meet has ${axis} ${judgedLength(coordinateMm, unit)}: the nearest is ${wayText(Math.abs(nearestMm - coordinateMm), unit)} away, at ${judgedLength(nearestMm, unit)}. ${readAgain(Math.abs(nearestMm - coordinateMm), `the tapes and ${axis}`)}`
    }
  }
}

const inUnit = (scatter: Pick<Scatter, 'unit'>, value: number, unit: LengthUnit): string =>
  scatter.unit === 'deg' ? angleText(value) : judgedLength(value, unit)

/** Readings beside each other: "3 readings, mean 612.3 mm, 1.5 mm apart"; a single one as it is. */
export const scatterText = (scatter: Scatter, unit: LengthUnit): string => {
  const mean = inUnit(scatter, scatter.mean, unit)
  return scatter.count === 1
    ? `1 reading, ${mean}`
    : `${scatter.count} readings, mean ${mean}, ${inUnit(scatter, scatter.spread, unit)} apart`
}

/** What is odd about readings of one thing, and what to do; null where they agree. */
export const scatterWarning = (scatter: Scatter, unit: LengthUnit): string | null => {
  const what = readingOfText(scatter.of)
  const { stray } = scatter
  if (stray !== null) {
    const way = stray.offBy > 0 ? 'more' : 'less'
    return `Reading ${stray.index + 1} of ${what}, ${inUnit(scatter, stray.value, unit)}, is ${inUnit(scatter, Math.abs(stray.offBy), unit)} ${way} than the others, which agree. It still counts in the mean: read again, and take it out if it was a slip.`
  }
  if (!scatter.isWide) return null
  const limit = inUnit(scatter, FAR_APART[scatter.unit], unit)
  return `The readings of ${what} are ${inUnit(scatter, scatter.spread, unit)} apart, more than ${limit}. Read again.`
}

/** That a measurement is bad however carefully it is read, and what to do; null where it is good. */
export const sensitivityWarning = (
  { mmPerMm, mmPerDeg }: Sensitivity,
  unit: LengthUnit,
  kind: 'coordinates' | 'tapes' | 'angle',
): string | null => {
  const slip = `${judgedLength(1, unit)} of error in what was read`
  if (mmPerMm >= BAD_MM_PER_MM) {
    const mend =
      kind === 'tapes'
        ? 'The tapes pull nearly along one plane. Pull one from a point that lies square to the others.'
        : 'Measure it from another point, or by tapes.'
    return `This is a bad way to measure this point: ${slip} moves it by up to ${wayText(mmPerMm, unit)}. ${mend}`
  }
  if (mmPerDeg === null || mmPerDeg < BAD_MM_PER_DEG) return null
  return `1° of error in the angles moves this point by up to ${wayText(mmPerDeg, unit)}. Start from a nearer point, or use tapes.`
}

/**
 * How well more tapes than are needed agree, what could hide in that, and what to do where they do not; null where there are no
 * more than are needed.
 */
export const residualText = (
  { residualMm, oddOneOut, hiddenMm }: Pick<MeasuredPoint, 'residualMm' | 'oddOneOut' | 'hiddenMm'>,
  unit: LengthUnit,
): string | null => {
  if (residualMm === null) return null
  const amount = wayText(residualMm, unit)
  if (residualMm <= DISAGREE_MM)
    return `What was measured agrees within ${amount}.${hiddenText(hiddenMm, unit)}`
  const mend =
    oddOneOut === null
      ? 'One of the readings or known points is wrong, and which one cannot be told: read all of them again, or pull more tapes.'
      : `Without ${readingOfText(oddOneOut)} all others agree: read that one again first, and check its known point.`
  return `What was measured disagrees by up to ${amount}. ${mend}`
}

const hiddenText = (hiddenMm: number | null, unit: LengthUnit): string => {
  if (hiddenMm === null)
    return ' But one of the readings is checked by none of the others: pull one more tape.'
  if (hiddenMm <= MUCH_HIDDEN_MM) return ''
  return ` One wrong reading could still hide in that and move the point by up to ${wayText(hiddenMm, unit)}: read each twice, or pull more tapes.`
}

/** What a wrong reading may move a point unseen before it is worth a word. Our judgement. */
const MUCH_HIDDEN_MM = 5
