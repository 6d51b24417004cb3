import type { BeltRecord } from '../../domain/care/beltRecord'
import { entriesByDate } from '../../domain/care/condition'
import { historyLine, type HistoryLine } from '../../domain/layout/wording/beltHistoryText'
import type { FlowRow } from '../page/flow'
import { straightItem, textItem } from '../page/item'
import { entryRows, sectionRows, textRows, type BareRow } from '../page/section'
import { LEAST_TEXT_MM, type Typography } from '../page/typography'
import { struckThrough } from './struckThrough'

const SECTION = 'History'

/** Everything that was entered, the oldest first; what was struck stays readable under its line. */
export const historySection = (belt: BeltRecord, widthMm: number, type: Typography): readonly FlowRow[] => {
  const entries = entriesByDate(belt)
  const rows =
    entries.length === 0
      ? textRows('Nothing is entered yet.', widthMm, type.body, SECTION)
      : entries.flatMap((entry) => entryStrips(historyLine(belt, entry), widthMm, type))
  return sectionRows(SECTION, widthMm, type, rows)
}

const entryStrips = (line: HistoryLine, widthMm: number, type: Typography): readonly BareRow[] => {
  const said = [
    ...textRows(`${line.date} · ${line.by}`, widthMm, type.strong, SECTION),
    ...textRows(`${line.what} ${line.note}`.trim(), widthMm, type.body, SECTION),
  ]
  const strips =
    line.struck === null
      ? said
      : [...said.map(struckThrough), ...textRows(line.struck, widthMm, type.body, SECTION)]
  return entryRows(strips, widthMm, SECTION)
}

const BY_HAND = 'Entries by hand, to be typed in later'
/** At least so many, and as many more as the last page has room for. Our judgement. */
export const HAND_LINES = { least: 6, most: 40 } as const
/** Room to write in. Our judgement. */
const HAND_LINE_MM = 7.5
const DATE_MM = 22
const BY_MM = 34

/** Blank lines for what happens away from the app. */
export const handSection = (count: number, widthMm: number, type: Typography): readonly FlowRow[] =>
  sectionRows(
    BY_HAND,
    widthMm,
    type,
    Array.from({ length: count }, () => handLine(widthMm)),
  )

const handLine = (widthMm: number): BareRow => ({
  heightMm: HAND_LINE_MM,
  keepWithNext: false,
  section: BY_HAND,
  draw: ({ xMm, yMm }) => {
    const bottomMm = yMm + HAND_LINE_MM
    const uprightAt = [xMm + DATE_MM, xMm + widthMm - BY_MM]
    const label = (atMm: number, words: string) =>
      textItem({ xMm: atMm + 0.9, yMm: yMm + 2.4 }, words, LEAST_TEXT_MM, { ink: 'mid' })
    return [
      straightItem({ xMm, yMm: bottomMm }, { xMm: xMm + widthMm, yMm: bottomMm }, { widthMm: 0.12 }),
      ...uprightAt.map((atMm) =>
        straightItem({ xMm: atMm, yMm }, { xMm: atMm, yMm: bottomMm }, { widthMm: 0.12, ink: 'mid' }),
      ),
      label(xMm, 'date'),
      label(xMm + DATE_MM, 'what was done, what was found'),
      label(xMm + widthMm - BY_MM, 'signature'),
    ]
  },
})
