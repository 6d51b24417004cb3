import { plusDays } from '../units/calendarDate'

/** An event that fills one day. */
export interface DayEvent {
  /** The same for the same event in every file that is ever made of it; no other event of anybody has it. */
  readonly uid: string
  /** ISO 8601 date. */
  readonly date: string
  readonly summary: string
  readonly description: string
}

/** Octets of a content line without its line break. Source: RFC 5545, 3.1 ("SHOULD NOT be longer than 75 octets"). */
const LINE_OCTETS = 75

/** Octets of one character in UTF-8. Source: RFC 3629, section 3. */
const octets = (letter: string): number => {
  const code = letter.codePointAt(0) ?? 0
  if (code < 0x80) return 1
  if (code < 0x800) return 2
  return code < 0x10000 ? 3 : 4
}

/** A content line cut into lines that are short enough, each further one begun by a space; no character is cut. Source: RFC 5545, 3.1. */
const folded = (line: string): string => {
  let text = ''
  let used = 0
  for (const letter of line) {
    const size = octets(letter)
    if (used + size > LINE_OCTETS) {
      text += '\r\n '
      used = 1
    }
    text += letter
    used += size
  }
  return text
}

/**
 * A text as a property's value: backslash, semicolon, comma and line breaks escaped; control characters, which no value may hold, and
 * half characters become spaces. Source: RFC 5545, 3.3.11.
 */
const escapedText = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, '\n')
    // oxlint-disable-next-line no-control-regex -- control characters are exactly what is meant
    .replaceAll(/[\u0000-\u0009\u000B-\u001F\u007F]|\p{Surrogate}/gu, ' ')
    .replaceAll(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll('\n', '\\n')

const basicDate = (date: string): string => date.replaceAll('-', '')

/** `20261127T041500Z`. Source: RFC 5545, 3.3.5, form 2. */
const utcStamp = (stampMs: number): string =>
  `${new Date(stampMs).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`

/** At eight in the morning of the day itself. Our choice. */
const ALARM_TRIGGER = 'PT8H'

const eventLines = (event: DayEvent, stamp: string): readonly string[] => [
  'BEGIN:VEVENT',
  `UID:${escapedText(event.uid)}`,
  `DTSTAMP:${stamp}`,
  `DTSTART;VALUE=DATE:${basicDate(event.date)}`,
  // The end is not part of the event. Source: RFC 5545, 3.6.1.
  `DTEND;VALUE=DATE:${basicDate(plusDays(event.date, 1))}`,
  `SUMMARY:${escapedText(event.summary)}`,
  `DESCRIPTION:${escapedText(event.description)}`,
  'TRANSP:TRANSPARENT',
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `TRIGGER:${ALARM_TRIGGER}`,
  `DESCRIPTION:${escapedText(event.summary)}`,
  'END:VALARM',
  'END:VEVENT',
]

/**
 * A calendar file of whole-day events. `stampMs` is when it is made, in milliseconds since 1970-01-01T00:00Z. Source of the form:
 * RFC 5545. A calendar holds at least one event; throws for none.
 */
export const icalendarText = (events: readonly DayEvent[], stampMs: number): string => {
  if (events.length === 0) throw new RangeError('a calendar file needs an event')
  const stamp = utcStamp(stampMs)
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tabwright//Belt reminders//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ]
  return lines.map((line) => `${folded(line)}\r\n`).join('')
}
