import type { ReactElement } from 'react'

/** What a panel says of work that is done beside the page. */
export interface WorkWords {
  /** What is going on, such as "Counting". */
  readonly doing: string
  readonly nothingYet: string
  /** Of an answer that holds for the layout as drawn. */
  readonly done: string
  readonly stale: string
  readonly start: string
  /** What the bar counts, for a reader. */
  readonly counted: string
}

/** Why a worker failed, to stand within a sentence. */
export const failureClause = (message: string): string => message.replace(/\.$/, '')

/** How such work stands. */
export interface WorkView {
  readonly running: { readonly done: number; readonly total: number } | null
  /** The answer in view, which may be stale. */
  readonly answer: 'none' | 'fresh' | 'stale'
  /** Why the last run came to no answer, in words; null when it did. */
  readonly ended: { readonly words: string; readonly didFail: boolean } | null
  readonly start: () => void
  readonly cancel: () => void
}

const statusText = ({ running, answer, ended }: WorkView, words: WorkWords): string => {
  if (running !== null)
    return answer === 'stale'
      ? `${words.doing} … The figures below are of the layout before.`
      : `${words.doing} …`
  if (ended !== null) return ended.words
  return { none: words.nothingYet, fresh: words.done, stale: words.stale }[answer]
}

/** How work beside the page stands, and the ways to begin it, to call it off and to try again. */
export const WorkStatus = (props: {
  readonly view: WorkView
  readonly words: WorkWords
  readonly testId: string
  readonly canStart?: boolean
}): ReactElement => {
  const { view, words, testId, canStart = true } = props
  const { running } = view
  return (
    <div
      className="work-status"
      data-testid={testId}
      data-stale={view.answer === 'stale' ? 'true' : undefined}
    >
      <p aria-live="polite">{statusText(view, words)}</p>
      {running === null ? (
        <button type="button" className="primary" disabled={!canStart} onClick={view.start}>
          {view.ended?.didFail === true ? 'Try again' : words.start}
        </button>
      ) : (
        <>
          {running.total === 0 ? null : (
            <small className="number">
              {running.done} of {running.total}
            </small>
          )}
          <progress
            aria-label={words.counted}
            value={running.done}
            max={running.total === 0 ? 1 : running.total}
          />
          <button type="button" onClick={view.cancel}>
            Cancel
          </button>
        </>
      )}
    </div>
  )
}

/** An answer below its status; framed where the layout has changed since. */
export const WorkAnswer = (props: {
  readonly view: WorkView
  readonly children: ReactElement | readonly ReactElement[]
}): ReactElement => (
  <div className="work-answer" data-stale={props.view.answer === 'stale' ? 'true' : undefined}>
    {props.children}
  </div>
)
