import { proposedPositions } from '../../domain/layout/propose/propose'
import type { ProposeAnswer, ProposeQuestion } from './proposeMessages'

/** Looks for positions and says how far it has got. */
export const answerPropose = (
  { layout, wish }: ProposeQuestion,
  report: (done: number, total: number) => void,
): ProposeAnswer => proposedPositions(layout, wish, report)
