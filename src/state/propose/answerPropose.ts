import { proposedPositions } from '../../domain/layout/propose/propose'
import type { ProposeAnswer, ProposeQuestion } from './proposeMessages'

/** Looks for positions and says how far it has got; the last answer is `done` or `refused`. */
export const answerPropose = (
  { layout, wish }: ProposeQuestion,
  answer: (answer: ProposeAnswer) => void,
): void => {
  const found = proposedPositions(layout, wish, (done, total) => answer({ kind: 'progress', done, total }))
  answer(found.ok ? { kind: 'done', result: found.value } : { kind: 'refused', problem: found.error })
}
