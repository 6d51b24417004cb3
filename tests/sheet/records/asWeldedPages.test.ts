import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../src/domain/layout/document/layout'
import {
  withMeasurement,
  withRecord,
  withSignature,
  addRecord,
} from '../../../src/domain/layout/edit/asWelded'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { heldPoint } from '../../../src/domain/shop/tape/heldPoint'
import { isInside, itemBox, type SheetText } from '../../../src/sheet/page/item'
import type { PaperName } from '../../../src/sheet/page/paper'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { asWeldedPages } from '../../../src/sheet/records/asWeldedPages'
import { weldedPapers } from '../../../src/sheet/records/weldedPaper'
import { coordinatesAt, planOfExample } from '../../support/asWelded'
import { overlappingTexts } from '../../support/sheetTexts'

const TOLERANCE = { xMm: 2, yMm: 2, zMm: 2, tabDeg: 2, reclineDeg: 1, spread: 'worst-case' } as const

/** An example with a record in which all but the last anchor are measured, the first one 6 mm too far back. */
const recorded = (file: string, unit: 'mm' | 'in'): Layout => {
  const plan = planOfExample(file)
  const layout = { ...plan, units: { ...plan.units, length: unit }, tolerance: TOLERANCE }
  const begun = withRecord(addRecord(layout), 'welded-1', {
    date: '2026-04-01',
    measuredBy: 'Ines Okafor',
    notes: 'Invented record.',
  })
  const entries = begun.asWelded?.[0]?.anchors ?? []
  return entries
    .slice(0, -1)
    .reduce(
      (so, { placeId, anchorId, planned }, index) =>
        withMeasurement(
          so,
          { recordId: 'welded-1', placeId, anchorId },
          coordinatesAt(heldPoint(planned, so.tubes), index === 0 ? { xMm: 6 } : { yMm: 0.5 }),
        ),
      begun,
    )
}

const pagesOf = (layout: Layout, paper: PaperName = 'a4'): readonly SheetPage[] =>
  asWeldedPages(layout, evaluateLayout(layout, { extent: 'what-moves' }), weldedPapers(layout), paper)

const texts = ({ items }: SheetPage): readonly SheetText[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : []))

/** Everything on some pages without spaces, whatever lines it was broken into. */
const written = (pages: readonly SheetPage[]): string =>
  pages
    .flatMap((page) => texts(page).map(({ text }) => text))
    .join('')
    .replaceAll(/\s+/g, '')

const bare = (text: string): string => text.replaceAll(/\s+/g, '')

const CASES = [
  'rock-buggy.layout.json',
  'trail-car-two-seat.layout.json',
  'hill-climber-joined-straps.layout.json',
].flatMap((file) =>
  (['mm', 'in'] as const).flatMap((unit) => {
    const layout = recorded(file, unit)
    return (['a4', 'letter'] as const).map((paper) => ({
      name: `${file} in ${unit} on ${paper}`,
      layout,
      pages: pagesOf(layout, paper),
    }))
  }),
)

describe('asWeldedPages', () => {
  it.each(CASES)('puts nothing outside the paper, and no words into one another: $name', ({ pages }) => {
    for (const page of pages) {
      const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
      expect(page.items.filter((item) => !isInside(itemBox(item), free))).toEqual([])
      expect(overlappingTexts(texts(page))).toEqual([])
    }
  })

  it.each(CASES)('cuts no cell short: $name', ({ pages }) => {
    expect(pages.flatMap(texts).filter(({ text }) => text.endsWith('…'))).toEqual([])
  })

  it.each(CASES)('has every caution, its number and how many there are on every page: $name', ({ pages }) => {
    for (const [index, page] of pages.entries()) {
      const text = written([page])
      for (const caution of CAUTIONS) expect(text).toContain(bare(caution))
      expect(text).toContain(bare(`Page ${index + 1} of ${pages.length}`))
    }
  })

  it('gives planned, measured and deviation in both units, how it was measured, and a verdict', () => {
    const text = written(pagesOf(recorded('rock-buggy.layout.json', 'mm')))
    // The first shoulder tab: planned x 1612 mm, measured 1618, 63 7/16 and 63 11/16 in (1612/25.4 = 63.465, 1618/25.4 = 63.701).
    for (const part of [
      'Left shoulder tab',
      '1612',
      '63 7/16 in',
      '1618',
      '63 11/16 in',
      '6 mm rearward',
      '± 2 mm allowed',
      'outside tolerance',
      'from the datum along the axes: 3 readings, each thing read once; by its readings ± 0.5 mm in x',
      'within tolerance',
      'not measured',
      '1 of 6 anchors are taken as planned: right anti-submarine tab (not measured)',
      'Welded from revision',
      'Measured on',
      'Invented record.',
    ])
      expect(text).toContain(bare(part))
  })

  it('names the findings that changed with both values, the rule set and how its figures are known', () => {
    const layout = recorded('everything-wrong.layout.json', 'mm')
    const text = written(pagesOf(layout))
    const { ruleSet } = evaluateLayout(layout, { extent: 'what-moves' })
    expect(text).toContain(bare('Broken in the plan and on the car'))
    expect(text).toContain(bare('In the plan:'))
    expect(text).toContain(bare('MUST:'))
    expect(text).toContain(bare(`Rule set: ${ruleSet.name}, ${ruleSet.edition}`))
    expect(text).toContain(bare('by how their figures reached us'))
  })

  it('has lines to sign on, and the signature once there is one', () => {
    const open = recorded('rock-buggy.layout.json', 'mm')
    expect(written(pagesOf(open))).toContain(bare('Open: not signed yet'))
    expect(written(pagesOf(open))).toContain(bare('Seen by the customer'))
    const signed = withSignature(open, 'welded-1', { name: 'Ines Okafor', date: '2026-04-02' })
    expect(written(pagesOf(signed))).toContain(bare('Signed by Ines Okafor on 2026-04-02.'))
  })

  it('gives no page without a record, a page for one with nothing measured, and the pages of all in a row', () => {
    const plan = planOfExample('rock-buggy.layout.json')
    expect(pagesOf(plan)).toEqual([])
    const empty = pagesOf(addRecord(plan))
    expect(written(empty)).toContain(bare('No anchor is measured, so there is nothing to say of the car.'))
    const two = addRecord(recorded('rock-buggy.layout.json', 'mm'))
    const pages = pagesOf(two)
    expect(pages.map(({ number }) => number)).toEqual(pages.map((_, index) => index + 1))
    expect(pages.length).toBeGreaterThan(pagesOf(recorded('rock-buggy.layout.json', 'mm')).length)
  })

  it('says when the plan has another revision than the one that was welded from', () => {
    const layout = recorded('rock-buggy.layout.json', 'mm')
    expect(written(pagesOf(layout))).not.toContain(bare('another revision'))
    const revised = { ...layout, job: { ...layout.job, revision: 'B' } }
    expect(written(pagesOf(revised))).toContain(bare('The plan has another revision now'))
  })

  it('takes names and notes of any length', () => {
    const layout = withRecord(recorded('rock-buggy.layout.json', 'mm'), 'welded-1', {
      name: 'N'.repeat(200),
      notes: 'wordy '.repeat(1600),
    })
    const pages = pagesOf(layout)
    for (const page of pages) {
      const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
      expect(page.items.filter((item) => !isInside(itemBox(item), free))).toEqual([])
    }
    expect(written(pages).split('wordy').length - 1).toBe(1600)
  })
})
