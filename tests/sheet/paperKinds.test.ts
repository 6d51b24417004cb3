import { describe, expect, it } from 'vitest'
import { evaluateLayout } from '../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../src/domain/layout/wording/cautions'
import { isInside, itemBox } from '../../src/sheet/page/item'
import type { PaperName } from '../../src/sheet/page/paper'
import type { SheetPage } from '../../src/sheet/page/sheetPage'
import { PAPER_KINDS } from '../../src/sheet/paperKinds'
import { exampleIndex, exampleLayout } from '../support/exampleLayouts'

const PAPER_NAMES: readonly PaperName[] = ['a4', 'letter']

const textsOf = (page: SheetPage): readonly string[] =>
  page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

/** Every kind of paper of every example, in the example's own unit, on both papers. */
const cases = exampleIndex.flatMap(({ file }) => {
  const layout = exampleLayout(file)
  const evaluation = evaluateLayout(layout)
  return PAPER_KINDS.flatMap((kind) =>
    PAPER_NAMES.map((paperName) => ({
      name: `${kind.words} of ${file} on ${paperName}`,
      kind,
      pages: kind.pages({ layout, evaluation, paperName, today: '2026-07-01' }),
    })),
  )
})

describe('every kind of paper', () => {
  it.each(cases)('bears the caution and its place in the set on every page: $name', ({ pages }) => {
    pages.forEach((page, index) => {
      const words = textsOf(page).join(' ')
      expect(words).toContain(CAUTIONS[0])
      expect(words).toContain(`Page ${index + 1} of ${pages.length}`)
      expect([page.number, page.of]).toEqual([index + 1, pages.length])
    })
  })

  it.each(cases)('puts nothing outside the paper: $name', ({ pages }) => {
    for (const page of pages) {
      const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
      expect(page.items.filter((item) => !isInside(itemBox(item), free))).toEqual([])
    }
  })

  it.each(cases)('shows no value that nothing computed: $name', ({ pages }) => {
    for (const page of pages)
      for (const text of textsOf(page)) expect(text).not.toMatch(/NaN|Infinity|undefined|null|\[object/)
  })

  it('says what to do where there is nothing to print', () => {
    const empty = new Set(cases.flatMap(({ kind, pages }) => (pages.length === 0 ? [kind.whenEmpty] : [])))
    expect(empty.size).toBeGreaterThan(0)
    for (const words of empty) expect(words).toMatch(/\.$/)
  })
})
