import { useRef, type ReactElement } from 'react'

/** A button that has the builder pick a file, the same one again too. */
export const FileButton = (props: {
  readonly words: string
  /** What the file is for, to a reader. */
  readonly label: string
  readonly testId: string
  readonly onPick: (file: File) => Promise<unknown>
  /** Asks in another way where there is one. */
  readonly onAsk?: () => Promise<unknown>
}): ReactElement => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button
        type="button"
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
        accept=".json,application/json"
        onChange={({ currentTarget }) => {
          const picked = currentTarget.files?.[0]
          if (picked === undefined) return
          void props.onPick(picked).then(() => {
            // Emptied so that picking the same file again is noticed.
            currentTarget.value = ''
          })
        }}
      />
    </>
  )
}
