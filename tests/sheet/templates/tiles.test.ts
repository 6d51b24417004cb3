import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FlatPoint, FlatShape } from '../../../src/domain/shop/flat/flatFigure'
import { itemBox } from '../../../src/sheet/page/item'
import { clippedLine } from '../../../src/sheet/templates/clip'
import { inkedWindow, lineItems, lineOf } from '../../../src/sheet/templates/figureItems'
import { OVERLAP_MM, tileGrid, tileItems, tileName } from '../../../src/sheet/templates/tiles'

const coordinate = fc.double({ min: -400, max: 400, noNaN: true })
const flatPoint = fc.record({ xMm: coordinate, yMm: coordinate })
const shape: fc.Arbitrary<FlatShape> = fc.oneof(
  fc.record({
    kind: fc.constant('polyline' as const),
    layer: fc.constant('CUT' as const),
    points: fc.array(flatPoint, { minLength: 2, maxLength: 6 }),
    closed: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('circle' as const),
    layer: fc.constant('DRILL' as const),
    centre: flatPoint,
    radiusMm: fc.double({ min: 3, max: 150, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('arc' as const),
    layer: fc.constant('MARK' as const),
    centre: flatPoint,
    radiusMm: fc.double({ min: 3, max: 150, noNaN: true }),
    fromDeg: fc.double({ min: -180, max: 180, noNaN: true }),
    toDeg: fc.double({ min: 181, max: 500, noNaN: true }),
  }),
)

const offPiece = (point: FlatPoint, from: FlatPoint, to: FlatPoint): number => {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm]
  const square = dx * dx + dy * dy
  const share =
    square === 0
      ? 0
      : Math.min(1, Math.max(0, ((point.xMm - from.xMm) * dx + (point.yMm - from.yMm) * dy) / square))
  return Math.hypot(from.xMm + share * dx - point.xMm, from.yMm + share * dy - point.yMm)
}

/** Places all along a line of straight pieces. */
const sampled = (points: readonly FlatPoint[]): readonly FlatPoint[] =>
  points.slice(1).flatMap((to, index) => {
    const from = points[index] ?? to
    return [0, 0.17, 0.4, 0.63, 0.9, 1].map((share) => ({
      xMm: from.xMm + (to.xMm - from.xMm) * share,
      yMm: from.yMm + (to.yMm - from.yMm) * share,
    }))
  })

describe('clippedLine', () => {
  const window = { min: { xMm: -50, yMm: -30 }, max: { xMm: 50, yMm: 30 } }

  it.each([
    {
      what: 'inside',
      points: [
        [0, 0],
        [10, 10],
      ],
      parts: [
        [
          [0, 0],
          [10, 10],
        ],
      ],
    },
    {
      what: 'through',
      points: [
        [-100, 0],
        [100, 0],
      ],
      parts: [
        [
          [-50, 0],
          [50, 0],
        ],
      ],
    },
    {
      what: 'beside',
      points: [
        [-100, 31],
        [100, 31],
      ],
      parts: [],
    },
    {
      what: 'along the edge',
      points: [
        [-100, 30],
        [100, 30],
      ],
      parts: [
        [
          [-50, 30],
          [50, 30],
        ],
      ],
    },
    {
      what: 'out and in again',
      points: [
        [0, 0],
        [80, 0],
        [80, 20],
        [0, 20],
      ],
      parts: [
        [
          [0, 0],
          [50, 0],
        ],
        [
          [50, 20],
          [0, 20],
        ],
      ],
    },
    {
      what: 'past a corner',
      points: [
        [40, 60],
        [90, 10],
      ],
      parts: [],
    },
  ])('keeps of a line $what what is in the window', ({ points, parts }) => {
    const flat = (pairs: readonly (readonly number[])[]): readonly FlatPoint[] =>
      pairs.map(([xMm = 0, yMm = 0]) => ({ xMm, yMm }))
    expect(clippedLine(flat(points), window)).toEqual(parts.map((part) => flat(part)))
  })

  it('keeps every place inside and none outside', () => {
    fc.assert(
      fc.property(fc.array(flatPoint, { minLength: 2, maxLength: 6 }), (points) => {
        const parts = clippedLine(points, window)
        for (const { xMm, yMm } of parts.flat()) {
          expect(Math.abs(xMm)).toBeLessThanOrEqual(50 + 1e-9)
          expect(Math.abs(yMm)).toBeLessThanOrEqual(30 + 1e-9)
        }
        for (const place of sampled(points)) {
          if (Math.abs(place.xMm) > 50 || Math.abs(place.yMm) > 30) continue
          const off = Math.min(
            ...parts.flatMap((part) => part.slice(1).map((to, i) => offPiece(place, part[i] ?? to, to))),
          )
          expect(off).toBeLessThan(1e-6)
        }
      }),
    )
  })
})

describe('tileGrid', () => {
  const room = { widthMm: 250, heightMm: 150 }

  it('is one window for what fits, and two from a hair more on', () => {
    const window = (widthMm: number): { min: FlatPoint; max: FlatPoint } => ({
      min: { xMm: -5, yMm: 0 },
      max: { xMm: widthMm - 5, yMm: 150 },
    })
    expect(tileGrid(window(250), room).tiles.length).toBe(1)
    expect(tileGrid(window(250.01), room).tiles.length).toBe(2)
    // Two windows of 250 mm with 10 mm in common reach over 490 mm.
    expect(tileGrid(window(490), room).columns).toBe(2)
    expect(tileGrid(window(490.01), room).columns).toBe(3)
  })

  it('covers every shape: put together, the parts are the figure again, each inside its room and overlapping its neighbours', () => {
    fc.assert(
      fc.property(fc.array(shape, { minLength: 1, maxLength: 5 }), (shapes) => {
        const grid = tileGrid(inkedWindow(shapes), room)
        const parts = grid.tiles.map((tile) => {
          const { min, max } = tile.window
          expect(max.xMm - min.xMm).toBeLessThanOrEqual(room.widthMm + 1e-9)
          expect(max.yMm - min.yMm).toBeLessThanOrEqual(room.heightMm + 1e-9)
          const next = grid.tiles.find((each) => each.row === tile.row && each.column === tile.column + 1)
          expect(next === undefined ? OVERLAP_MM : max.xMm - next.window.min.xMm).toBeCloseTo(OVERLAP_MM, 9)
          const below = grid.tiles.find((each) => each.column === tile.column && each.row === tile.row + 1)
          expect(below === undefined ? OVERLAP_MM : below.window.max.yMm - min.yMm).toBeCloseTo(OVERLAP_MM, 9)
          return shapes.map((each) => clippedLine(lineOf(each), tile.window))
        })
        for (const [index, each] of shapes.entries()) {
          const pieces = parts.flatMap((tile) => tile[index] ?? [])
          for (const place of sampled(lineOf(each))) {
            const off = Math.min(
              ...pieces.flatMap((part) => part.slice(1).map((to, i) => offPiece(place, part[i] ?? to, to))),
            )
            expect(off).toBeLessThan(1e-6)
          }
        }
      }),
      { numRuns: 25 },
    )
  })

  it('names parts by row and column', () => {
    expect([tileName(0, 0), tileName(1, 1), tileName(0, 25), tileName(2, 26)]).toEqual([
      '1A',
      '2B',
      '1Z',
      '3AA',
    ])
  })
})

describe('tileItems', () => {
  it('draws in true size with y up, and says where each edge goes on', () => {
    const shapes: readonly FlatShape[] = [
      {
        kind: 'polyline',
        layer: 'CUT',
        points: [
          { xMm: 0, yMm: 0 },
          { xMm: 400, yMm: 0 },
          { xMm: 400, yMm: 200 },
        ],
        closed: false,
      },
      {
        kind: 'text',
        layer: 'TEXT',
        at: { xMm: 236, yMm: 100 },
        text: 'several words on the join',
        heightMm: 2.4,
        align: 'left',
        turnDeg: 0,
      },
    ]
    const grid = tileGrid(inkedWindow(shapes), { widthMm: 250, heightMm: 150 })
    expect([grid.rows, grid.columns]).toEqual([2, 2])
    const pages = grid.tiles.map((tile) => tileItems(shapes, grid, tile, { xMm: 20, yMm: 30 }))
    const texts = pages.map((items) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))
    expect(texts[0]).toEqual([
      'several words on the join',
      'join to 1B: lay line on line',
      'join to 2A: lay line on line',
    ])
    expect(texts[3]).toEqual(['join to 2A: lay line on line', 'join to 1B: lay line on line'])
    // A word that no part holds whole is written once all the same.
    expect(texts.flat().filter((text) => text === 'several words on the join').length).toBe(1)
    for (const item of pages.flat()) {
      const box = itemBox(item)
      expect(box.leftMm).toBeGreaterThanOrEqual(20 - 0.2)
      expect(box.rightMm).toBeLessThanOrEqual(270 + 0.2)
      expect(box.topMm).toBeGreaterThanOrEqual(30 - 0.2)
      expect(box.bottomMm).toBeLessThanOrEqual(180 + 0.2)
    }
    // The upright line: 400 mm right of the left end, which lies half a pen inside the first part; the parts share 10 mm.
    const right = pages[1]?.find((item) => item.kind === 'line' && item.widthMm === 0.35)
    const [from, to] = right?.kind === 'line' ? right.points : []
    expect(from?.xMm).toBeCloseTo(20 + 400 - 240 + 0.175, 6)
    expect(from?.xMm).toBe(to?.xMm)
    expect((from?.yMm ?? 0) - (to?.yMm ?? 0)).toBeGreaterThan(100)
  })

  it('keeps lengths: 100 mm in the figure are 100 mm on the page', () => {
    const bar: FlatShape = {
      kind: 'polyline',
      layer: 'CUT',
      points: [
        { xMm: -30, yMm: 7 },
        { xMm: 70, yMm: 7 },
      ],
      closed: false,
    }
    const [item] = lineItems([bar], inkedWindow([bar]), { xMm: 100, yMm: 100 })
    expect(item).toMatchObject({
      points: [
        { xMm: 70, yMm: 93 },
        { xMm: 170, yMm: 93 },
      ],
    })
  })
})
