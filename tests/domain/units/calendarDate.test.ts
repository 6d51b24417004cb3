import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, it } from 'vitest'

import {
  daysBetween,
  isCalendarDate,
  lastDayOfMonth,
  plusDays,
  plusMonths,
  plusYears,
} from '../../../src/domain/units/calendarDate'

// Outside check: the Temporal calendar (a polyfill of ECMA-262's proposal) counts the same days.
const day = fc
  .record({
    year: fc.integer({ min: 1900, max: 2199 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 31 }),
  })
  .map((fields) => Temporal.PlainDate.from(fields, { overflow: 'constrain' }).toString())

describe('isCalendarDate', () => {
  it.each([
    // Leap years: those divisible by 4, of the full centuries only those divisible by 400. Source: ISO 8601 (from memory).
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2000-02-29', true],
    ['2100-02-29', false],
    ['2026-02-31', false],
    ['2026-04-31', false],
    ['2026-12-31', true],
    ['2026-13-01', false],
    ['2026-00-10', false],
    ['2026-01-00', false],
    ['0000-01-01', false],
    ['0001-01-01', true],
    ['9999-12-31', true],
    ['2026-2-9', false],
    ['2026-02', false],
    ['26-02-09', false],
    ['2026-02-09T00:00', false],
    ['', false],
  ])('%s: %s', (text, expected) => {
    expect(isCalendarDate(text)).toBe(expected)
  })

  it('agrees with Temporal on every combination of digits', () => {
    const part = (most: number) =>
      fc.integer({ min: 0, max: most }).map((value) => String(value).padStart(2, '0'))
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), part(14), part(33), (year, month, date) => {
        const text = `${String(year).padStart(4, '0')}-${month}-${date}`
        const isDay = ((): boolean => {
          try {
            return Temporal.PlainDate.from(text, { overflow: 'reject' }).toString() === text
          } catch {
            return false
          }
        })()
        expect(isCalendarDate(text)).toBe(isDay)
      }),
    )
  })
})

describe('counting days, months and years', () => {
  it.each([
    // Source: Regulation (EEC, Euratom) 1182/71, Article 3(2)(c): the same date, or the last day of a month that lacks it.
    ['2024-02-29', 1, '2025-02-28'],
    ['2024-02-29', 2, '2026-02-28'],
    ['2024-02-29', 4, '2028-02-29'],
    ['2096-02-29', 4, '2100-02-28'],
    ['2024-03-15', 2, '2026-03-15'],
    ['2024-12-31', 5, '2029-12-31'],
  ])('%s and %i years is %s', (date, years, expected) => {
    expect(plusYears(date, years)).toBe(expected)
  })

  it.each([
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-10-31', 1, '2026-11-30'],
    ['2026-11-30', 3, '2027-02-28'],
    ['2026-12-15', 1, '2027-01-15'],
    ['2026-01-15', -1, '2025-12-15'],
  ])('%s and %i months is %s', (date, months, expected) => {
    expect(plusMonths(date, months)).toBe(expected)
  })

  it('agrees with Temporal', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: -600, max: 600 }), day, (date, count, other) => {
        const plain = Temporal.PlainDate.from(date)
        expect(plusDays(date, count)).toBe(plain.add({ days: count }).toString())
        expect(plusMonths(date, count)).toBe(plain.add({ months: count }).toString())
        expect(plusYears(date, count % 20)).toBe(plain.add({ years: count % 20 }).toString())
        expect(daysBetween(date, other)).toBe(plain.until(other, { largestUnit: 'day' }).days)
        expect(lastDayOfMonth(plain.year, plain.month)).toBe(
          plain.with({ day: plain.daysInMonth }).toString(),
        )
      }),
    )
  })

  it('throws for what is no date instead of counting on', () => {
    expect(() => plusDays('2026-02-31', 1)).toThrow('"2026-02-31" is no calendar date')
    expect(() => daysBetween('2026-01-01', '')).toThrow('"" is no calendar date')
  })
})
