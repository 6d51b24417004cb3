import { createStore, del, get, keys, set, type UseStore } from 'idb-keyval'

/** Where pictures are kept between visits, each under its id; the browser's own in the app, a map in tests. Any of these may fail. */
export interface PictureStorage {
  /** Undefined when there is none under this id. */
  readonly read: (pictureId: string) => Promise<Blob | undefined>
  readonly write: (pictureId: string, picture: Blob) => Promise<void>
  readonly remove: (pictureId: string) => Promise<void>
  readonly ids: () => Promise<readonly string[]>
}

/** IndexedDB, apart from the layouts and opened at the first use, so that a browser that forbids it fails there. */
export const browserPictures = (): PictureStorage => {
  let opened: UseStore | null = null
  const database = (): UseStore => (opened ??= createStore('tabwright-pictures', 'pictures'))
  return {
    read: async (pictureId) => {
      const kept = await get<unknown>(pictureId, database())
      return kept instanceof Blob ? kept : undefined
    },
    write: (pictureId, picture) => set(pictureId, picture, database()),
    remove: (pictureId) => del(pictureId, database()),
    ids: async () =>
      (await keys<IDBValidKey>(database())).filter((key): key is string => typeof key === 'string'),
  }
}
