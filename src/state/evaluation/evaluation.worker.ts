import { answerEvaluation } from './answerEvaluation'
import type { EvaluationQuestion } from './evaluationMessages'

self.addEventListener('message', (event: MessageEvent<EvaluationQuestion>) =>
  self.postMessage(answerEvaluation(event.data)),
)
