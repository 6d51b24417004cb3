import { useState, type ReactElement } from 'react'
import { arranged } from '../domain/shop/flat/arranged'
import type { AppActions } from '../state/appState'
import { useActions } from '../state/react'
import { archive } from './files/handOver/archive'
import { madeArchive, type MadeArchive, tablesArchive } from './files/handOver/madeArchive'
import { figureDxf } from './files/handOver/handOverParts'
import { embeddedFonts, saveArchive, saveText } from './files/savedFile'
import { htmlFile, paperFileName, paperStem, svgFile } from './files/sheetFile'
import type { SheetPage } from './page/sheetPage'
import type { PaperKind, PaperRequest } from './paperKinds'

interface SaveProps {
  readonly kind: PaperKind
  /** Null while they are worked out; then there is nothing to save. */
  readonly pages: readonly SheetPage[] | null
  readonly request: PaperRequest | null
}

/** Buttons that hand the papers of one kind, or everything at once, to the browser as files. */
export const SavePapers = ({ kind, pages, request }: SaveProps): ReactElement => (
  <>
    {request === null || pages === null || pages.length === 0 ? null : (
      <SaveKind kind={kind} pages={pages} request={request} />
    )}
    <HandOverButton request={request} />
  </>
)

interface Made {
  readonly kind: PaperKind
  readonly pages: readonly SheetPage[]
  readonly request: PaperRequest
}

const saveHtml = async ({ kind, pages, request: { layout } }: Made): Promise<readonly string[]> => {
  const name = paperFileName(kind.fileStem, layout, 'html')
  const title = `${kind.words} ${layout.job.car}`.trim()
  saveText(htmlFile(pages, title, await embeddedFonts()), name, 'text/html')
  return [name]
}

/** One page is a file; several are one archive, for browsers hold back the second of several downloads. */
const saveSvg = async ({ kind, pages, request: { layout } }: Made): Promise<readonly string[]> => {
  const fonts = await embeddedFonts()
  const [only] = pages
  if (pages.length === 1 && only !== undefined) {
    const name = paperFileName(kind.fileStem, layout, 'svg')
    saveText(svgFile(only, fonts), name, 'image/svg+xml')
    return [name]
  }
  const stem = paperStem(`${kind.fileStem}-pages`, layout)
  const files = pages.map((page) => ({
    path: paperFileName(kind.fileStem, layout, `${page.number}.svg`),
    text: svgFile(page, fonts),
  }))
  saveArchive(archive(stem, files, layout.job.date), `${stem}.zip`)
  return [`${stem}.zip`]
}

const saveDxf = ({ kind, request }: Made): readonly string[] => {
  const stem = kind.drawing === undefined ? kind.fileStem : 'elevations'
  const name = paperFileName(stem, request.layout, 'dxf')
  saveText(kindDxf(kind, request), name, 'image/vnd.dxf')
  return [name]
}

const SaveKind = (made: Made): ReactElement => {
  const { kind, request } = made
  const { notify } = useActions()
  const refuse = (): void =>
    notify('problem', 'It could not be saved. Print it to a PDF file instead, or try another browser.')
  const save = (make: (what: Made) => readonly string[] | Promise<readonly string[]>): void => {
    const saved = (names: readonly string[]): void => notify('info', `Saved ${names.join(', ')}.`)
    void Promise.resolve(made).then(make).then(saved).catch(refuse)
  }
  const saveTables = (): void => {
    const archived = tablesArchive(kind, request)
    saveArchive(archived.bytes, archived.name)
    notifySaved(archived, notify)
  }
  return (
    <fieldset>
      <legend>Save</legend>
      <SaveButton as="SVG" onClick={() => save(saveSvg)} />
      <SaveButton as="HTML" onClick={() => save(saveHtml)} />
      {kind.drawing === undefined && kind.figures === undefined ? null : (
        <SaveButton as="DXF" onClick={() => save(saveDxf)} />
      )}
      {kind.tables === undefined ? null : (
        <SaveButton as="CSV" onClick={() => void Promise.resolve().then(saveTables).catch(refuse)} />
      )}
    </fieldset>
  )
}

const SaveButton = (props: { readonly as: string; readonly onClick: () => void }): ReactElement => (
  <button type="button" aria-label={`Save ${props.as}`} onClick={props.onClick}>
    {props.as}
  </button>
)

/** The kind's general drawing, or all its figures in one file, apart from each other. */
const kindDxf = (kind: PaperKind, request: PaperRequest): string => {
  const { layout } = request
  if (kind.drawing !== undefined) {
    const { figure, ...more } = kind.drawing(request)
    return figureDxf(figure, layout, more)
  }
  const title = `${kind.words} ${layout.job.car}`.trim()
  return figureDxf(arranged(kind.fileStem, title, kind.figures?.(request) ?? []), layout)
}

/** What was saved, and plainly what of it could not be made. */
const notifySaved = ({ name, missing }: MadeArchive, notify: AppActions['notify']): void => {
  if (missing.length === 0) notify('info', `Saved ${name}. READ-ME-FIRST.txt lists what is in it.`)
  else
    notify(
      'problem',
      `Saved ${name}, but not everything could be made. READ-ME-FIRST.txt says so too.`,
      missing,
    )
}

/** Everything that leaves the shop for this job as one archive. */
const HandOverButton = ({ request }: { readonly request: PaperRequest | null }): ReactElement => {
  const { notify } = useActions()
  const [step, setStep] = useState<string | null>(null)
  const make = async (wanted: PaperRequest): Promise<void> => {
    const made = await madeArchive(wanted, setStep)
    saveArchive(made.bytes, made.name)
    notifySaved(made, notify)
  }
  const start = (wanted: PaperRequest): void => {
    setStep('…')
    void make(wanted)
      .catch((problem: unknown) =>
        notify('problem', 'The hand-over folder could not be made. Save the papers one by one.', [
          problem instanceof Error ? problem.message : String(problem),
        ]),
      )
      .finally(() => setStep(null))
  }
  return (
    <button
      type="button"
      className="hand-over"
      disabled={request === null || step !== null}
      aria-busy={step !== null}
      onClick={() => (request === null ? undefined : start(request))}
    >
      {step === null ? 'Hand-over folder' : `Making it: ${step}`}
    </button>
  )
}
