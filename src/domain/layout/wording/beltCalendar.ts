import type { BeltRecord } from '../../care/beltRecord'
import { beltAge } from '../../care/expiry'
import { type DayEvent, icalendarText } from '../../care/icalendar'
import { beltReminders, type Reminder } from '../../care/reminders'
import type { Layout } from '../document/layout'
import { chosenRuleSet } from '../document/ruleSetOf'

/**
 * The days that a layout's belts are to be reminded of, as events of a calendar; empty when there are none. `today` is an ISO 8601 date.
 */
export const beltEvents = (layout: Layout, today: string): readonly DayEvent[] =>
  (layout.belts ?? []).flatMap((belt) => {
    const { lastDay } = beltAge(belt, chosenRuleSet(layout), today)
    return beltReminders(belt, lastDay, today).map((reminder) => event(layout, belt, reminder))
  })

/** Those events as a calendar file (RFC 5545); null when there is nothing to remind of. `stampMs` is now, since 1970. */
export const beltCalendar = (layout: Layout, today: string, stampMs: number): string | null => {
  const events = beltEvents(layout, today)
  return events.length === 0 ? null : icalendarText(events, stampMs)
}

const event = (layout: Layout, belt: BeltRecord, reminder: Reminder): DayEvent => ({
  uid: `${belt.id}-${reminder.kind}@tabwright.invalid`,
  date: reminder.date,
  summary: [summary(belt, reminder), layout.job.car].filter((words) => words !== '').join(', '),
  description: `${details(layout, reminder)} Counted when this file was made; after a change of the record make it again. The belt maker’s instructions, the label and the event’s rule book decide.`,
})

const summary = ({ name }: BeltRecord, reminder: Reminder): string => {
  switch (reminder.kind) {
    case 'last-day':
      return `Last day of use: ${name}`
    case 'last-day-ahead':
      return `Order a new belt: ${name} may be used to ${reminder.lastDay}`
    case 'inspection':
      return `Inspect ${name}`
  }
}

const details = (layout: Layout, reminder: Reminder): string => {
  switch (reminder.kind) {
    case 'last-day':
      return `Last day of use by the rule set ${chosenRuleSet(layout).name} or the year on the label, whichever is earlier.`
    case 'last-day-ahead':
      return `Its last day by the rule set ${chosenRuleSet(layout).name} or the year on the label is ${reminder.lastDay}.`
    case 'inspection':
      return reminder.wasDue === null
        ? 'The interval is the shop’s own choice.'
        : `It was due on ${reminder.wasDue}. The interval is the shop’s own choice.`
  }
}
