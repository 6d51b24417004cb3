import { describe, expect, it } from 'vitest'

import {
  beltCondition,
  entriesByDate,
  isWholeInspection,
  lastWholeInspection,
  standingEntries,
} from '../../../src/domain/care/condition'
import { entryProblems, factProblems, type NewEntry } from '../../../src/domain/care/entryProblems'
import { INSPECTION_ITEMS } from '../../../src/domain/care/inspection'
import { labelProblems } from '../../../src/domain/care/labelProblems'
import { nextInspection, beltReminders } from '../../../src/domain/care/reminders'
import { belt, entry, facts, inspection } from './belts'

const condition = (...entries: Parameters<typeof entry>[]) =>
  beltCondition(belt({ entries: entries.map((each) => entry(...each)) }))

describe('beltCondition', () => {
  it('is in use while nothing was found', () => {
    expect(condition()).toEqual({ kind: 'in-use' })
    expect(condition(['a', inspection()], ['b', { kind: 'cleaning' }])).toEqual({ kind: 'in-use' })
  })

  it('is out of use after a fault, and a later sound inspection does not lift it', () => {
    const found = condition(['a', inspection('cuts', 'latch')], ['b', inspection()])
    expect(found).toMatchObject({
      kind: 'out-of-use',
      reasons: [{ kind: 'fault', items: ['cuts', 'latch'] }],
    })
  })

  it('lets a licensed person lift a fault but not a crash, and the maker both', () => {
    const licensed = { kind: 'released', lookedAtBy: 'licensed-person' } as const
    const maker = { kind: 'released', lookedAtBy: 'maker' } as const
    expect(condition(['a', inspection('fading')], ['b', licensed]).kind).toBe('in-use')
    expect(condition(['a', { kind: 'crash' }], ['b', licensed])).toMatchObject({
      kind: 'out-of-use',
      reasons: [{ kind: 'crash' }],
    })
    expect(condition(['a', { kind: 'crash' }], ['b', inspection('bolts')], ['c', maker]).kind).toBe('in-use')
    expect(condition(['a', maker], ['b', { kind: 'crash' }]).kind).toBe('out-of-use')
  })

  it('goes by the order of entering: an entry that is dated back is not lifted by one entered before it', () => {
    const released = { kind: 'released', lookedAtBy: 'maker' } as const
    const found = condition(
      ['a', released, { date: '2026-05-01' }],
      ['b', { kind: 'crash' }, { date: '2026-04-01' }],
    )
    expect(found.kind).toBe('out-of-use')
  })

  it('forgets what was struck, and nothing else', () => {
    const struck = { kind: 'struck', entryId: 'a' } as const
    expect(condition(['a', { kind: 'crash' }], ['b', struck]).kind).toBe('in-use')
    expect(condition(['a', { kind: 'retired' }], ['b', struck]).kind).toBe('in-use')
    expect(condition(['a', { kind: 'note' }], ['b', { kind: 'crash' }], ['c', struck]).kind).toBe(
      'out-of-use',
    )
    // A release that was a mistake brings the fault back.
    const released = { kind: 'released', lookedAtBy: 'maker' } as const
    const lifted = { kind: 'struck', entryId: 'b' } as const
    expect(condition(['a', inspection('cuts')], ['b', released], ['c', lifted]).kind).toBe('out-of-use')
  })

  it('is retired for good, whatever else was found', () => {
    expect(condition(['a', { kind: 'crash' }], ['b', { kind: 'retired' }])).toMatchObject({
      kind: 'retired',
      entry: { id: 'b' },
    })
  })
})

describe('history', () => {
  const entries = [
    entry('a', { kind: 'note' }, { date: '2026-05-02' }),
    entry('b', { kind: 'note' }, { date: '2026-05-01' }),
    entry('c', { kind: 'note' }, { date: '2026-05-02' }),
    entry('d', { kind: 'struck', entryId: 'b' }, { date: '2026-05-03' }),
  ]

  it('is read by date, in the order of entering within a day, and loses nothing', () => {
    expect(entriesByDate({ entries }).map(({ id }) => id)).toEqual(['b', 'a', 'c', 'd'])
    expect(standingEntries({ entries }).map(({ id }) => id)).toEqual(['a', 'c'])
  })
})

describe('whole inspections', () => {
  it('are those in which nothing was left out', () => {
    expect(isWholeInspection(entry('a', inspection('cuts')))).toBe(true)
    expect(isWholeInspection(entry('a', { kind: 'inspection', results: {} }))).toBe(false)
    const results = Object.fromEntries(INSPECTION_ITEMS.map(({ id }) => [id, 'sound' as const]))
    for (const { id } of INSPECTION_ITEMS) {
      const part = { ...results, [id]: 'not-looked-at' as const }
      expect(isWholeInspection(entry('a', { kind: 'inspection', results: part }))).toBe(false)
    }
  })

  it('are found by date, without those that were struck', () => {
    const entries = [
      entry('a', inspection(), { date: '2026-03-01' }),
      entry('b', inspection(), { date: '2026-05-01' }),
      entry('c', { kind: 'inspection', results: { cuts: 'sound' } }, { date: '2026-05-20' }),
      entry('d', { kind: 'struck', entryId: 'b' }),
    ]
    expect(lastWholeInspection(belt({ entries }))?.id).toBe('a')
    expect(lastWholeInspection(belt())).toBeNull()
  })
})

