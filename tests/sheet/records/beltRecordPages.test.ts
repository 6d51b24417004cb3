import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { BeltEntry, BeltRecord } from '../../../src/domain/care/beltRecord'
import { INSPECTION_ITEMS } from '../../../src/domain/care/inspection'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { TEXT_LENGTHS } from '../../../src/domain/layout/document/limits'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { areOverlapping, isInside, itemBox, type SheetText } from '../../../src/sheet/page/item'
import type { PaperName } from '../../../src/sheet/page/paper'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { beltRecordPages } from '../../../src/sheet/records/beltRecordPages'
import { belt, entry, inspection } from '../../domain/care/belts'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { flatLayout, flatPlace } from '../../support/flatLayout'

const TODAY = '2026-11-27'
const PAPERS: readonly PaperName[] = ['a4', 'letter']

const texts = (page: SheetPage): readonly SheetText[] =>
  page.items.flatMap((item) => (item.kind === 'text' ? [item] : []))

/** The words of a page with line ends taken out again. */
const words = (pages: readonly SheetPage[]): string =>
  pages
    .flatMap(texts)
    .map(({ text }) => text)
    .join(' ')

/** What lies outside the paper's free border or over other words. */
const faults = (page: SheetPage): readonly string[] => {
  const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
  const outside = page.items
    .filter((item) => !isInside(itemBox(item), free))
    .map((item) => `outside: ${item.kind === 'text' ? item.text : item.kind}`)
  const boxes = texts(page).map((item) => ({ item, box: itemBox(item) }))
  const over = boxes.flatMap(({ item, box }, index) =>
    boxes
      .slice(index + 1)
      .flatMap((other) =>
        areOverlapping(box, other.box) ? [`"${item.text}" over "${other.item.text}"`] : [],
      ),
  )
  return [...outside, ...over]
}

const withBelts = (...belts: readonly BeltRecord[]): Layout => ({ ...flatLayout([flatPlace()]), belts })

