import type { Elevation } from '../../geometry/plane'
import type { CalibrationProblem } from '../../measure/photo/calibrationProblem'
import { parallaxMm } from '../../measure/photo/parallax'
import type { LengthCalibration, MarkId, Photo } from '../../measure/photo/photo'
import type { TraceError } from '../../measure/photo/traceError'
import { type LengthUnit, lengthWithUnit } from '../../units/length'

const LINE_ENDS: Readonly<
  Record<Elevation, Readonly<Record<LengthCalibration['runs'], readonly [string, string]>>>
> = {
  side: {
    level: ['front end of the level line', 'rear end of the level line'],
    plumb: ['lower end of the plumb line', 'upper end of the plumb line'],
  },
  top: {
    level: ['front end of the line along the car', 'rear end of the line along the car'],
    plumb: ['left end of the line across the car', 'right end of the line across the car'],
  },
}

const CORNERS: Readonly<
  Record<Elevation, Readonly<Record<'frontLow' | 'rearLow' | 'rearHigh' | 'frontHigh', string>>>
> = {
  side: {
    frontLow: 'lower front corner',
    rearLow: 'lower rear corner',
    rearHigh: 'upper rear corner',
    frontHigh: 'upper front corner',
  },
  top: {
    frontLow: 'left front corner',
    rearLow: 'left rear corner',
    rearHigh: 'right rear corner',
    frontHigh: 'right front corner',
  },
}

/** What a cross of a photo is to be put on, without an article. Left and right are the occupant's. */
export const markWords = (
  { elevation, calibration }: Pick<Photo, 'elevation' | 'calibration'>,
  id: MarkId,
): string => {
  const [from, to] = LINE_ENDS[elevation][calibration.kind === 'known-length' ? calibration.runs : 'level']
  switch (id) {
    case 'lengthFrom':
      return 'first end of the known length'
    case 'lengthTo':
      return 'second end of the known length'
    case 'levelFrom':
      return from
    case 'levelTo':
      return to
    case 'known':
      return 'known point'
    case 'checkFrom':
      return 'first end of the check length'
    case 'checkTo':
      return 'second end of the check length'
    case 'frontLow':
    case 'rearLow':
    case 'rearHigh':
    case 'frontHigh':
      return CORNERS[elevation][id]
  }
}

const NUMBER_WORDS = {
  length: 'how long the known length is',
  width: 'how long the rectangle is from front to rear',
  height: 'how far it is between its other two sides',
  place: 'where the known point is, from the datum',
} as const

const wholePx = (px: number): string => `${Math.round(px)} px`

