import type { Layout } from '../../../domain/layout/document/layout'
import { layoutText } from '../../../domain/layout/document/layoutText'
import { beltCalendar } from '../../../domain/layout/wording/beltCalendar'
import { jobWords } from '../../../domain/layout/wording/variantWords'
import { CAUTIONS } from '../../../domain/layout/wording/cautions'
import type { FlatFigure } from '../../../domain/shop/flat/flatFigure'
import { layoutFileName } from '../../../state/files'
import { PAPER_KINDS, type PaperKind } from '../../paperKinds'
import { csvText } from '../csv'
import { dxfText } from '../dxf'
import { flatSvg } from '../flatSvg'
import { htmlFile, namePart, paperFileName, paperStem, svgFile } from '../sheetFile'
import type { TableKind } from '../tables/tables'
import type { HandOverFile, HandOverPart } from './handOverPart'

/** Everything the folder is to hold beside READ-ME-FIRST, in the order of its contents. A new kind of paper or table is in it by itself. */
export const handOverParts = (): readonly HandOverPart[] => [
  ...PAPER_KINDS.map(pagesPart),
  ...PAPER_KINDS.flatMap(figuresPart),
  ...PAPER_KINDS.flatMap(drawingPart),
  ...PAPER_KINDS.flatMap(tableParts),
  calendarPart,
  photosPart,
  layoutPart,
]

const pagesPart = (kind: PaperKind): HandOverPart => ({
  words: `${kind.words}: the .html prints all pages; each .svg is one page`,
  make: (request) => {
    const { layout, fonts } = request
    const pages = kind.pages(request)
    if (pages.length === 0) return { kind: 'none', because: kind.isOptional === true ? '' : kind.whenEmpty }
    const title = `${kind.words} ${layout.job.car}`.trim()
    const all = paperFileName(kind.fileStem, layout, 'html')
    return {
      kind: 'files',
      files: [
        { path: `papers/${all}`, text: htmlFile(pages, title, fonts) },
        ...pages.map((page) => ({
          path: `papers/pages/${paperFileName(kind.fileStem, layout, `${page.number}.svg`)}`,
          text: svgFile(page, fonts),
        })),
      ],
    }
  },
})

/** What a file for a machine says about itself, beside its title and unit. */
const fileNotes = (layout: Layout): readonly string[] => {
  const { job } = layout
  const revision = job.revision === '' ? '' : `revision ${job.revision}`
  const named = [job.car, jobWords(layout), revision, job.date].filter((word) => word !== '')
  return [...(named.length === 0 ? [] : [named.join(', ')]), CAUTIONS[0] ?? '']
}

/** A figure in true size as a drawing file in the layout's unit. */
export const figureDxf = (
  figure: FlatFigure,
  layout: Layout,
  more: { readonly notes: readonly string[]; readonly noteSizeMm?: number } = { notes: [] },
): string =>
  dxfText(figure, {
    ...more,
    unit: layout.units.length,
    notes: [...more.notes, ...fileNotes(layout)],
    comments: CAUTIONS.slice(1),
  })

const figuresPart = ({ words, fileStem, figures, whenEmpty }: PaperKind): readonly HandOverPart[] => {
  if (figures === undefined) return []
  return [
    {
      words: `${words} in true size, one .dxf and one .svg for each figure`,
      make: (request) => {
        const { layout } = request
        const files = figures(request).flatMap((figure): readonly HandOverFile[] => {
          const name = `cutting/${namePart(fileStem)}-${namePart(figure.id)}`
          return [
            { path: `${name}.dxf`, about: figure.title, text: figureDxf(figure, layout) },
            { path: `${name}.svg`, about: figure.title, text: flatSvg(figure, fileNotes(layout)) },
          ]
        })
        return files.length === 0 ? { kind: 'none', because: whenEmpty } : { kind: 'files', files }
      },
    },
  ]
}

const drawingPart = ({ drawing }: PaperKind): readonly HandOverPart[] => {
  if (drawing === undefined) return []
  return [
    {
      words: 'General drawing in true size, all views, for a drawing program',
      make: (request) => {
        const { layout } = request
        const { figure, ...more } = drawing(request)
        const path = `drawing/${paperFileName(figure.id, layout, 'dxf')}`
        return { kind: 'files', files: [{ path, text: figureDxf(figure, layout, more) }] }
      },
    },
  ]
}

/** The tables of one kind of paper. */
export const tableParts = ({ tables = [] }: PaperKind): readonly HandOverPart[] => tables.map(tablePart)

const tablePart = ({ words, fileStem, table, whenEmpty }: TableKind): HandOverPart => ({
  words,
  make: (request) => {
    const made = table(request)
    if (made.rows.length === 0) return { kind: 'none', because: whenEmpty }
    const path = `tables/${paperFileName(fileStem, request.layout, 'csv')}`
    return { kind: 'files', files: [{ path, text: csvText(made) }] }
  },
})

/** Noon of the day, so that the same folder made twice on one day has the same calendar. */
const stampMs = (today: string): number => Date.parse(`${today}T12:00:00Z`)

const calendarPart: HandOverPart = {
  words: 'Reminders of the belts’ last days and inspections, for a calendar',
  make: ({ layout, today }) => {
    const text = beltCalendar(layout, today, stampMs(today))
    return text === null
      ? {
          kind: 'none',
          because: 'No belt has a last day that is still to come, or an interval of inspection.',
        }
      : { kind: 'files', files: [{ path: `calendar/${paperFileName('belts', layout, 'ics')}`, text }] }
  },
}

const photosPart: HandOverPart = {
  words: 'Photos that lie under the drawing',
  make: ({ pictures = [] }) => {
    if (pictures.length === 0) return { kind: 'none', because: 'No photo lies under the drawing.' }
    const named = pictures.map(({ photo, bytes }) => ({
      bytes,
      about: `${photo.elevation} elevation`,
      path: `photos/${photo.elevation}-${namePart(photo.name.replace(/\.[^.]*$/, ''))}.jpg`,
    }))
    return {
      kind: 'files',
      files: named.flatMap(({ bytes, path, about }) =>
        bytes === null ? [] : [{ path, about, text: '', bytes }],
      ),
      missing: pictures
        .filter(({ bytes }) => bytes === null)
        .map(
          ({ photo }) => `The photo ${photo.name}: its picture is not on the device this folder was made on.`,
        ),
    }
  },
}

const layoutPart: HandOverPart = {
  words: 'The layout itself, to open in Tabwright',
  make: ({ layout }) => ({
    kind: 'files',
    files: [{ path: `layout/${layoutFileName(layout)}`, text: layoutText(layout) }],
  }),
}

/** Name of the folder and of its archive. */
export const handOverStem = (layout: Layout): string => paperStem('hand-over', layout)
