import { type ReactElement, useMemo } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { layoutText } from '../../domain/layout/document/layoutText'
import { download, layoutFileName } from '../../state/files'
import { linkedText } from '../../state/share/link'
import { ModalDialog } from './ModalDialog'
import { ShareLink } from './ShareLink'

const nameOf = ({ job }: Layout): string => (job.name === '' ? 'Unnamed layout' : job.name)

/** How a layout is given to somebody else: as a link that holds all of it, or as a file. */
export const ShareDialog = (props: {
  readonly layout: Layout
  readonly onClose: () => void
}): ReactElement => {
  const { layout } = props
  const text = useMemo(() => linkedText(layout), [layout])
  const hasPhotos = (layout.photos ?? []).length > 0
  return (
    <ModalDialog title={`Share ${nameOf(layout)}`} onClose={props.onClose}>
      <p>
        The link holds the whole layout as it is now: job, car, customer, notes, people and their sizes,
        seats, tubes, anchors, belts and their records. It is sent to nobody by this page, and no server sees
        it; whoever has the link has the layout. What is changed later needs a new link.
      </p>
      {hasPhotos ? (
        <p>
          <strong>Photos do not travel in a link.</strong> They stay on this device.
        </p>
      ) : null}
      <ShareLink kind="layout" text={text} subject={nameOf(layout)} />
      <div className="share-file">
        <button type="button" onClick={() => download(layoutText(layout), layoutFileName(layout))}>
          Save as a file to send
        </button>
        <p className="hint">The file is opened with “Open a file…” or by dropping it on the page.</p>
      </div>
    </ModalDialog>
  )
}
