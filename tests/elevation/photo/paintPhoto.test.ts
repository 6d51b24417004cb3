import { describe, expect, it } from 'vitest'
import { levelIndex, photoTransform } from '../../../src/elevation/photo/paintPhoto'
import { toPx } from '../../../src/elevation/viewTransform'

const VIEW = { pxPerMm: 0.4, originXPx: 300, originYPx: 500 }

/** A canvas transform on a point. Source: HTML Living Standard, transform(a, b, c, d, e, f) (from memory). */
const onCanvas = (
  [a, b, c, d, e, f]: readonly [number, number, number, number, number, number],
  x: number,
  y: number,
) => ({ xPx: a * x + c * y + e, yPx: b * x + d * y + f })

describe('photoTransform', () => {
  it('puts a pixel where the drawing puts the place on the car that it shows', () => {
    // Turned by the 3-4-5 triangle, 0.5 mm a pixel, mirrored.
    const laid = { a: -0.4, b: 0.3, c: -0.3, d: -0.4, e: 700, f: 120 }
    for (const [x, y] of [
      [0, 0],
      [1000, 0],
      [0, 1000],
      [123, 456],
    ] as const) {
      const place = { uMm: laid.a * x + laid.c * y + laid.e, vMm: laid.b * x + laid.d * y + laid.f }
      const shown = onCanvas(photoTransform(laid, VIEW), x, y)
      expect(shown.xPx).toBeCloseTo(toPx(VIEW, place).xPx, 9)
      expect(shown.yPx).toBeCloseTo(toPx(VIEW, place).yPx, 9)
    }
  })
})

describe('levelIndex', () => {
  const laid = { a: 0.5, b: 0, c: 0, d: -0.5, e: 0, f: 0 }
  // At 0.5 mm a pixel: 2 px of the screen to the mm show each pixel once.
  it.each([
    { pxPerMm: 8, ratio: 1, expected: 0 },
    { pxPerMm: 2, ratio: 1, expected: 0 },
    { pxPerMm: 1.01, ratio: 1, expected: 0 },
    { pxPerMm: 1, ratio: 1, expected: 1 },
    { pxPerMm: 1, ratio: 2, expected: 0 },
    { pxPerMm: 0.3, ratio: 1, expected: 2 },
    { pxPerMm: 0.02, ratio: 1, expected: 3 },
  ])('at $pxPerMm px/mm on a screen of $ratio: $expected', ({ pxPerMm, ratio, expected }) => {
    expect(levelIndex(laid, pxPerMm, ratio, 4)).toBe(expected)
  })
})
