import { Component, type ReactElement, type ReactNode } from 'react'
import { saveAs } from '../state/linkedFile'
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

  private readonly goBack = (): void => {
    this.props.store.actions.undo()
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
    <p>The layout itself is safe. Save it to a file, then undo the last change or load the page again.</p>
    <p className="failure-detail">What failed: {props.problem}</p>
    <div className="button-row">
      <button type="button" onClick={() => void saveAs(props.store)}>
        Save to a file
      </button>
      <button type="button" onClick={props.onBack}>
        Undo the last change and try again
      </button>
      <button type="button" onClick={() => window.location.reload()}>
        Load the page again
      </button>
    </div>
  </section>
)
