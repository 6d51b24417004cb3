import type { Tube } from '../../geometry/tube'
import type { PathProblem } from '../../straps/path'
import { strapFamily, type StrapFamily } from '../../straps/strap'
import { type LengthUnit, lengthWithUnit } from '../../units/length'
import { strapName, tubeName } from './names'
import { capitalised } from './words'

/** What a sentence about a problem needs of the layout: its unit of length, and its tubes by their names. */
interface Spoken {
  readonly units: { readonly length: LengthUnit }
  readonly tubes: readonly Pick<Tube, 'id' | 'name'>[]
}

/** Why a strap has no path, or none that is worth a number, as a clause that follows "because". */
export const problemClause = (problem: PathProblem, { units, tubes }: Spoken): string => {
  const unit = units.length
  const strap = strapName(problem.strap)
  switch (problem.kind) {
    case 'anchor-missing':
      return `the ${strap} has no anchor`
    case 'anchor-inside-body':
      return `the anchor of the ${strap} lies ${lengthWithUnit(problem.insideMm, unit)} inside the body it should hold`
    case 'anchor-ahead-of-shoulder':
      return `the anchor of the ${strap} lies ${lengthWithUnit(problem.aheadMm, unit)} ahead of the shoulder`
    case 'lap-anchor-not-behind':
      return `the anchor of the ${strap} lies ${lengthWithUnit(problem.aheadMm, unit)} too far forward to pull the hip back and down`
    case 'buckle-unknown':
      return `the ${strap} cannot be led to a buckle while no lap strap that it meets there has a path`
    case 'slot-blocked':
      return `the edge that the ${strap} would bear on lies ${lengthWithUnit(problem.insideMm, unit)} inside ${problem.by === 'body' ? 'the body' : 'the tube it wraps'}`
    case 'clear-of-shoulder':
      return `the ${strap}, pulled straight, would pass ${lengthWithUnit(problem.clearMm, unit)} clear of the shoulder`
    case 'sub-anchor-not-below':
      return `the anchor of the ${strap}, or the slot edge it bears on, is ${lengthWithUnit(problem.aboveMm, unit)} too high: it has to be below the groin to pull down`
    case 'lap-anchor-across':
      return `the anchor of the ${strap} lies ${lengthWithUnit(problem.acrossMm, unit)} beyond the middle of the seat, on the other side`
    case 'slot-not-reached':
      return problem.isSlotOnWrongSide
        ? `the slot of the ${strap} lies ${strapFamily(problem.strap) === 'shoulder' ? 'ahead of' : 'on the wrong side of'} the body, so that the strap would never pass it on its way to the anchor`
        : `the ${strap} would never pass its slot: its anchor lies ${shortWords(problem.shortMm, unit)}`
    case 'flesh-not-measured':
      return `how low the ${strap} lies on somebody of a body mass index of ${problem.bodyMassIndex.toFixed(0)} is not known: the flesh over the hip bones was not measured, and heavy people put the strap high on the belly`
    case 'no-slot':
      return `the seat has no slot for the ${strap}, which would pass through the shell if it were pulled straight`
    case 'through-tube':
      return `the ${strap}, pulled taut, would pass ${lengthWithUnit(problem.insideMm, unit)} deep through ${tubeName(problem.tubeId, { tubes })}`
    case 'sub-anchor-not-behind':
      return `the ${strap}, which is worn under the thighs, would leave the body ${lengthWithUnit(problem.aheadMm, unit)} ahead of its lowest point instead of running rearward`
    case 'junction-apart':
      return `the ${strap} is joined with the other one into one tail, but their anchors lie ${lengthWithUnit(problem.apartMm, unit)} apart`
    case 'tail-too-long':
      return `the ${strap} is joined with the other one into one tail, whose end finds no place where the three pulls are in balance; one ${lengthWithUnit(problem.overMm, unit)} shorter does`
  }
}

/** Below this the anchor lies on the slot itself, mm: less than is shown. */
const ON_SLOT_MM = 0.05

const shortWords = (shortMm: number, unit: LengthUnit): string =>
  shortMm < ON_SLOT_MM
    ? 'in the slot itself'
    : `${lengthWithUnit(shortMm, unit)} short of it, on the body’s side`

const SLOT_ADVICE: Readonly<Record<StrapFamily, string>> = {
  shoulder:
    'Move the anchor further behind the slot, correct the place of the slot, or take the strap off it.',
  lap: 'Move the anchor outward past the slot, correct the place of the slot, or take the strap off it.',
  sub: 'Move the anchor out past the slot, correct the place of the slot, or take the strap off it.',
}

const problemAdvice = (problem: PathProblem): string => {
  switch (problem.kind) {
    case 'anchor-missing':
      return 'Place one.'
    case 'anchor-inside-body':
      return 'Move it outside the body.'
    case 'anchor-ahead-of-shoulder':
      return 'Move it rearward.'
    case 'lap-anchor-not-behind':
      return 'Move it rearward or down.'
    case 'buckle-unknown':
      return 'Mend the lap straps first.'
    case 'slot-blocked':
      return 'Check the slot, the rim and the occupant’s measures.'
    case 'clear-of-shoulder':
      return 'Move the anchor down or the slot or rim lower.'
    case 'sub-anchor-not-below':
      return 'Move it down, below the seat.'
    case 'lap-anchor-across':
      return 'Move it to its own side, or exchange it with the other one.'
    case 'slot-not-reached':
      return problem.isSlotOnWrongSide
        ? 'Correct the place of the slot under Seat.'
        : SLOT_ADVICE[strapFamily(problem.strap)]
    case 'flesh-not-measured':
      return 'Measure it on the person in the seat and type it under People.'
    case 'no-slot':
      return 'Add a slot for it, or move the anchor until the strap clears the shell.'
    case 'through-tube':
      return 'Move the anchor, the slot or the tube until the strap clears it.'
    case 'sub-anchor-not-behind':
      return 'Move its anchor rearward, or choose thigh straps that run through the seat.'
    case 'junction-apart':
      return 'Put both anchors at one point, or say under Belt that the straps are separate.'
    case 'tail-too-long':
      return 'Shorten the tail, or move the anchor rearward.'
  }
}

/** Why a strap has no path, or none that is worth a number, and what to do, in two short sentences. */
export const problemText = (problem: PathProblem, layout: Spoken): string =>
  `${capitalised(problemClause(problem, layout))}. ${problemAdvice(problem)}`
