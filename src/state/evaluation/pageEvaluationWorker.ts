import type { EvaluationAnswer } from './evaluationMessages'
import type { OpenEvaluationWorker } from './evaluationWorker'

/** How the page has layouts evaluated beside it; null in a browser without workers, where the page does everything itself. */
export const pageEvaluationWorker: OpenEvaluationWorker | null =
  typeof Worker === 'undefined'
    ? null
    : (hear, fail) => {
        const worker = new Worker(new URL('./evaluation.worker.ts', import.meta.url), { type: 'module' })
        worker.addEventListener('message', ({ data }: MessageEvent<EvaluationAnswer>) => hear(data))
        worker.addEventListener('error', ({ message }) =>
          // A worker whose file cannot be had says nothing about it.
          fail(
            typeof message === 'string' && message !== '' ? message : 'The part for it could not be started.',
          ),
        )
        return { ask: (question) => worker.postMessage(question), stop: () => worker.terminate() }
      }
