import { pageWorker } from '../worker/pageWorker'
import type { OpenEvaluationWorker } from './evaluationMessages'

/** More would have little to do and take much memory. Our judgement. */
const MOST_WORKERS = 4

/** How many work on rooms and zones at once: one processor is left to the page. A browser that does not tell has one such worker. */
export const roomsWorkers = (): number =>
  Math.max(1, Math.min(MOST_WORKERS, (navigator.hardwareConcurrency || 1) - 1))

/** How the page has layouts evaluated beside it; null in a browser without workers, where the page does everything itself. */
export const pageEvaluationWorker: OpenEvaluationWorker | null =
  typeof Worker === 'undefined'
    ? null
    : pageWorker(() => new Worker(new URL('./evaluation.worker.ts', import.meta.url), { type: 'module' }))
