import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { BELT_STANDARDS, type BeltFacts, RELEASERS } from '../../../../src/domain/care/beltRecord'
import { INSPECTION_ITEM_IDS } from '../../../../src/domain/care/inspection'
import { layoutJsonSchema } from '../../../../src/domain/layout/document/jsonSchema'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { COUNTS } from '../../../../src/domain/layout/document/limits'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import {
  withBeltAdded,
  withBeltReplaced,
  withEntryAdded,
  withFactCorrected,
  withInspectionInterval,
} from '../../../../src/domain/layout/edit/beltRecords'
import { addPlace, removePlace } from '../../../../src/domain/layout/edit/change'
import { flatLayout, flatPlace } from '../../../support/flatLayout'
import { entry, facts, inspection } from '../../care/belts'

const SAID = { date: '2026-06-01', by: 'Kit', note: 'seen at the bench' }

const start = (): Layout => withBeltAdded(flatLayout([flatPlace()]), 'driver', 'belt-1', facts())
const first = (layout: Layout) => {
  const belt = layout.belts?.[0]
  if (belt === undefined) throw new Error('no belt')
  return belt
}

type Edit = (layout: Layout) => Layout

const day = fc.constantFrom('2024-02-29', '2025-12-31', '2026-06-01')
const said = fc.record({ date: day, by: fc.string({ maxLength: 8 }), note: fc.string({ maxLength: 20 }) })
const beltId = fc.constantFrom('belt-1', 'belt-2', 'belt-3', 'nobody')
const someFacts: fc.Arbitrary<BeltFacts> = fc.record({
  name: fc.constantFrom('Left', 'Right'),
  standard: fc.constantFrom(...BELT_STANDARDS),
  serial: fc.string({ maxLength: 8 }),
  manufactured: fc.constantFrom('', '2024', '2024-05', '2024-05-31'),
  labelYear: fc.constantFrom(null, 2026, 2030),
  fitted: fc.constantFrom('', '2024-06-01'),
})
const event = fc.oneof(
  fc.constantFrom(
    { kind: 'cleaning' as const },
    { kind: 'crash' as const },
    { kind: 'retired' as const },
    { kind: 'note' as const },
  ),
  fc.record({ kind: fc.constant('released' as const), lookedAtBy: fc.constantFrom(...RELEASERS) }),
  fc
    .record(
      Object.fromEntries(
        INSPECTION_ITEM_IDS.map((id) => [id, fc.constantFrom('sound', 'fault', 'not-looked-at')]),
      ) as Record<(typeof INSPECTION_ITEM_IDS)[number], fc.Arbitrary<'sound' | 'fault' | 'not-looked-at'>>,
      { requiredKeys: [] },
    )
    .map((results) => ({ kind: 'inspection' as const, results })),
)

/** Any edit that a form could ask for. */
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(beltId, someFacts).map(
    ([id, each]): Edit =>
      (layout) =>
        withBeltAdded(layout, 'driver', id, each),
  ),
  fc.tuple(beltId, event, said).map(
    ([id, each, words]): Edit =>
      (layout) =>
        withEntryAdded(layout, id, { ...words, ...each }),
  ),
  fc
    .tuple(
      beltId,
      fc.constantFrom(
        { fact: 'serial' as const, to: 'B 7' },
        { fact: 'serial' as const, to: '' },
        { fact: 'manufactured' as const, to: '2023-11' },
        { fact: 'labelYear' as const, to: '2031' },
        { fact: 'labelYear' as const, to: '' },
        { fact: 'labelYear' as const, to: 'never' },
        { fact: 'standard' as const, to: 'fia-8853-98' },
        { fact: 'name' as const, to: 'Spare' },
      ),
      said,
    )
    .map(
      ([id, each, words]): Edit =>
        (layout) =>
          withFactCorrected(layout, id, each, words),
    ),
  fc.tuple(beltId, beltId, someFacts, said).map(
    ([id, next, each, words]): Edit =>
      (layout) =>
        withBeltReplaced(layout, id, { id: next, facts: each }, words),
  ),
  fc.tuple(beltId, fc.constantFrom(null, 1, 6, 12)).map(
    ([id, months]): Edit =>
      (layout) =>
        withInspectionInterval(layout, id, months),
  ),
)

