import { type Asked, failureWords, type Said } from './workerMessages'

/** Says how far work has got. */
type Report = (done: number, total: number) => void

type Work<Question, Answer> = (question: Question, report: Report) => Answer

/** Answers one question after another; what goes wrong is said too. */
export const answerer =
  <Question, Answer>(work: Work<Question, Answer>, say: (said: Said<Answer>) => void) =>
  ({ id, question }: Asked<Question>): void => {
    try {
      const answer = work(question, (done, total) => say({ kind: 'progress', id, done, total }))
      say({ kind: 'answer', id, answer })
    } catch (error) {
      say({ kind: 'failed', id, message: failureWords(error) })
    }
  }

/** All that a worker's file does: what the page asks is worked out here. */
export const answerThePage = <Question, Answer>(work: Work<Question, Answer>): void => {
  const hear = answerer(work, (said) => self.postMessage(said))
  self.addEventListener('message', ({ data }: MessageEvent<Asked<Question>>) => hear(data))
}
