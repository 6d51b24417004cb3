/*
 * Calendar dates as ISO 8601 text, YYYY-MM-DD, in the Gregorian calendar; texts of that form compare as the days do. Nothing here
 * reads a clock: `Date` is used as arithmetic on days of coordinated universal time, which have 24 hours each.
 * Source of the calendar behind it: ECMA-262, Time Values and Time Range.
 */

const DAY_MS = 86_400_000

/** Whole days since 1970-01-01, negative before; NaN for a text that names no day. */
const dayNumber = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS

const dateOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10)

/** Whether the text is a day that the calendar has, from year 0001 to 9999: 2024-02-29 is, 2026-02-29 and 2026-2-9 are not. */
export const isCalendarDate = (text: string): boolean => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text.startsWith('0000')) return false
  const day = dayNumber(text)
  // Readers differ in whether 31 February is refused or runs over into March.
  return Number.isFinite(day) && dateOf(day) === text
}

const checked = (date: string): string => {
  if (!isCalendarDate(date)) throw new RangeError(`"${date}" is no calendar date`)
  return date
}

/** The day so many whole days later, or earlier for a negative number. Throws for a text that is no date. */
export const plusDays = (date: string, days: number): string => dateOf(dayNumber(checked(date)) + days)

/** Days from the first date to the second: 1 from a day to the next one, negative when the second is earlier. Throws for no date. */
export const daysBetween = (from: string, to: string): number =>
  dayNumber(checked(to)) - dayNumber(checked(from))

const twoDigits = (value: number): string => String(value).padStart(2, '0')

/** Last day of a month of the year, month 1 to 12: day 0 of the month after. */
export const lastDayOfMonth = (year: number, month: number): string => {
  const first = `${String(year).padStart(4, '0')}-${twoDigits(month)}-01`
  // 31 days after the first of any month lies in the next one.
  const next = plusDays(first, 31)
  return plusDays(`${next.slice(0, 7)}-01`, -1)
}

/**
 * The same day so many whole months later; where that month has no such day, its last one: 29 February and two years give 28 February.
 * Source of that choice: Regulation (EEC, Euratom) 1182/71, Article 3(2)(c), as quoted in a bilingual corpus; of the two readings that
 * offer themselves it is the earlier.
 */
export const plusMonths = (date: string, months: number): string => {
  const [year = 0, month = 0] = checked(date).split('-').map(Number)
  const index = year * 12 + (month - 1) + months
  const last = lastDayOfMonth(Math.floor(index / 12), (index % 12) + 1)
  const same = `${last.slice(0, 8)}${date.slice(8)}`
  return same < last ? same : last
}

/** The same day so many years later; 29 February becomes 28 February in a year that has none. */
export const plusYears = (date: string, years: number): string => plusMonths(date, 12 * years)
