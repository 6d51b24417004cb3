import type { ReactElement } from 'react'
import { agreementOf, shownById } from '../../domain/layout/agreement/agreement'
import { fingerprintCode } from '../../domain/layout/agreement/fingerprint'
import type { Layout } from '../../domain/layout/document/layout'
import type { ReviewEntry } from '../../domain/layout/document/review'
import { agreementText } from '../../domain/layout/wording/agreementText'
import { listed, plainPartName } from '../../domain/layout/wording/plainNames'
import { useApp } from '../../state/react'

const nameThen = (layout: Layout, shownId: string, variantId: string): string =>
  shownById(layout, shownId)?.variants.find((variant) => variant.variantId === variantId)?.name ?? ''

/** One entry as one sentence; the words somebody typed come after it. */
const entryWords = (entry: ReviewEntry, layout: Layout): string => {
  if (entry.kind === 'shown') {
    const variants = entry.variants.map(
      ({ name, fingerprint }) => `${name === '' ? 'the drawing' : name} ${fingerprintCode(fingerprint)}`,
    )
    return `${entry.by} showed ${listed(variants)} to ${entry.to === '' ? 'the customer' : entry.to}`
  }
  const name = nameThen(layout, entry.shownId, entry.variantId)
  const of = name === '' ? '' : ` (${name})`
  if (entry.kind === 'comment') return `${entry.by} about ${plainPartName(entry.partId, layout)}${of}`
  const code = fingerprintCode(entry.fingerprint)
  const told = entry.toldBroken === undefined ? '' : `; told of ${entry.toldBroken.length} broken`
  return `${entry.by} ${entry.kind === 'agreed' ? 'agreed to' : 'asked for a change of'} ${name === '' ? 'the drawing' : name} ${code}${told}`
}

/** Where the talk has got to, in one line. */
export const TalkState = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  return (
    <p data-testid="agreement" role="status">
      <b>{agreementText(agreementOf(layout), layout)}</b>
    </p>
  )
}

/** All that was shown and said, the newest first. */
export const TalkHistory = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const reviews = layout.reviews ?? []
  return (
    <section className="customer-section" aria-label="What was said so far">
      <h2>What was said so far</h2>
      {reviews.length === 0 ? (
        <p>Nothing yet.</p>
      ) : (
        <>
          <ol className="said-list" reversed>
            {reviews.toReversed().map((entry) => (
              <li key={entry.id} className="said">
                <p>
                  {entry.date}: {entryWords(entry, layout)}
                </p>
                {entry.kind === 'shown' || entry.text === '' ? null : (
                  <p className="said-text">{entry.text}</p>
                )}
              </li>
            ))}
          </ol>
          <p className="hint">
            Entries are only ever added. Undo takes the last one back while this page is open.
          </p>
        </>
      )}
    </section>
  )
}
