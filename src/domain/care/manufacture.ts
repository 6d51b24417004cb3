import { isCalendarDate, lastDayOfMonth } from '../units/calendarDate'

/** The days that a date of manufacture may mean: the same one twice where the label gives the day. */
export interface ManufactureSpan {
  readonly earliest: string
  readonly latest: string
  readonly known: 'day' | 'month' | 'year'
}

/**
 * What a typed date of manufacture may mean: YYYY-MM-DD is that day, YYYY-MM any day of that month, YYYY any day of that year. Null for
 * anything else, an empty text among it.
 */
export const manufactureSpan = (manufactured: string): ManufactureSpan | null => {
  if (/^\d{4}$/.test(manufactured) && manufactured !== '0000')
    return { earliest: `${manufactured}-01-01`, latest: `${manufactured}-12-31`, known: 'year' }
  if (/^\d{4}-\d{2}$/.test(manufactured)) {
    const earliest = `${manufactured}-01`
    if (!isCalendarDate(earliest)) return null
    const [year = 0, month = 0] = manufactured.split('-').map(Number)
    return { earliest, latest: lastDayOfMonth(year, month), known: 'month' }
  }
  return isCalendarDate(manufactured) ? { earliest: manufactured, latest: manufactured, known: 'day' } : null
}
