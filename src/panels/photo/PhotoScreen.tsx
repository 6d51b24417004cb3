import './photo.css'
import { useState, type ReactElement } from 'react'
import { calibrated } from '../../domain/measure/photo/pictureMap'
import type { Photo } from '../../domain/measure/photo/photo'
import type { KeptPicture } from '../../state/photos/pictures'
import { useActions, useApp, useAppStore } from '../../state/react'
import { ScreenFrame } from '../ScreenFrame'
import { AddPhoto } from './AddPhoto'
import { KeptPictures } from './KeptPictures'
import { PhotoLook } from './PhotoLook'
import { PhotoResult } from './PhotoResult'
import { PhotoSteps } from './PhotoSteps'
import { PictureButton } from './PictureButton'
import { PictureView } from './PictureView'
import { takePictureAgain } from './takePicture'
import { useCrosses } from './useCrosses'
import { usePicture } from './usePicture'

const NONE: readonly Photo[] = []

const WORDS = { side: 'Side', top: 'Top' } as const

const photoName = (photo: Photo): string =>
  `${WORDS[photo.elevation]}: ${photo.name === '' ? photo.id : photo.name}`

const missingWords = (photo: Photo, kept: KeptPicture): string => {
  switch (kept.kind) {
    case 'here':
      return ''
    case 'looking':
      return 'Looking for the picture…'
    case 'missing':
      return `The picture ${photo.name} is not on this device: choose it again. Its crosses and numbers are kept with the layout.`
    case 'failed':
      return `The picture ${photo.name} could not be read from this browser’s store (${kept.message}). Choose it again.`
  }
}

/** In place of a picture that this device does not have. */
const MissingPicture = (props: { readonly photo: Photo; readonly kept: KeptPicture }): ReactElement => {
  const { photo, kept } = props
  const store = useAppStore()
  const [isReading, setReading] = useState(false)
  return (
    <div className="picture-missing">
      <p role="status" data-testid="picture-missing">
        {isReading ? 'Reading…' : missingWords(photo, kept)}
      </p>
      {kept.kind === 'looking' ? null : (
        <PictureButton
          words="Choose it again"
          from="files"
          testId="choose-again"
          isBusy={isReading}
          onPick={(file) => {
            setReading(true)
            void takePictureAgain(store, file, photo).finally(() => setReading(false))
          }}
        />
      )}
    </div>
  )
}

const PhotoEditor = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const kept = usePicture(photo.pictureId)
  const crosses = useCrosses(photo)
  const { setView } = useActions()
  const elevations = useApp((state) => state.view.elevations)
  const isScaled = calibrated(photo).ok
  return (
    <div className="photo-editor">
      <div className="photo-picture">
        {kept.kind === 'here' ? (
          <PictureView photo={photo} picture={kept.picture} crosses={crosses} />
        ) : (
          <MissingPicture photo={photo} kept={kept} />
        )}
      </div>
      <div className="photo-numbers">
        <PhotoSteps photo={photo} crosses={crosses} />
        <PhotoResult photo={photo} crosses={crosses} />
        <PhotoLook photo={photo} />
        <button
          type="button"
          className="primary"
          disabled={!isScaled}
          onClick={() =>
            setView({
              screen: 'drawing',
              elevations: elevations === 'both' ? 'both' : photo.elevation,
            })
          }
        >
          See it under the drawing
        </button>
      </div>
    </div>
  )
}

/** The photos under the drawing: taken in, laid to scale by crosses and measured lengths, and looked after. */
export const PhotoScreen = (): ReactElement => {
  const photos = useApp((state) => state.layout.photos) ?? NONE
  const [chosenId, setChosen] = useState<string | null>(null)
  const photo = photos.find(({ id }) => id === chosenId) ?? photos[0]
  return (
    <ScreenFrame title="Photo">
      <div className="photo-screen">
        <p>
          A photo of the car under the drawing, to scale: put crosses on it, type what you measured, then
          trace tubes and points on the drawing. The picture stays on this device.
        </p>
        {photos.length === 0 ? null : (
          <div className="button-row" role="group" aria-label="Photos of this layout">
            {photos.map((each) => (
              <button
                key={each.id}
                type="button"
                aria-pressed={each.id === photo?.id}
                onClick={() => setChosen(each.id)}
              >
                {photoName(each)}
              </button>
            ))}
          </div>
        )}
        {photo === undefined ? null : <PhotoEditor key={`${photo.id} ${photo.pictureId}`} photo={photo} />}
        <AddPhoto onAdded={setChosen} />
        <KeptPictures />
      </div>
    </ScreenFrame>
  )
}
