import type { ReactElement } from 'react'
import { type QuestionStatus, questionStatus } from '../../state/firstLayout/guide'
import type { GuideView } from './useGuide'

const STATUS_WORDS: Readonly<Record<QuestionStatus, string>> = {
  answered: 'answered',
  skipped: 'skipped',
  open: 'not yet',
}

const MARKS: Readonly<Record<QuestionStatus, string>> = { answered: '✓', skipped: '→', open: '·' }

/** Every question with how it stands, to go to in any order. */
export const QuestionList = (props: {
  readonly view: GuideView
  readonly onGo: () => void
}): ReactElement => {
  const { keeper, guide, layout, questions, index } = props.view
  return (
    <ol className="question-list">
      {questions.map((question, at) => {
        const status = questionStatus(guide, layout, question)
        return (
          <li key={question.id}>
            <button
              type="button"
              aria-current={at === index ? 'step' : undefined}
              onClick={() => {
                keeper.move((now) => ({ ...now, at: question.id }))
                props.onGo()
              }}
            >
              <span className="question-mark" data-status={status} aria-hidden="true">
                {MARKS[status]}
              </span>
              <span>
                {at + 1}. {question.title}
              </span>
              <small>{STATUS_WORDS[status]}</small>
            </button>
          </li>
        )
      })}
    </ol>
  )
}
