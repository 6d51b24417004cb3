import { useEffect, useState, type ReactElement } from 'react'
import type { KeptLayout as RecoveredLayout } from '../state/keeping/keeping'
import { pageKeeping } from '../state/keeping/pageKeeping'
import { useActions, useAppStore } from '../state/react'

const nameOf = ({ jobName }: RecoveredLayout): string => (jobName === '' ? 'Unnamed layout' : jobName)

const timeText = ({ savedAtMs, isOpenElsewhere }: RecoveredLayout): string => {
  const time =
    savedAtMs === 0
      ? 'kept some time ago'
      : `kept ${new Date(savedAtMs).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}`
  return isOpenElsewhere ? `${time}, open in another tab` : time
}

const RecoveredItem = (props: {
  readonly layout: RecoveredLayout
  readonly onOpen: () => void
  readonly onRemove: () => void
}): ReactElement => {
  const { layout } = props
  return (
    <li className="recovered">
      <button type="button" onClick={props.onOpen}>
        <strong>{nameOf(layout)}</strong>
        <small>{timeText(layout)}</small>
      </button>
      {layout.isOpenElsewhere ? null : (
        <button
          type="button"
          className="recovered-remove"
          aria-label={`Remove ${nameOf(layout)}, ${timeText(layout)}`}
          onClick={props.onRemove}
        >
          Remove
        </button>
      )}
    </li>
  )
}

/** Layouts that other tabs kept, newest first; nothing where there are none. Opening one is a step that undo takes back. */
export const RecoveredLayouts = (props: { readonly onDone: () => void }): ReactElement | null => {
  const store = useAppStore()
  const { notify } = useActions()
  const [layouts, setLayouts] = useState<readonly RecoveredLayout[]>([])
  useEffect(() => {
    let isWanted = true
    void pageKeeping.list().then((list) => {
      if (isWanted) setLayouts((list ?? []).filter(({ isOpenHere }) => !isOpenHere))
    })
    return () => {
      isWanted = false
    }
  }, [])
  const remove = async (layout: RecoveredLayout): Promise<void> => {
    if (!(await pageKeeping.remove(layout.id))) {
      notify(
        'problem',
        `${nameOf(layout)} could not be removed: it is open in another tab, or the browser refused.`,
      )
      return
    }
    setLayouts((before) => before.filter(({ id }) => id !== layout.id))
  }
  if (layouts.length === 0) return null
  return (
    <>
      <h2 className="menu-heading">Recovered layouts</h2>
      <ul className="menu-list" aria-label="Recovered layouts">
        {layouts.map((layout) => (
          <RecoveredItem
            key={layout.id}
            layout={layout}
            onOpen={() => {
              void pageKeeping.open(store, layout.id).then(props.onDone)
            }}
            onRemove={() => void remove(layout)}
          />
        ))}
      </ul>
    </>
  )
}
