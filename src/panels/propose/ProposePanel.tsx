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
import { ProposalList } from './ProposalList'
import { type ProposeView, usePropose } from './usePropose'
import { WishForm } from './WishForm'

const statusWords = ({ running, last, isStale, endedText }: ProposeView): string => {
  if (running !== null)
    return running.total === 0
      ? 'Looking …'
      : `Looking: ${Math.floor((100 * running.done) / running.total)} of 100`
  if (endedText !== null) return endedText
  if (last === null) return 'Nothing has been looked for yet.'
  return isStale
    ? 'The layout has changed since these were worked out; look again before taking one.'
    : answerText(last.result)
}

/** How the search stands, and the ways to begin and to cancel it. */
const SearchStatus = (props: { readonly view: ProposeView; readonly hasAnchors: boolean }): ReactElement => {
  const { view, hasAnchors } = props
  const { running } = view
  return (
    <div className="fit-status" data-testid="propose-status" data-stale={view.isStale ? 'true' : undefined}>
      <p aria-live="polite">{statusWords(view)}</p>
      {running === null ? (
        <button type="button" disabled={!hasAnchors} onClick={view.start}>
          Look for positions
        </button>
      ) : (
        <>
          <progress
            aria-label="Looked at"
            value={running.done}
            max={running.total === 0 ? 1 : running.total}
          />
          <button type="button" onClick={view.cancel}>
            Cancel
          </button>
        </>
      )}
    </div>
  )
}

const PlacePropose = (props: { readonly layout: Layout; readonly place: Place }): ReactElement => {
  const { layout, place } = props
  const view = usePropose(layout, place)
  const { last } = view
  return (
    <>
      {place.anchors.length === 0 ? (
        <p className="hint">This place has no anchors yet. Add some under Anchors.</p>
      ) : (
        <WishForm layout={layout} place={place} draft={view.draft} change={view.change} />
      )}
      <SearchStatus view={view} hasAnchors={place.anchors.length > 0} />
      {last === null ? null : (
        <div className="fit-answer" data-stale={view.isStale ? 'true' : undefined}>
          <p data-testid="propose-present">
            As drawn when it was asked: {standingText(last.result.present, last.question.layout)}.
          </p>
          <ProposalList
            result={last.result}
            asked={last.question.layout}
            isStale={view.isStale}
            shownId={view.shownId}
            onShow={view.show}
          />
        </div>
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
      <p className="fit-caption">{PROPOSAL_CAUTION}</p>
      {place === undefined ? (
        <p className="hint">There is no place to look at. Add one under Seat.</p>
      ) : (
        <PlacePropose layout={layout} place={place} />
      )}
      <p className="hint">{PROPOSAL_METHOD}</p>
    </section>
  )
}
