import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import {
  directionBetween,
  pointDistanceMm,
  pointMm,
  type PointMm,
} from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { heldAt, heldPoint, markOnTube, markSide } from '../../../../src/domain/shop/tape/heldPoint'
import type { Mount } from '../../../../src/domain/straps/anchor'
import { pointInCar } from '../../../support/arbitraries'

const tubeOf = (points: readonly PointMm[], outsideDiameterMm = 40): Tube => ({
  id: 'bar',
  name: 'Bar',
  role: 'harness-bar',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

/** The mark on a tube through the datum that runs to the given point. */
const markToward = (x: number, y: number, z: number): PointMm => {
  const end = pointMm(x, y, z)
  const axis = directionBetween(pointMm(0, 0, 0), end)
  if (axis === null) throw new Error('a tube has a length')
  return markOnTube(tubeOf([pointMm(0, 0, 0), end]), pointMm(0, 0, 0), axis)
}

const awayMm = (point: PointMm, x: number, y: number, z: number): number =>
  pointDistanceMm(point, pointMm(x, y, z))

describe('a punch mark on a tube of 40 mm', () => {
  it('lies straight above the centre of a level tube, whichever way it runs', () => {
    expect(awayMm(markToward(0, 500, 0), 0, 0, 20)).toBeLessThan(1e-9)
    expect(awayMm(markToward(-300, 0, 0), 0, 0, 20)).toBeLessThan(1e-9)
    expect(markSide({ x: 0, y: 1, z: 0 })).toBe('top')
  })

  it('lies square to the axis on a sloping tube: at 45° as far back as up', () => {
    // The highest point of the cross-section leans away from the way the tube rises: 20·√½ each.
    expect(awayMm(markToward(500, 0, 500), -20 * Math.SQRT1_2, 0, 20 * Math.SQRT1_2)).toBeLessThan(1e-9)
    // A 3-4-5 slope across the car: up 4/5 of the radius, 3/5 of it to the left.
    expect(awayMm(markToward(0, 400, 300), 0, -12, 16)).toBeLessThan(1e-9)
  })

  it('lies on the foremost line of a tube near plumb', () => {
    expect(awayMm(markToward(0, 0, 700), -20, 0, 0)).toBeLessThan(1e-9)
    expect(markSide({ x: 0, y: 0, z: -1 })).toBe('front')
    // Leaning sideways only, its foremost line is still straight ahead of the axis.
    expect(awayMm(markToward(0, 100, 700), -20, 0, 0)).toBeLessThan(1e-9)
  })

  it('is always on the outside, and no other point of the cross-section is higher (or further ahead)', () => {
    fc.assert(
      fc.property(
        pointInCar,
        pointInCar,
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        (start, end, turn) => {
          const axis = directionBetween(start, end)
          fc.pre(axis !== null && pointDistanceMm(start, end) > 1)
          if (axis === null) return
          const mark = markOnTube(tubeOf([start, end]), start, axis)
          expect(pointDistanceMm(mark, start)).toBeCloseTo(20, 9)
          const along =
            (mark.xMm - start.xMm) * axis.x +
            (mark.yMm - start.yMm) * axis.y +
            (mark.zMm - start.zMm) * axis.z
          expect(along).toBeCloseTo(0, 9)
          // Any other point of the circle about the axis, by Rodrigues' formula: cos·v + sin·(axis × v).
          const [x, y, z] = [mark.xMm - start.xMm, mark.yMm - start.yMm, mark.zMm - start.zMm] as const
          const cross = [axis.y * z - axis.z * y, axis.z * x - axis.x * z, axis.x * y - axis.y * x] as const
          const other = [x, y, z].map((part, i) => Math.cos(turn) * part + Math.sin(turn) * (cross[i] ?? 0))
          const isFurthest =
            markSide(axis) === 'top' ? z >= (other[2] ?? 0) - 1e-9 : x <= (other[0] ?? 0) + 1e-9
          expect(isFurthest).toBe(true)
        },
      ),
    )
  })
})

describe('heldPoint', () => {
  const point = pointMm(0, 200, 0)
  const wrap: Mount = { kind: 'wrap', tubeId: 'bar', point, over: 'over', guideHoops: true }
  const eye: Mount = {
    kind: 'eye',
    point,
    planDeg: 0,
    riseDeg: 0,
    threadDiameterMm: 11,
    eyeDiameterMm: 25,
    tubeId: null,
  }

  it('of a wrap is the top of its bar, since its own point lies inside', () => {
    const bar = tubeOf([pointMm(0, 0, 0), pointMm(0, 500, 0)])
    expect(awayMm(heldPoint(wrap, [bar]), 0, 200, 20)).toBeLessThan(1e-9)
    expect(heldAt(wrap)).toBe('tube-mark')
  })

  it('of a wrap on a bent bar is told by the piece it lies on', () => {
    const bent = tubeOf([pointMm(0, 0, -300), pointMm(0, 100, 0), pointMm(0, 500, 0)])
    expect(awayMm(heldPoint(wrap, [bent]), 0, 200, 20)).toBeLessThan(1e-9)
  })

  it('of an eye is its centre', () => {
    expect(heldPoint(eye, [])).toBe(point)
    expect(heldAt(eye)).toBe('eye')
  })
})
