import fc from 'fast-check'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import type { PlanePointMm } from '../../../../src/domain/geometry/plane'
import type { Region } from '../../../../src/domain/geometry/polygon'
import { boxRegion, regionDifference, regionUnion } from '../../../../src/domain/geometry/region'
import { regionEdges } from '../../../../src/domain/layout/drawing/zonePrimitives'

const lengthOf = (edges: ReturnType<typeof regionEdges>): number =>
  edges.reduce((sum, [from, to]) => sum + Math.hypot(to.uMm - from.uMm, to.vMm - from.vMm), 0)

const box = (u: number, v: number, width: number, height: number): Region =>
  boxRegion({ uMm: u, vMm: v }, { uMm: u + width, vMm: v + height })

/** Perimeter of the union by a general library, to hold the outer edges against. */
const perimeterOfUnion = (region: Region): number => {
  const [first, ...rest] = region.map((polygon) => [
    polygon.map(({ uMm, vMm }: PlanePointMm): [number, number] => [uMm, vMm]),
  ])
  if (first === undefined) return 0
  return polygonClipping
    .union(first, ...rest)
    .flat()
    .reduce(
      (sum, ring) =>
        sum +
        ring.slice(1).reduce((along, [x, y], index) => {
          const [fromX, fromY] = ring[index] ?? [x, y]
          return along + Math.hypot(x - fromX, y - fromY)
        }, 0),
      0,
    )
}

describe('regionEdges', () => {
  it('of one box is its four sides', () => {
    expect(lengthOf(regionEdges(box(0, 0, 30, 20)))).toBeCloseTo(100, 9)
  })

  it('leaves out the seam of two boxes that touch, also where it covers only part of a side', () => {
    // 10 × 10 beside 10 × 4: 28 + 40 − 2 · 4.
    expect(lengthOf(regionEdges([...box(0, 0, 10, 10), ...box(10, 3, 10, 4)]))).toBeCloseTo(60, 9)
  })

  it('keeps both edges of boxes that lie side by side with a gap', () => {
    expect(lengthOf(regionEdges([...box(0, 0, 10, 10), ...box(11, 0, 10, 10)]))).toBeCloseTo(80, 9)
  })

  it('has the perimeter of the union as a general polygon library finds it', () => {
    const boxes = fc.array(
      fc.record({
        u: fc.integer({ min: 0, max: 20 }),
        v: fc.integer({ min: 0, max: 20 }),
        width: fc.integer({ min: 1, max: 15 }),
        height: fc.integer({ min: 1, max: 15 }),
        isHole: fc.boolean(),
      }),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(boxes, (list) => {
        const region = list.reduce<Region>(
          (sum, { u, v, width, height, isHole }) =>
            isHole
              ? regionDifference(sum, box(u, v, width, height))
              : regionUnion(sum, box(u, v, width, height)),
          box(5, 5, 10, 10),
        )
        expect(lengthOf(regionEdges(region))).toBeCloseTo(perimeterOfUnion(region), 6)
      }),
    )
  })
})
