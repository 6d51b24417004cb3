import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import { surfaceAt, tubeSlice } from '../../../../src/domain/shop/tab/tubeSlice'
import { cosDeg, sinDeg } from '../../../../src/domain/units/angle'
import { anyTab, offTube, outlineOf, RADIUS_MM, slanted, sliceOf } from './plates'

describe('tubeSlice', () => {
  it('is the tube’s own circle for a plate square across it', () => {
    const slice = slanted(90)
    expect(slice.reachMm).toBeCloseTo(25, 9)
    // Closed form: circle of radius 20 about 45 below the hole.
    for (const xMm of [-15, -3, 0, 8, 19]) {
      expect(surfaceAt(slice, xMm, 0)).toBeCloseTo(-45 + Math.sqrt(400 - xMm * xMm), 9)
      expect(surfaceAt(slice, xMm, 2.5)).toBeCloseTo(-45 + Math.sqrt(400 - xMm * xMm), 9)
    }
    expect(surfaceAt(slice, 20.001, 0)).toBeNull()
  })

  it.each([15, 30, 45, 60, 80])(
    'is an ellipse with half-axes r and r/sin θ for a plate at %s°',
    (planeDeg) => {
      const slice = slanted(planeDeg)
      // Source: the section of a circular cylinder at θ to its axis, any handbook of solid geometry. Its long half-axis lies level here.
      const longMm = RADIUS_MM / sinDeg(planeDeg)
      for (const share of [-0.99, -0.5, 0, 0.3, 0.9]) {
        const xMm = share * longMm
        expect(surfaceAt(slice, xMm, 0)).toBeCloseTo(-45 + RADIUS_MM * Math.sqrt(1 - share * share), 6)
      }
      expect(surfaceAt(slice, longMm * 1.000_01, 0)).toBeNull()
    },
  )

  it('is a straight line for a plate along the tube, at the height of the surface under it', () => {
    const along = tubeSlice({
      hole: pointMm(12, 0, 45),
      normal: { x: 1, y: 0, z: 0 },
      onAxis: pointMm(0, 0, 0),
      axis: { x: 0, y: 1, z: 0 },
      radiusMm: RADIUS_MM,
    })
    if (typeof along === 'string') throw new Error(along)
    // 12-16-20 triangle: the surface under a plane 12 mm beside the axis is 16 mm up, 29 mm below the hole.
    expect(along.reachMm).toBeCloseTo(29, 9)
    for (const xMm of [-500, 0, 500]) expect(surfaceAt(along, xMm, 0)).toBeCloseTo(-29, 9)
    expect(outlineOf(along).edge.map(({ yMm }) => yMm)).toEqual(
      // The face 2.5 mm nearer to the axis touches first: √(20² − 9.5²) = 17.599 7.
      outlineOf(along).edge.map(() => expect.closeTo(-45 + Math.sqrt(400 - 9.5 ** 2), 9) as unknown),
    )
  })

  it('is seen from the side that the normal points to, never mirrored', () => {
    // On top of a bar along the car, a plate whose normal points right: who looks at it from the right has the front on the right.
    const slice = tubeSlice({
      hole: pointMm(0, 0, 45),
      normal: { x: 0, y: 1, z: 0 },
      onAxis: pointMm(0, 0, 0),
      axis: { x: 1, y: 0, z: 0 },
      radiusMm: RADIUS_MM,
    })
    if (typeof slice === 'string') throw new Error(slice)
    expect(slice.up.z).toBeCloseTo(1, 9)
    expect(slice.right.x).toBeCloseTo(-1, 9)
  })

  it('says when the hole is in the tube or the plane passes beside it', () => {
    const given = {
      normal: { x: 1, y: 0, z: 0 },
      onAxis: pointMm(0, 0, 0),
      axis: { x: 0, y: 1, z: 0 },
      radiusMm: RADIUS_MM,
    }
    expect(tubeSlice({ ...given, hole: pointMm(0, 30, 20) })).toBe('inside')
    expect(tubeSlice({ ...given, hole: pointMm(20, 0, 45) })).toBe('misses')
    expect(tubeSlice({ ...given, hole: pointMm(19.999, 0, 45) })).not.toBe('misses')
  })

  it('finds the nearest surface in the plane: no other place of the ellipse is nearer', () => {
    fc.assert(
      fc.property(anyTab, (given) => {
        const slice = sliceOf(given)
        fc.pre(slice !== null)
        const place = (turnDeg: number, awayMm: number): number =>
          offTube(given, {
            x: slice.right.x * cosDeg(turnDeg) * awayMm + slice.up.x * sinDeg(turnDeg) * awayMm,
            y: slice.right.y * cosDeg(turnDeg) * awayMm + slice.up.y * sinDeg(turnDeg) * awayMm,
            z: slice.right.z * cosDeg(turnDeg) * awayMm + slice.up.z * sinDeg(turnDeg) * awayMm,
          })
        expect(place(-90, slice.reachMm)).toBeCloseTo(0, 6)
        for (let turnDeg = 0; turnDeg < 360; turnDeg += 15)
          expect(place(turnDeg, slice.reachMm * 0.999)).toBeGreaterThan(0)
      }),
    )
  })
})
