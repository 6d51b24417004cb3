import type { ReactElement } from 'react'
import { today } from '../../state/today'
import { type Conversation, typedKey } from './conversation'
import { ReasonedButton, TalkName, TalkText } from './TalkFields'

/** A question or a remark about a part, or about the whole. */
export const CommentForm = (props: {
  readonly talk: Conversation
  readonly variantId: string
  readonly partId: string
  /** What it is about, in words. */
  readonly about: string
}): ReactElement => {
  const { talk, variantId, partId, about } = props
  const key = typedKey(variantId, partId)
  const text = (talk.typed[key] ?? '').trim()
  const by = talk.name.trim()
  const missing =
    talk.full ?? (text === '' ? 'Write something first.' : by === '' ? 'Say who you are first.' : null)
  const add = (): void => {
    talk.say({ kind: 'comment', date: today(), by, variantId, partId, text })
    talk.type(key, '')
  }
  return (
    <div className="comment-form">
      <TalkText talk={talk} about={key} label={`Question or remark about ${about}`} />
      <TalkName talk={talk} />
      <ReasonedButton words="Add" missing={missing} onPress={add} />
    </div>
  )
}
