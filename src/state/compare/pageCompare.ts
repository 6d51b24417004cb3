import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { FitQuestion, NothingToCount } from '../fit/fitMessages'
import { isSameCount } from '../fit/staleFit'
import { pageWorker } from '../worker/pageWorker'
import { isSameCheck } from '../welded/weldedCheck'
import type { WeldedFindings, WeldedQuestion } from '../welded/weldedMessages'
import { createInTurn } from './inTurn'

/** The findings of each variant with the room they have. A variant is evaluated by the worker that evaluates a car as welded. */
export const pageVariantFindings = createInTurn<WeldedQuestion, WeldedFindings, never>(
  pageWorker(() => new Worker(new URL('../welded/welded.worker.ts', import.meta.url), { type: 'module' })),
  isSameCheck,
)

/** Who fits each variant: the same people for all of them, so that the counts may be compared. */
export const pageVariantFits = createInTurn<FitQuestion, WhoFits, NothingToCount>(
  pageWorker(() => new Worker(new URL('../fit/fit.worker.ts', import.meta.url), { type: 'module' })),
  isSameCount,
)
