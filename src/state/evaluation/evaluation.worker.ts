import { evaluationAnswers } from './answerEvaluation'
import type { EvaluationQuestion } from './evaluationMessages'

const answer = evaluationAnswers()

self.addEventListener('message', (event: MessageEvent<EvaluationQuestion>) =>
  self.postMessage(answer(event.data)),
)
