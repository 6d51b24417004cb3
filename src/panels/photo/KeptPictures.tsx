import { useState, type ReactElement } from 'react'
import { pagePictures } from '../../state/photos/pagePictures'
import { removeUnused, unusedPictures } from '../../state/photos/unusedPictures'
import { useActions, useAppStore } from '../../state/react'

type Found = 'unasked' | 'unknown' | readonly string[]

const plural = (count: number): string => (count === 1 ? '1 picture' : `${count} pictures`)

const words = (found: Found): string => {
  if (found === 'unasked') return ''
  if (found === 'unknown') return 'This browser does not say what it keeps, so nothing can be removed safely.'
  return found.length === 0
    ? 'Every picture on this device is used by a layout that is kept here.'
    : `${plural(found.length)} on this device ${found.length === 1 ? 'is' : 'are'} used by no layout that is kept here. A layout that you saved to a file may use ${found.length === 1 ? 'it' : 'them'}: it would then have to be chosen again.`
}

/** Pictures outlast the photos and layouts they were taken in for; here they are found and, by hand, removed. */
export const KeptPictures = (): ReactElement => {
  const store = useAppStore()
  const { notify } = useActions()
  const [found, setFound] = useState<Found>('unasked')
  const look = async (): Promise<void> => {
    const unused = await pagePictures.ids().then((ids) => unusedPictures(store, ids))
    setFound(unused ?? 'unknown')
  }
  const remove = async (ids: readonly string[]): Promise<void> => {
    const removed = await removeUnused(store, ids, pagePictures)
    setFound(removed === null ? 'unknown' : [])
    if (removed !== null) notify('info', `${plural(removed.length)} removed from this device.`)
  }
  return (
    <details className="kept-pictures">
      <summary>Pictures kept on this device</summary>
      <div className="button-row">
        <button type="button" onClick={() => void look().catch(() => setFound('unknown'))}>
          Look for pictures that no layout uses
        </button>
        {typeof found === 'string' || found.length === 0 ? null : (
          <button
            type="button"
            onClick={() =>
              void remove(found).catch(() =>
                notify('problem', 'Not all pictures could be removed. Try again.'),
              )
            }
          >
            Remove {plural(found.length)}
          </button>
        )}
      </div>
      <p role="status">{words(found)}</p>
    </details>
  )
}
