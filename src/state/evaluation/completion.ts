import type { Layout } from '../../domain/layout/document/layout'
import { evaluateLayout } from '../../domain/layout/evaluate/evaluateLayout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { failureWords } from '../worker/workerMessages'

/**
 * How far the part of an evaluation is that takes longest: remedies, and what weld errors can do. Always of one layout; while
 * another is drawn it says nothing.
 */
export type Completion =
  /** Nobody works beside the page: whoever reads an evaluation gets all of it at once. */
  | { readonly kind: 'direct' }
  | { readonly kind: 'working'; readonly layout: Layout }
  | Completed
  | { readonly kind: 'failed'; readonly layout: Layout; readonly message: string }

export interface Completed {
  readonly kind: 'ready'
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
}

/** A layout evaluated completely here and now, however long that holds up the page. */
export const completedHere = (layout: Layout): Exclude<Completion, { kind: 'direct' | 'working' }> => {
  try {
    return { kind: 'ready', layout, evaluation: evaluateLayout(layout) }
  } catch (error) {
    return { kind: 'failed', layout, message: failureWords(error) }
  }
}
