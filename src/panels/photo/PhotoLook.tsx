import type { ReactElement } from 'react'
import { removePhoto, withPhotoShown } from '../../domain/layout/edit/changePhotos'
import type { Photo } from '../../domain/measure/photo/photo'
import { slidOpacity } from '../../state/photos/pagePictures'
import { useActions, useKept } from '../../state/react'
import { ToggleField } from '../fields/ChoiceField'

/** How strongly a photo is seen; the drawing follows while it is slid, and one undo step is made when it is let go. */
const OpacitySlider = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const { edit } = useActions()
  const slid = useKept(slidOpacity)
  const opacity = slid?.photoId === photo.id ? slid.opacity : photo.opacity
  const keep = (): void => {
    const now = slidOpacity.getState()
    if (now?.photoId !== photo.id) return
    edit('Change how strongly a photo is seen', (layout) =>
      withPhotoShown(layout, photo.id, { opacity: now.opacity }),
    )
    slidOpacity.setState(null, true)
  }
  return (
    <label className="opacity">
      <span>Strength</span>
      <input
        type="range"
        min={0}
        max={100}
        step={5}
        value={Math.round(opacity * 100)}
        aria-valuetext={`${Math.round(opacity * 100)} %`}
        onChange={({ currentTarget }) =>
          slidOpacity.setState({ photoId: photo.id, opacity: Number(currentTarget.value) / 100 }, true)
        }
        onPointerUp={keep}
        onKeyUp={keep}
        onBlur={keep}
      />
    </label>
  )
}

/** What is done to a photo as a whole: shown or not, how strongly, locked, removed. */
export const PhotoLook = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const { edit } = useActions()
  return (
    <div className="photo-look">
      <ToggleField
        label="Shown"
        checked={photo.shown}
        onChange={(shown) =>
          edit(shown ? 'Show a photo' : 'Hide a photo', (layout) =>
            withPhotoShown(layout, photo.id, { shown }),
          )
        }
      />
      <OpacitySlider photo={photo} />
      <ToggleField
        label="Locked"
        checked={photo.locked}
        onChange={(locked) =>
          edit(locked ? 'Lock a photo' : 'Unlock a photo', (layout) =>
            withPhotoShown(layout, photo.id, { locked }),
          )
        }
      />
      <button
        type="button"
        onClick={() => edit(`Remove the photo ${photo.name}`, (layout) => removePhoto(layout, photo.id))}
      >
        Remove this photo
      </button>
    </div>
  )
}