const isValid = new Ajv2020({ strict: true }).compile(layoutJsonSchema())

describe('edits of belt records', () => {
  it('only ever add: every entry that was there is still there, first and unchanged; and the file holds it all', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
        let layout: Layout = flatLayout([flatPlace()])
        for (const change of edits) {
          const before = layout
          layout = change(layout)
          for (const [index, belt] of (before.belts ?? []).entries()) {
            const now = layout.belts?.[index]
            expect(now?.id).toBe(belt.id)
            expect(now?.entries.slice(0, belt.entries.length)).toEqual(belt.entries)
          }
        }
        expect(parseLayout(layout)).toEqual({ ok: true, value: layout })
        expect(parseLayoutText(layoutText(layout))).toEqual({ ok: true, value: layout })
        expect(isValid(layout)).toBe(true)
      }),
    )
  })

  it('keep what a corrected fact said before', () => {
    const layout = withFactCorrected(start(), 'belt-1', { fact: 'manufactured', to: '2024-03' }, SAID)
    expect(first(layout)).toMatchObject({
      manufactured: '2024-03',
      entries: [
        {
          id: 'entry-1',
          kind: 'corrected',
          fact: 'manufactured',
          from: '2025-03-15',
          to: '2024-03',
          ...SAID,
        },
      ],
    })
  })

  it('retire the old belt and begin the new one at its place in one step', () => {
    const layout = withBeltReplaced(
      start(),
      'belt-1',
      { id: 'belt-2', facts: facts({ serial: 'B 2' }) },
      SAID,
    )
    expect(layout.belts).toMatchObject([
      { id: 'belt-1', entries: [{ kind: 'retired' }] },
      { id: 'belt-2', placeId: 'driver', serial: 'B 2', entries: [] },
    ])
  })

  it('change nothing, and give the very same layout, when there is nothing to change', () => {
    const layout = start()
    expect(withBeltAdded(layout, 'driver', 'belt-1', facts())).toBe(layout)
    expect(withEntryAdded(layout, 'belt-9', { ...SAID, kind: 'note' })).toBe(layout)
    expect(withFactCorrected(layout, 'belt-1', { fact: 'serial', to: 'A 1204' }, SAID)).toBe(layout)
    expect(withFactCorrected(layout, 'belt-1', { fact: 'labelYear', to: 'x' }, SAID)).toBe(layout)
    expect(withInspectionInterval(layout, 'belt-1', null)).toBe(layout)
    expect(withBeltReplaced(layout, 'belt-1', { id: 'belt-1', facts: facts() }, SAID)).toBe(layout)
  })

  it('do not correct a fact when the history has no room left to say so', () => {
    const entries = Array.from({ length: COUNTS.beltEntries.max }, (_, index) =>
      entry(`entry-${index + 1}`, { kind: 'note' }),
    )
    const layout = { ...start(), belts: [{ ...first(start()), entries }] }
    expect(withFactCorrected(layout, 'belt-1', { fact: 'serial', to: 'B 1' }, SAID)).toBe(layout)
    expect(withBeltReplaced(layout, 'belt-1', { id: 'belt-2', facts: facts() }, SAID)).toBe(layout)
  })

  it('leave the belts of a removed place, and give a new place none of them', () => {
    const two = addPlace(flatLayout([flatPlace()]))
    const second = two.places[1]?.id ?? ''
    const layout = removePlace(withBeltAdded(two, second, 'belt-1', facts()), second)
    expect(first(layout).placeId).toBe(second)
    expect(parseLayout(layout).ok).toBe(true)
    expect(addPlace(layout).places[1]?.id).not.toBe(second)
  })
})

