import { createStore, type StoreApi } from 'zustand/vanilla'
import type { TakenPicture } from '../../domain/layout/edit/changePhotos'
import type { PictureSize } from '../../domain/measure/photo/photo'
import { err, ok, type Result } from '../../domain/result'
import { uniqueId } from '../uniqueId'
import { failureWords } from '../worker/workerMessages'
import type { AskPictures } from './askPictures'
import type { PictureAnswer } from './pictureMessages'
import type { PictureStorage } from './pictureStorage'

/** A picture of a layout on this device. */
export type KeptPicture =
  | { readonly kind: 'looking' }
  | { readonly kind: 'here'; readonly picture: Blob }
  /** Chosen on another device, or the browser's store was emptied. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'failed'; readonly message: string }

/** What became of a file: the picture as the layout names it, and what is to be said about it. */
interface TakenIn {
  readonly picture: TakenPicture
  readonly said: string
}

/** Larger than any camera's file; a bigger one is something else. Our judgement. */
const LARGEST_FILE_BYTES = 120_000_000

/** Names in a layout are cut to what it may hold. */
const MOST_NAME = 200

const AGAIN = 'Choose a photo as JPEG or PNG.'

const refusal = (name: string, { problem, from }: Extract<PictureAnswer, { kind: 'refused' }>): string => {
  switch (problem) {
    case 'heic':
      return `${name} is a HEIC picture, which this browser cannot read. Set the phone’s camera to JPEG (“most compatible”), or save a copy as JPEG, and choose that.`
    case 'unreadable':
      return `${name} is damaged or no picture that this browser can read. ${AGAIN}`
    case 'too-large':
      return `${name} says that it has ${from?.widthPx ?? 0} by ${from?.heightPx ?? 0} pixels, more than any phone’s camera makes. Save it smaller and choose that.`
    case 'too-small':
      return `${name} has only ${from?.widthPx ?? 0} by ${from?.heightPx ?? 0} pixels, too few to trace on. Choose the photo itself, not a thumbnail of it.`
  }
}

const inWords = ({ widthPx, heightPx }: PictureSize): string => `${widthPx} by ${heightPx}`

const keptWords = (name: string, size: PictureSize, from: PictureSize): string =>
  [
    `${name} is kept on this device`,
    from.widthPx === size.widthPx && from.heightPx === size.heightPx
      ? ` with its ${inWords(size)} pixels`
      : `, made smaller from ${inWords(from)} to ${inWords(size)} pixels`,
    '. What the camera wrote beside the picture, such as where it was taken, was left out.',
  ].join('')

/** The pictures of this device: taken in from files, found again by their ids. */
export interface Pictures {
  readonly state: Pick<
    StoreApi<Readonly<Record<string, KeptPicture>>>,
    'getState' | 'getInitialState' | 'subscribe'
  >
  /** Looks for a picture once; `state` then says what came of it. */
  readonly want: (pictureId: string) => void
  /** Reads, shrinks and keeps a picture file. The failure is a sentence. */
  readonly takeIn: (file: File) => Promise<Result<TakenIn, string>>
  /** The picture, or undefined where it is not on this device. */
  readonly read: (pictureId: string) => Promise<Blob | undefined>
  /** All that are kept, whatever layout they are of. */
  readonly ids: () => Promise<readonly string[]>
  /** Removes pictures for good. */
  readonly remove: (pictureIds: readonly string[]) => Promise<void>
}

export const createPictures = (storage: PictureStorage, ask: AskPictures): Pictures => {
  const state = createStore<Readonly<Record<string, KeptPicture>>>(() => ({}))
  const put = (pictureId: string, kept: KeptPicture): void => state.setState({ [pictureId]: kept })
  const keep = async (
    file: File,
    { picture, size, from }: Extract<PictureAnswer, { kind: 'taken' }>,
  ): Promise<Result<TakenIn, string>> => {
    const pictureId = uniqueId()
    const name = file.name.slice(0, MOST_NAME)
    put(pictureId, { kind: 'here', picture })
    const taken = { pictureId, name, size }
    try {
      await storage.write(pictureId, picture)
      return ok({ picture: taken, said: keptWords(name, size, from) })
    } catch {
      const said = `${name} is on this page, but this browser could not keep it: it has to be chosen again after the page was closed. Free some space on the device if it is full.`
      return ok({ picture: taken, said })
    }
  }
  return {
    state,
    want: (pictureId) => {
      if (state.getState()[pictureId] !== undefined) return
      put(pictureId, { kind: 'looking' })
      storage
        .read(pictureId)
        .then((picture) =>
          put(pictureId, picture === undefined ? { kind: 'missing' } : { kind: 'here', picture }),
        )
        .catch((error: unknown) => put(pictureId, { kind: 'failed', message: failureWords(error) }))
    },
    takeIn: async (file) => {
      const { name } = file
      if (file.size > LARGEST_FILE_BYTES) return err(`${name} is too large to be a photo. ${AGAIN}`)
      try {
        const answer = await ask({ kind: 'take-in', file })
        if (answer.kind === 'taken') return await keep(file, answer)
        return err(answer.kind === 'refused' ? refusal(name, answer) : `${name} could not be read. ${AGAIN}`)
      } catch (error) {
        return err(
          `${name} could not be read: ${failureWords(error)}. Try a smaller picture or another browser.`,
        )
      }
    },
    read: async (pictureId) => {
      const kept = state.getState()[pictureId]
      return kept?.kind === 'here' ? kept.picture : await storage.read(pictureId)
    },
    ids: storage.ids,
    remove: async (pictureIds) => {
      for (const pictureId of pictureIds) {
        await storage.remove(pictureId)
        if (state.getState()[pictureId] !== undefined) put(pictureId, { kind: 'missing' })
      }
    },
  }
}
