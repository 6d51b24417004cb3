import { plusDays, plusMonths } from '../units/calendarDate'
import type { BeltRecord } from './beltRecord'
import { beltCondition, lastWholeInspection } from './condition'

/** A day to be reminded of. */
export type Reminder =
  /** The last day on which the belt may be used. */
  | { readonly kind: 'last-day'; readonly date: string }
  /** Some days before that. */
  | { readonly kind: 'last-day-ahead'; readonly date: string; readonly lastDay: string }
  /** The next inspection that the shop wants; `wasDue` when that day is past: then the date is today. */
  | { readonly kind: 'inspection'; readonly date: string; readonly wasDue: string | null }

/** How long before the last day the first reminder comes. Our judgement: time to order and fit another belt. */
export const AHEAD_DAYS = 30

/**
 * The days to be reminded of, today (ISO 8601) and later; none for a belt that was retired. `lastDay` is that of its age, null when it
 * is not known.
 */
export const beltReminders = (
  belt: BeltRecord,
  lastDay: string | null,
  today: string,
): readonly Reminder[] => {
  if (beltCondition(belt).kind === 'retired') return []
  const inspection = nextInspection(belt, today)
  return [
    ...(lastDay === null ? [] : lastDayReminders(lastDay, today)),
    ...(inspection === null ? [] : [inspection]),
  ]
}

const lastDayReminders = (lastDay: string, today: string): readonly Reminder[] => {
  const ahead = plusDays(lastDay, -AHEAD_DAYS)
  return [
    ...(ahead < today ? [] : [{ kind: 'last-day-ahead' as const, date: ahead, lastDay }]),
    ...(lastDay < today ? [] : [{ kind: 'last-day' as const, date: lastDay }]),
  ]
}

/**
 * When the shop wants the belt looked at next: its interval after the last inspection that looked at everything, or after the fitting.
 * Where neither is known, or the day is past, it is due today. Null when the shop wants no reminder.
 */
export const nextInspection = (
  belt: BeltRecord,
  today: string,
): Extract<Reminder, { kind: 'inspection' }> | null => {
  if (belt.inspectEveryMonths === undefined) return null
  const from = lastWholeInspection(belt)?.date ?? belt.fitted
  if (from === '') return { kind: 'inspection', date: today, wasDue: null }
  const due = plusMonths(from, belt.inspectEveryMonths)
  return due < today
    ? { kind: 'inspection', date: today, wasDue: due }
    : { kind: 'inspection', date: due, wasDue: null }
}
