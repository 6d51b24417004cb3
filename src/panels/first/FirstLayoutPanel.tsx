import { type KeyboardEvent, type ReactElement, useEffect, useId, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { isComplete } from '../../domain/layout/firstLayout/anchorTape'
import { askedPlace } from '../../domain/layout/firstLayout/askedPlace'
import { movedOn, questionStatus, withLeft, withSkipped } from '../../state/firstLayout/guide'
import { useActions } from '../../state/react'
import { EndPage } from './EndPage'
import { QuestionList } from './QuestionList'
import { QuestionPage } from './QuestionPage'
import { type GuideView, useGuide } from './useGuide'

/** What is typed into, in the order of the page; Enter goes from one to the next. */
const TYPED = 'input:not([type="radio"], [type="checkbox"]), textarea'

const Progress = (props: { readonly index: number; readonly count: number }): ReactElement => {
  const { index, count } = props
  const isEnd = index >= count
  return (
    <div className="question-progress">
      <p>{isEnd ? `All ${count} questions` : `Question ${index + 1} of ${count}`}</p>
      <progress max={count} value={index} aria-label="How far the questions have got" />
    </div>
  )
}

const Buttons = (props: { readonly view: GuideView; readonly onNext: () => void }): ReactElement => {
  const { keeper, guide, layout, questions, index } = props.view
  const question = questions[index]
  const isAnswered = question !== undefined && questionStatus(guide, layout, question) === 'answered'
  return (
    <div className="question-buttons">
      <button
        type="button"
        disabled={index === 0}
        onClick={() => keeper.move((now) => movedOn(now, layout, -1))}
      >
        Back
      </button>
      {question === undefined || isAnswered ? null : (
        <button
          type="button"
          title="Keeps the starting value"
          onClick={() => keeper.move((now) => movedOn(withSkipped(now, question.id), layout, 1))}
        >
          Skip<span className="visually-hidden"> and keep the starting value</span>
        </button>
      )}
      {question === undefined ? null : (
        <button type="button" className="primary" onClick={props.onNext}>
          Next
        </button>
      )}
    </div>
  )
}

/**
 * Leaves the field in hand, which takes it over (a finger on a button does not do that on every device). False, with the focus on it,
 * while a field complains: what was typed there is not lost on the way to the next question.
 */
const areTaken = (body: HTMLElement): boolean => {
  const field = document.activeElement
  // What it says about what was typed must be there before going on.
  if (field instanceof HTMLElement && body.contains(field)) flushSync(() => field.blur())
  const refused = body.querySelector<HTMLElement>('[aria-invalid="true"]')
  refused?.focus()
  return refused === null
}

/**
 * Where the focus goes. Enter takes a field over and leads to the next one; from the last to the next question, whose first field then
 * is ready to type in. A field that complains keeps it. Whoever presses a button hears the heading they have come to.
 */
const useFocusOrder = (at: string, onNext: () => void) => {
  const headingRef = useRef<HTMLHeadingElement>(null)
  const bodyRef = useRef<HTMLDivElement>(null)
  const byEnterRef = useRef(false)
  useEffect(() => {
    const field = byEnterRef.current ? bodyRef.current?.querySelector<HTMLElement>(TYPED) : null
    byEnterRef.current = false
    if (bodyRef.current !== null) bodyRef.current.scrollTop = 0
    ;(field ?? headingRef.current)?.focus({ preventScroll: field === null })
  }, [at])
  const onKeyDownCapture = (event: KeyboardEvent<HTMLElement>): void => {
    const field = event.target
    if (event.key !== 'Enter' || event.nativeEvent.isComposing || !(field instanceof HTMLInputElement)) return
    event.preventDefault()
    event.stopPropagation()
    if (!areTaken(event.currentTarget)) return
    const fields = [...event.currentTarget.querySelectorAll<HTMLElement>(TYPED)]
    const following = field.type === 'radio' ? undefined : fields[fields.indexOf(field) + 1]
    if (following !== undefined) return following.focus()
    byEnterRef.current = true
    onNext()
  }
  const onButton = (): void => {
    if (bodyRef.current !== null && areTaken(bodyRef.current)) onNext()
  }
  return { headingRef, bodyRef, onKeyDownCapture, onButton }
}

/** One question at a time beside the live drawing. */
export const FirstLayoutPanel = (): ReactElement => {
  const view = useGuide()
  const { keeper, guide, layout, questions, index } = view
  const { setView } = useActions()
  const [isListOpen, setListOpen] = useState(false)
  const headingId = useId()
  const question = questions[index]
  const onNext = (): void => {
    if (question !== undefined) keeper.move((now) => movedOn(withLeft(now, layout, question), layout, 1))
  }
  const { headingRef, bodyRef, onKeyDownCapture, onButton } = useFocusOrder(guide.at, onNext)
  return (
    <section className="first-layout" aria-label="First layout">
      <div className="question-bar">
        <Progress index={index} count={questions.length} />
        <button type="button" aria-expanded={isListOpen} onClick={() => setListOpen(!isListOpen)}>
          All questions
        </button>
        <button type="button" onClick={() => setView({ side: 'panels' })}>
          Leave
        </button>
      </div>
      <div className="question-body" ref={bodyRef} onKeyDownCapture={onKeyDownCapture}>
        {isListOpen ? <QuestionList view={view} onGo={() => setListOpen(false)} /> : null}
        <div role="group" aria-labelledby={headingId} className="question">
          <h2 id={headingId} ref={headingRef} tabIndex={-1}>
            {question?.title ??
              (isComplete(askedPlace(layout)) ? 'Your layout is complete' : 'No more questions')}
          </h2>
          {question === undefined ? (
            <EndPage view={view} />
          ) : (
            <QuestionPage key={question.id} view={view} question={question} />
          )}
        </div>
      </div>
      <Buttons view={view} onNext={onButton} />
    </section>
  )
}