describe('beltRecordPages', () => {
  it('has one form to fill in where there are no belts', () => {
    expect(beltRecordPages(flatLayout([flatPlace()]), TODAY, 'a4')).toHaveLength(1)
    expect(beltRecordPages(withBelts(), TODAY, 'a4')).toEqual(
      beltRecordPages(flatLayout([flatPlace()]), TODAY, 'a4'),
    )
  })

  const examples = exampleIndex
    .map(({ file }) => ({ file, layout: exampleLayout(file) }))
    .filter(({ layout }) => (layout.belts ?? []).length > 0)
    .flatMap(({ file, layout }) => PAPERS.map((paper) => ({ file, layout, paper })))

  it('is there for the examples that have belts', () => {
    expect(examples.length).toBeGreaterThanOrEqual(6)
  })

  it.each(examples)('puts everything on $paper of $file, nothing over anything', ({ layout, paper }) => {
    const pages = beltRecordPages(layout, TODAY, paper)
    expect(pages.map(({ number, of }) => [number, of])).toEqual(
      pages.map((_page, index) => [index + 1, pages.length]),
    )
    for (const page of pages) {
      expect(faults(page)).toEqual([])
      for (const caution of CAUTIONS) expect(words([page])).toContain(caution)
      expect(words([page])).toContain(TODAY)
      expect(words([page])).toContain('signature')
    }
    const all = words(pages)
    for (const each of layout.belts ?? []) {
      expect(all).toContain(each.serial)
      for (const { date, by, note } of each.entries) {
        expect(all).toContain(`${date} · ${by}`)
        expect(all).toContain(note)
      }
    }
  })

  it('says of a worn belt how old it may get, by which source, what to look at and how to clean it', () => {
    const layout = { ...withBelts(belt({ manufactured: '2024-03' })), ruleSetId: 'belt-standards' }
    const all = words(beltRecordPages(layout, TODAY, 'a4'))
    // Two years from 1 March 2024; 2026-11-27 is 271 days after 2026-03-01 (31 − 1 + 30 + 31 + 30 + 31 + 31 + 30 + 31 + 27 = 271).
    expect(all).toContain('Expired: the last day of use was 2026-03-01, 271 days ago.')
    expect(all).toContain('“shall not exceed two years” (read in the document)')
    expect(all).toContain(
      'counted from 2024-03-01, the earliest day it may mean; from 2024-03-31 it would be 2026-03-31',
    )
    for (const { name, lookFor } of INSPECTION_ITEMS) {
      expect(all).toContain(name)
      expect(all).toContain(lookFor)
    }
    expect(all).toContain('Common practice, no source (care of belts).')
  })

  it('shows of each thing what was found when it was last looked at, and never calls it sound before', () => {
    const entries: readonly BeltEntry[] = [
      entry('a', inspection('latch'), { date: '2026-05-01' }),
      entry('b', { kind: 'inspection', results: { cuts: 'sound' } }, { date: '2026-06-01' }),
      entry('c', inspection('labels'), { date: '2026-07-01' }),
      entry('d', { kind: 'struck', entryId: 'c' }, { date: '2026-07-02', note: 'another belt' }),
    ]
    const all = words(beltRecordPages(withBelts(belt({ entries })), TODAY, 'a4'))
    expect(all).toContain('sound 2026-06-01')
    expect(all).toContain('FAULT 2026-05-01')
    expect(all).not.toContain('FAULT 2026-07-01')
    const fresh = words(beltRecordPages(withBelts(belt()), TODAY, 'a4'))
    expect(fresh).not.toMatch(/sound \d{4}/)
    expect(fresh.match(/\bnever\b/g)?.length).toBeGreaterThanOrEqual(INSPECTION_ITEMS.length)
  })

  it('draws a line through what was struck and leaves it readable', () => {
    const entries = [
      entry('a', { kind: 'cleaning' }, { note: 'WRONG ONE', date: '2026-05-01' }),
      entry('b', { kind: 'struck', entryId: 'a' }, { note: 'another belt', date: '2026-05-02' }),
    ]
    const [page] = beltRecordPages(withBelts(belt({ entries })), TODAY, 'a4')
    const struck = page?.items.find((item) => item.kind === 'text' && item.text.includes('WRONG ONE'))
    if (page === undefined || struck === undefined) throw new Error('not printed')
    const box = itemBox(struck)
    const lines = page.items.filter(
      (item) =>
        item.kind === 'line' &&
        item.points.every(
          ({ xMm, yMm }) =>
            yMm > box.topMm && yMm < box.bottomMm && xMm >= box.leftMm - 0.01 && xMm <= box.rightMm + 0.01,
        ),
    )
    expect(lines).toHaveLength(1)
    expect(words([page])).toContain('Struck 2026-05-02 by Kit: another belt')
  })

  it('puts worn belts first and tells of those of removed places', () => {
    const retired = belt({ id: 'a', name: 'Old one', entries: [entry('x', { kind: 'retired' })] })
    const gone = belt({ id: 'b', name: 'Second seat', placeId: 'gone' })
    const worn = belt({ id: 'c', name: 'Worn one' })
    const pages = beltRecordPages(withBelts(retired, gone, worn), TODAY, 'a4')
    const order = pages.map(({ title }) => title.replace(/, page .*/, ''))
    expect([...new Set(order)]).toEqual([
      'Belt record of Worn one',
      'Belt record of Old one',
      'Belt record of Second seat',
    ])
    expect(words(pages)).toContain('Place: no longer in the layout')
    // Nothing to inspect on a belt that is not worn any more.
    expect(words(pages.filter(({ title }) => title.includes('Old one')))).not.toContain('Inspection list')
  })

  it('holds any words and any length of history without running out of a page', () => {
    const long = (most: number) => fc.string({ unit: 'grapheme', maxLength: most })
    fc.assert(
      fc.property(
        long(TEXT_LENGTHS.name),
        long(TEXT_LENGTHS.name),
        fc.array(long(600), { maxLength: 20 }),
        fc.constantFrom(...PAPERS),
        (name, by, notes, paper) => {
          const entries = notes.map((note, index) =>
            entry(`entry-${index}`, inspection('cuts'), { by, note }),
          )
          const layout = withBelts(belt({ name, entries }))
          expect(beltRecordPages(layout, TODAY, paper).flatMap(faults)).toEqual([])
        },
      ),
      { numRuns: 20 },
    )
  })

  it('holds the longest note there can be', () => {
    const note = 'frayed at the slot, '.repeat(TEXT_LENGTHS.notes / 20)
    const pages = beltRecordPages(
      withBelts(belt({ entries: [entry('a', { kind: 'note' }, { note })] })),
      TODAY,
      'a4',
    )
    expect(pages.length).toBeGreaterThan(1)
    expect(pages.flatMap(faults)).toEqual([])
  })
})
