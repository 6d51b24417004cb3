import type { PathProblem } from '../../straps/path'
import { type LengthUnit, lengthWithUnit } from '../../units/length'
import { strapName } from './names'
import { capitalised } from './words'

/** Why a strap has no path, as a clause that follows "because". */
export const problemClause = (problem: PathProblem, unit: LengthUnit): string => {
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
      return `the ${strap} cannot be led to a buckle while no lap strap has a path`
    case 'slot-blocked':
      return `the edge that the ${strap} would bear on lies ${lengthWithUnit(problem.insideMm, unit)} inside ${problem.by === 'body' ? 'the body' : 'the tube it wraps'}`
    case 'clear-of-shoulder':
      return `the ${strap}, pulled straight, would pass ${lengthWithUnit(problem.clearMm, unit)} clear of the shoulder`
    case 'sub-anchor-not-below':
      return `the anchor of the ${strap}, or the slot edge it bears on, is ${lengthWithUnit(problem.aboveMm, unit)} too high: it has to be below the groin to pull down`
    case 'lap-anchor-across':
      return `the anchor of the ${strap} lies ${lengthWithUnit(problem.acrossMm, unit)} beyond the middle of the seat, on the other side`
    case 'slot-not-reached':
      return `the slot of the ${strap} is not between its anchor and the body: the anchor, or the junction, would have to lie ${lengthWithUnit(problem.shortMm, unit)} further out, and more`
    case 'no-slot':
      return `the seat has no slot for the ${strap}: pulled straight it would pass through the shell`
    case 'through-tube':
      return `the ${strap}, pulled taut, would pass ${lengthWithUnit(problem.insideMm, unit)} deep through the tube “${problem.tubeId}”`
    case 'sub-anchor-not-behind':
      return `the ${strap}, worn under the thighs, would leave the body ${lengthWithUnit(problem.aheadMm, unit)} ahead of its lowest point`
    case 'junction-apart':
      return `the shoulder straps are joined into one tail, but their anchors lie ${lengthWithUnit(problem.apartMm, unit)} apart`
  }
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
      return 'Move it beyond the shell, shorten the tail, or take the strap off this slot.'
    case 'no-slot':
      return 'Add the slot, or move the anchor so that the strap passes the shell.'
    case 'through-tube':
      return 'Move the anchor or the tube.'
    case 'sub-anchor-not-behind':
      return 'Move the anchor rearward.'
    case 'junction-apart':
      return 'Put both on one point, or say that the straps are not joined.'
  }
}

/** Why a strap has no path, and what to do, in two short sentences. */
export const problemText = (problem: PathProblem, unit: LengthUnit = 'mm'): string =>
  `${capitalised(problemClause(problem, unit))}. ${problemAdvice(problem)}`
