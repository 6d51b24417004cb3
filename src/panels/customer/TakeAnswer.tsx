import { type ReactElement, useEffect, useState } from 'react'
import { shownById } from '../../domain/layout/agreement/agreement'
import { holdsShown, withPartsOf } from '../../domain/layout/agreement/fingerprint'
import type { Answer } from '../../domain/layout/agreement/answer'
import type { Layout } from '../../domain/layout/document/layout'
import { type AnswerRefusal, withAnswersTaken, withShown } from '../../domain/layout/edit/reviews'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { pickedText } from '../../state/pickedFile'
import { useActions, useApp, useAppStore, useKept } from '../../state/react'
import { arrivedAnswer, putAside } from '../../state/talk/arrivedAnswer'
import { layoutsShown, type ShownFrom } from '../../state/talk/layoutsOfAnswer'
import { answerOpener } from '../../state/talk/openers'
import { FileButton } from '../FileButton'
import { OtherTab } from './OtherTab'

const LARGEST_ANSWER_BYTES = 1_000_000

const refusalWords = (refusal: AnswerRefusal): string => {
  switch (refusal.kind) {
    case 'never-shown':
      return 'It answers to something that was never shown from this layout.'
    case 'unknown-variant':
      return 'It speaks of a variant that was not shown then.'
    case 'said-otherwise':
      return 'An entry of it is here already and says something else: one of the two was altered. Ask for the answer once more.'
    case 'says-nothing':
      return 'An entry of it is by nobody, of no day, or without words.'
    case 'full':
      return `The layout holds ${refusal.most} entries already and takes no more.`
  }
}

/** Whether a decision of the answer was made on another drawing than the one that was shown. */
const isOnOtherDrawing = ({ shown: { id }, entries }: Answer, layout: Layout): boolean => {
  const shown = shownById(layout, id)
  return entries.some(
    (entry) =>
      entry.kind !== 'comment' &&
      shown?.variants.find(({ variantId }) => variantId === entry.variantId)?.fingerprint !==
        entry.fingerprint,
  )
}

/** Of several ways to build the car, the one that an entry speaks of. */
const variantWords = ({ shown }: Answer, variantId: string): string => {
  const name = shown.variants.find((variant) => variant.variantId === variantId)?.name ?? ''
  return name === '' ? '' : ` (${name})`
}

const Said = (props: { readonly answer: Answer }): ReactElement => (
  <ol className="said-list">
    {props.answer.entries.map((entry) => (
      <li key={entry.id} className="said">
        <p>
          <b>{entry.by}</b>{' '}
          {entry.kind === 'comment' ? 'says' : entry.kind === 'agreed' ? 'agrees' : 'asks for a change'}
          {variantWords(props.answer, entry.variantId)}, {entry.date}
        </p>
        {entry.text === '' ? null : <p className="said-text">{entry.text}</p>}
      </li>
    ))}
  </ol>
)

/** The layout with what was shown recorded, also where the record of it is gone but the drawing is there. */
const withRecord = (layout: Layout, { shown }: Answer): Layout =>
  shownById(layout, shown.id) === null && holdsShown(layout, shown)
    ? withShown(layout, withPartsOf(shown, layout))
    : layout

const Warnings = (props: { readonly answer: Answer; readonly layout: Layout }): ReactElement => {
  const { answer, layout } = props
  return (
    <>
      {shownById(layout, answer.shown.id) === null ? (
        <p className="caution" role="alert">
          This layout has no record that it was shown: it was undone, or this is another copy. Its drawing is
          the one that the answer speaks of; adding the answer puts the record back as the answer gives it.
        </p>
      ) : null}
      {isOnOtherDrawing(answer, withRecord(layout, answer)) ? (
        <p className="caution" role="alert">
          The customer looked at another drawing than the one that was shown: something came between. It can
          be added, and will say so; show the drawing again.
        </p>
      ) : null}
    </>
  )
}

/** The answer belongs to what is open: what taking it would add, or why it cannot be taken. */
const Taking = (props: { readonly answer: Answer; readonly layout: Layout }): ReactElement => {
  const { answer, layout } = props
  const { edit } = useActions()
  const taken = withAnswersTaken(withRecord(layout, answer), answer.entries)
  if (!taken.ok) return <p role="alert">{refusalWords(taken.error)} Nothing was added.</p>
  const { added } = taken.value
  if (added.length === 0) return <p>All of it is in the layout already; nothing is added twice.</p>
  return (
    <>
      <Warnings {...props} />
      <button
        type="button"
        className="primary"
        onClick={() => {
          edit(`Add the answer of ${answer.entries[0]?.by ?? 'the customer'}`, (before) => {
            const again = withAnswersTaken(withRecord(before, answer), answer.entries)
            return again.ok ? again.value.layout : before
          })
          putAside()
        }}
      >
        Add to the layout ({added.length === 1 ? '1 entry' : `${added.length} entries`})
      </button>
    </>
  )
}

/** The answer belongs to another layout: which of the kept ones it can be, each to be opened. */
const Elsewhere = (props: { readonly answer: Answer }): ReactElement => {
  const { shown, jobName } = props.answer
  const store = useAppStore()
  const [found, setFound] = useState<readonly ShownFrom[] | null>(null)
  useEffect(() => {
    let isWanted = true
    void pageKeeping.list().then((kept) => {
      if (isWanted) setFound(layoutsShown(kept ?? [], shown).filter(({ isOpenHere }) => !isOpenHere))
    })
    return () => {
      isWanted = false
    }
  }, [shown])
  if (found === null) return <p role="status">Looking for the layout that was shown…</p>
  if (found.length === 0)
    return (
      <p role="alert">
        No layout that is kept on this device was shown so{jobName === '' ? '' : ` (“${jobName}”)`}, or holds
        the drawing that was. Open its file, then the answer once more.
      </p>
    )
  return (
    <>
      <p>It answers to a layout that is not the open one. Open it to add the answer:</p>
      <ul className="plain-cases">
        {found.map(({ id, jobName: name }) => (
          <li key={id}>
            <button
              type="button"
              onClick={() =>
                void pageKeeping
                  .open(store, id)
                  .then((isOpen) => isOpen && store.actions.setView({ screen: 'customer' }))
              }
            >
              Open “{name === '' ? 'Unnamed layout' : name}”
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Takes a customer's answer that came as a link or a file: whose it is, what it says, and which layout it belongs to. */
export const TakeAnswer = (): ReactElement => {
  const { answer } = useKept(arrivedAnswer)
  const layout = useApp((state) => state.layout)
  const store = useAppStore()
  const open = async (file: File): Promise<void> => {
    const what = { what: 'an answer', largestBytes: LARGEST_ANSWER_BYTES }
    const text = await pickedText(store, file, what)
    if (text !== null) answerOpener.open(store, text, file.name)
  }
  return (
    <section className="customer-section no-print" aria-label="Answer of the customer">
      <h2>Answer of the customer</h2>
      {answer === null ? (
        <>
          <p>An answer comes as a link, which opens here, or as a file.</p>
          <FileButton
            words="Open an answer…"
            label="File with an answer"
            testId="answer-file"
            onPick={open}
          />
        </>
      ) : (
        <>
          <Said answer={answer} />
          <OtherTab answer={answer} />
          {shownById(layout, answer.shown.id) !== null || holdsShown(layout, answer.shown) ? (
            <Taking answer={answer} layout={layout} />
          ) : (
            <Elsewhere answer={answer} />
          )}
          <button type="button" onClick={putAside}>
            Put it aside
          </button>
        </>
      )}
    </section>
  )
}
