import { describe, expect, it } from 'vitest'

import { addRecord } from '../../../src/domain/layout/edit/asWelded'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { tapeChecks } from '../../../src/domain/shop/tape/tapeChecks'
import { lengthWithUnit } from '../../../src/domain/units/length'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { beltRecordPages } from '../../../src/sheet/records/beltRecordPages'
import { isNothingMeasured, measuringFormPages } from '../../../src/sheet/records/measuringForm'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'

const textsOf = (pages: readonly SheetPage[]): readonly string[] =>
  pages.flatMap(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))

const examples = exampleIndex.map(({ file }) => ({ file, layout: exampleLayout(file) }))

describe('measuringFormPages', () => {
  it.each(examples)('has a line with the planned figure for every axis and tape of $file', ({ layout }) => {
    const { rows } = tapeChecks({
      tapePoints: layout.tapePoints ?? [],
      tubes: layout.tubes,
      places: layout.places,
    })
    const pages = measuringFormPages(layout, 'a4')
    const texts = textsOf(pages)
    const planned = rows.flatMap(({ held, distances }) => [
      held.xMm,
      held.yMm,
      held.zMm,
      ...distances.map(({ lengthMm }) => lengthMm),
    ])
    const tabs = rows.filter(({ heldAt }) => heldAt === 'hole').length
    expect(texts.filter((text) => text.startsWith('planned '))).toHaveLength(planned.length + 2 * tabs)
    for (const mm of planned)
      expect(texts.some((text) => text.includes(lengthWithUnit(mm, layout.units.length)))).toBe(true)
    // Two readings of each, and nothing filled in.
    expect(texts.filter((text) => /^_+$/.test(text))).toHaveLength(2 * (planned.length + 2 * tabs))
  })

  it('tells each anchor of a pair and never parts one from its lines', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    for (const page of measuringFormPages(layout, 'letter')) {
      const names = textsOf([page]).filter((text) => / (tab|wrap)$/.test(text))
      const zs = textsOf([page]).filter((text) => text === 'z')
      expect(zs).toHaveLength(names.length)
    }
  })

  it('is what is printed until something was read', () => {
    const plan = exampleLayout('trail-car-two-seat.layout.json')
    expect(isNothingMeasured(plan)).toBe(true)
    expect(isNothingMeasured(addRecord(plan))).toBe(true)
    expect(isNothingMeasured(exampleLayout('rock-buggy.layout.json'))).toBe(false)
  })

  it('has no page for a layout without anchors', () => {
    expect(measuringFormPages(emptyLayout(), 'a4')).toEqual([])
  })

  it('says loudly that the datum has no name', () => {
    const layout: Layout = { ...exampleLayout('rock-buggy.layout.json'), datum: ' ' }
    expect(textsOf(measuringFormPages(layout, 'a4')).join(' ')).toContain('Datum: NOT NAMED')
  })
})

describe('a belt record to fill in', () => {
  it.each(examples)(
    'is printed for every place of $file that no belt in use is recorded for',
    ({ layout }) => {
      const inUse = new Set(
        (layout.belts ?? [])
          .filter(({ entries }) => !entries.some(({ kind }) => kind === 'retired'))
          .map(({ placeId }) => placeId),
      )
      const forms = textsOf(beltRecordPages(layout, '2026-07-01', 'a4')).filter(
        (text) => text === 'Belt record, to fill in',
      )
      expect(forms.length > 0).toBe(layout.places.some(({ id }) => !inUse.has(id)))
    },
  )

  it('asks for every fact of the label and claims nothing of a belt', () => {
    const words = textsOf(
      beltRecordPages(exampleLayout('nearly-empty.layout.json'), '2026-07-01', 'a4'),
    ).join(' ')
    for (const fact of ['Standard', 'Serial number', 'Date of manufacture', 'Date of fitting'])
      expect(words).toContain(fact)
    expect(words).not.toMatch(/expired|fine|last day|Age and condition/i)
  })
})
