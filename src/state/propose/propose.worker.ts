import { answerThePage } from '../worker/answering'
import { answerPropose } from './answerPropose'

answerThePage(answerPropose)
