import { isCalendarDate } from '../../units/calendarDate'
import { asWeldedContradictions } from './asWeldedContradictions'
import { beltRecordContradictions } from './beltRecordContradictions'
import { builtContradictions } from './builtContradictions'
import type { Contradiction } from './contradiction'
import type { Layout } from './layout'
import { photoContradictions } from './photoContradictions'
import { type FieldPath, type LayoutProblem, problemAt } from './problem'
import { repeatedIds } from './repeatedIds'
import { reviewContradictions } from './reviewContradictions'
import { ruleSetContradictions } from './ruleSetContradictions'
import { variantContradictions } from './variantContradictions'

/** Every way in which the fields of a layout, each allowed by itself, do not agree with each other. */
export const layoutContradictions = (layout: Layout): readonly LayoutProblem[] =>
  [
    ...dateContradictions(layout),
    ...ruleSetContradictions(layout),
    ...builtContradictions(layout, []),
    ...repeatedIds(layout.tapePoints ?? [], ['tapePoints']),
    ...photoContradictions(layout.photos ?? [], ['photos']),
    ...variantContradictions(layout),
    ...asWeldedContradictions(layout.asWelded ?? [], ['asWelded']),
    ...beltRecordContradictions(layout),
    ...reviewContradictions(layout.reviews ?? [], ['reviews']),
  ].map((found) => problemAt(found.path, layout, found))

/** The pattern lets 2026-02-31 through; a day that the calendar does not have is a slip of the pen. */
const dateContradictions = ({ job }: Layout): readonly Contradiction[] => {
  const remedy = 'Write the date as YYYY-MM-DD, or leave it empty.'
  const dates: readonly (readonly [FieldPath, string])[] = [
    [['job', 'date'], job.date],
    ...(job.revisions ?? []).map(({ date }, index) => [['job', 'revisions', index, 'date'], date] as const),
  ]
  return dates.flatMap(([path, date]) =>
    date === '' || isCalendarDate(date)
      ? []
      : [{ path, received: date, says: `there is no day ${date}`, remedy }],
  )
}
