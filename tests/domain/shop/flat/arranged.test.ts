import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arranged, movedShape } from '../../../../src/domain/shop/flat/arranged'
import { flatBounds } from '../../../../src/domain/shop/flat/flatBounds'
import { anyFigure } from '../../../support/flatFigures'

describe('arranged', () => {
  it('always keeps figures apart and leaves every one as it is but for its place', () => {
    fc.assert(
      fc.property(fc.array(anyFigure, { maxLength: 6 }), (figures) => {
        const together = arranged('all', 'All', figures)
        let next = 0
        const boxes = figures.flatMap((figure) => {
          const shapes = together.shapes.slice(next, next + figure.shapes.length)
          next += figure.shapes.length
          if (shapes.length === 0) return []
          const [before, after] = [flatBounds(figure.shapes), flatBounds(shapes)]
          const by = { xMm: after.min.xMm - before.min.xMm, yMm: after.min.yMm - before.min.yMm }
          const back = shapes.map((shape) => movedShape(shape, { xMm: -by.xMm, yMm: -by.yMm }))
          expect(JSON.stringify(back, rounded)).toBe(JSON.stringify(figure.shapes, rounded))
          return [after]
        })
        expect(next).toBe(together.shapes.length)
        boxes.forEach((box, index) => {
          for (const other of boxes.slice(index + 1)) {
            const isApart = other.min.xMm >= box.max.xMm + 19.999 || other.max.yMm <= box.min.yMm - 19.999
            if (!isApart) throw new Error(JSON.stringify({ box, other }))
          }
        })
      }),
    )
  })

  it('begins at the origin with the upper left corner of the first figure', () => {
    const square = {
      id: 'a',
      title: 'A',
      shapes: [{ kind: 'circle', layer: 'CUT', centre: { xMm: 500, yMm: -30 }, radiusMm: 10 }] as const,
    }
    expect(arranged('all', 'All', [square, square]).shapes).toEqual([
      { kind: 'circle', layer: 'CUT', centre: { xMm: 10, yMm: -10 }, radiusMm: 10 },
      // 20 mm on from the first, whose width is 20.
      { kind: 'circle', layer: 'CUT', centre: { xMm: 50, yMm: -10 }, radiusMm: 10 },
    ])
  })
})

const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(value * 1e6) / 1e6 + 0 : value
