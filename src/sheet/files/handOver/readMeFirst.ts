import type { Layout } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { CAUTIONS } from '../../../domain/layout/wording/cautions'
import { jobWords } from '../../../domain/layout/wording/variantWords'
import { agreementLine } from '../../mount/sections/agreementRows'
import { notMeasuredTitles } from '../../../domain/layout/firstLayout/notMeasured'
import { findingCounts, hasBrokenFindings } from '../../mount/sections/findingSection'
import { PAPERS } from '../../page/paper'
import { printable } from '../../page/textWidth'
import type { HandOverFile, HandOverRequest, MadePart } from './handOverPart'

export const READ_ME_NAME = 'READ-ME-FIRST.txt'
export const HAND_OVER_TITLE = 'Hand-over folder'

/** Columns of a terminal or an editor that is not wide. */
const LINE_LENGTH = 78

/** What stands in the folder and what does not, how to print it and how to read the files, and who decides. Lines end as on any system. */
export const readMeFirst = (request: HandOverRequest, parts: readonly MadePart[], title: string): string => {
  const { layout, evaluation, today } = request
  const has = (ending: string): boolean =>
    parts.some(({ made }) => made.kind === 'files' && made.files.some(({ path }) => path.endsWith(ending)))
  const sections: readonly (readonly string[])[] = [
    heading(`${title}${layout.job.car === '' ? '' : `: ${oneLine(layout.job.car)}`}`),
    jobLines(layout, today),
    stateLines(layout, evaluation),
    ['WHO DECIDES', ...CAUTIONS.map((caution) => `- ${caution}`)],
    ['WHAT IS IN THIS FOLDER', ...parts.flatMap(contentLines)],
    ['WHAT IS NOT IN IT, AND WHY', ...missingLines(request, parts, has('.html'))],
    ...(has('.html') ? [['PRINTING IN TRUE SIZE', ...printingLines(request)]] : []),
    ['READING THE FILES', ...readingLines(layout).flatMap(([ending, text]) => (has(ending) ? [text] : []))],
  ]
  return sections.map((lines) => lines.flatMap(wrapped).join('\r\n')).join('\r\n\r\n') + '\r\n'
}

/** One line of what was typed. */
const oneLine = (text: string): string => printable(text).replaceAll(/\s+/g, ' ').trim()

const heading = (text: string): readonly string[] => [text, '='.repeat(Math.min(text.length, LINE_LENGTH))]

const jobLines = (layout: Layout, today: string): readonly string[] => {
  const { job, datum } = layout
  const fields: readonly (readonly [string, string])[] = [
    ['Job', jobWords(layout)],
    ['Customer', job.customer],
    ['Revision', job.revision],
    ['Date of the job', job.date],
    ['Prepared by', job.preparedBy],
    ['Folder made on', today],
    ['Datum', datum],
  ]
  return fields.map(([name, value]) => `${name}: ${oneLine(value) === '' ? 'not said' : oneLine(value)}`)
}

const stateLines = (layout: Layout, evaluation: CheckedEvaluation): readonly string[] => [
  `Rule set: ${evaluation.ruleSet.name}, ${evaluation.ruleSet.edition}`,
  `Findings: ${findingCounts(evaluation)}`,
  ...(hasBrokenFindings(evaluation) ? ['Settle what is broken before anything is welded.'] : []),
  ...notMeasuredLines(layout),
  oneLine(agreementLine(layout)),
]

const notMeasuredLines = (layout: Layout): readonly string[] => {
  const titles = notMeasuredTitles(layout)
  return titles.length === 0
    ? []
    : [`NOT MEASURED YET: weld nothing from these papers before it is. Nobody answered: ${titles.join(' ')}`]
}

const contentLines = ({ words, made }: MadePart): readonly string[] =>
  made.kind === 'files' && made.files.length > 0 ? [`${words}.`, ...made.files.map(fileLine)] : []

const fileLine = ({ path, about = '' }: HandOverFile): string =>
  `    ${path}${about === '' ? '' : `  (${oneLine(about)})`}`

const missingLines = (
  { fonts }: HandOverRequest,
  parts: readonly MadePart[],
  hasPages: boolean,
): readonly string[] => {
  const lines = parts.flatMap(({ words, made }) => {
    if (made.kind === 'files') return (made.missing ?? []).map((missing) => `- ${missing}`)
    if (made.kind === 'none') return made.because === '' ? [] : [`- ${words}. ${made.because}`]
    if (made.kind === 'failed')
      return [
        `- ${words}. IT COULD NOT BE MADE (${oneLine(made.message)}). Do not take this folder for complete.`,
      ]
    return []
  })
  const lettering =
    'The lettering of the pages: it could not be read, so they use a narrow face of your machine.'
  const all = hasPages && fonts.length === 0 ? [...lines, `- ${lettering}`] : lines
  return all.length === 0 ? ['- Nothing is missing.'] : all
}

const printingLines = ({ paperName }: HandOverRequest): readonly string[] => [
  `1. Open the .html file in a browser and print it on ${PAPERS[paperName].title}, as the pages lie.`,
  '2. Scale 100 % or "actual size". Never "fit to page". No margins, no headers or footers of the browser.',
  '3. Lay a ruler on the check bar of every page: 100 mm must be 100 mm, 4 in must be 4 in. If it is not, do not use the print.',
]

/** The ending that a line is about, and the line. */
const readingLines = (layout: Layout): readonly (readonly [string, string])[] => [
  [
    '.dxf',
    `Drawing files (.dxf, release 12): one unit is one ${layout.units.length === 'mm' ? 'millimetre' : 'inch'}, scale 1:1. Layers: CUT cut, DRILL holes, MARK scribe or punch, CHECK measure before cutting, TEXT lettering, OUTLINE what is there already. Tabs are for plate, strips and gauges for paper or card.`,
  ],
  ['.svg', 'Figures and single pages (.svg): in true size, one unit is one millimetre.'],
  [
    '.csv',
    'Tables (.csv): UTF-8, a comma between cells, a point for decimals, the first line says the units. Where your spreadsheet is set otherwise, import them and say so. Positions are from the datum: x rearward, y to the occupant’s right, z up. A single quote before = + - or @ was put there so that no text is computed as a formula.',
  ],
  [
    '.ics',
    'The calendar file (.ics) holds whole days; open it with a calendar. Make it again when a belt’s record changes.',
  ],
  [
    '.jpg',
    'Photos (.jpg): as they lie under the drawing. To have one under it on another device, open the layout file there, go to Photo and choose the picture again; crosses and measured lengths are in the layout file.',
  ],
  ['.layout.json', 'The layout file holds everything else; the papers can be made from it again.'],
]

/** Cut between words; what is set in goes on set in. A path is never cut. */
const wrapped = (line: string): readonly string[] => {
  if (line.startsWith('    ') || line.length <= LINE_LENGTH) return [line]
  const indent = /^(- |\d\. )/.test(line) ? ' '.repeat(line.indexOf(' ') + 1) : ''
  const lines: string[] = []
  let current = ''
  for (const word of line.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`
    if (longer.length > LINE_LENGTH && current.trim() !== '') {
      lines.push(current)
      current = `${indent}${word}`
    } else current = longer
  }
  return [...lines, current]
}
