import type { WhoFits } from '../../domain/layout/fit/whoFits'
import { pageWorker } from '../worker/pageWorker'
import { createTask } from '../worker/task'
import type { FitQuestion, NothingToCount } from './fitMessages'

/** The page's one count of who fits: it goes on, and its result stays, while its panel is not in view. */
export const pageFit = createTask<FitQuestion, WhoFits, NothingToCount>(
  pageWorker(() => new Worker(new URL('./fit.worker.ts', import.meta.url), { type: 'module' })),
)
