import { type Asked, failureWords, type News, type Said } from './workerMessages'

/** A worker that answers one question after another until it is stopped. */
interface OpenedWorker<Question> {
  readonly ask: (asked: Asked<Question>) => void
  readonly stop: () => void
}

/** Starts a worker; `hear` and `fail` are called later, never before this returns. `fail`: the worker itself is dead. */
export type OpenWorker<Question, Answer> = (
  hear: (said: Said<Answer>) => void,
  fail: (message: string) => void,
) => OpenedWorker<Question>

interface RunnerOptions {
  /** Whether a worker that has answered waits for the next question; else each question has a worker of its own. */
  readonly keepsWorker?: boolean
  /** How long a new question waits after one that was broken off, ms: what changes many times a second would start as many workers. */
  readonly quietMs?: number
}

/** One worker with at most one job: the last that was asked for. */
export interface WorkerRunner<Question> {
  /** What is being worked out or waits for its turn; null when there is nothing. */
  readonly job: () => Question | null
  /** Has a question worked out; another one under way is broken off. */
  readonly start: (question: Question) => void
  /** Drops the job, and with it the worker: that is the only way to be rid of its work at once. An idle worker is kept. */
  readonly drop: () => void
  /** Drops the job and an idle worker too. */
  readonly close: () => void
}

interface Job<Question> {
  readonly id: number
  readonly question: Question
  /** Runs while the job waits for its turn. */
  readonly timer: ReturnType<typeof setTimeout> | null
}

/** One worker, opened when it is first asked and again after it was closed; of a closed one nothing more is heard. */
const workerLine = <Question, Answer>(
  open: OpenWorker<Question, Answer>,
  hear: (said: Said<Answer>) => void,
  die: (message: string) => void,
): { readonly ask: (asked: Asked<Question>) => void; readonly close: () => void } => {
  let worker: OpenedWorker<Question> | null = null
  const opened = (): OpenedWorker<Question> => {
    // A worker that was stopped may still have words under way.
    const own: OpenedWorker<Question> = open(
      (said) => (worker === own ? hear(said) : undefined),
      (message) => (worker === own ? die(message) : undefined),
    )
    return own
  }
  return {
    ask: (asked) => {
      worker ??= opened()
      worker.ask(asked)
    },
    close: () => {
      worker?.stop()
      worker = null
    },
  }
}

/**
 * Has questions worked out beside the page. `hear` is told how each goes until its last words; of what was broken off nothing more
 * is heard. A worker that dies is replaced at the next question.
 */
export const createWorkerRunner = <Question, Answer>(
  open: OpenWorker<Question, Answer>,
  hear: (question: Question, news: News<Answer>) => void,
  { keepsWorker = false, quietMs = 0 }: RunnerOptions = {},
): WorkerRunner<Question> => {
  let job: Job<Question> | null = null
  let lastId = 0
  let wasBrokenOff = false
  const tell = (news: News<Answer>): void => {
    if (job === null) return
    const { question } = job
    if (news.kind !== 'progress') job = null
    hear(question, news)
  }
  const die = (message: string): void => {
    line.close()
    tell({ kind: 'failed', message })
  }
  const onSaid = ({ id, ...news }: Said<Answer>): void => {
    if (job?.id !== id) return
    if (news.kind !== 'progress' && !keepsWorker) line.close()
    tell(news)
  }
  const line = workerLine(open, onSaid, die)
  const begin = (question: Question): void => {
    lastId += 1
    job = { id: lastId, question, timer: null }
    try {
      line.ask({ id: lastId, question })
    } catch (error) {
      die(failureWords(error))
    }
  }
  const drop = (): void => {
    if (job === null) return
    if (job.timer !== null) clearTimeout(job.timer)
    wasBrokenOff = true
    job = null
    line.close()
  }
  return {
    job: () => job?.question ?? null,
    start: (question) => {
      drop()
      if (wasBrokenOff && quietMs > 0)
        job = { id: lastId, question, timer: setTimeout(() => begin(question), quietMs) }
      else begin(question)
      wasBrokenOff = false
    },
    drop,
    close: () => {
      drop()
      line.close()
    },
  }
}
