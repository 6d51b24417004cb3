import { createStore } from 'zustand/vanilla'
import { pageWorker } from '../worker/pageWorker'
import { askPictures } from './askPictures'
import { createLaidPhotos } from './laidPhotos'
import type { PictureAnswer, PictureQuestion } from './pictureMessages'
import { createPictures } from './pictures'
import { browserPictures } from './pictureStorage'

const ask = askPictures(
  pageWorker<PictureQuestion, PictureAnswer>(
    () => new Worker(new URL('./picture.worker.ts', import.meta.url), { type: 'module' }),
  ),
)

/** The pictures of this device. */
export const pagePictures = createPictures(browserPictures(), ask)

/** The photos as the drawing paints them. */
export const pageLaidPhotos = createLaidPhotos(pagePictures, ask)

/** How strongly a photo is seen while its slider is still being moved; the layout learns it when the slider is let go. */
export const slidOpacity = createStore<{ readonly photoId: string; readonly opacity: number } | null>(
  () => null,
)
