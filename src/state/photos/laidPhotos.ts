import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Photo } from '../../domain/measure/photo/photo'
import { calibrated, type PictureMap } from '../../domain/measure/photo/pictureMap'
import {
  type Laid,
  laidPlan,
  laidSquarely,
  type RectifiedPlan,
  rectifiedPlan,
} from '../../domain/measure/photo/rectified'
import { failureWords } from '../worker/workerMessages'
import type { AskPictures } from './askPictures'
import type { Pictures } from './pictures'

/** What one photo is painted with. */
interface Levels {
  /** Of what picture, and how straightened: another key is another picture to paint. */
  readonly key: string
  readonly levels: readonly ImageBitmap[]
  /** Null: painted as it is. */
  readonly plan: RectifiedPlan | null
}

/** A photo ready to be painted: the picture in its sizes, and how the first of them lies on the drawing. */
interface LaidPhoto {
  readonly levels: readonly ImageBitmap[]
  readonly laid: Laid
}

interface LaidState {
  readonly byPhoto: Readonly<Record<string, Levels>>
  /** Why a photo cannot be painted, in words. */
  readonly failures: Readonly<Record<string, string>>
}

/** The photos under the drawing as they are painted; straightening one takes a moment, meanwhile it is not there. */
export interface LaidPhotos {
  readonly state: Pick<StoreApi<LaidState>, 'getState' | 'getInitialState' | 'subscribe'>
  /** Which photos are to be painted from now on; all others are let go. */
  readonly show: (photos: readonly Photo[]) => void
  /** A photo as it is painted now; null while it has no scale or is still being made ready. */
  readonly of: (photo: Photo, state: LaidState) => LaidPhoto | null
}

interface Wanted {
  readonly photo: Photo
  readonly key: string
  readonly map: PictureMap
  readonly plan: RectifiedPlan | null
}

const wantedOf = (photo: Photo): Wanted | null => {
  const found = calibrated(photo)
  if (!found.ok) return null
  const map = found.value
  if (map.isSquare) return { photo, key: photo.pictureId, map, plan: null }
  const plan = rectifiedPlan(photo, map)
  const key = JSON.stringify([photo.pictureId, map.toPicture, plan])
  return plan === null ? null : { photo, key, map, plan }
}

/** Without one of its fields. */
const without = <Value>(all: Readonly<Record<string, Value>>, id: string): Readonly<Record<string, Value>> =>
  Object.fromEntries(Object.entries(all).filter(([other]) => other !== id))

export const createLaidPhotos = (pictures: Pictures, ask: AskPictures): LaidPhotos => {
  const state = createStore<LaidState>(() => ({ byPhoto: {}, failures: {} }))
  const wanted = new Map<string, Wanted>()
  const letGo = (photoId: string): void => {
    for (const level of state.getState().byPhoto[photoId]?.levels ?? []) level.close()
    state.setState(({ byPhoto, failures }) => ({
      byPhoto: without(byPhoto, photoId),
      failures: without(failures, photoId),
    }))
  }
  const isStillWanted = ({ photo, key }: Wanted): boolean => wanted.get(photo.id)?.key === key
  const make = async (want: Wanted): Promise<void> => {
    const { photo, key, map, plan } = want
    const picture = await pictures.read(photo.pictureId)
    if (picture === undefined || !isStillWanted(want)) return
    const answer = await ask({ kind: 'lay', picture, straighten: plan === null ? null : { map, plan } })
    if (answer.kind !== 'laid') throw new Error('the picture could not be made ready')
    const { levels } = answer
    if (isStillWanted(want))
      state.setState(({ byPhoto }) => ({ byPhoto: { ...byPhoto, [photo.id]: { key, levels, plan } } }))
    else for (const level of levels) level.close()
  }
  const begin = (want: Wanted): void => {
    wanted.set(want.photo.id, want)
    state.setState(({ failures }) => ({ failures: without(failures, want.photo.id) }))
    make(want).catch((error: unknown) => {
      if (!isStillWanted(want)) return
      // Tried again when it is asked for anew.
      wanted.delete(want.photo.id)
      state.setState(({ failures }) => ({ failures: { ...failures, [want.photo.id]: failureWords(error) } }))
    })
  }
  return {
    state,
    show: (photos) => {
      const next = photos.flatMap((photo) => wantedOf(photo) ?? [])
      for (const id of wanted.keys())
        if (!next.some(({ photo, key }) => photo.id === id && key === wanted.get(id)?.key)) {
          wanted.delete(id)
          letGo(id)
        }
      for (const want of next) if (!wanted.has(want.photo.id)) begin(want)
    },
    of: (photo, { byPhoto }) => {
      const want = wantedOf(photo)
      const levels = byPhoto[photo.id]
      if (want === null || levels?.key !== want.key) return null
      return {
        levels: levels.levels,
        laid: levels.plan === null ? laidSquarely(want.map) : laidPlan(levels.plan),
      }
    },
  }
}
