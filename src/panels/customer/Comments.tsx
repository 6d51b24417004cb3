import type { ReactElement } from 'react'
import type { AnswerEntry } from '../../domain/layout/document/review'
import { plainPartName } from '../../domain/layout/wording/plainNames'
import { CommentForm } from './CommentForm'
import type { Conversation } from './conversation'

const KIND_WORDS: Readonly<Record<AnswerEntry['kind'], string>> = {
  comment: 'asks or remarks',
  agreed: 'agrees',
  'change-asked': 'asks for a change',
}

const aboutWords = (entry: AnswerEntry, talk: Conversation): string => {
  const variant = talk.variants.find(({ id }) => id === entry.variantId)
  const named = variant === undefined || variant.name === '' ? '' : ` (${variant.name})`
  if (entry.kind !== 'comment') return named
  const layout = variant?.layout ?? talk.variants[0]?.layout
  return layout === undefined ? named : ` about ${plainPartName(entry.partId, layout)}${named}`
}

const Entry = (props: { readonly entry: AnswerEntry; readonly talk: Conversation }): ReactElement => {
  const { entry, talk } = props
  const { takeBack } = talk
  const canTakeBack = takeBack !== null && !talk.sentIds.includes(entry.id)
  return (
    <li className="said">
      <p>
        <b>{entry.by}</b> {KIND_WORDS[entry.kind]}
        {aboutWords(entry, talk)}, {entry.date}
      </p>
      {entry.text === '' ? null : <p className="said-text">{entry.text}</p>}
      {canTakeBack ? (
        <button type="button" onClick={() => takeBack(entry.id)}>
          Take back
        </button>
      ) : null}
    </li>
  )
}

/** What was said so far, numbered as the pins on the picture, and a form for what is about the whole. */
export const Comments = (props: {
  readonly talk: Conversation
  readonly variantId: string
}): ReactElement => {
  const { talk, variantId } = props
  return (
    <>
      {talk.said.length === 0 ? (
        <p>Nothing was said so far.</p>
      ) : (
        <ol className="said-list">
          {talk.said.map((entry) => (
            <Entry key={entry.id} entry={entry} talk={talk} />
          ))}
        </ol>
      )}
      {talk.shown === null ? null : (
        <CommentForm talk={talk} variantId={variantId} partId="" about="the whole car" />
      )}
    </>
  )
}
