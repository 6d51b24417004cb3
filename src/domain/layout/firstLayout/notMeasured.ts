import type { Layout } from '../document/layout'
import type { QuestionId } from './question'
import { askedQuestions } from './questions'

/**
 * The layout with the questions whose numbers nobody measured or chose yet; unchanged where it does not keep account of them, because
 * it did not come of questions.
 */
export const withNotMeasured = (layout: Layout, ids: readonly QuestionId[]): Layout =>
  layout.notMeasured === undefined ? layout : { ...layout, notMeasured: ids }

/** What of a layout still stands where the questions started it, as it was asked, in the order of the questions; empty: nothing. */
export const notMeasuredTitles = (layout: Layout): readonly string[] =>
  askedQuestions(layout)
    .filter(({ id }) => layout.notMeasured?.includes(id))
    .map(({ title }) => title)
