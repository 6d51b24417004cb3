import { describe, expect, it } from 'vitest'
import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { tubeMarks } from '../../../../src/domain/shop/tab/tubeMark'

const tube = (id: string, points: readonly PointMm[]): Tube => ({
  id,
  name: id,
  outsideDiameterMm: 38.1,
  wallMm: 3,
  points,
  role: 'cage',
})

const alongAll = (own: Tube, other: Tube): readonly number[] =>
  tubeMarks(own, [own, other]).flatMap(({ kind, alongTubeMm }) => (kind === 'crossing' ? [alongTubeMm] : []))

describe('where another tube crosses', () => {
  const bar = tube('bar', [pointMm(0, -400, 700), pointMm(0, 400, 700)])
  // Upright at y = -380 up to z = 670, then inward: at z = 700 it is at y = -380 + 50 × 30/90 = -363.3, 36.7 mm from the bar's end.
  const hoopPoints = [pointMm(0, -380, 0), pointMm(0, -380, 670), pointMm(0, -330, 760), pointMm(0, 0, 1200)]
  const crossingMm = 400 - 380 + (50 * 30) / 90

  it('is where the centre lines come nearest, whichever way the points of the other tube run', () => {
    expect(alongAll(bar, tube('hoop', hoopPoints))).toEqual([expect.closeTo(crossingMm, 9)])
    expect(alongAll(bar, tube('hoop', hoopPoints.toReversed()))).toEqual([expect.closeTo(crossingMm, 9)])
  })

  it('is the same place on the other tube', () => {
    // Along the hoop: 670 upright and a third of the piece of √(50² + 90²) after it.
    const alongHoopMm = 670 + Math.hypot(50, 90) / 3
    expect(alongAll(tube('hoop', hoopPoints), bar)).toEqual([expect.closeTo(alongHoopMm, 9)])
  })

  it('comes twice for a tube that crosses twice', () => {
    const loop = tube('loop', [
      pointMm(0, -300, 0),
      pointMm(0, -300, 900),
      pointMm(0, 200, 900),
      pointMm(0, 200, 0),
    ])
    expect(alongAll(bar, loop)).toEqual([expect.closeTo(100, 9), expect.closeTo(600, 9)])
  })
})
