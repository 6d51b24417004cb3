import { Component, type ReactNode } from 'react'

/** Keeps a layout that cannot be drawn, wherever it came from, from taking the list or the question about it along. */
export class PictureBoundary extends Component<
  { readonly children: ReactNode },
  { readonly hasFailed: boolean }
> {
  override state = { hasFailed: false }

  static getDerivedStateFromError(): { readonly hasFailed: boolean } {
    return { hasFailed: true }
  }

  override render(): ReactNode {
    return this.state.hasFailed ? (
      <span className="hint">This layout could not be drawn.</span>
    ) : (
      this.props.children
    )
  }
}
