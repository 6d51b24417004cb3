import { type ReactElement, type ReactNode, useEffect, useRef } from 'react'

/** A dialog over the page that keeps the focus until it is closed; Escape closes it. It is open as long as it is rendered. */
export const ModalDialog = (props: {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
}): ReactElement => {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const shown = dialog.current
    const opener = document.activeElement
    if (shown?.open === false) shown.showModal()
    return () => {
      shown?.close()
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus()
    }
  }, [])
  return (
    <dialog
      ref={dialog}
      className="modal"
      aria-label={props.title}
      onCancel={(event) => {
        // What is open is said by whoever renders it.
        event.preventDefault()
        props.onClose()
      }}
    >
      <div className="modal-head">
        <h2>{props.title}</h2>
        <button type="button" onClick={props.onClose}>
          Close
        </button>
      </div>
      {props.children}
    </dialog>
  )
}
