import { answerThePage } from '../worker/answering'
import { answerFit } from './answerFit'

answerThePage(answerFit)
