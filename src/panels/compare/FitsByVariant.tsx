import { type ReactElement, useEffect, useMemo, useState } from 'react'
import { matchedPlaces } from '../../domain/layout/compare/comparedParts'
import type { Matched } from '../../domain/layout/compare/matched'
import type { Place } from '../../domain/layout/document/layout'
import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { CompareCell } from '../../domain/layout/wording/compareRows'
import { fitCountText } from '../../domain/layout/wording/compareWords'
import { FIT_CAPTION, FIT_METHOD, fitLevelWords, limitingText } from '../../domain/layout/wording/fitText'
import { placeName } from '../../domain/layout/wording/names'
import { pageVariantFits } from '../../state/compare/pageCompare'
import type { FitQuestion } from '../../state/fit/fitMessages'
import { useKept } from '../../state/react'
import { ChoiceField } from '../fields/ChoiceField'
import { failureClause } from '../WorkStatus'
import { CompareTable } from './CompareTable'
import type { CompareView } from './useCompare'

const LEVELS = ['must', 'should', 'advice'] as const

type FitState = ReturnType<typeof pageVariantFits.state.getState>

const isOf =
  (question: FitQuestion | null) =>
  (other: { readonly question: FitQuestion }): boolean =>
    question !== null && pageVariantFits.isSame(other.question, question)

/** How the count of one variant stands, where there is none yet. */
const standingText = (question: FitQuestion | null, state: FitState): string => {
  if (question === null) return 'no such place'
  if (isOf(question)({ question: state.running?.question ?? { ...question, placeId: '' } })) {
    const { done, total } = state.running ?? { done: 0, total: 0 }
    return total === 0 ? 'counting …' : `counting … ${done} of ${total}`
  }
  if (state.waiting.some((waiting) => pageVariantFits.isSame(waiting, question))) return 'waits for its turn'
  const ended = state.ended.find(isOf(question))
  if (ended === undefined) return 'not counted'
  switch (ended.kind) {
    case 'cancelled':
      return 'called off'
    case 'refused':
      return 'this place or its rule set is gone'
    case 'failed':
      return `came to no end: ${failureClause(ended.message)}`
  }
}

const cellOf = (
  value: WhoFits | null,
  level: (typeof LEVELS)[number],
  standing: string,
  units: Parameters<typeof limitingText>[1],
): CompareCell => {
  if (value === null) return { text: standing, notes: [], isOther: false }
  const all = value.overall.find((each) => each.level === level)
  return {
    text: fitCountText(value, level),
    notes: all === undefined ? [] : [limitingText(all, units)],
    isOther: false,
  }
}

const questionsFor = (view: CompareView, row: Matched<Place> | undefined): readonly (FitQuestion | null)[] =>
  view.variants.map(({ layout }, index) => {
    const place = row?.[index] ?? null
    return place === null ? null : { layout, placeId: place.id }
  })

/** Which of the places is counted, and the questions for each variant. */
const usePlaceQuestions = (view: CompareView) => {
  const [chosen, setChosen] = useState('0')
  const rows = useMemo(() => matchedPlaces(view.variants.map(({ layout }) => layout)), [view.variants])
  const row = rows[Number(chosen)] ?? rows[0]
  const questions = useMemo(() => questionsFor(view, row), [view, row])
  const choices = rows.map((each, index) => {
    const at = each.findIndex((place) => place !== null)
    const layout = view.variants[at]?.layout
    const words = layout === undefined ? '' : placeName(each[at]?.id ?? '', layout)
    return { value: String(index), words }
  })
  return { chosen, setChosen, choices, questions }
}

const CountButtons = (props: { readonly questions: readonly FitQuestion[] }): ReactElement => {
  const state = useKept(pageVariantFits.state)
  const { questions } = props
  const isCounted = questions.every((question) => state.answers.some(isOf(question)))
  if (state.running !== null)
    return (
      <div className="work-status">
        <progress
          aria-label="People counted"
          value={state.running.done}
          max={state.running.total === 0 ? 1 : state.running.total}
        />
        <button type="button" onClick={pageVariantFits.cancel}>
          Cancel
        </button>
      </div>
    )
  return isCounted ? (
    <p>Counted for all variants as they are.</p>
  ) : (
    <button type="button" className="primary" onClick={() => pageVariantFits.tryAgain(questions)}>
      Count who fits each variant
    </button>
  )
}

/** Calls off a count of what no variant is any more. */
const dropUnasked = (questions: readonly (FitQuestion | null)[]): void => {
  const { running } = pageVariantFits.state.getState()
  if (running !== null && !questions.some((question) => isOf(question)(running))) pageVariantFits.cancel()
}

/** How many of the same people pass the rules in each variant. Counts only of what is drawn: once a variant changes, it is not counted. */
export const FitsByVariant = (props: { readonly view: CompareView }): ReactElement => {
  const { view } = props
  const { chosen, setChosen, choices, questions } = usePlaceQuestions(view)
  const state = useKept(pageVariantFits.state)
  useEffect(() => dropUnasked(questions), [questions])
  const units = view.variants[view.drawn]?.layout.units ?? { length: 'mm', force: 'N', mass: 'kg' }
  const values = questions.map((question) => state.answers.find(isOf(question))?.value ?? null)
  const standings = questions.map((question) => standingText(question, state))
  const rows = LEVELS.map((level) => ({
    key: `fit/${level}`,
    title: fitLevelWords(level),
    cells: values.map((value, index) => cellOf(value, level, standings[index] ?? '', units)),
  }))
  return (
    <section className="compare-section" aria-labelledby="compare-fits" data-testid="compare-fits">
      <h3 id="compare-fits">Who fits</h3>
      <p className="caution">{FIT_CAPTION}</p>
      {choices.length < 2 ? null : (
        <ChoiceField label="Place" value={chosen} choices={choices} onChange={setChosen} />
      )}
      <CountButtons questions={questions.flatMap((question) => question ?? [])} />
      <div aria-live="polite">
        <CompareTable
          label="Who fits each variant"
          about="Rules that count"
          groups={[{ key: 'fits', title: '', rows }]}
          variants={view.variants}
          drawn={view.drawn}
        />
      </div>
      <p className="hint">
        The same people sit in every variant, so the counts may be compared. {FIT_METHOD}
      </p>
    </section>
  )
}
