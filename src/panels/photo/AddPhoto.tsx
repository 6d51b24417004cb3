import { useEffect, useState, type ReactElement } from 'react'
import type { Elevation } from '../../domain/geometry/plane'
import { COUNTS } from '../../domain/layout/document/limits'
import { LENS_WORDS } from '../../domain/layout/wording/photoWords'
import { isPictureFile, pendingPicture } from '../../state/photos/pendingPicture'
import { useApp, useAppStore, useKept } from '../../state/react'
import { SwitchField } from '../fields/ChoiceField'
import { useMediaQuery } from '../useMediaQuery'
import { PictureButton } from './PictureButton'
import { takeNewPhoto } from './takePicture'

const ELEVATIONS = [
  { value: 'side', words: 'the side' },
  { value: 'top', words: 'above' },
] as const

/** Pictures that are pasted anywhere on the screen. */
const usePaste = (): void => {
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      const file = [...(event.clipboardData?.files ?? [])].find(isPictureFile)
      if (file === undefined) return
      event.preventDefault()
      pendingPicture.setState({ file })
    }
    window.addEventListener('paste', onPaste)
    return () => window.removeEventListener('paste', onPaste)
  }, [])
}

/** Takes one file after the other in; `reading` is the name of the one under way. */
const usePicking = (isFull: boolean, onAdded: (photoId: string) => void) => {
  const store = useAppStore()
  const [reading, setReading] = useState<string | null>(null)
  const isBusy = reading !== null || isFull
  const pick = (file: File, elevation: Elevation): void => {
    if (isBusy) return
    pendingPicture.setState({ file: null })
    setReading(file.name)
    void takeNewPhoto(store, file, elevation)
      .then((photoId) => {
        if (photoId !== null) onAdded(photoId)
      })
      .finally(() => setReading(null))
  }
  return { reading, isBusy, pick }
}

const statusWords = (reading: string | null, isFull: boolean): string => {
  if (reading !== null) return `Reading ${reading}…`
  return isFull
    ? `A layout holds ${COUNTS.photos.max} photos. Remove one first.`
    : 'A picture can be dropped on the page or pasted too.'
}

/** A picture that came without being asked for: what it shows has to be said. */
const Pending = (props: {
  readonly file: File
  readonly isBusy: boolean
  readonly onPick: (file: File, elevation: Elevation) => void
}): ReactElement => (
  <div className="button-row" role="group" aria-label="The picture that came in">
    <p>{props.file.name} shows the car from</p>
    {ELEVATIONS.map(({ value, words }) => (
      <button
        key={value}
        type="button"
        disabled={props.isBusy}
        onClick={() => props.onPick(props.file, value)}
      >
        {words}
      </button>
    ))}
    <button type="button" onClick={() => pendingPicture.setState({ file: null })}>
      Leave it
    </button>
  </div>
)

/** Where a picture comes in: chosen, taken, dropped or pasted. */
export const AddPhoto = (props: { readonly onAdded: (photoId: string) => void }): ReactElement => {
  const isFull = useApp((state) => (state.layout.photos?.length ?? 0) >= COUNTS.photos.max)
  const [elevation, setElevation] = useState<Elevation>('side')
  const hasCamera = useMediaQuery('(pointer: coarse)')
  const { reading, isBusy, pick } = usePicking(isFull, props.onAdded)
  const { file } = useKept(pendingPicture)
  usePaste()
  const pickChosen = (chosen: File): void => pick(chosen, elevation)
  return (
    <section className="photo-add" aria-label="Add a photo">
      {file === null ? null : <Pending file={file} isBusy={isBusy} onPick={pick} />}
      <SwitchField
        label="The picture shows the car from"
        value={elevation}
        choices={ELEVATIONS}
        onChange={setElevation}
      />
      <div className="button-row">
        {hasCamera ? (
          <PictureButton
            words="Take a photo"
            from="camera"
            testId="take-photo"
            isBusy={isBusy}
            onPick={pickChosen}
          />
        ) : null}
        <PictureButton
          words="Choose a picture"
          from="files"
          testId="choose-photo"
          isBusy={isBusy}
          onPick={pickChosen}
        />
      </div>
      <p role="status" className="hint">
        {statusWords(reading, isFull)}
      </p>
      <p className="hint">{LENS_WORDS}</p>
    </section>
  )
}
