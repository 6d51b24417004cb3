import '@fontsource/ibm-plex-sans-condensed/400.css'
import '@fontsource/ibm-plex-sans-condensed/600.css'
import { useMemo, useState, type CSSProperties, type ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { completeEvaluation, completionOf } from '../state/selectors'
import { today } from '../state/today'
import './papers.css'
import { PAPERS, type PaperName } from './page/paper'
import { PAPER_KINDS, type PaperKind, type PaperRequest } from './paperKinds'
import { DatumMissing, NotMeasured, SheetChoices } from './SheetChoices'
import { SavePapers } from './SavePapers'
import { RecordChoice, RecordWaiting } from './records/RecordChoice'
import { useWeldedPapers } from './records/useWeldedPapers'
import { SheetPageSvg } from './page/SheetPageSvg'
import type { SheetPage } from './page/sheetPage'

/** How large the page is shown; null fits it to the width there is. 100 % is true size on a screen that tells its true size. */
const ZOOMS = [
  { label: 'Fit', factor: null },
  { label: '100 %', factor: 1 },
  { label: '150 %', factor: 1.5 },
  { label: '200 %', factor: 2 },
] as const

/** The print takes the page's true size from here, whatever the zoom on screen. */
const pageStyle = (page: SheetPage, zoom: number): CSSProperties => {
  const factor = ZOOMS[zoom]?.factor ?? null
  const trueSize = { '--page-width': `${page.widthMm}mm`, '--page-height': `${page.heightMm}mm` }
  return { ...trueSize, width: factor === null ? '100%' : `${page.widthMm * factor}mm` } as CSSProperties
}

const PAPER_NAMES: readonly PaperName[] = ['a4', 'letter']

const kindOf = (id: PaperKind['id']): PaperKind | undefined =>
  PAPER_KINDS.find((kind) => kind.id === id) ?? PAPER_KINDS[0]

/** The papers on screen, one kind at a time: the pages exactly as they print, with paper, zoom, print and save. */
export const Papers = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const paper = useApp((state) => state.view.paper)
  const kind = useApp((state) => kindOf(state.view.paperKind))
  const evaluation = useApp(completeEvaluation)
  const hasRearView = useApp((state) => state.view.sheetRearView)
  const date = today()
  const request = useMemo(
    () => (evaluation === null ? null : { layout, evaluation, paperName: paper, today: date, hasRearView }),
    [layout, evaluation, paper, date, hasRearView],
  )
  const welded = useWeldedPapers(kind?.id === 'as-welded')
  const pages = useMemo(() => {
    if (request === null || kind === undefined) return null
    if (kind.id !== 'as-welded') return kind.pages(request)
    return welded.papers === null ? null : kind.pages({ ...request, welded: welded.papers })
  }, [request, kind, welded.papers])
  const [zoom, setZoom] = useState(0)
  const size = PAPERS[paper]
  if (kind === undefined) throw new Error('there is no kind of paper')
  return (
    <section className="papers" aria-label="Papers">
      <style>{`@page { size: ${size.widthMm}mm ${size.heightMm}mm; margin: 0 }`}</style>
      <PapersBar kind={kind} request={request} pages={pages} paper={paper} zoom={zoom} onZoom={setZoom} />
      <div
        className="sheet-desk"
        role="region"
        aria-label={`Pages: ${kind.words}`}
        aria-busy={pages === null}
        tabIndex={0}
      >
        <DatumMissing />
        <NotMeasured />
        {pages !== null ? null : request === null ? <PapersWaiting /> : <RecordWaiting welded={welded} />}
        {pages?.length === 0 ? (
          <p className="waiting" role="status">
            {kind.whenEmpty}
          </p>
        ) : null}
        {(pages ?? []).map((page) => (
          <div
            key={page.number}
            className="sheet-page"
            data-testid={`sheet-page-${page.number}`}
            style={pageStyle(page, zoom)}
          >
            <SheetPageSvg page={page} />
          </div>
        ))}
      </div>
    </section>
  )
}

/** In place of pages that would not yet say what weld errors can do: what is waited for, or the way on. */
const PapersWaiting = (): ReactElement => {
  const { completeHere } = useActions()
  const isFailed = useApp((state) => completionOf(state) === 'failed')
  const message = useApp(({ completion }) => (completion.kind === 'failed' ? completion.message : ''))
  if (!isFailed)
    return (
      <p className="waiting" role="status">
        Working out what goes on the papers…
      </p>
    )
  return (
    <div className="waiting" role="alert">
      <p>
        What goes on the papers could not be worked out in the background ({message.replace(/\.$/, '')}). Work
        it out here: the page stands still meanwhile.
      </p>
      <button type="button" onClick={completeHere}>
        Work it out here
      </button>
    </div>
  )
}

interface PapersBarProps {
  readonly kind: PaperKind
  /** Null while what goes on the papers is worked out. */
  readonly request: PaperRequest | null
  /** Null while they are worked out: then there is nothing to print or save. */
  readonly pages: readonly SheetPage[] | null
  readonly paper: PaperName
  readonly zoom: number
  readonly onZoom: (index: number) => void
}

const PapersBar = ({ kind, request, pages, paper, zoom, onZoom }: PapersBarProps): ReactElement => {
  const actions = useActions()
  const isPrintable = pages !== null && pages.length > 0
  return (
    <div className="sheet-bar no-print" role="group" aria-label="Papers">
      <button type="button" onClick={() => actions.setView({ screen: 'drawing' })}>
        Back to the drawing
      </button>
      <fieldset>
        <legend>Show</legend>
        {PAPER_KINDS.map(({ id, words }) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === kind.id}
            onClick={() => actions.setView({ paperKind: id })}
          >
            {words}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend>Paper</legend>
        {PAPER_NAMES.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={name === paper}
            onClick={() => actions.setView({ paper: name })}
          >
            {PAPERS[name].title}
          </button>
        ))}
      </fieldset>
      <SheetChoices kind={kind} />
      {kind.id === 'as-welded' ? <RecordChoice /> : null}
      <label className="sheet-zoom">
        <span>Zoom</span>
        <select value={zoom} onChange={(event) => onZoom(Number(event.currentTarget.value))}>
          {ZOOMS.map(({ label }, index) => (
            <option key={label} value={index}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <p className="sheet-count" role="status">
        {pages === null ? 'Pages' : pages.length === 1 ? '1 page' : `${pages.length} pages`} on{' '}
        {PAPERS[paper].title}, landscape
      </p>
      <SavePapers kind={kind} pages={pages} request={request} />
      <button type="button" className="sheet-print" disabled={!isPrintable} onClick={() => window.print()}>
        Print
      </button>
    </div>
  )
}
