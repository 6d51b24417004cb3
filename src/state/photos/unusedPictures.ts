import type { Layout } from '../../domain/layout/document/layout'
import type { History } from '../history'
import { pageKeeping } from '../keeping/pageKeeping'
import type { AppStore } from '../store'

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
  kept: () => Promise<readonly { readonly text: string }[] | null> = pageKeeping.list,
): Promise<readonly string[] | null> => {
  const layouts = await kept()
  if (layouts === null) return null
  const inReach = picturesOfHistory(store.state.getState().history)
  return pictureIds.filter((id) => !inReach.has(id) && !layouts.some(({ text }) => text.includes(id)))
}
