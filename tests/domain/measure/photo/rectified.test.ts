import { describe, expect, it } from 'vitest'
import { calibrated, type PictureMap, planePointAt } from '../../../../src/domain/measure/photo/pictureMap'
import type { Photo, PicturePoint } from '../../../../src/domain/measure/photo/photo'
import {
  laidPlan,
  laidSquarely,
  MOST_RECTIFIED_PX,
  type PixelGrid,
  rectifiedPixels,
  rectifiedPlan,
} from '../../../../src/domain/measure/photo/rectified'
import { px, rectanglePhoto, squarePhoto } from './photos'
import { seen } from './pinhole'

const mapOf = (photo: Photo): PictureMap => {
  const map = calibrated(photo)
  if (!map.ok) throw new Error(JSON.stringify(map.error))
  return map.value
}

const SIZE = { widthPx: 800, heightPx: 600 }
const CAMERA = {
  at: [-500, -2400, 900],
  looksAt: [600, 0, 400],
  up: [0.05, 0, 1],
  focalPx: 700,
  ...SIZE,
} as const
const see = (xMm: number, zMm: number): PicturePoint => seen(CAMERA, [xMm, 0, zMm])

/** Round marks of 25 mm radius on the plane, from the datum. */
const MARKS = [
  { uMm: 350, vMm: 250 },
  { uMm: 1000, vMm: 300 },
  { uMm: 700, vMm: 650 },
] as const

/** White paper with black marks as the camera sees them: each mark's rim is projected point by point, and filled by testing every pixel. */
const pictured = (): PixelGrid => {
  const data = new Uint8ClampedArray(4 * SIZE.widthPx * SIZE.heightPx).fill(255)
  const rims = MARKS.map(({ uMm, vMm }) =>
    Array.from({ length: 72 }, (_, step) => {
      const angle = (step * Math.PI) / 36
      return see(uMm + 25 * Math.cos(angle), vMm + 25 * Math.sin(angle))
    }),
  )
  const isIn = (rim: readonly PicturePoint[], x: number, y: number): boolean => {
    let inside = false
    rim.forEach((a, index) => {
      const b = rim[(index + 1) % rim.length] ?? a
      if (a.yPx > y !== b.yPx > y && x < a.xPx + ((b.xPx - a.xPx) * (y - a.yPx)) / (b.yPx - a.yPx))
        inside = !inside
    })
    return inside
  }
  for (let row = 0; row < SIZE.heightPx; row += 1)
    for (let column = 0; column < SIZE.widthPx; column += 1)
      if (rims.some((rim) => isIn(rim, column + 0.5, row + 0.5)))
        data.fill(0, 4 * (row * SIZE.widthPx + column), 4 * (row * SIZE.widthPx + column) + 3)
  return { ...SIZE, data }
}

const IDENTITY = [1, 0, 0, 0, 1, 0, 0, 0, 1] as const
const DATUM = { uMm: NaN, vMm: NaN }

const photo = rectanglePhoto([see(100, 50), see(1300, 50), see(1300, 850), see(100, 850)], {}, { size: SIZE })

describe('rectifiedPixels', () => {
  it('brings round marks of a picture taken askew to where they are, within one pixel of the straightened picture', () => {
    const map = mapOf(photo)
    const plan = rectifiedPlan(photo, map)
    if (plan === null) throw new Error('no plan')
    const straight = rectifiedPixels(pictured(), map, plan)
    for (const { uMm, vMm } of MARKS) {
      const centre = {
        x: (uMm - plan.leftUpper.uMm) / plan.pixelMm,
        y: (plan.leftUpper.vMm - vMm) / plan.pixelMm,
      }
      const reach = Math.ceil(40 / plan.pixelMm)
      let [dark, x, y] = [0, 0, 0]
      for (let row = Math.floor(centre.y) - reach; row <= centre.y + reach; row += 1)
        for (let column = Math.floor(centre.x) - reach; column <= centre.x + reach; column += 1) {
          const at = 4 * (row * straight.widthPx + column)
          if ((straight.data[at + 3] ?? 0) === 0) continue
          const darkness = 255 - (straight.data[at] ?? 255)
          dark += darkness
          x += darkness * (column + 0.5)
          y += darkness * (row + 0.5)
        }
      // A disc of 25 mm radius, in pixels of the straightened picture, all black.
      expect(dark / 255 / ((Math.PI * 25 ** 2) / plan.pixelMm ** 2)).toBeCloseTo(1, 1)
      expect(Math.hypot(x / dark - centre.x, y / dark - centre.y)).toBeLessThan(1)
    }
  })

  it('is clear where the picture does not reach, and never blurs its edge with black', () => {
    const map = mapOf(photo)
    const plan = rectifiedPlan(photo, map)
    if (plan === null) throw new Error('no plan')
    const white = { ...SIZE, data: new Uint8ClampedArray(4 * SIZE.widthPx * SIZE.heightPx).fill(255) }
    const { data } = rectifiedPixels(white, map, plan)
    const opacities = new Set(data.filter((_, index) => index % 4 === 3))
    expect(opacities).toEqual(new Set([0, 255]))
    expect(data.every((value, index) => value === 255 || data[index - (index % 4) + 3] === 0)).toBe(true)
    // Area of the straightened picture by the shoelace formula over its projected corners, against the pixels that are not clear.
    const rim = [px(0, 0), px(800, 0), px(800, 600), px(0, 600)].map((at) => planePointAt(map, at) ?? DATUM)
    const areaMm2 = rim.reduce((sum, a, index) => {
      const b = rim[(index + 1) % rim.length] ?? a
      return sum + (a.vMm * b.uMm - a.uMm * b.vMm) / 2
    }, 0)
    const opaque = data.filter((value, index) => index % 4 === 3 && value === 255).length
    expect((opaque * plan.pixelMm ** 2) / areaMm2).toBeCloseTo(1, 2)
  })

  it('takes what lies between four pixels from all four, each by how near it is', () => {
    const grey = [20, 100, 200, 40].flatMap((value) => [value, value, value, 255])
    const picture = { widthPx: 2, heightPx: 2, data: new Uint8ClampedArray(grey) }
    const map = { toPlane: IDENTITY, toPicture: IDENTITY, isSquare: true }
    // One pixel of 0.5 whose middle is at 1.25, 0.75 in the picture: three quarters across, a quarter down between the middles.
    const plan = { leftUpper: { uMm: 1, vMm: 1 }, pixelMm: 0.5, widthPx: 1, heightPx: 1 }
    const { data } = rectifiedPixels(picture, map, plan)
    const expected = (20 * 0.25 + 100 * 0.75) * 0.75 + (200 * 0.25 + 40 * 0.75) * 0.25
    expect(data[0]).toBe(Math.round(expected))
  })
})

