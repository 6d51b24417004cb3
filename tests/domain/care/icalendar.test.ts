import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'

import { type DayEvent, icalendarText } from '../../../src/domain/care/icalendar'

const STAMP_MS = Date.UTC(2026, 5, 1, 4, 15, 30, 900)

const event = (change: Partial<DayEvent> = {}): DayEvent => ({
  uid: 'belt-3f9a-last-day@tabwright.invalid',
  date: '2026-02-28',
  summary: 'Last day: driver’s harness',
  description: 'By the rule book.\nSee the record.',
  ...change,
})

const CONTROLS = new Set([
  ...Array.from({ length: 32 }, (_, code) => code).filter((code) => code !== 10),
  127,
])

/** What the format can hold of a text: one kind of line break, and a space for every other control character. */
const kept = (words: string): string =>
  Array.from(words.replaceAll(/\r\n?/g, '\n'), (letter) =>
    CONTROLS.has(letter.codePointAt(0) ?? 0) ? ' ' : letter,
  ).join('')

const bytes = (text: string): number => new TextEncoder().encode(text).length

/** What an independent reader makes of the text. */
const read = (text: string) =>
  new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent').map((component) => {
    const found = new ICAL.Event(component)
    return {
      uid: found.uid,
      summary: found.summary,
      description: found.description,
      date: found.startDate.toString(),
      isDate: found.startDate.isDate,
      days: found.duration.toSeconds() / 86_400,
      stamp: component.getFirstPropertyValue('dtstamp')?.toString(),
      alarms: component.getAllSubcomponents('valarm').length,
    }
  })

describe('icalendarText', () => {
  it('is read by an independent reader as whole days with the same words', () => {
    expect(read(icalendarText([event()], STAMP_MS))).toEqual([
      {
        uid: 'belt-3f9a-last-day@tabwright.invalid',
        summary: 'Last day: driver’s harness',
        description: 'By the rule book.\nSee the record.',
        date: '2026-02-28',
        isDate: true,
        days: 1,
        stamp: '2026-06-01T04:15:30Z',
        alarms: 1,
      },
    ])
  })

  // RFC 5545, sections 3.4, 3.6, 3.6.1, 3.6.6, 3.7: order, required properties and what may be there once.
  it('follows the grammar of RFC 5545 line by line', () => {
    const text = icalendarText([event(), event({ uid: 'other', date: '2026-12-31' })], STAMP_MS)
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
    // Unfolded (3.1): a line break followed by a space is taken out.
    const lines = text.replaceAll('\r\n ', '').slice(0, -2).split('\r\n')
    expect(lines.slice(0, 4)).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Tabwright//Belt reminders//EN',
      'CALSCALE:GREGORIAN',
    ])
    for (const line of lines) expect(line).toMatch(/^[A-Z-]+(;[A-Z-]+=[^:;"]+)*:./)
    const events = lines.join('\n').match(/BEGIN:VEVENT\n[\s\S]*?END:VEVENT/g) ?? []
    expect(events).toHaveLength(2)
    for (const each of events) {
      const names = ['UID', 'DTSTAMP', 'DTSTART', 'DTEND', 'SUMMARY', 'TRANSP']
      const counts = names.map((name) => each.match(new RegExp(`^${name}[:;]`, 'gm'))?.length)
      expect(counts).toEqual(names.map(() => 1))
      expect(each).toMatch(/^DTSTAMP:\d{8}T\d{6}Z$/m)
      expect(each).toMatch(/^DTSTART;VALUE=DATE:\d{8}$/m)
      // 3.6.6: a display alarm needs action, trigger and description.
      expect(each).toMatch(/BEGIN:VALARM\nACTION:DISPLAY\nTRIGGER:[+-]?P(T\d+H)\nDESCRIPTION:.+\nEND:VALARM/)
    }
    expect(events[1]).toContain('DTSTART;VALUE=DATE:20261231\nDTEND;VALUE=DATE:20270101')
  })

  it('escapes what the format keeps for itself and drops what it cannot hold', () => {
    const text = icalendarText([event({ summary: 'a;b,c\\d\u0007e\ud800f\r\nEND:VEVENT' })], STAMP_MS)
    expect(text).toContain(String.raw`SUMMARY:a\;b\,c\\d e f\nEND:VEVENT`)
    expect(read(text)[0]?.summary).toBe('a;b,c\\d e f\nEND:VEVENT')
  })

  it('holds every line to 75 octets, breaks only at CRLF and gives any words back', () => {
    const word = fc.string({ unit: 'grapheme', maxLength: 200 })
    fc.assert(
      fc.property(word, word, (summary, description) => {
        const text = icalendarText(
          [event({ summary: `s${summary}`, description: `d${description}` })],
          STAMP_MS,
        )
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
        for (const line of text.split('\r\n')) expect(bytes(line)).toBeLessThanOrEqual(75)
        // No character is cut: every line alone is whole.
        for (const line of text.split('\r\n')) expect(line).not.toMatch(/\p{Surrogate}/u)
        expect(read(text)[0]).toMatchObject({
          summary: `s${kept(summary)}`,
          description: `d${kept(description)}`,
        })
      }),
    )
  })

  it('folds after exactly 75 octets', () => {
    // "SUMMARY:" is 8 octets: 67 more fill the line, one more goes to the next.
    const fits = icalendarText([event({ summary: 'x'.repeat(67) })], STAMP_MS)
    expect(fits).toContain(`SUMMARY:${'x'.repeat(67)}\r\nDESCRIPTION`)
    const long = icalendarText([event({ summary: 'x'.repeat(68) })], STAMP_MS)
    expect(long).toContain(`SUMMARY:${'x'.repeat(67)}\r\n x\r\n`)
    // The space that begins a further line counts: 74 more letters on it, then the next.
    const longer = icalendarText([event({ summary: 'x'.repeat(67 + 74 + 1) })], STAMP_MS)
    expect(longer).toContain(`SUMMARY:${'x'.repeat(67)}\r\n ${'x'.repeat(74)}\r\n x\r\n`)
    // é is two octets in UTF-8 (RFC 3629): with 66 letters before it the line would have 76.
    const accented = icalendarText([event({ summary: `${'x'.repeat(66)}é` })], STAMP_MS)
    expect(accented).toContain(`SUMMARY:${'x'.repeat(66)}\r\n é\r\n`)
    // A letter of three octets that would reach over the end goes down whole.
    const wide = icalendarText([event({ summary: `${'x'.repeat(65)}€` })], STAMP_MS)
    expect(wide).toContain(`SUMMARY:${'x'.repeat(65)}\r\n €\r\n`)
  })

  it('throws for a calendar without events, which the format does not allow', () => {
    expect(() => icalendarText([], STAMP_MS)).toThrow('needs an event')
  })
})
