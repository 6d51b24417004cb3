import { type ReactElement, useState } from 'react'
import type { Update } from '../../state/offline/offline'
import { pageOffline, unfinishedEntry } from '../../state/offline/pageOffline'
import { useApp, useKept } from '../../state/react'

const WORDS: Readonly<Record<Exclude<Update, 'none'>, string>> = {
  ready:
    'A newer Tabwright is ready. Taking it loads the page anew: the layout stays as it is, the steps that undo knows do not.',
  'unfinished-entry':
    'Something typed on this page is not part of the layout yet and would be gone after loading anew. Enter it first, or take the newer one all the same.',
  taking: 'Loading the newer Tabwright …',
  'taken-elsewhere':
    'Another tab has taken a newer Tabwright. This one goes on as it was until you load it anew: the layout stays then, the steps that undo knows do not.',
}

const show = async (): Promise<void> => {
  const entry = await unfinishedEntry()
  entry?.scrollIntoView({ block: 'center' })
  entry?.focus()
}

/** Offers a newer version; nothing is taken before the builder says so. Waits while something is dragged, so that nothing jumps. */
export const UpdateBar = (): ReactElement | null => {
  const { update } = useKept(pageOffline.state)
  const isDragging = useApp((state) => state.gesture !== null)
  const [isLater, setLater] = useState(false)
  const isOffer = update === 'ready' || update === 'unfinished-entry'
  if (update === 'none' || isDragging || (isLater && isOffer)) return null
  return (
    <div className="update-bar no-print" role="status" data-testid="update-bar">
      <p>{WORDS[update]}</p>
      {update === 'ready' ? (
        <>
          <button type="button" className="primary" onClick={() => void pageOffline.take('stay')}>
            Take it now
          </button>
          <button type="button" onClick={() => setLater(true)}>
            Later
          </button>
        </>
      ) : null}
      {update === 'unfinished-entry' ? (
        <>
          <button type="button" onClick={() => void show()}>
            Show what is typed
          </button>
          <button type="button" onClick={() => void pageOffline.take('evenUnfinished')}>
            Take it all the same
          </button>
        </>
      ) : null}
      {update === 'taken-elsewhere' ? (
        <button type="button" onClick={() => void pageOffline.take('stay')}>
          Load anew
        </button>
      ) : null}
    </div>
  )
}
