import { evaluateLayout } from '../../domain/layout/evaluate/evaluateLayout'
import type { EvaluationAnswer, EvaluationQuestion } from './evaluationMessages'

/** A layout evaluated completely; what goes wrong is an answer too. */
export const answerEvaluation = ({ id, layout }: EvaluationQuestion): EvaluationAnswer => {
  try {
    return { kind: 'done', id, findings: evaluateLayout(layout).places.map(({ findings }) => findings) }
  } catch (error) {
    return { kind: 'failed', id, message: error instanceof Error ? error.message : String(error) }
  }
}
