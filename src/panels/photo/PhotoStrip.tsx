import './photo.css'
import type { ReactElement } from 'react'
import { calibrated } from '../../domain/measure/photo/pictureMap'
import type { Photo } from '../../domain/measure/photo/photo'
import { pageLaidPhotos } from '../../state/photos/pagePictures'
import { pageTracing } from '../../state/trace/trace'
import { useActions, useApp, useKept } from '../../state/react'
import { PhotoLook } from './PhotoLook'
import { TraceControls, TraceStart } from './TraceControls'
import { usePicture } from './usePicture'

const NONE: readonly Photo[] = []

/** Why a shown photo is not seen, or nothing. */
const stateWords = (
  photo: Photo,
  picture: ReturnType<typeof usePicture>['kind'],
  failure: string | undefined,
) => {
  if (picture === 'missing') return 'This picture is not on this device: choose it again.'
  if (picture === 'failed') return 'This picture could not be read from the browser’s store.'
  if (!calibrated(photo).ok) return 'Not to scale yet.'
  return failure === undefined ? '' : `It could not be made ready: ${failure}.`
}

const PhotoRow = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const { setView } = useActions()
  const { kind } = usePicture(photo.pictureId)
  const failure = useKept(pageLaidPhotos.state).failures[photo.id]
  const name = photo.elevation === 'side' ? 'Side photo' : 'Top photo'
  return (
    <div className="photo-strip-row" role="group" aria-label={`${name} ${photo.name}`}>
      <strong>{name}</strong>
      <PhotoLook photo={photo} />
      <button type="button" onClick={() => setView({ screen: 'photo' })}>
        Crosses
      </button>
      <p role="status">{stateWords(photo, kind, failure)}</p>
    </div>
  )
}

/** Photos and tracing beside the drawing. */
export const PhotoStrip = (): ReactElement => {
  const photos = useApp((state) => state.layout.photos) ?? NONE
  const { setView } = useActions()
  const isTracing = useKept(pageTracing.state).kind !== 'off'
  return (
    <section className="photo-strip" aria-label="Photo and tracing">
      {isTracing ? (
        <TraceControls />
      ) : (
        <>
          <div className="photo-strip-row">
            {photos.length === 0 ? (
              <button type="button" onClick={() => setView({ screen: 'photo' })}>
                Add a photo
              </button>
            ) : null}
            <TraceStart />
          </div>
          {photos.map((photo) => (
            <PhotoRow key={photo.id} photo={photo} />
          ))}
        </>
      )}
    </section>
  )
}
