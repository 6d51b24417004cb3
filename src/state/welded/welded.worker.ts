import { answerThePage } from '../worker/answering'
import { answerWelded } from './answerWelded'

answerThePage(answerWelded)
