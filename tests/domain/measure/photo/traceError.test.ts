import { describe, expect, it } from 'vitest'
import { calibrated, type PictureMap, planePointAt } from '../../../../src/domain/measure/photo/pictureMap'
import { parallaxMm } from '../../../../src/domain/measure/photo/parallax'
import type { Photo } from '../../../../src/domain/measure/photo/photo'
import { checkLengthMm, traceError } from '../../../../src/domain/measure/photo/traceError'
import { px, rectanglePhoto, squarePhoto } from './photos'
import { seen } from './pinhole'

const mapOf = (photo: Photo): PictureMap => {
  const map = calibrated(photo)
  if (!map.ok) throw new Error(JSON.stringify(map.error))
  return map.value
}

describe('traceError', () => {
  it('at the known point itself: one pixel of the trace, and what its own cross is off', () => {
    const photo = squarePhoto()
    // A pixel is 0.5 mm. At the known point scale and turn move nothing: only its own cross does, 0.5 mm across and 0.5 mm down.
    const error = traceError(photo, mapOf(photo), { uMm: 200, vMm: -50 })
    expect(error?.pixelMm).toBeCloseTo(0.5, 8)
    expect(error?.marksMm).toBeCloseTo(Math.SQRT1_2, 6)
  })

  it('grows with the distance from the known point, as scale and turn do', () => {
    const photo = squarePhoto()
    /*
     * 2,000 px (1,000 mm) from the known point. Scale: each end of 2,000 px off by 1 px changes it by 1/2,000: 0.5 mm, twice. Turn: each end of
     * the level line of 3,000 px: 1/3,000 of 1,000 mm, twice. With the known cross, 0.5 mm twice:
     * √(2·0.25 + 2·(1/3)² + 2·0.25). Across a length what its ends are off is of second order.
     */
    const error = traceError(photo, mapOf(photo), { uMm: 1200, vMm: -50 })
    expect(error?.marksMm).toBeCloseTo(Math.sqrt(1 + 2 / 9), 4)
  })

  it('is larger beyond a rectangle than inside it', () => {
    const camera = {
      at: [-600, -2500, 150],
      looksAt: [700, 0, 450],
      up: [0, 0, 1],
      focalPx: 3200,
      widthPx: 4000,
      heightPx: 3000,
    } as const
    const see = (xMm: number, zMm: number) => seen(camera, [xMm, 0, zMm])
    const photo = rectanglePhoto([see(300, 300), see(700, 300), see(700, 700), see(300, 700)], {
      widthMm: 400,
      heightMm: 400,
      place: { uMm: 300, vMm: 300 },
    })
    const map = mapOf(photo)
    const inside = traceError(photo, map, { uMm: 500, vMm: 500 })
    const beyond = traceError(photo, map, { uMm: 1300, vMm: 800 })
    expect(inside?.marksMm).toBeLessThan(1)
    expect(beyond?.marksMm).toBeGreaterThan(3 * (inside?.marksMm ?? Infinity))
  })
})

describe('checkLengthMm', () => {
  it('measures between two more crosses', () => {
    const photo = squarePhoto(
      {},
      { check: { marks: { checkFrom: px(100, 100), checkTo: px(700, 900) }, lengthMm: 510 } },
    )
    // 600 and 800 px: 1,000 px of 0.5 mm.
    expect(checkLengthMm(photo, mapOf(photo))).toBeCloseTo(500, 6)
    const half = { ...photo, check: { marks: { checkFrom: px(100, 100) } } }
    expect(checkLengthMm(half, mapOf(half))).toBeNull()
  })
})

describe('parallaxMm', () => {
  it.each([
    // A lens 3 m away, a part 300 mm nearer and 900 mm aside: 900·300/2,700 = 100 mm outward.
    { cameraDistanceMm: 3000, nearerMm: 300, fromMiddleMm: 900, expected: 100 },
    { cameraDistanceMm: 3000, nearerMm: 0, fromMiddleMm: 900, expected: 0 },
    // As far behind the plane: 900·(−300)/3,300.
    { cameraDistanceMm: 3000, nearerMm: -300, fromMiddleMm: 900, expected: -900 / 11 },
    { cameraDistanceMm: 3000, nearerMm: 300, fromMiddleMm: 0, expected: 0 },
  ])('$nearerMm mm nearer, $fromMiddleMm mm aside: $expected mm', ({ expected, ...view }) => {
    const moved = parallaxMm(view)
    expect(moved.ok && moved.value).toBeCloseTo(expected, 9)
  })

  it('is what a pinhole camera sees', () => {
    const camera = {
      at: [600, -3000, 400],
      looksAt: [700, 0, 500],
      up: [0, 0, 1],
      focalPx: 3000,
      widthPx: 4000,
      heightPx: 3000,
    } as const
    const see = (xMm: number, zMm: number) => seen(camera, [xMm, 0, zMm])
    const photo = rectanglePhoto([see(100, 50), see(1300, 50), see(1300, 850), see(100, 850)])
    // The part is 250 mm nearer than the plane and 600, 450 mm from the spot across from the lens: 750 mm.
    const place = planePointAt(mapOf(photo), seen(camera, [1200, -250, 850]))
    const moved = parallaxMm({ cameraDistanceMm: 3000, nearerMm: 250, fromMiddleMm: 750 })
    const actualMm = Math.hypot((place?.uMm ?? NaN) - 1200, (place?.vMm ?? NaN) - 850)
    expect(moved.ok && moved.value).toBeCloseTo(actualMm, 3)
    expect(place?.uMm).toBeGreaterThan(1200)
  })

  it('fails for a part that is not in front of the lens', () => {
    const view = { cameraDistanceMm: 300, nearerMm: 300, fromMiddleMm: 10 }
    expect(parallaxMm(view)).toEqual({
      ok: false,
      error: { kind: 'lens-inside', cameraDistanceMm: 300, nearerMm: 300 },
    })
  })
})
