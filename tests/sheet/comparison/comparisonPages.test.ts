import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../src/domain/layout/document/layout'
import { withSeat, withSettings } from '../../../src/domain/layout/edit/change'
import { withTube } from '../../../src/domain/layout/edit/changeTubes'
import { withVariantAdded } from '../../../src/domain/layout/edit/changeVariants'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { comparisonPages } from '../../../src/sheet/comparison/comparisonPages'
import { handOverFiles } from '../../../src/sheet/files/handOver/handOverFiles'
import { areOverlapping, isInside, itemBox } from '../../../src/sheet/page/item'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { PAPER_KINDS } from '../../../src/sheet/paperKinds'
import { exampleLayout } from '../../support/exampleLayouts'
import { requestOf } from '../../support/handOver'

const TODAY = '2026-07-01'

const textsOf = (pages: readonly SheetPage[]): string =>
  pages.flatMap(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))).join(' ')

const plain = exampleLayout('trail-car-two-seat.layout.json')

/** The seat 20 mm higher in the second variant. */
const raised = (layout: Layout): Layout => {
  const [place] = layout.places
  const hipPoint = { xMm: 0, yMm: 0, zMm: 0, ...place?.seat.hipPoint }
  return withSeat(layout, place?.id ?? '', { hipPoint: { ...hipPoint, zMm: hipPoint.zMm + 20 } })
}

const two = raised(withVariantAdded(plain, 'High seat'))

/** Four variants, the last with a bar of another size and no anchors at all. */
const four = (): Layout => {
  const third = raised(withVariantAdded(two, 'Higher seat'))
  const last = withVariantAdded(
    third,
    'Bare, and called by a name that is much too long to stand in a narrow column of a table',
  )
  const tubeId = last.tubes[0]?.id ?? ''
  const thick = withTube(last, tubeId, { outsideDiameterMm: 51 })
  return { ...thick, places: thick.places.map((place) => ({ ...place, anchors: [] })) }
}

describe('papers that are worked by', () => {
  it('say on every page which variant they are of', () => {
    const evaluation = evaluateLayout(two, { extent: 'what-moves' })
    for (const id of ['mount-sheet', 'templates'] as const) {
      const kind = PAPER_KINDS.find((each) => each.id === id)
      const pages = kind?.pages({ layout: two, evaluation, paperName: 'a4', today: TODAY }) ?? []
      expect(pages.length).toBeGreaterThan(1)
      for (const page of pages) expect(textsOf([page])).toMatch(/variant:? High seat/i)
    }
  })
})

describe('comparisonPages', () => {
  it('are none while a car has one variant', () => {
    expect(comparisonPages(plain, TODAY, 'a4')).toEqual([])
  })

  it('say which variants, what differs by how much, and the cautions, and never a room', () => {
    const pages = comparisonPages(two, TODAY, 'a4')
    const words = textsOf(pages)
    for (const said of [
      'Variant A',
      'High seat (drawn)',
      '(20 mm) down',
      'seat 13/16 in (20 mm)',
      CAUTIONS[0] ?? '',
    ])
      expect(words).toContain(said)
    expect(words).toMatch(/How much room is left to a limit is not on this page/)
    expect(words).not.toMatch(/to the limit\b(?!s)|being worked out/)
    expect(words).not.toMatch(/NaN|Infinity|undefined|\[object/)
  })

  it('has nothing outside the paper and no text on another in its tables, with two and four variants, in both units', () => {
    for (const layout of [two, four(), withSettings(four(), { units: { ...plain.units, length: 'in' } })]) {
      for (const paperName of ['a4', 'letter'] as const) {
        for (const page of comparisonPages(layout, TODAY, paperName)) {
          const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
          expect(page.items.filter((item) => !isInside(itemBox(item), free))).toEqual([])
          const texts = page.items.filter((item) => item.kind === 'text' && !item.halo).map(itemBox)
          const touching = texts.filter((box, index) =>
            texts.slice(index + 1).some((other) => areOverlapping(box, other)),
          )
          expect(touching).toEqual([])
        }
      }
    }
  })

  it('is in the hand-over folder where there are variants, and not missed where there are none', () => {
    const paths = handOverFiles(requestOf(two)).map(({ path }) => path)
    expect(paths.some((path) => /^papers\/comparison-.*high-seat.*\.html$/.test(path))).toBe(true)
    const without = handOverFiles(requestOf(plain))
    expect(without.some(({ path }) => path.includes('comparison'))).toBe(false)
    expect(without[0]?.text).not.toContain('Comparison')
  })
})
