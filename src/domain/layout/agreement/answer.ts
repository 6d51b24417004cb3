import { err, ok, type Result } from '../../result'
import { orderedText } from '../document/layoutText'
import { fieldProblem, type LayoutProblem, problemAt } from '../document/problem'
import type { AnswerEntry, ReviewEntry, ShownEntry } from '../document/review'
import { reviewContradictions } from '../document/reviewContradictions'
import { readAnswerEntries } from '../document/schema'
import { jsonGroup } from './proposal'

/** What a customer said about a proposal, on its way back. */
export interface Answer {
  /** What it answers to, as it came with the proposal: it goes back along, in case the shop's own record of it is gone. */
  readonly shown: ShownEntry
  /** The name of the job as the customer saw it, to find the layout by; may be empty. */
  readonly jobName: string
  /** At least one, oldest first, all of them answers to `shown`. */
  readonly entries: readonly AnswerEntry[]
}

/** The version of the answer's form. */
const ANSWER_VERSION = 1

/** Longest name of a job that is taken over; a name of a layout is never longer. */
const JOB_NAME_LENGTH = 200

/** An answer as a file or a link holds it. */
export const answerText = ({ shown, jobName, entries }: Answer): string =>
  orderedText({ answer: ANSWER_VERSION, job: jobName, entries: [shown, ...entries] })

const REMEDY = 'Ask for the link or the file of the answer once more.'

const refused = (received: string, message: string): Result<never, readonly LayoutProblem[]> =>
  err([{ path: '', received, message, remedy: REMEDY }])

/** An answer from a text that came from anywhere. Fails with everything that is wrong; never half of an answer. */
export const parseAnswer = (text: string): Result<Answer, readonly LayoutProblem[]> => {
  const input = jsonGroup(text)
  if (input === null) return refused(`${text.length} characters`, 'The answer is damaged or cut off.')
  if (input['answer'] !== ANSWER_VERSION)
    return refused(
      String(input['answer']).slice(0, 20),
      'This is no answer that this program can read; it reads version 1.',
    )
  const { job } = input
  if (typeof job !== 'string' || job.length > JOB_NAME_LENGTH)
    return refused('no name', 'The answer does not say which job it is about.')
  const read = readAnswerEntries(input['entries'])
  if ('issues' in read)
    return err(read.issues.map((issue) => fieldProblem(issue, { reviews: input['entries'] })))
  return checked(job, read.entries)
}

const isAnswer = (entry: ReviewEntry): entry is AnswerEntry => entry.kind !== 'shown'

const checked = (jobName: string, all: readonly ReviewEntry[]): Result<Answer, readonly LayoutProblem[]> => {
  const contradictions = reviewContradictions(all, ['reviews'])
  if (contradictions.length > 0)
    return err(contradictions.map((found) => problemAt(found.path, { reviews: all }, found)))
  const [shown] = all
  const entries = all.filter(isAnswer)
  if (shown?.kind !== 'shown' || entries.length !== all.length - 1)
    return refused(`${all.length} entries`, 'The answer does not speak of one proposal.')
  return ok({ shown, jobName, entries })
}
