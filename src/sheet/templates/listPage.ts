import { CAUTIONS } from '../../domain/layout/wording/cautions'
import { DEFAULT_RIM_MM } from '../../domain/straps/tabSize'
import type { FlowRow } from '../page/flow'
import { cell, gapRow, sectionRows, textRows, type BareRow } from '../page/section'
import { tableRow, type Column } from '../page/table'
import type { Typography } from '../page/typography'
import type { Template, TemplateSet } from './template'

/** A template with the numbers of the pages that it is on. */
export interface ListedTemplate {
  readonly template: Template
  readonly pages: readonly number[]
}

const HOW_TO = [
  'Print at 100 % (“actual size”), one page on a sheet, and switch “fit to page” off.',
  'Then lay a steel rule on both check bars of every page: 100 mm and 4 in, level and upright. More than 0.5 mm off either way: do not use the page; set the printer and print again.',
  'Use stiff paper or glue the page on card. Cut outside the heavy line, then to its middle.',
  'A tab’s template shows the side that its lettering names. For the other side turn it over. Drill through the centre of the hole first, then cut.',
  `Sizes marked “chosen” nobody has typed: ${DEFAULT_RIM_MM} mm of steel from the hole’s edge to the plate’s (49 CFR 571.209 S4.1(f) for reinforcing plates; the rules of an event may ask for more). Type your own under the anchor.`,
  'The line through the hole marked level stands level on the car; the arrow shows the way the strap pulls in the drawn sitting.',
  'Pages marked with parts: lay the dashed lines and their crosses on each other and tape them; hold the whole against the light to see that lines run on.',
  'A strip is wrapped round its tube with the print outside. Where another tube joins, cut it clear.',
  'A gauge stands on its level or plumb edge; the sloping edge, marked with a ring, takes the string, the webbing or the plate.',
] as const

const pagesText = (pages: readonly number[]): string => {
  const [first, last] = [pages[0], pages.at(-1)]
  if (first === undefined || last === undefined) return '–'
  return first === last ? String(first) : `${first}–${last}`
}

/** What the first page says: how to check the print, which templates there are and where, which anchors have none, the cautions. */
export const listRows = (
  set: TemplateSet,
  listed: readonly ListedTemplate[],
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const sections = [
    sectionRows('Before anything is cut', widthMm, type, numberedRows(HOW_TO, widthMm, type)),
    sectionRows('Templates', widthMm, type, templateRows(listed, widthMm, type)),
    sectionRows(
      'Anchors without a template',
      widthMm,
      type,
      set.without.flatMap(({ name, why }) => [
        ...textRows(name, widthMm, type.strong, 'Anchors without a template').map((row) => ({
          ...row,
          keepWithNext: true,
        })),
        ...textRows(why, widthMm, type.body, 'Anchors without a template'),
      ]),
    ),
    sectionRows('What this is not', widthMm, type, numberedRows(CAUTIONS, widthMm, type)),
  ]
  return sections
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) => (index === 0 ? rows : [gapRow(2, rows[0]?.section ?? ''), ...rows]))
}

const numberedRows = (
  sentences: readonly string[],
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const columns: readonly Column[] = [
    { widthMm: 6, align: 'right' },
    { widthMm: widthMm - 6, align: 'left' },
  ]
  return sentences.map((sentence, index) =>
    tableRow(columns, [[cell(`${index + 1}.`, type.body, 1)], [cell(sentence, type.body, 8)]], {
      section: 'Before anything is cut',
      rule: 'none',
    }),
  )
}

const templateRows = (
  listed: readonly ListedTemplate[],
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const columns: readonly Column[] = [
    { widthMm: widthMm - 16, align: 'left' },
    { widthMm: 16, align: 'right' },
  ]
  return listed.map(({ template, pages }) =>
    tableRow(
      columns,
      [[cell(template.figure.title, type.body, 2)], [cell(`page ${pagesText(pages)}`, type.body, 1)]],
      { section: 'Templates', rule: 'thin' },
    ),
  )
}
