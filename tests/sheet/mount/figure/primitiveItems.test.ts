import { describe, expect, it } from 'vitest'
import { planePoint } from '../../../../src/domain/geometry/plane'
import { type FigureView, pagePoint } from '../../../../src/sheet/mount/figure/figureView'
import type { SheetItem } from '../../../../src/sheet/page/item'
import { primitiveItems } from '../../../../src/sheet/mount/figure/primitiveItems'

const view: FigureView = { scale: 10, datum: { xMm: 100, yMm: 50 } }

const lines = (items: readonly SheetItem[]) => items.flatMap((item) => (item.kind === 'line' ? [item] : []))

describe('pagePoint', () => {
  it('reduces by the scale, runs right with x and up the page with z', () => {
    // 200 mm rearward at 1:10 is 20 mm to the right; 300 mm up is 30 mm up the page, where y grows downward.
    expect(pagePoint(view, planePoint(200, 300))).toEqual({ xMm: 120, yMm: 20 })
    expect(pagePoint(view, planePoint(-50, -10))).toEqual({ xMm: 95, yMm: 51 })
  })
})

describe('primitiveItems', () => {
  it('draws a circle at its reduced radius', () => {
    const [item] = primitiveItems(
      {
        kind: 'circle',
        key: 'c',
        part: null,
        centre: planePoint(0, 0),
        radiusMm: 150,
        style: 'body',
      },
      view,
    )
    expect(item).toMatchObject({ kind: 'circle', radiusMm: 15, centre: { xMm: 100, yMm: 50 } })
  })

  it('keeps every hatch line inside its zone and parallel to the hatch', () => {
    // A square of 100 mm, 10 mm on paper: from (100, 40) to (110, 50). 45° up the drawing is up to the right on the page.
    const square = [planePoint(0, 0), planePoint(100, 0), planePoint(100, 100), planePoint(0, 100)]
    const items = primitiveItems(
      { kind: 'zone', key: 'z', part: null, region: [square], edges: [], hatchDeg: 45 },
      view,
    )
    // The lines cross the diagonal of 10·√2 mm every 1.2 mm: 11 or 12 of them.
    expect(items.length).toBeGreaterThanOrEqual(11)
    expect(items.length).toBeLessThanOrEqual(12)
    for (const { points } of lines(items)) {
      const [from, to] = points
      if (from === undefined || to === undefined) throw new Error('a hatch line has two ends')
      expect(Math.min(from.xMm, to.xMm)).toBeGreaterThanOrEqual(100 - 1e-9)
      expect(Math.max(from.xMm, to.xMm)).toBeLessThanOrEqual(110 + 1e-9)
      expect(Math.min(from.yMm, to.yMm)).toBeGreaterThanOrEqual(40 - 1e-9)
      expect(Math.max(from.yMm, to.yMm)).toBeLessThanOrEqual(50 + 1e-9)
      expect(to.xMm - from.xMm).toBeCloseTo(-(to.yMm - from.yMm), 9)
    }
  })

  it('draws nothing for a line without a length of points', () => {
    const line = {
      kind: 'polyline',
      key: 'p',
      part: null,
      points: [planePoint(0, 0)],
      closed: false,
      style: 'strap',
    } as const
    expect(primitiveItems(line, view)).toEqual([])
  })
})
