import { answerThePage } from '../worker/answering'
import { evaluationAnswers } from './answerEvaluation'

answerThePage(evaluationAnswers())
