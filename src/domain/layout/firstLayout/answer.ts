import { emptyLayout } from '../document/empty'
import type { Layout } from '../document/layout'
import type { Answer, Ask, Begun, HungOn, Question, QuestionId } from './question'
import { QUESTIONS } from './questions'

/** Numbers nearer than this are the same answer: rounding of what is worked out and read back, far below what a tape tells. */
const SAME = 1e-6

/** How far somebody has got with the questions of one layout. Plain data, to be kept beside the layout and never in it. */
export interface Progress {
  readonly begun: Begun
  /** What was answered, by the id of the ask. */
  readonly answers: Readonly<Record<string, Answer>>
  /** What everything read when the questions last changed the layout: what reads otherwise now was changed by hand. */
  readonly left: Readonly<Record<string, Answer>>
}

export interface Guided {
  readonly layout: Layout
  readonly progress: Progress
}

/** A new layout that says nothing yet where the starting values do not: its datum is to be put into the builder's own words. */
const freshBase = (): Layout => ({
  ...emptyLayout(),
  datum: 'Start value: front floor cross tube, middle of its top',
})

/** Questions begun with nothing but starting values. */
export const begunFresh = (): Guided => begunWith({ isFresh: true, base: freshBase() })

/** Questions begun with what a layout has; its anchors and slots are completed. */
export const begunFrom = (layout: Layout): Guided => begunWith({ isFresh: false, base: layout })

/** Questions about a layout as it is, which stays so until the first answer. */
export const begunOn = (layout: Layout): Progress => {
  const begun: Begun = { isFresh: false, base: layout }
  return { begun, answers: {}, left: readings(layout, begun) }
}

const begunWith = (begun: Begun): Guided =>
  settled({ layout: begun.base, progress: { begun, answers: {}, left: {} } })

const isSame = (a: Answer, b: Answer): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= SAME : a === b

const eachAsk = (layout: Layout, begun: Begun): readonly Ask[] =>
  QUESTIONS.filter(({ isAsked }) => isAsked(layout)).flatMap(({ asks }) => asks(layout, begun))

const readings = (layout: Layout, begun: Begun): Progress['left'] =>
  Object.fromEntries(eachAsk(layout, begun).map(({ id, read }) => [id, read(layout)]))

/** Where an ask of a question starts in this layout; undefined where nothing says so and it stays as it is. */
const startOf = (question: Question, ask: Ask, layout: Layout, { begun }: Progress): Answer | undefined => {
  const { isFresh, base } = begun
  const isDerived = isFresh || ask.isAlwaysDerived === true
  if (isDerived && ask.derived !== undefined) return ask.derived(layout)
  const former = question.isAsked(base)
    ? question.asks(base, begun).find(({ id }) => id === ask.id)
    : undefined
  if (former === undefined) return ask.derived?.(layout)
  const was = former.read(base)
  if (typeof was !== 'number' || ask.hangsOn === undefined || former.hangsOn === undefined) return was
  return isFresh ? was : carried(was, ask, { before: former.hangsOn(base), now: ask.hangsOn(layout), layout })
}

/**
 * A number of another layout on this one: along with what it hangs on, as long as that is the same thing. Taken off its tube, a tab
 * stays where it was beside the seat; put on a tube, it starts as tabs on that tube do.
 */
const carried = (
  was: number,
  ask: Ask,
  hung: { readonly before: HungOn; readonly now: HungOn; readonly layout: Layout },
): Answer => {
  const { before, now, layout } = hung
  if (before.tubeId === now.tubeId) return was + now.atMm - before.atMm
  const besideSeat = was + now.seatMm - before.seatMm
  return now.tubeId === null ? besideSeat : (ask.derived?.(layout) ?? besideSeat)
}

/**
 * What was changed by hand since the questions last changed the layout counts as answered, as it is now; so does what was not there
 * then, such as a bar that was drawn: an older answer to it was about another one.
 */
export const withHandChanges = ({ layout, progress }: Guided): Progress => {
  const { left, begun } = progress
  const now = readings(layout, begun)
  const changed = Object.entries(now).filter(([id, value]) => {
    const before = left[id]
    return before === undefined || !isSame(before, value)
  })
  return changed.length === 0
    ? progress
    : { ...progress, answers: { ...progress.answers, ...Object.fromEntries(changed) }, left: now }
}

/** Every answer where it was given, everything else where it starts: in order, so that each start sees what comes before it. */
const settled = ({ layout, progress }: Guided): Guided => {
  const { begun, answers } = progress
  const made = QUESTIONS.reduce((before, question) => withQuestion(before, question, progress), layout)
  return { layout: made, progress: { begun, answers, left: readings(made, begun) } }
}

/** What other answers imply; undefined where none does. */
const impliedOf = ({ implied }: Ask, { answers }: Progress): Answer | undefined =>
  implied?.by.some((id) => answers[id] !== undefined) === true ? implied.answer : undefined

/** An ask of a question may bring others into being, so they are looked for again after each. */
const withQuestion = (layout: Layout, question: Question, progress: Progress): Layout => {
  const { begun, answers } = progress
  if (!question.isAsked(layout)) return layout
  let made = layout
  for (let index = 0; ; index += 1) {
    const ask = question.asks(made, begun)[index]
    if (ask === undefined) return made
    const wanted = answers[ask.id] ?? impliedOf(ask, progress) ?? startOf(question, ask, made, progress)
    if (wanted !== undefined && !isSame(ask.read(made), wanted)) made = ask.write(made, wanted)
  }
}

/** One answer given, or with null taken back to where it starts. What was changed by hand in between stays as it is. */
export const withAnswer = (guided: Guided, askId: string, answer: Answer | null): Guided => {
  const { [askId]: _old, ...others } = withHandChanges(guided).answers
  const answers = answer === null ? others : { ...others, [askId]: answer }
  return settled({ layout: guided.layout, progress: { ...guided.progress, answers } })
}

/** Everything of one question taken back to where it starts. */
export const withoutAnswers = (guided: Guided, questionId: QuestionId): Guided => {
  const { layout, progress } = guided
  const { answers } = withHandChanges(guided)
  const question = QUESTIONS.find(({ id }) => id === questionId)
  const ids = new Set(question?.asks(layout, progress.begun).map(({ id }) => id))
  const others = Object.fromEntries(Object.entries(answers).filter(([id]) => !ids.has(id)))
  return settled({ layout, progress: { ...progress, answers: others } })
}

/** After a change that no ask stands for, such as one more person: what hangs on it follows. */
export const withEdit = (guided: Guided, change: (layout: Layout) => Layout): Guided =>
  settled({ layout: change(guided.layout), progress: withHandChanges(guided) })
