import type { BareRow } from '../page/section'
import { cell } from '../page/section'
import { tableRow } from '../page/table'
import type { Typography } from '../page/typography'

/** Something to write on, in words of a line: long enough for a figure with its fraction. */
const BLANK = '______________'

/** A strip across the top of a form: what it is, and what is known already. */
export const formHeader = (
  title: string,
  fields: readonly { readonly label: string; readonly value: string }[],
  below: string,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const shares = [0.28, ...fields.map(() => 0.72 / fields.length)]
  return [
    tableRow(
      shares.map((share) => ({ widthMm: share * widthMm, align: 'left' as const })),
      [
        [cell(title, type.title, 1)],
        ...fields.map(({ label, value }) => [
          cell(label, type.small, 1),
          cell(value.trim() === '' ? '–' : value, type.strong, 2),
        ]),
      ],
      { section: title, rule: 'thin' },
    ),
    tableRow([{ widthMm, align: 'left' }], [[cell(below, type.heading, 3)]], {
      section: title,
      rule: 'heavy',
    }),
  ]
}

/** Columns of something to fill in: its name, two readings and what is known of it already. */
const SHARES = [0.14, 0.2, 0.2, 0.46] as const

/** A line to fill in: its name, two blanks, and what is known of it; with room above it for a pen. */
export const blankRow = (
  words: { readonly name: string; readonly known: string },
  widthMm: number,
  type: Typography,
  section: string,
): BareRow => {
  const blank = [cell(BLANK, type.body, 1)]
  const row = tableRow(
    SHARES.map((share) => ({ widthMm: share * widthMm, align: 'left' as const })),
    [[cell(words.name, type.body, 2)], blank, blank, [cell(words.known, type.body, 3)]],
    { section, rule: 'none' },
  )
  return {
    ...row,
    heightMm: row.heightMm + PEN_MM,
    draw: ({ xMm, yMm }) => row.draw({ xMm, yMm: yMm + PEN_MM }),
  }
}

/** Our judgement: what handwriting needs above a line of print. */
const PEN_MM = 1.6
