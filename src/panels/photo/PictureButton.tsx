import type { ReactElement } from 'react'
import { FileButton } from '../FileButton'

/** What the browser is asked to offer; whatever is picked is looked at by its content. */
const PICTURES = 'image/*,.heic,.heif'

/** A button that has somebody choose a picture file, or take a photo where the device has a camera. */
export const PictureButton = (props: {
  readonly words: string
  readonly from: 'files' | 'camera'
  readonly testId: string
  readonly isBusy: boolean
  readonly onPick: (file: File) => void
}): ReactElement => (
  <FileButton
    words={props.words}
    label={props.words}
    testId={props.testId}
    accept={PICTURES}
    isCamera={props.from === 'camera'}
    isBusy={props.isBusy}
    onPick={props.onPick}
  />
)
