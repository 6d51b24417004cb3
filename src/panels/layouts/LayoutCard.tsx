import type { ReactElement } from 'react'
import { LayoutPicture } from '../figure/LayoutPicture'
import { PictureBoundary } from '../share/PictureBoundary'
import { CardMore } from './CardMore'
import { changedText, entryName } from './cardWords'
import type { Entry } from './entries'
import type { ShelfActions } from './useShelfActions'
import { useKeptPicture } from './useKeptPicture'

type Picture = ReturnType<typeof useKeptPicture>['picture']

const PictureOf = (props: { readonly picture: Picture; readonly name: string }): ReactElement => {
  const { picture, name } = props
  if (picture === 'not-looked-at') return <span className="layout-picture" aria-hidden="true" />
  if (picture === 'damaged')
    return <span className="layout-picture layout-damaged">No picture: this text is damaged.</span>
  return (
    <span className="layout-picture">
      <PictureBoundary>
        <LayoutPicture layout={picture.layout} elevation="side" description={`Side view of ${name}`} />
      </PictureBoundary>
    </span>
  )
}

const Marks = (props: { readonly entry: Entry; readonly picture: Picture }): ReactElement => {
  const { entry, picture } = props
  const broken = typeof picture === 'string' ? 0 : (picture.brokenCount ?? 0)
  const marks = [
    entry.isOpenHere ? 'Open here' : '',
    entry.isOpenElsewhere ? 'Open in another tab' : '',
    entry.isOnlyInPage ? 'Not kept: gone when the page closes' : '',
    broken > 0 ? `✕ ${broken} broken` : '',
  ].filter((mark) => mark !== '')
  return (
    <>
      {marks.map((mark) => (
        <span key={mark} className="layout-mark">
          {mark}
        </span>
      ))}
    </>
  )
}

/** One kept layout: its picture and what it is called open it; the rest is behind “More”. */
export const LayoutCard = (props: {
  readonly entry: Entry
  readonly folders: readonly string[]
  readonly isChosen: boolean
  readonly onChoose: (isChosen: boolean) => void
  readonly actions: ShelfActions
}): ReactElement => {
  const { entry, isChosen, onChoose, actions } = props
  const { card, picture } = useKeptPicture(entry.text)
  const name = entryName(entry)
  return (
    <li ref={card} className="layout-card" data-testid={`layout:${entry.id}`} data-open={entry.isOpenHere}>
      <button
        type="button"
        className="layout-open"
        disabled={picture === 'damaged'}
        onClick={() => void actions.open(entry)}
      >
        <PictureOf picture={picture} name={name} />
        <strong>{name}</strong>
        {entry.job.car === '' ? null : <span>{entry.job.car}</span>}
        {entry.job.customer === '' ? null : <span>For {entry.job.customer}</span>}
        <small>{changedText(entry)}</small>
        <Marks entry={entry} picture={picture} />
      </button>
      <div className="layout-foot">
        <label className="layout-choose">
          <input
            type="checkbox"
            checked={isChosen}
            onChange={({ currentTarget }) => onChoose(currentTarget.checked)}
          />
          Choose<span className="visually-hidden"> {name}</span>
        </label>
        <CardMore
          entry={entry}
          layout={typeof picture === 'string' ? null : picture.layout}
          folders={props.folders}
          actions={actions}
        />
      </div>
    </li>
  )
}
