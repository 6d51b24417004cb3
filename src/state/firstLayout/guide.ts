import type { Layout } from '../../domain/layout/document/layout'
import { begunOn, type Progress, withHandChanges } from '../../domain/layout/firstLayout/answer'
import type { Ask, Question, QuestionId } from '../../domain/layout/firstLayout/question'
import { askedQuestions } from '../../domain/layout/firstLayout/questions'

/** How far somebody has got with the questions: beside the layout, never in it. */
export interface Guide {
  readonly progress: Progress
  /** Said to be right as it is shown: words and choices left with "Next", numbers only when somebody says that they measured them. */
  readonly confirmed: readonly QuestionId[]
  /** Left with the starting values, and nobody has said that they are right. */
  readonly skipped: readonly QuestionId[]
  /** The question in view; `end` after the last. */
  readonly at: QuestionId | 'end'
}

export type QuestionStatus = 'answered' | 'skipped' | 'open'

/** Questions begun on a layout as it is, without changing it before the first answer. */
export const guideOn = (layout: Layout): Guide => ({
  progress: begunOn(layout),
  confirmed: [],
  skipped: [],
  at: 'job',
})

export const questionStatus = (guide: Guide, layout: Layout, question: Question): QuestionStatus => {
  const { answers, begun } = withHandChanges({ layout, progress: guide.progress })
  const isAnswered = question
    .asks(layout, begun)
    .some(({ id, entry }) => entry.kind !== 'kept' && answers[id] !== undefined)
  if (isAnswered || guide.confirmed.includes(question.id)) return 'answered'
  return guide.skipped.includes(question.id) ? 'skipped' : 'open'
}

/** Where the question in view stands among those that are asked, from 0; the number of them at the end. */
export const placeInOrder = (guide: Guide, layout: Layout): number => {
  const ids = askedQuestions(layout).map(({ id }) => id)
  if (guide.at === 'end') return ids.length
  // A question that is not asked any more gives way to the first one.
  return Math.max(0, ids.indexOf(guide.at))
}

/** The question this many further on, or back for less than 0. */
export const movedOn = (guide: Guide, layout: Layout, by: 1 | -1): Guide => {
  const to = Math.max(0, placeInOrder(guide, layout) + by)
  return { ...guide, at: askedQuestions(layout)[to]?.id ?? 'end' }
}

const withId = (ids: readonly QuestionId[], id: QuestionId): readonly QuestionId[] =>
  ids.includes(id) ? ids : [...ids, id]

const withoutId = (ids: readonly QuestionId[], id: QuestionId): readonly QuestionId[] =>
  ids.filter((each) => each !== id)

/** What is measured and shown as a number. */
const numbersOf = (question: Question, layout: Layout, { progress }: Guide): readonly Ask[] =>
  question
    .asks(layout, progress.begun)
    .filter(({ entry }) => entry.kind === 'length' || entry.kind === 'angle' || entry.kind === 'mass')

/** The numbers of a question that stand where they start: neither typed nor moved, nor said to be measured. */
export const unmeasured = (guide: Guide, layout: Layout, question: Question): readonly Ask[] => {
  if (guide.confirmed.includes(question.id)) return []
  const { answers } = withHandChanges({ layout, progress: guide.progress })
  return numbersOf(question, layout, guide).filter(({ id }) => answers[id] === undefined)
}

/** Every question of which a number is not measured, with those numbers. */
export const unmeasuredQuestions = (
  guide: Guide,
  layout: Layout,
): readonly { readonly question: Question; readonly asks: readonly Ask[] }[] =>
  askedQuestions(layout)
    .map((question) => ({ question, asks: unmeasured(guide, layout, question) }))
    .filter(({ asks }) => asks.length > 0)

/** Left with "Next": words and choices are then meant as they are shown; a number that nobody typed is not thereby measured. */
export const withLeft = (guide: Guide, layout: Layout, question: Question): Guide => {
  if (numbersOf(question, layout, guide).length === 0) return withConfirmed(guide, question.id)
  return questionStatus(guide, layout, question) === 'answered' ? guide : withSkipped(guide, question.id)
}

/** Said to be right as it is shown. */
export const withConfirmed = (guide: Guide, id: QuestionId): Guide => ({
  ...guide,
  confirmed: withId(guide.confirmed, id),
  skipped: withoutId(guide.skipped, id),
})

/** Left with the starting values. */
export const withSkipped = (guide: Guide, id: QuestionId): Guide => ({
  ...guide,
  confirmed: withoutId(guide.confirmed, id),
  skipped: withId(guide.skipped, id),
})

/** As if nobody had been there. */
export const withOpened = (guide: Guide, id: QuestionId): Guide => ({
  ...guide,
  confirmed: withoutId(guide.confirmed, id),
  skipped: withoutId(guide.skipped, id),
})