describe('belt records in a file', () => {
  const withEntries = (...entries: Parameters<typeof entry>[]): unknown => ({
    ...start(),
    belts: [{ ...first(start()), entries: entries.map((each) => entry(...each)) }],
  })
  const withFields = (change: Record<string, unknown>): unknown => ({
    ...start(),
    belts: [{ ...first(start()), ...change }],
  })
  const problems = (input: unknown): readonly string[] => {
    const parsed = parseLayout(input)
    return parsed.ok ? [] : parsed.error.map(({ path, message, remedy }) => `${path}: ${message} ${remedy}`)
  }

  it.each<[string, unknown, RegExp]>([
    [
      'two belts of one id',
      { ...start(), belts: [first(start()), first(start())] },
      /belts\[1\]\.id: .*used by belt 1/,
    ],
    ['a year that no belt has', withFields({ labelYear: 1200 }), /belts\[0\]\.labelYear: /],
    ['half a year', withFields({ labelYear: 2026.5 }), /belts\[0\]\.labelYear: .*2026\.5/],
    ['a month that does not exist', withFields({ manufactured: '2025-13' }), /manufactured: .*2025-13/],
    ['a date in words', withFields({ manufactured: 'May 2025' }), /manufactured: .*YYYY-MM/],
    ['a fitting on 31 June', withFields({ fitted: '2026-06-31' }), /fitted: .*2026-06-31/],
    [
      'half a month between inspections',
      withFields({ inspectEveryMonths: 1.5 }),
      /inspectEveryMonths: .*whole/,
    ],
    ['a belt without a name', withFields({ name: ' ' }), /belts\[0\]\.name: .*empty/],
    ['a standard that does not exist', withFields({ standard: 'sfi-99' }), /belts\[0\]\.standard/],
    [
      'an entry on no day',
      withEntries(['a', { kind: 'note' }, { date: '2026-02-31' }]),
      /entries\[0\]\.date: .*no day/,
    ],
    [
      'two entries of one id',
      withEntries(['a', { kind: 'note' }], ['a', { kind: 'note' }]),
      /entries\[1\]\.id/,
    ],
    ['a strike of nothing', withEntries(['a', { kind: 'struck', entryId: 'b' }]), /no earlier entry/],
    [
      'a strike of what comes later',
      withEntries(['a', { kind: 'struck', entryId: 'b' }], ['b', { kind: 'note' }]),
      /no earlier entry/,
    ],
    [
      'a strike twice',
      withEntries(
        ['a', { kind: 'note' }],
        ['b', { kind: 'struck', entryId: 'a' }],
        ['c', { kind: 'struck', entryId: 'a' }],
      ),
      /struck before/,
    ],
    [
      'a strike of a strike',
      withEntries(
        ['a', { kind: 'note' }],
        ['b', { kind: 'struck', entryId: 'a' }],
        ['c', { kind: 'struck', entryId: 'b' }],
      ),
      /itself a strike/,
    ],
    [
      'a strike of a correction',
      withEntries(
        ['a', { kind: 'corrected', fact: 'serial', from: '', to: 'A 1204' }],
        ['b', { kind: 'struck', entryId: 'a' }],
      ),
      /is a correction/,
    ],
    [
      'a fact that its last correction does not lead to',
      withEntries(['a', { kind: 'corrected', fact: 'serial', from: '', to: 'A 1' }]),
      /serial: .*last correction.*"A 1"/,
    ],
    [
      'corrections that do not lead one from the other',
      withEntries(
        ['a', { kind: 'corrected', fact: 'serial', from: '', to: 'A 1' }],
        ['b', { kind: 'corrected', fact: 'serial', from: 'A 2', to: 'A 1204' }],
      ),
      /entries\[1\]\.from: .*left "A 1"/,
    ],
    [
      'a result that is none',
      withEntries(['a', { kind: 'inspection', results: { cuts: 'maybe' as never } }]),
      /results\.cuts/,
    ],
    [
      'a thing that is not on the list',
      withEntries(['a', { kind: 'inspection', results: { colour: 'sound' } as never }]),
      /results\.colour/,
    ],
  ])('refuse %s, and say where', (_what, input, message) => {
    const found = problems(input)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatch(message)
  })

  it('may be of places that are not in the layout, and may leave things unlooked at', () => {
    expect(problems(withFields({ placeId: 'gone' }))).toEqual([])
    expect(
      problems(withEntries(['a', { kind: 'inspection', results: {} }], ['b', inspection('cuts')])),
    ).toEqual([])
  })

  it('are left out where there are none, so that old files stay as they were', () => {
    expect(layoutText(flatLayout([flatPlace()]))).not.toContain('belts')
    expect(parseLayout(flatLayout([flatPlace()]))).toEqual({ ok: true, value: flatLayout([flatPlace()]) })
  })
})
