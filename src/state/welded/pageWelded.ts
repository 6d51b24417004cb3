import { pageWorker } from '../worker/pageWorker'
import { createWeldedCheck } from './weldedCheck'

/** The page's one check of a car as welded: it goes on, and its result stays, while its panel is not in view. */
export const pageWelded = createWeldedCheck(
  pageWorker(() => new Worker(new URL('./welded.worker.ts', import.meta.url), { type: 'module' })),
)