describe('reminders', () => {
  const TODAY = '2026-06-01'

  it('are the last day, thirty days before it, and the next inspection', () => {
    const entries = [entry('a', inspection(), { date: '2026-01-31' })]
    expect(beltReminders(belt({ entries, inspectEveryMonths: 6 }), '2027-03-15', TODAY)).toEqual([
      // 15 March less 30 days: 13 February.
      { kind: 'last-day-ahead', date: '2027-02-13', lastDay: '2027-03-15' },
      { kind: 'last-day', date: '2027-03-15' },
      { kind: 'inspection', date: '2026-07-31', wasDue: null },
    ])
  })

  it('are never in the past: what is overdue is due today', () => {
    expect(beltReminders(belt(), '2026-05-31', TODAY)).toEqual([])
    expect(beltReminders(belt(), '2026-06-10', TODAY)).toEqual([{ kind: 'last-day', date: '2026-06-10' }])
    expect(nextInspection(belt({ fitted: '2025-01-10', inspectEveryMonths: 12 }), TODAY)).toEqual({
      kind: 'inspection',
      date: TODAY,
      wasDue: '2026-01-10',
    })
    expect(nextInspection(belt({ inspectEveryMonths: 12 }), TODAY)).toMatchObject({
      date: TODAY,
      wasDue: null,
    })
  })

  it('are none for what nobody wants or was retired', () => {
    expect(nextInspection(belt(), TODAY)).toBeNull()
    const entries = [entry('a', { kind: 'retired' })]
    expect(beltReminders(belt({ entries, inspectEveryMonths: 6 }), '2027-03-15', TODAY)).toEqual([])
  })
})

describe('problems of what is typed', () => {
  const TODAY = '2026-06-01'
  const said = { date: TODAY, by: 'Kit', note: 'because' }
  const kinds = (entryTyped: NewEntry, change = {}) =>
    entryProblems(facts(change), entryTyped, TODAY).map(({ kind }) => kind)

  it('are none for an entry of today with a name', () => {
    expect(kinds({ ...said, ...inspection() })).toEqual([])
    expect(kinds({ ...said, note: '', kind: 'cleaning' })).toEqual([])
  })

  it.each<[string, NewEntry]>([
    ['no-date', { ...said, date: '2026-02-31', kind: 'cleaning' }],
    ['no-date', { ...said, date: '', kind: 'cleaning' }],
    ['future-date', { ...said, date: '2026-06-02', kind: 'cleaning' }],
    ['before-made', { ...said, date: '2025-03-14', kind: 'cleaning' }],
    ['nobody', { ...said, by: ' ', kind: 'cleaning' }],
    ['no-reason', { ...said, note: ' ', kind: 'note' }],
    ['no-reason', { ...said, note: '', kind: 'struck', entryId: 'a' }],
    ['no-reason', { ...said, note: '', kind: 'crash' }],
    ['no-reason', { ...said, note: '', kind: 'released', lookedAtBy: 'maker' }],
    ['no-reason', { ...said, note: '', kind: 'corrected', fact: 'serial', from: 'A 1204', to: 'A 1205' }],
    ['nothing-looked-at', { ...said, kind: 'inspection', results: {} }],
    ['nothing-looked-at', { ...said, kind: 'inspection', results: { cuts: 'not-looked-at' } }],
    ['unchanged', { ...said, kind: 'corrected', fact: 'serial', from: 'A 1204', to: 'A 1204' }],
    ['no-such-fact', { ...said, kind: 'corrected', fact: 'labelYear', from: '', to: 'soon' }],
    ['no-such-fact', { ...said, kind: 'corrected', fact: 'manufactured', from: '2025-03-15', to: '2025-13' }],
    ['no-such-fact', { ...said, kind: 'corrected', fact: 'name', from: 'Left harness', to: ' ' }],
  ])('say %s', (kind, typed) => {
    expect(kinds(typed)).toEqual([kind])
  })

  it('let a wrong date of manufacture be corrected', () => {
    const fix = { kind: 'corrected', fact: 'manufactured', from: '2026-12', to: '2025-12' } as const
    expect(kinds({ ...said, ...fix }, { manufactured: '2026-12' })).toEqual([])
  })

  it.each([
    [{ manufactured: '1949' }, ['manufactured']],
    [{ manufactured: '2025-2' }, ['manufactured']],
    [{ manufactured: '2025-02-29' }, ['manufactured']],
    [{ manufactured: 'spring' }, ['manufactured']],
    [{ labelYear: 20_26.5, fitted: '2026-06-31', name: '' }, ['name', 'labelYear', 'fitted']],
    [{ manufactured: '', labelYear: null, fitted: '', serial: '' }, []],
  ])('of facts %o are of %o', (change, found) => {
    expect(factProblems(facts(change)).map(({ fact }) => fact)).toEqual(found)
  })

  it('of a label are said only where the dates cannot all be true', () => {
    expect(labelProblems(facts({ standard: 'unreadable', fitted: '2026-06-02' }), TODAY)).toEqual([
      { kind: 'unreadable' },
      { kind: 'fitted-in-future', fitted: '2026-06-02' },
    ])
    expect(labelProblems(facts({ manufactured: '2026-06', fitted: TODAY, labelYear: 2026 }), TODAY)).toEqual(
      [],
    )
  })
})
