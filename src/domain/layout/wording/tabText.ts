import type { Clock } from '../../shop/tab/clock'
import type { InsertProblem } from '../../shop/tab/insertCope'
import type { SeatProblem } from '../../shop/tab/tabOnTube'
import type { PlateProblem } from '../../shop/tab/tabPlates'
import type { FromMark, TubeMark } from '../../shop/tab/tubeMark'
import type { Way } from '../../shop/tab/way'
import { angleText } from '../../units/angle'
import { lengthWithUnit } from '../../units/length'
import type { Layout } from '../document/layout'
import { tubeName } from './names'

/** A way after "toward": "the front left", "the top". */
export const towardText = (way: Way): string =>
  way === 'up' ? 'the top' : way === 'down' ? 'the bottom' : `the ${way}`

/** Less than this rounds to 0° on paper. */
const NO_ANGLE_DEG = 0.05

/** A zero line this near to plumb is plumb for an angle finder: off by 5° it shifts an angle by less than 0.3°. Our judgement. */
const PLUMB_DEG = 5

/**
 * Where something sits round its tube: "38° from plumb toward the front"; on a sloping tube "38° round the tube from its top line toward
 * the front"; "at the very top of the tube".
 */
export const clockText = ({ from, clockDeg, zeroOffDeg, toward }: Clock): string => {
  const sizeDeg = Math.abs(clockDeg)
  const isTop = from === 'top'
  if (sizeDeg < NO_ANGLE_DEG) return isTop ? 'at the very top of the tube' : 'at the very front of the tube'
  if (sizeDeg > 180 - NO_ANGLE_DEG)
    return isTop ? 'at the very bottom of the tube' : 'at the very rear of the tube'
  const zero = isTop ? 'plumb' : 'straight forward'
  const start = zeroOffDeg <= PLUMB_DEG ? `from ${zero}` : `round the tube from its ${from} line`
  return `${angleText(sizeDeg)} ${start} toward ${towardText(toward)}`
}

/** A length in the shop's unit; inches never without millimetres, for a sixteenth is coarse beside a weld. */
const toldLength = (lengthMm: number, layout: Layout): string => {
  const unit = layout.units.length
  const told = lengthWithUnit(lengthMm, unit)
  return unit === 'mm' ? told : `${told} (${lengthWithUnit(lengthMm, 'mm')})`
}

/** A mark of a tube as what to hook the tape on: "the crossing with the main hoop", "the bend P2", "the end P1". */
export const markText = ({ kind, otherTubeId, pointNumber }: TubeMark, layout: Layout): string =>
  kind === 'crossing' && otherTubeId !== null
    ? `the crossing with ${tubeName(otherTubeId, layout)}`
    : `the ${kind} P${pointNumber ?? 1}`

/** The distance along a tube from its nearest mark: "70 mm left of the crossing with main hoop (centre lines)". */
export const fromMarkText = ({ mark, distanceMm, way }: FromMark, layout: Layout): string => {
  const what = markText(mark, layout)
  if (way === null) return `on ${what} (centre lines)`
  const side = way === 'up' ? 'above' : way === 'down' ? 'below' : `to the ${way} of`
  return `${toldLength(distanceMm, layout)} ${side} ${what} (centre lines)`
}

/** Why an anchor does not sit on its tube as drawn and how to mend it, in two sentences. */
const seatProblemText = (problem: SeatProblem, layout: Layout): string => {
  const tube = tubeName(problem.tubeId, layout)
  switch (problem.kind) {
    case 'inside-tube':
      return `Its centre lies ${toldLength(problem.depthMm, layout)} below the surface of ${tube}. Move it out of the tube.`
    case 'beyond-end':
      return `It lies ${toldLength(problem.beyondMm, layout)} past the end of ${tube}. Move it back along the tube, or draw the tube longer.`
    case 'on-bend':
      return `It lies on the bend P${problem.pointNumber} of ${tube}, where nothing is straight. Move it along the tube, or fit its foot by hand.`
  }
}

/** Why a tab or an insert gets no template and how to mend it, in two or three sentences. */
export const templateProblemText = (problem: PlateProblem | InsertProblem, layout: Layout): string => {
  const length = (lengthMm: number): string => toldLength(lengthMm, layout)
  switch (problem.kind) {
    case 'inside-tube':
    case 'beyond-end':
    case 'on-bend':
      return seatProblemText(problem, layout)
    case 'hole-at-tube':
      return `Between the edge of its hole and the tube there is ${roomText(problem.roomMm, layout)}; a bead as large as the plate is thick needs ${length(problem.neededMm)}. Move the hole away from the tube.`
    case 'no-rim':
      return 'Its hole reaches the edge of the plate. Make the plate wider, its end longer or the hole smaller.'
    case 'no-foot':
      return 'Its plate is so wide and so near to the tube that no foot is left to weld. Make the plate narrower or move the hole away.'
    case 'steep-foot':
      return 'In its plane the tube runs so steeply past the hole that the plate has no foot below its head. Turn the plane across the tube or along it.'
    case 'plane-misses':
      return `Its plane runs along the tube and passes ${length(problem.besideMm)} beside it. Turn the plane or move the hole.`
    case 'foot-beyond':
      return `In its own plane it would meet the tube ${length(problem.beyondMm)} past a bend or end. Turn the plane or move the hole.`
    case 'insert-beside':
      return problem.gapMm < 0
        ? `It lies along the tube and ${length(-problem.gapMm)} of it in the tube. Fit it by hand, or turn or move it.`
        : `It lies along the tube, ${length(problem.gapMm)} from surface to surface: it is welded along its side and needs no cope. Move it nearer where that is more than a bead.`
    case 'insert-passes':
      return 'Part of it passes beside the tube, so that no cope closes. Move it toward the middle of the tube or make it thinner.'
  }
}

const roomText = (roomMm: number, layout: Layout): string =>
  roomMm <= 0 ? 'no steel at all' : toldLength(roomMm, layout)
