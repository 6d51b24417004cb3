import './customer.css'
import { type ReactElement, useEffect, useLayoutEffect, useMemo, useState } from 'react'
import type { Answer } from '../../domain/layout/agreement/answer'
import { parseProposal, type Proposal } from '../../domain/layout/agreement/proposal'
import { preferredView, startKeepingView } from '../../state/keptView'
import { problemLines } from '../../state/pickedFile'
import { AppStoreProvider } from '../../state/react'
import { createAppStore } from '../../state/store'
import { ErrorBoundary } from '../ErrorBoundary'
import { ThemeSwitch } from '../settings'
import { CustomerView } from './CustomerView'
import { SendBack } from './SendBack'
import { useProposalTalk } from './useProposalTalk'

/** Only the words that were sent, so that nothing of whoever uses this device shows. */
const titleOf = ({ shown, layout }: Proposal): string => {
  const of = layout.job.car.trim() || layout.job.name.trim()
  const to = shown.to.trim()
  return ['Proposal', ...(to === '' ? [] : [`for ${to}`]), ...(of === '' ? [] : [`: ${of}`])]
    .join(' ')
    .replace(' :', ':')
}

const ProposalBody = (props: { readonly proposal: Proposal }): ReactElement => {
  const { proposal } = props
  const { talk, isKept, markSent, firstId } = useProposalTalk(proposal)
  const [isSending, setSending] = useState(false)
  const answer: Answer | null =
    talk.said.length === 0
      ? null
      : { shown: proposal.shown, jobName: proposal.layout.job.name, entries: talk.said }
  return (
    <>
      {isKept ? null : (
        <p className="caution" role="alert">
          This browser keeps nothing. Send what you say before you close the page.
        </p>
      )}
      {talk.undecidable === null ? null : (
        <p className="caution" role="alert">
          {talk.undecidable}
        </p>
      )}
      <CustomerView talk={talk} firstId={firstId}>
        <section className="customer-section" aria-labelledby="send-back">
          <h2 id="send-back">Send it back</h2>
          <SendBack
            answer={answer}
            isOpen={isSending}
            from={proposal.shown.by}
            onOpen={() => {
              markSent()
              setSending(true)
            }}
          />
        </section>
      </CustomerView>
    </>
  )
}

const ProposalPage = (props: { readonly proposal: Proposal }): ReactElement => {
  const { proposal } = props
  const { shown } = proposal
  const store = useMemo(
    () => createAppStore(proposal.layout, { view: { ...preferredView(), screen: 'customer' } }),
    [proposal],
  )
  // Before anything is painted, so that a dark page is never white first.
  useLayoutEffect(() => startKeepingView(store), [store])
  const title = titleOf(proposal)
  useEffect(() => {
    document.title = title
  }, [title])
  return (
    <AppStoreProvider store={store}>
      <ErrorBoundary store={store} part="The proposal">
        <div className="customer-page">
          <header className="header">
            <div className="title">
              <span className="wordmark">Tabwright</span>
              <h1>{title}</h1>
            </div>
            <p>
              From {shown.by}, {shown.date}
            </p>
            <ThemeSwitch />
          </header>
          <main className="customer-main">
            <ProposalBody proposal={proposal} />
          </main>
          <WayOut />
        </div>
      </ErrorBoundary>
    </AppStoreProvider>
  )
}

/** For the workshop itself, which may have followed its own link. */
const WayOut = (): ReactElement => (
  <footer className="customer-foot">
    <a href={window.location.pathname + window.location.search}>
      Leave the proposal and open the planning program
    </a>
  </footer>
)

/** A proposal that cannot be shown: what is wrong with it, and nothing else. */
const Refused = (props: { readonly lines: readonly string[] }): ReactElement => (
  <div className="customer-page">
    <header className="header">
      <div className="title">
        <span className="wordmark">Tabwright</span>
        <h1>This proposal cannot be shown</h1>
      </div>
    </header>
    <main className="customer-main">
      <ul className="plain-cases">
        {props.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </main>
    <WayOut />
  </div>
)

/** What a proposal's link opens: the customer's own page, with nothing of the builder's on it and nothing kept but what is said. */
export const CustomerPage = (props: { readonly text: string }): ReactElement => {
  const { text } = props
  const parsed = useMemo(() => parseProposal(text), [text])
  return parsed.ok ? <ProposalPage proposal={parsed.value} /> : <Refused lines={problemLines(parsed.error)} />
}
