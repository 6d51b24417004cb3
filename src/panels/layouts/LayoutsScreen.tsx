import './layouts.css'
import { type ReactElement, useState } from 'react'
import { ScreenFrame } from '../ScreenFrame'
import { ShareDialog } from '../share/ShareDialog'
import { Bin } from './Bin'
import { ChosenBar } from './ChosenBar'
import { type Entry, foldersOf, inBin, matching, type Order, ordered, outOfBin } from './entries'
import { Examples } from './Examples'
import { Folders } from './Folders'
import { OutcomeLine } from './OutcomeLine'
import { StartRow } from './StartRow'
import { useShelf } from './useShelf'
import { useShelfActions } from './useShelfActions'

const SearchTools = (props: {
  readonly words: string
  readonly onWords: (words: string) => void
  readonly order: Order
  readonly onOrder: (order: Order) => void
}): ReactElement => (
  <div className="layout-search">
    <input
      type="search"
      aria-label="Search layouts by job, car, customer, notes, places and folders"
      placeholder="Search"
      value={props.words}
      onChange={({ currentTarget }) => props.onWords(currentTarget.value)}
    />
    <label className="layout-order">
      Sort by
      <select
        value={props.order}
        onChange={({ currentTarget }) => props.onOrder(currentTarget.value === 'name' ? 'name' : 'changed')}
      >
        <option value="changed">last change</option>
        <option value="name">name</option>
      </select>
    </label>
  </div>
)

const KEPT_HERE =
  'Every layout is kept on this device by itself, in this browser, and nowhere else. Save those that matter to files as well.'

const KEPT_ONLY_IN_PAGE =
  'This browser does not keep everything: what is marked lasts only until the page closes. Save it to files before that.'

const KeptHint = (props: { readonly entries: readonly Entry[] }): ReactElement => {
  const isAnyUnkept = props.entries.some(({ isOnlyInPage }) => isOnlyInPage)
  return isAnyUnkept ? <p>{KEPT_ONLY_IN_PAGE}</p> : <p className="hint">{KEPT_HERE}</p>
}

const Nothing = (props: { readonly isSearch: boolean }): ReactElement => (
  <p>
    {props.isSearch
      ? 'No layout has all of these words. Fewer words find more.'
      : 'Nothing is kept here yet. What you draw is kept by itself from the first change on. Begin with questions, a new layout, a file or an example.'}
  </p>
)

/** Everything kept on this device; open, copy, file away, share, remove and put back. */
export const LayoutsScreen = (): ReactElement => {
  const { shelf, reload } = useShelf()
  const actions = useShelfActions(reload)
  const [words, setWords] = useState('')
  const [order, setOrder] = useState<Order>('changed')
  const [chosenIds, setChosenIds] = useState<ReadonlySet<string>>(new Set())
  const all: readonly Entry[] = typeof shelf === 'string' ? [] : shelf
  const shown = ordered(matching(outOfBin(all), words), order)
  // What is no longer in view is not acted on.
  const chosen = shown.filter(({ id }) => chosenIds.has(id))
  const folders = foldersOf(all)
  return (
    <ScreenFrame title="Layouts">
      <div className="layouts">
        <StartRow />
        {shelf === 'missing' ? null : <KeptHint entries={all} />}
        <SearchTools words={words} onWords={setWords} order={order} onOrder={setOrder} />
        <OutcomeLine outcome={actions.outcome} onPutBack={(ids) => void actions.putBack(ids)} />
        <ChosenBar
          chosen={chosen}
          folders={folders}
          actions={actions}
          onNone={() => setChosenIds(new Set())}
        />
        {shelf === 'loading' ? <p className="waiting">Looking at what is kept here…</p> : null}
        {shelf === 'missing' ? (
          <p>
            The browser does not say what it keeps for this page. Work goes on, but save it to files; layouts
            that were kept before are not lost by this.{' '}
            <button type="button" onClick={() => void reload()}>
              Try again
            </button>
          </p>
        ) : null}
        {typeof shelf !== 'string' && shown.length === 0 ? <Nothing isSearch={words.trim() !== ''} /> : null}
        <Folders
          entries={shown}
          all={all}
          chosenIds={chosenIds}
          onChosen={setChosenIds}
          folders={folders}
          actions={actions}
        />
        <Bin entries={inBin(all)} actions={actions} />
        <Examples />
      </div>
      {actions.shared === null ? null : (
        <ShareDialog layout={actions.shared} onClose={() => actions.share(null)} />
      )}
    </ScreenFrame>
  )
}
