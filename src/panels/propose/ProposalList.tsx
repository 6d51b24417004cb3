import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { withProposal } from '../../domain/layout/propose/propose'
import type { Proposal, Proposals } from '../../domain/layout/propose/proposal'
import {
  gainText,
  limitingRuleText,
  positionTexts,
  standingText,
  stayingText,
  unmeasuredText,
} from '../../domain/layout/wording/proposalText'
import { useActions, useApp } from '../../state/react'
import { isTaken } from '../../state/propose/staleProposals'

/** Why a proposal is as good as it is and no better. */
const Reasons = (props: {
  readonly proposal: Proposal
  readonly present: Proposals['present']
  readonly asked: Layout
}): ReactElement => {
  const { proposal, present, asked } = props
  const watched = unmeasuredText(proposal.unmeasured)
  return (
    <div className="proposal-body">
      <p>{gainText(proposal, present, asked)}</p>
      <p>{limitingRuleText(proposal, asked)}</p>
      {proposal.staying.map((staying) => (
        <p key={staying.finding.findingId} className="proposal-staying">
          {stayingText(staying, asked)}
        </p>
      ))}
      {watched === null ? null : <p className="hint">{watched}</p>}
      <ul>
        {positionTexts(proposal, asked).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </div>
  )
}

interface Props {
  readonly result: Proposals
  /** The layout that was asked about: names and numbers of the answer are of it. */
  readonly asked: Layout
  readonly isStale: boolean
  readonly shownId: string | null
  readonly onShow: (proposalId: string | null) => void
}

const ProposalRow = (props: Props & { readonly proposal: Proposal; readonly rank: number }): ReactElement => {
  const { proposal, rank, result, asked, isStale, shownId, onShow } = props
  const { edit } = useActions()
  const layout = useApp((state) => state.layout)
  const isShown = proposal.id === shownId
  const isHere = isTaken(layout, result.placeId, proposal)
  return (
    <li
      className="proposal"
      data-testid={`proposal:${rank}`}
      data-room={proposal.roomMm ?? undefined}
      data-shown={isShown ? 'true' : undefined}
      onPointerEnter={(event) => {
        if (event.pointerType === 'mouse') onShow(proposal.id)
      }}
    >
      <button
        type="button"
        className="proposal-head"
        aria-pressed={isShown}
        onFocus={() => onShow(proposal.id)}
        onClick={() => onShow(proposal.id)}
      >
        <span className="proposal-rank">Position {rank}</span>
        <span>
          {standingText(proposal, asked)}
          {isHere ? ' (as drawn now)' : ''}
        </span>
      </button>
      <Reasons proposal={proposal} present={result.present} asked={asked} />
      <button
        type="button"
        data-testid={`take:${rank}`}
        disabled={isStale || isHere}
        onClick={() => edit(`Take position ${rank}`, (now) => withProposal(now, result.placeId, proposal))}
      >
        Take this position
      </button>
    </li>
  )
}

/** The proposals, best first; the one under the pointer or the keyboard is picked out on the drawing. */
export const ProposalList = (props: Props): ReactElement => (
  <ol className="proposals">
    {props.result.proposals.map((proposal, index) => (
      <ProposalRow key={proposal.id} {...props} proposal={proposal} rank={index + 1} />
    ))}
  </ol>
)
