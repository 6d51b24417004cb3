import { type ReactElement, useState } from 'react'
import { reviewedVariantsOf } from '../../domain/layout/agreement/fingerprint'
import { proposalText } from '../../domain/layout/agreement/proposal'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import type { ShownEntry } from '../../domain/layout/document/review'
import { withShown } from '../../domain/layout/edit/reviews'
import { download, layoutFileName } from '../../state/files'
import { useActions, useApp } from '../../state/react'
import { today } from '../../state/today'
import { uniqueId } from '../../state/uniqueId'
import { TextField } from '../fields/TextField'
import { ShareLink } from '../share/ShareLink'
import { ReasonedButton } from './TalkFields'
import { isAsShown } from './useShopTalk'

/** What travels and what does not; kept equal to `proposedLayout`. */
const TRAVELS =
  'What travels: the drawing with its variants, the people with their sizes, the belts, the rules it is checked against, the names of job, car and customer, and who shows it. What stays here: notes and revisions, what was measured on the car, the histories of belts, photos, what welding may be off by, points for tapes, and what was said before.'

const Sending = (props: { readonly shown: ShownEntry; readonly isOpenAtFirst: boolean }): ReactElement => {
  const layout = useApp((state) => state.layout)
  const { id, to } = props.shown
  const text = proposalText(layout, id) ?? ''
  const name = layoutFileName(layout).replace(/\.layout\.json$/, '.proposal.json')
  return (
    <details className="send-proposal" open={props.isOpenAtFirst}>
      <summary>Send it to {to.trim() === '' ? 'the customer' : to}</summary>
      <p className="hint">{TRAVELS}</p>
      <ShareLink kind="proposal" text={text} subject={`Proposal${to.trim() === '' ? '' : ` for ${to}`}`} />
      <button type="button" onClick={() => download(text, name)}>
        Save as a file to send
      </button>
    </details>
  )
}

/** Puts the drawing, with its variants, before the customer: recorded with day, names and fingerprints, then sent or talked over here. */
export const ShowForm = (props: { readonly shown: ShownEntry | null }): ReactElement => {
  const { shown } = props
  const layout = useApp((state) => state.layout)
  const { edit } = useActions()
  const [typedBy, setBy] = useState<string | null>(null)
  const [typedTo, setTo] = useState<string | null>(null)
  const by = typedBy ?? layout.job.preparedBy
  const to = typedTo ?? layout.job.customer
  // What was shown just now is most likely to be sent next.
  const [justShownId, setJustShownId] = useState<string | null>(null)
  const isCurrent = isAsShown(layout, shown)
  const show = (): void => {
    const variants = reviewedVariantsOf(layout)
    const id = uniqueId()
    edit(`Show the proposal to ${to.trim() === '' ? 'the customer' : to.trim()}`, (before) =>
      withShown(before, { id, date: today(), by: by.trim(), to: to.trim(), variants }),
    )
    setJustShownId(id)
  }
  return (
    <section className="customer-section no-print" aria-label="Show to the customer">
      <h2>Show to the customer</h2>
      <p>
        {shown === null
          ? 'Not shown yet.'
          : `Shown to ${shown.to === '' ? 'the customer' : shown.to} by ${shown.by} on ${shown.date}${isCurrent ? ', as drawn now.' : '. The drawing has changed since.'}`}
      </p>
      <div className="field-grid">
        <TextField label="Shown by" value={by} maxLength={TEXT_LENGTHS.name} onCommit={setBy} />
        <TextField label="Shown to" value={to} maxLength={TEXT_LENGTHS.name} onCommit={setTo} />
      </div>
      <ReasonedButton
        words={shown === null ? 'Show to the customer' : 'Show again as drawn now'}
        missing={by.trim() === '' ? 'Say who shows it.' : null}
        isPrimary={!isCurrent}
        onPress={show}
      />
      {shown !== null && isCurrent ? (
        <Sending key={shown.id} shown={shown} isOpenAtFirst={shown.id === justShownId} />
      ) : null}
    </section>
  )
}
