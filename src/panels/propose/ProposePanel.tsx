import type { ReactElement } from 'react'
import type { Layout, Place } from '../../domain/layout/document/layout'
import {
  answerText,
  PROPOSAL_CAUTION,
  PROPOSAL_METHOD,
  standingText,
} from '../../domain/layout/wording/proposalText'
import { useApp } from '../../state/react'
import { currentPlace } from '../../state/selectors'
import { WorkAnswer, WorkStatus } from '../WorkStatus'
import { ProposalList } from './ProposalList'
import { usePropose } from './usePropose'
import { AnchorChoice, WishForm } from './WishForm'

const WORDS = {
  doing: 'Looking',
  nothingYet: 'Nothing has been looked for yet.',
  stale: 'The layout has changed since these were worked out; look again before taking one.',
  start: 'Look for positions',
  counted: 'Looked at',
} as const

const PlacePropose = (props: { readonly layout: Layout; readonly place: Place }): ReactElement => {
  const { layout, place } = props
  const view = usePropose(layout, place)
  const { last, work } = view
  const form = { layout, place, draft: view.draft, change: view.change }
  const words = { ...WORDS, done: last === null ? WORDS.nothingYet : answerText(last.value) }
  return (
    <>
      <AnchorChoice {...form} />
      <WorkStatus view={work} words={words} testId="propose-status" />
      <WishForm {...form} />
      <p className="caution">{PROPOSAL_CAUTION}</p>
      {last === null ? null : (
        <WorkAnswer view={work}>
          <p data-testid="propose-present">
            As drawn when it was asked: {standingText(last.value.present, last.question.layout)}.
          </p>
          <ProposalList
            result={last.value}
            asked={last.question.layout}
            isStale={work.answer === 'stale'}
            shownId={view.shownId}
            onShow={view.show}
          />
        </WorkAnswer>
      )}
    </>
  )
}

/** Positions with the most worst-case room, looked for beside the page and taken with one press. */
export const ProposePanel = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  return (
    <section className="panel" aria-label="Propose">
      {place === undefined ? (
        <p className="hint">There is no place to look at. Add one under Seat.</p>
      ) : place.anchors.length === 0 ? (
        <p className="hint">This place has no anchors yet. Add some under Anchors.</p>
      ) : (
        <PlacePropose layout={layout} place={place} />
      )}
      <p className="hint">{PROPOSAL_METHOD}</p>
    </section>
  )
}
