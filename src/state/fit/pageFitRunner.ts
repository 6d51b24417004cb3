import type { FitAnswer } from './fitMessages'
import { createFitRunner } from './fitRunner'

/** The page's one runner: a count goes on, and a result stays, while its panel is not in view. */
export const pageFitRunner = createFitRunner((question, hear, fail) => {
  const worker = new Worker(new URL('./fit.worker.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', ({ data }: MessageEvent<FitAnswer>) => hear(data))
  worker.addEventListener('error', ({ message }) =>
    // A worker whose file cannot be had says nothing about it.
    fail(typeof message === 'string' && message !== '' ? message : 'The counting part could not be started.'),
  )
  worker.postMessage(question)
  return { stop: () => worker.terminate() }
})
