import { useRef, type ReactElement } from 'react'

/** A button that has somebody pick a file, the same one again too, or take a photo. */
export const FileButton = (props: {
  readonly words: string
  /** What the file is for, to a reader. */
  readonly label: string
  readonly testId: string
  readonly onPick: (file: File) => Promise<unknown> | void
  /** What the browser is asked to offer; layouts and their like unless this says otherwise. */
  readonly accept?: string
  /** Has the device take a photo, where it has a camera. */
  readonly isCamera?: boolean
  readonly isBusy?: boolean
  /** Asks in another way where there is one. */
  readonly onAsk?: () => Promise<unknown>
}): ReactElement => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button
        type="button"
        disabled={props.isBusy === true}
        onClick={() => (props.onAsk === undefined ? input.current?.click() : void props.onAsk())}
      >
        {props.words}
      </button>
      <input
        ref={input}
        type="file"
        className="visually-hidden"
        tabIndex={-1}
        aria-label={props.label}
        data-testid={props.testId}
        accept={props.accept ?? '.json,application/json'}
        {...(props.isCamera === true ? { capture: 'environment' as const } : {})}
        onChange={({ currentTarget }) => {
          const picked = currentTarget.files?.[0]
          // Emptied so that picking the same file again is noticed.
          currentTarget.value = ''
          if (picked !== undefined) void props.onPick(picked)
        }}
      />
    </>
  )
}
