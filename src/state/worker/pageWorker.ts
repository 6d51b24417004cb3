import type { Said } from './workerMessages'
import type { OpenWorker } from './workerRunner'

/** Says why a worker is dead where the browser does not: it keeps still about one whose file cannot be had. */
const UNSAID = 'the part of the page that works it out could not be loaded'

/** Real workers of the browser, each made by `create`. */
export const pageWorker =
  <Question, Answer>(create: () => Worker): OpenWorker<Question, Answer> =>
  (hear, fail) => {
    const worker = create()
    worker.addEventListener('message', ({ data }: MessageEvent<Said<Answer>>) => hear(data))
    worker.addEventListener('messageerror', () => fail('its answer could not be read'))
    worker.addEventListener('error', ({ message }) =>
      fail(typeof message === 'string' && message !== '' ? message : UNSAID),
    )
    return { ask: (asked) => worker.postMessage(asked), stop: () => worker.terminate() }
  }
