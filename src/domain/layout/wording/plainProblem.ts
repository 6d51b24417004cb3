import type { PathProblem } from '../../straps/path'
import { plainBelt } from './plainNames'

/** Why something could not be checked, one sentence without words of the trade. The numbers are on the workshop's own page. */
export const plainProblem = (problem: PathProblem | null): string => {
  if (problem === null) return 'No number could be worked out for it.'
  const belt = plainBelt(problem.strap)
  switch (problem.kind) {
    case 'anchor-missing':
      return `It is not drawn yet where the ${belt} is fixed.`
    case 'anchor-inside-body':
      return `The ${belt} is drawn as fixed inside the body that it should hold.`
    case 'anchor-ahead-of-shoulder':
      return `The ${belt} is drawn as fixed ahead of the shoulder.`
    case 'lap-anchor-not-behind':
      return `The ${belt} is drawn as fixed too far forward to pull the hips back and down.`
    case 'buckle-unknown':
      return `It is not known where the ${belt} meets the buckle while the lap belt has no way.`
    case 'slot-blocked':
      return `The opening in the seat for the ${belt} is drawn where the body or the bar is.`
    case 'clear-of-shoulder':
      return `The ${belt}, pulled straight, would not touch the shoulder.`
    case 'sub-anchor-not-below':
      return `The ${belt} is drawn as fixed too high to pull down.`
    case 'lap-anchor-across':
      return `The ${belt} is drawn as fixed on the other side of the seat.`
    case 'slot-not-reached':
      return `The ${belt} would never pass the opening in the seat that is drawn for it.`
    case 'flesh-not-measured':
      return `How low the ${belt} lies on this person is not known: heavy people have to be measured for it.`
    case 'no-slot':
      return `The seat has no opening for the ${belt}, which would have to go through the shell.`
    case 'through-tube':
      return `The ${belt}, pulled tight, would have to go through a tube.`
    case 'sub-anchor-not-behind':
      return `The ${belt}, which you sit on, would not run rearward.`
    case 'junction-apart':
      return `The ${belt} is joined with the other one, but the two are drawn as fixed at two places.`
    case 'tail-too-long':
      return `The ${belt} is joined with the other one into a tail that finds no rest.`
  }
}
