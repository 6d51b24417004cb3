import { useState, type ReactElement } from 'react'
import { arranged } from '../domain/shop/flat/arranged'
import { useActions } from '../state/react'
import { madeArchive } from './files/handOver/madeArchive'
import { figureDxf } from './files/handOver/handOverParts'
import { embeddedFonts, saveArchive, saveText } from './files/savedFile'
import { htmlFile, paperFileName, svgFile } from './files/sheetFile'
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

const SaveKind = (props: {
  readonly kind: PaperKind
  readonly pages: readonly SheetPage[]
  readonly request: PaperRequest
}): ReactElement => {
  const { kind, pages, request } = props
  const { layout } = request
  const { notify } = useActions()
  const saved = (names: readonly string[]): void => notify('info', `Saved ${names.join(', ')}.`)
  const saveHtml = async (): Promise<void> => {
    const name = paperFileName(kind.fileStem, layout, 'html')
    saveText(
      htmlFile(pages, `${kind.words} ${layout.job.car}`.trim(), await embeddedFonts()),
      name,
      'text/html',
    )
    saved([name])
  }
  const saveSvg = async (): Promise<void> => {
    const fonts = await embeddedFonts()
    const names = pages.map((page) => {
      const ending = pages.length === 1 ? 'svg' : `${page.number}.svg`
      const name = paperFileName(kind.fileStem, layout, ending)
      saveText(svgFile(page, fonts), name, 'image/svg+xml')
      return name
    })
    saved(names)
  }
  const saveDxf = (): void => {
    const name = paperFileName(kind.drawing === undefined ? kind.fileStem : 'elevations', layout, 'dxf')
    saveText(kindDxf(kind, request), name, 'image/vnd.dxf')
    saved([name])
  }
  const refuse = (): void =>
    notify('problem', 'It could not be saved. Print it to a PDF file instead, or try another browser.')
  return (
    <>
      <button type="button" onClick={() => void saveSvg().catch(refuse)}>
        Save SVG
      </button>
      <button type="button" onClick={() => void saveHtml().catch(refuse)}>
        Save HTML
      </button>
      {kind.drawing === undefined && kind.figures === undefined ? null : (
        <button type="button" onClick={() => void Promise.resolve().then(saveDxf).catch(refuse)}>
          Save DXF
        </button>
      )}
    </>
  )
}

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

/** Everything that leaves the shop for this job as one archive. */
const HandOverButton = ({ request }: { readonly request: PaperRequest | null }): ReactElement => {
  const { notify } = useActions()
  const [step, setStep] = useState<string | null>(null)
  const make = async (wanted: PaperRequest): Promise<void> => {
    const { name, bytes, missing } = await madeArchive(wanted, setStep)
    saveArchive(bytes, name)
    if (missing.length === 0) notify('info', `Saved ${name}. READ-ME-FIRST.txt lists what is in it.`)
    else
      notify(
        'problem',
        `Saved ${name}, but not everything could be made. READ-ME-FIRST.txt says so too.`,
        missing,
      )
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
