import { useRef, type ReactElement } from 'react'

/** What the browser is asked to offer; whatever is picked is looked at by its content. */
const PICTURES = 'image/*,.heic,.heif'

/** A button that has somebody choose a picture file, or take a photo where the device has a camera. */
export const PictureButton = (props: {
  readonly words: string
  readonly from: 'files' | 'camera'
  readonly testId: string
  readonly isBusy: boolean
  readonly onPick: (file: File) => void
}): ReactElement => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" disabled={props.isBusy} onClick={() => input.current?.click()}>
        {props.words}
      </button>
      <input
        ref={input}
        type="file"
        className="visually-hidden"
        tabIndex={-1}
        aria-label={props.words}
        data-testid={props.testId}
        accept={PICTURES}
        {...(props.from === 'camera' ? { capture: 'environment' as const } : {})}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0]
          // Emptied so that picking the same file again is noticed.
          if (file !== undefined) props.onPick(file)
          currentTarget.value = ''
        }}
      />
    </>
  )
}