/** Why a photo has no scale and how to mend it, in one or two sentences. */
export const calibrationProblemText = (
  problem: CalibrationProblem,
  photo: Pick<Photo, 'elevation' | 'calibration'>,
  unit: LengthUnit,
): string => {
  const name = (id: MarkId): string => `the ${markWords(photo, id)}`
  switch (problem.kind) {
    case 'mark-missing':
      return `Still to be put on the picture: ${problem.marks.map(name).join(', ')}.`
    case 'number-missing':
      return `Still to be typed: ${NUMBER_WORDS[problem.what]}.`
    case 'points-too-near': {
      const [from, to] = problem.marks.map(name)
      return `${sentence(from ?? '')} and ${to ?? ''} are only ${wholePx(problem.apartPx)} apart; below ${wholePx(problem.leastPx)} a slip of one pixel is too much. Use something longer, or a picture taken from nearer.`
    }
    case 'in-line':
      return `${problem.marks.map(name).join(', ')} lie almost in one line (${wholePx(problem.offPx)} off it, at least ${wholePx(problem.leastPx)} are needed). Put each cross on its own corner.`
    case 'corners-crossed':
      return 'The four crosses do not go round a rectangle: two of them are swapped, or one lies inside the others. Put each on the corner it is named after.'
    case 'wrong-way-round':
      return problem.mirrored
        ? 'The corners say that the picture was taken from this side, but it is set as taken from the other side. Change that, or swap the front and rear corners.'
        : 'The corners say that the picture was taken from the other side, but it is set as taken from this side. Change that, or swap the front and rear corners.'
    case 'horizon-in-picture':
      return 'The sides of the rectangle meet inside the picture: the camera looked along the plane and not at it. Take a picture more squarely, or check the crosses.'
    case 'scale-out-of-reason':
      return `With this the picture would be ${lengthWithUnit(problem.spanMm, unit)} wide on the car; from ${lengthWithUnit(problem.leastMm, unit)} to ${lengthWithUnit(problem.mostMm, unit)} can be. Check the typed lengths, their unit and the crosses.`
  }
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Lengths under a tenth of a mm, or under a sixteenth of an inch, are not shown finer than that. */
const about = (lengthMm: number, unit: LengthUnit): string =>
  unit === 'mm'
    ? `${lengthMm < 9.95 ? Math.max(0.1, Math.round(lengthMm * 10) / 10) : Math.round(lengthMm)} mm`
    : `${Math.max(0.01, Math.round((lengthMm / 25.4) * 100) / 100)} in`

/** What a slip of one pixel means at a point, in one sentence. */
export const traceErrorText = ({ pixelMm, marksMm }: TraceError, unit: LengthUnit): string =>
  `One pixel of the picture is ${about(pixelMm, unit)} here; if every cross is one pixel off, a point here is about ${about(marksMm, unit)} off.`

/** How the check length came out, in one sentence. */
export const checkLengthText = (
  measuredMm: number,
  typedMm: number | undefined,
  unit: LengthUnit,
): string => {
  const measured = `on the picture it measures ${lengthWithUnit(measuredMm, unit)}`
  if (typedMm === undefined) return sentence(`${measured}. Type what it is on the car.`)
  const offMm = measuredMm - typedMm
  const share = Math.abs(offMm / typedMm) * 100
  const off =
    Math.abs(offMm) < 0.05
      ? 'the same'
      : `${about(Math.abs(offMm), unit)} too ${offMm > 0 ? 'long' : 'short'} (${share < 0.1 ? 'under 0.1' : share.toFixed(1)} %)`
  return `Typed ${lengthWithUnit(typedMm, unit)}; ${measured}: ${off}.`
}

/** What a part nearer or farther than the calibrated plane does, always in words. */
export const PARALLAX_WORDS =
  'Only what lies in the plane that was measured is where the picture shows it. A part nearer to the camera looks too large and too far out from the middle of the view, one farther away too small and too far in. Trace what lies in that plane; measure the rest on the car.'

/** What the lens itself does, which no cross can tell. */
export const LENS_WORDS =
  'Stand far away, square to the car, and use the phone’s main lens: wide lenses bend straight lines, most of all near the edge of the picture.'

/** The parallax of a part, in figures; `nearerMm` + toward the camera. 1 m from the middle of the view stands for the rest: it grows evenly. */
export const parallaxText = (cameraDistanceMm: number, nearerMm: number, unit: LengthUnit): string => {
  const perMetre = parallaxMm({ cameraDistanceMm, nearerMm, fromMiddleMm: 1000 })
  if (!perMetre.ok)
    return `A part ${lengthWithUnit(nearerMm, unit)} nearer would be at the lens or behind it. Check the distance of the camera.`
  const way = nearerMm >= 0 ? 'nearer to the camera' : 'farther from the camera'
  const side = nearerMm >= 0 ? 'too far out' : 'too far in'
  return `A part ${lengthWithUnit(Math.abs(nearerMm), unit)} ${way} that is ${lengthWithUnit(1000, unit)} from the spot straight across from the lens is shown ${about(Math.abs(perMetre.value), unit)} ${side} (distance from that spot × depth ÷ (camera distance ${nearerMm >= 0 ? '−' : '+'} depth)).`
}
