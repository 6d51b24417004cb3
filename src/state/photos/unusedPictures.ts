import type { Layout } from '../../domain/layout/document/layout'
import type { History } from '../history'
import { pageKeeping } from '../keeping/pageKeeping'
import type { AppStore } from '../store'
import type { Pictures } from './pictures'

/** What is kept, in the bin too; null when the browser does not say. */
type KeptTexts = () => Promise<readonly { readonly text: string }[] | null>

/** The pictures that a page could still bring back by undo and redo. */
const picturesOfHistory = ({ past, present, future }: History<Layout>): ReadonlySet<string> =>
  new Set(
    [present, ...past.map(({ document }) => document), ...future.map(({ document }) => document)].flatMap(
      ({ photos = [] }) => photos.map(({ pictureId }) => pictureId),
    ),
  )

/**
 * Of the given pictures those that no kept layout names, in the bin or out of it, and no undo of this page can bring back. Ids are
 * random: one that stands in a text is meant by it. Null when the browser does not say what it keeps: then all may be needed.
 */
export const unusedPictures = async (
  store: AppStore,
  pictureIds: readonly string[],
  kept: KeptTexts = pageKeeping.list,
): Promise<readonly string[] | null> => {
  const layouts = await kept()
  if (layouts === null) return null
  const inReach = picturesOfHistory(store.state.getState().history)
  return pictureIds.filter((id) => !inReach.has(id) && !layouts.some(({ text }) => text.includes(id)))
}

/**
 * Removes those of the given pictures that are unused at this very moment: a layout that names one may have been opened since somebody
 * looked. Which were removed; null when the browser does not say what it keeps, and nothing was.
 */
export const removeUnused = async (
  store: AppStore,
  pictureIds: readonly string[],
  pictures: Pick<Pictures, 'remove'>,
  kept: KeptTexts = pageKeeping.list,
): Promise<readonly string[] | null> => {
  const unused = await unusedPictures(store, pictureIds, kept)
  if (unused !== null) await pictures.remove(unused)
  return unused
}
