import { useId, useRef, type KeyboardEvent, type ReactElement, type ReactNode } from 'react'

export interface Tab<Id extends string> {
  readonly id: Id
  readonly words: string
  /** A short count or state after the words, read out with them. */
  readonly mark?: string | undefined
  readonly tone?: 'broken' | undefined
}

/** Which key moves to which tab: the arrows go round, Home and End go to the ends. */
const targetIndex = (key: string, index: number, count: number): number | null => {
  switch (key) {
    case 'ArrowRight':
      return (index + 1) % count
    case 'ArrowLeft':
      return (index + count - 1) % count
    case 'Home':
      return 0
    case 'End':
      return count - 1
    default:
      return null
  }
}

/** A row of tabs over one panel; only the current tab is in the tab order, the arrow keys go through the rest. */
export const Tabs = <Id extends string>(props: {
  readonly label: string
  readonly tabs: readonly Tab<Id>[]
  readonly current: Id
  readonly onSelect: (id: Id) => void
  readonly children: ReactNode
}): ReactElement => {
  const id = useId()
  const list = useRef<HTMLDivElement>(null)
  const onKey = (event: KeyboardEvent<HTMLButtonElement>, index: number): void => {
    const target = targetIndex(event.key, index, props.tabs.length)
    const tab = target === null ? undefined : props.tabs[target]
    if (target === null || tab === undefined) return
    event.preventDefault()
    props.onSelect(tab.id)
    list.current?.querySelectorAll('button')[target]?.focus()
  }
  return (
    <div className="tabs">
      <div className="tab-list" role="tablist" aria-label={props.label} ref={list}>
        {props.tabs.map((tab, index) => (
          <button
            key={tab.id}
            type="button"
            role="tab"
            id={`${id}-${tab.id}`}
            aria-selected={tab.id === props.current}
            aria-controls={`${id}-panel`}
            tabIndex={tab.id === props.current ? 0 : -1}
            onClick={() => props.onSelect(tab.id)}
            onKeyDown={(event) => onKey(event, index)}
          >
            {tab.words}
            {tab.mark === undefined ? null : (
              <span className="tab-mark" data-tone={tab.tone}>
                {' '}
                {tab.mark}
              </span>
            )}
          </button>
        ))}
      </div>
      <div
        className="tab-panel"
        role="tabpanel"
        tabIndex={0}
        id={`${id}-panel`}
        aria-labelledby={`${id}-${props.current}`}
      >
        {props.children}
      </div>
    </div>
  )
}
