import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { lengthText } from '../../../../src/domain/units/length'
import { figureMaker } from '../../../../src/sheet/mount/figure/elevationFigure'
import { numberedAnchors } from '../../../../src/sheet/mount/table/anchorTable'
import { itemBox, type SheetItem } from '../../../../src/sheet/page/item'
import { exampleLayout } from '../../../support/exampleLayouts'
import { overlappingTexts, spoiledBalloons, textsOf } from '../../../support/sheetTexts'

/** Room beside the tables on either paper, mm: what is left of 297 × 210 and of 279.4 × 215.9 beside tables of 125 to 190 mm. */
const ROOMS = [
  { paper: 'A4', widthMm: 150, heightMm: 155 },
  { paper: 'US Letter', widthMm: 90, heightMm: 160 },
] as const
const UNITS = ['mm', 'in'] as const

const BASES = ['trail-car-two-seat.layout.json', 'desert-single-thick-shell.layout.json'].map((file) => {
  const layout = exampleLayout(file)
  return { layout, evaluation: evaluateLayout(layout) }
})

const point = fc.record({
  xMm: fc.double({ min: 0, max: 2_000, noNaN: true }),
  yMm: fc.double({ min: -300, max: 1_400, noNaN: true }),
  zMm: fc.double({ min: -50, max: 1_200, noNaN: true }),
})

/** The layout with its anchors anywhere in the car; some fall together, as in a car they do. */
const scattered = (
  layout: Layout,
  points: readonly Layout['places'][0]['anchors'][0]['mount']['point'][],
): Layout => {
  let next = 0
  return {
    ...layout,
    places: layout.places.map((place) => ({
      ...place,
      anchors: place.anchors.map((anchor) => {
        next += 1
        return {
          ...anchor,
          mount: { ...anchor.mount, point: points[next % points.length] ?? anchor.mount.point },
        }
      }),
    })),
  }
}

const CORNER = { xMm: 8, yMm: 30 }

describe('figureMaker', () => {
  it('lets no numbers, names or balloons touch for anchors anywhere, on both papers, in both units', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...BASES),
        fc.array(point, { minLength: 3, maxLength: 13 }),
        fc.constantFrom(...UNITS),
        ({ layout, evaluation }, points, length) => {
          const moved = scattered({ ...layout, units: { ...layout.units, length } }, points)
          const maker = figureMaker(moved, evaluation, numberedAnchors(moved, evaluation))
          for (const room of ROOMS) {
            const items = maker(room).itemsAt(CORNER)
            expect(overlappingTexts(textsOf(items))).toEqual([])
            expect(spoiledBalloons(items)).toEqual([])
          }
        },
      ),
      { numRuns: 200 },
    )
  })

  it('stays inside the room it is given', () => {
    for (const { layout, evaluation } of BASES) {
      const maker = figureMaker(layout, evaluation, numberedAnchors(layout, evaluation))
      for (const room of ROOMS) {
        const boxes = maker(room).itemsAt(CORNER).map(itemBox)
        expect(Math.min(...boxes.map(({ leftMm }) => leftMm))).toBeGreaterThanOrEqual(CORNER.xMm)
        expect(Math.max(...boxes.map(({ rightMm }) => rightMm))).toBeLessThanOrEqual(
          CORNER.xMm + room.widthMm,
        )
        expect(Math.max(...boxes.map(({ bottomMm }) => bottomMm))).toBeLessThanOrEqual(
          CORNER.yMm + room.heightMm,
        )
      }
    }
  })

  it('writes every distance from the datum, with a tick on the dimension line for each', () => {
    const [base] = BASES
    if (base === undefined) throw new Error('there is a base')
    const { layout, evaluation } = base
    const room = { widthMm: 150, heightMm: 280 }
    const figure = figureMaker(layout, evaluation, numberedAnchors(layout, evaluation))(room)
    const items = figure.itemsAt(CORNER)
    const words = textsOf(items).map(({ text }) => text)
    const points = layout.places.flatMap(({ anchors }) => anchors.map(({ mount }) => mount.point))
    for (const { xMm, yMm, zMm } of points)
      for (const lengthMm of [xMm, yMm, zMm])
        expect(words).toContain(lengthText(lengthMm, layout.units.length))
    // Room for the numbers along the car below both elevations.
    const first = lengthText(points[0]?.xMm ?? 0, layout.units.length)
    expect(words.filter((word) => word === first)).toHaveLength(2)
    const distinct = (values: readonly number[]): number =>
      new Set(values.map((mm) => lengthText(mm, layout.units.length))).size
    const expected =
      2 * distinct(points.map(({ xMm }) => xMm)) +
      distinct(points.map(({ yMm }) => yMm)) +
      distinct(points.map(({ zMm }) => zMm))
    expect(items.filter(isTick)).toHaveLength(expected)
  })
})

/** Slanting at 45°, both ways as long: an architectural tick. */
const isTick = (item: SheetItem): boolean => {
  if (item.kind !== 'line' || item.points.length !== 2 || item.widthMm !== 0.25) return false
  const [from, to] = item.points
  if (from === undefined || to === undefined) return false
  return Math.abs(Math.abs(to.xMm - from.xMm) - Math.abs(to.yMm - from.yMm)) < 1e-9 && to.xMm !== from.xMm
}
