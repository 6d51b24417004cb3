import { pageWorker } from '../worker/pageWorker'
import type { OpenEvaluationWorker } from './evaluationMessages'

/** How the page has layouts evaluated beside it; null in a browser without workers, where the page does everything itself. */
export const pageEvaluationWorker: OpenEvaluationWorker | null =
  typeof Worker === 'undefined'
    ? null
    : pageWorker(() => new Worker(new URL('./evaluation.worker.ts', import.meta.url), { type: 'module' }))
