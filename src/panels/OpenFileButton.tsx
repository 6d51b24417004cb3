import type { ReactElement } from 'react'
import { openLayoutFile } from '../state/files'
import { hasFileDialog, openFromDialog } from '../state/linkedFile'
import { useAppStore } from '../state/react'
import { FileButton } from './FileButton'

/** Opens any of our files; where the browser has a dialog of its own a layout can go back to the file it came from. */
export const OpenFileButton = (props: {
  readonly testId: string
  readonly onDone?: () => void
}): ReactElement => {
  const store = useAppStore()
  const finish = (): void => props.onDone?.()
  return (
    <FileButton
      words="Open a file…"
      label="Layout file to open"
      testId={props.testId}
      onPick={(file) => openLayoutFile(store, file).then(finish)}
      {...(hasFileDialog() ? { onAsk: () => openFromDialog(store).then(finish) } : {})}
    />
  )
}