describe('rectifiedPlan', () => {
  it('holds every corner of a picture that is fine enough everywhere', () => {
    const map = mapOf(photo)
    const plan = rectifiedPlan(photo, map)
    if (plan === null) throw new Error('no plan')
    for (const corner of [px(0, 0), px(800, 0), px(800, 600), px(0, 600)]) {
      const place = planePointAt(map, corner) ?? { uMm: NaN, vMm: NaN }
      const x = (place.uMm - plan.leftUpper.uMm) / plan.pixelMm
      const y = (plan.leftUpper.vMm - place.vMm) / plan.pixelMm
      expect(x).toBeGreaterThanOrEqual(-1e-6)
      expect(x).toBeLessThanOrEqual(plan.widthPx + 1e-6)
      expect(y).toBeGreaterThanOrEqual(-1e-6)
      expect(y).toBeLessThanOrEqual(plan.heightPx + 1e-6)
    }
  })

  it('stays within its size however near the horizon is', () => {
    // The sides meet at x = 3,500 px, a hair outside the picture.
    const near = rectanglePhoto(
      [px(500, 2500), px(3000, 1700), px(3000, 1300), px(500, 500)],
      {},
      {
        size: { widthPx: 3499, heightPx: 3000 },
      },
    )
    const plan = rectifiedPlan(near, mapOf(near))
    expect(plan?.widthPx).toBeLessThanOrEqual(MOST_RECTIFIED_PX)
    expect(plan?.heightPx).toBeLessThanOrEqual(MOST_RECTIFIED_PX)
    expect(plan?.pixelMm).toBeGreaterThan(0)
  })

  it('becomes coarser, not smaller, where a picture has more pixels than it may', () => {
    // A pixel is 1 mm: 8,000 mm by 6,000 mm.
    const large = rectanglePhoto(
      [px(2000, 5000), px(6000, 5000), px(6000, 1000), px(2000, 1000)],
      { widthMm: 4000, heightMm: 4000 },
      { size: { widthPx: 8000, heightPx: 6000 } },
    )
    const plan = rectifiedPlan(large, mapOf(large))
    expect((plan?.widthPx ?? 0) * (plan?.pixelMm ?? 0)).toBeCloseTo(8000, 0)
    expect(Math.abs((plan?.heightPx ?? 0) * (plan?.pixelMm ?? 0) - 6000)).toBeLessThan(2)
    expect(plan?.widthPx).toBe(MOST_RECTIFIED_PX)
  })
})

describe('how a picture is laid on the drawing', () => {
  it('squarely: as its map says, whatever its turn and side', () => {
    const turned = squarePhoto(
      {
        marks: {
          lengthFrom: px(1000, 1000),
          lengthTo: px(1000, 3000),
          levelFrom: px(1800, 1600),
          levelTo: px(1000, 1000),
          known: px(1500, 1800),
        },
      },
      { mirrored: true },
    )
    const map = mapOf(turned)
    const { a, b, c, d, e, f } = laidSquarely(map)
    for (const at of [px(0, 0), px(4000, 0), px(1234, 2345)]) {
      const place = planePointAt(map, at)
      expect(a * at.xPx + c * at.yPx + e).toBeCloseTo(place?.uMm ?? NaN, 8)
      expect(b * at.xPx + d * at.yPx + f).toBeCloseTo(place?.vMm ?? NaN, 8)
    }
    expect(() => laidSquarely(mapOf(photo))).toThrow('perspective')
  })

  it('straightened: upright, from its left upper corner', () => {
    expect(laidPlan({ leftUpper: { uMm: -10, vMm: 900 }, pixelMm: 0.5, widthPx: 10, heightPx: 10 })).toEqual({
      a: 0.5,
      b: 0,
      c: 0,
      d: -0.5,
      e: -10,
      f: 900,
    })
  })
})
