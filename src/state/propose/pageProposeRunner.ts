import type { ProposeAnswer } from './proposeMessages'
import { createProposeRunner } from './proposeRunner'

/** The page's one runner: a search goes on, and a result stays, while its panel is not in view. */
export const pageProposeRunner = createProposeRunner((question, hear, fail) => {
  const worker = new Worker(new URL('./propose.worker.ts', import.meta.url), { type: 'module' })
  worker.addEventListener('message', ({ data }: MessageEvent<ProposeAnswer>) => hear(data))
  worker.addEventListener('error', ({ message }) =>
    // A worker whose file cannot be had says nothing about it.
    fail(
      typeof message === 'string' && message !== '' ? message : 'The searching part could not be started.',
    ),
  )
  worker.postMessage(question)
  return { stop: () => worker.terminate() }
})
