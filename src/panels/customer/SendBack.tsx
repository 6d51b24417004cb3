import { type ReactElement, useMemo } from 'react'
import { type Answer, answerText } from '../../domain/layout/agreement/answer'
import { download } from '../../state/files'
import { ShareLink } from '../share/ShareLink'

const fileName = (answer: Answer): string => {
  const by = answer.entries.at(-1)?.by ?? ''
  const plain = by
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 40)
  return `${plain === '' ? 'customer' : plain}.answer.json`
}

/** The way of an answer to the workshop: nothing is sent by this page itself. */
export const SendBack = (props: {
  readonly answer: Answer | null
  readonly isOpen: boolean
  readonly onOpen: () => void
  readonly from: string
}): ReactElement => {
  const { answer, isOpen, onOpen, from } = props
  const text = useMemo(() => (answer === null ? '' : answerText(answer)), [answer])
  if (answer === null) return <p>Nothing to send yet: ask something, agree, or ask for a change.</p>
  return (
    <>
      <p>
        What you said is kept on this device only, until you send it. The link or the file holds your{' '}
        {answer.entries.length === 1 ? 'entry' : `${answer.entries.length} entries`} and nothing else; give it
        to {from === '' ? 'the workshop' : from}.
      </p>
      {isOpen ? (
        <>
          <ShareLink kind="answer" text={text} subject="Answer to the proposal" />
          <button type="button" onClick={() => download(text, fileName(answer))}>
            Save as a file to send
          </button>
        </>
      ) : (
        <button type="button" className="primary" onClick={onOpen}>
          Send back
        </button>
      )}
    </>
  )
}
