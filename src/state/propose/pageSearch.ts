import { pageWorker } from '../worker/pageWorker'
import { createSearch } from './search'

/** The page's one search: it goes on, and its result stays, while its panel is not in view. */
export const pageSearch = createSearch(
  pageWorker(() => new Worker(new URL('./propose.worker.ts', import.meta.url), { type: 'module' })),
)
