import type { Elevation } from '../../domain/geometry/plane'
import {
  addPhoto,
  isSameShape,
  type TakenPicture,
  withPictureAgain,
} from '../../domain/layout/edit/changePhotos'
import type { Photo } from '../../domain/measure/photo/photo'
import { pagePictures } from '../../state/photos/pagePictures'
import type { AppStore } from '../../state/store'

const taken = async (store: AppStore, file: File): Promise<TakenPicture | null> => {
  const result = await pagePictures.takeIn(file)
  if (result.ok) {
    store.actions.notify('info', result.value.said)
    return result.value.picture
  }
  store.actions.notify('problem', result.error)
  return null
}

/** Takes a picture in and lays it under an elevation; the new photo's id, or null when nothing came of it. */
export const takeNewPhoto = async (
  store: AppStore,
  file: File,
  elevation: Elevation,
): Promise<string | null> => {
  const picture = await taken(store, file)
  if (picture === null) return null
  const said = store.state.getState().notice
  store.actions.edit(`Add a ${elevation} photo`, (layout) => addPhoto(layout, elevation, picture))
  // An edit puts good news away; this is about the very edit.
  if (said !== null) store.actions.notify(said.kind, said.text)
  const { photos = [] } = store.state.getState().layout
  return photos.find(({ pictureId }) => pictureId === picture.pictureId)?.id ?? null
}

/** Takes the picture of a photo in again, where it is not on this device. */
export const takePictureAgain = async (store: AppStore, file: File, photo: Photo): Promise<void> => {
  const picture = await taken(store, file)
  if (picture === null) return
  store.actions.edit(`Choose the picture ${photo.name} again`, (layout) =>
    withPictureAgain(layout, photo.id, picture),
  )
  if (!isSameShape(photo.size, picture.size))
    store.actions.notify(
      'problem',
      `${picture.name} has another shape than the picture before, so the crosses were taken away. Put them again, or undo and choose the same picture.`,
    )
}
