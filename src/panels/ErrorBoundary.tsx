import { Component, type ReactElement, type ReactNode } from 'react'
import { emptyLayout } from '../domain/layout/document/empty'
import { saveAs } from '../state/linkedFile'
import { canUndo } from '../state/selectors'
import type { AppStore } from '../state/store'
import { failureWords } from '../state/worker/workerMessages'

interface Props {
  readonly store: AppStore
  readonly part: string
  readonly children: ReactNode
}

/** Keeps a failure in one part of the page from taking the work with it: the layout stays in the store and can be saved. */
export class ErrorBoundary extends Component<Props, { readonly problem: string | null }> {
  override state = { problem: null }

  static getDerivedStateFromError(error: unknown): { readonly problem: string } {
    return { problem: failureWords(error) }
  }

  /** Back by a step; where there is none, because the layout was just opened, away from it to a new one. */
  private readonly goBack = (): void => {
    const { state, actions } = this.props.store
    if (canUndo(state.getState())) actions.undo()
    else actions.openLayout(emptyLayout(), 'Start a new layout')
    this.setState({ problem: null })
  }

  override render(): ReactNode {
    if (this.state.problem === null) return this.props.children
    return <Failure {...this.props} problem={this.state.problem} onBack={this.goBack} />
  }
}

const Failure = (props: Props & { readonly problem: string; readonly onBack: () => void }): ReactElement => (
  <section className="failure" role="alert">
    <h2>{props.part} stopped working</h2>
    <p>
      The layout itself is safe. Save it to a file, then{' '}
      {canUndo(props.store.state.getState())
        ? 'undo the last change'
        : 'leave it as it is under Layouts and start a new one'}{' '}
      or load the page again.
    </p>
    <p className="failure-detail">What failed: {props.problem}</p>
    <div className="button-row">
      <button type="button" onClick={() => void saveAs(props.store)}>
        Save to a file
      </button>
      <button type="button" onClick={props.onBack}>
        {canUndo(props.store.state.getState()) ? 'Undo the last change and try again' : 'Start a new layout'}
      </button>
      <button type="button" onClick={() => window.location.reload()}>
        Load the page again
      </button>
    </div>
  </section>
)
