import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CalibrationProblem } from '../../../../src/domain/measure/photo/calibrationProblem'
import {
  calibrated,
  type PictureMap,
  picturePointAt,
  pixelMm,
  planePointAt,
  standsOnItsHead,
} from '../../../../src/domain/measure/photo/pictureMap'
import type { Photo, PicturePoint } from '../../../../src/domain/measure/photo/photo'
import { px, rectanglePhoto, squarePhoto } from './photos'
import { CAMERAS, seen } from './pinhole'

const mapOf = (photo: Photo): PictureMap => {
  const map = calibrated(photo)
  if (!map.ok) throw new Error(JSON.stringify(map.error))
  return map.value
}

const problemOf = (photo: Photo): CalibrationProblem => {
  const map = calibrated(photo)
  if (map.ok) throw new Error('it has a scale')
  return map.error
}

/** How far from where it should be a point of the picture lies on the drawing, mm. */
const missMm = (map: PictureMap, at: PicturePoint, uMm: number, vMm: number): number => {
  const place = planePointAt(map, at)
  return Math.hypot((place?.uMm ?? NaN) - uMm, (place?.vMm ?? NaN) - vMm)
}

/*
 * By hand: 2,000 px are 1,000 mm, so a pixel is 0.5 mm. The known point is at 1500, 1800 in the picture and at u 200, v −50 on the drawing.
 */
describe('a known length', () => {
  it('right and up in the picture are rearward and up on the car', () => {
    const map = mapOf(squarePhoto())
    expect(missMm(map, px(1500, 1800), 200, -50)).toBeLessThan(1e-6)
    expect(missMm(map, px(1600, 1800), 250, -50)).toBeLessThan(1e-6)
    expect(missMm(map, px(1500, 1700), 200, 0)).toBeLessThan(1e-6)
    expect(pixelMm(map, px(10, 10))).toBeCloseTo(0.5, 10)
  })

  it('from the other side right in the picture is forward, and up is still up', () => {
    const map = mapOf(
      squarePhoto(
        {
          marks: {
            lengthFrom: px(1000, 2000),
            lengthTo: px(3000, 2000),
            levelFrom: px(3500, 2500),
            levelTo: px(500, 2500),
            known: px(1500, 1800),
          },
        },
        { mirrored: true },
      ),
    )
    expect(missMm(map, px(1600, 1800), 150, -50)).toBeLessThan(1e-6)
    expect(missMm(map, px(1500, 1700), 200, 0)).toBeLessThan(1e-6)
  })

  it('a camera held askew is turned back by the level line', () => {
    // The line falls 3 in 4 to the right: rearward is (0.8, 0.6) in px, up is (0.6, −0.8).
    const marks = {
      lengthFrom: px(1000, 1000),
      lengthTo: px(1000, 3000),
      levelFrom: px(1000, 1000),
      levelTo: px(1800, 1600),
      known: px(1500, 1800),
    }
    const map = mapOf(squarePhoto({ marks }))
    expect(missMm(map, px(1580, 1860), 250, -50)).toBeLessThan(1e-6)
    expect(missMm(map, px(1560, 1720), 200, 0)).toBeLessThan(1e-6)
  })

  it.each([false, true])(
    'a plumb line says the same as the level line square to it (mirrored: %s)',
    (mirrored) => {
      const shared = { lengthFrom: px(100, 100), lengthTo: px(100, 2100), known: px(700, 900) }
      const side = mirrored ? -1 : 1
      const level = { levelFrom: px(1000, 1000), levelTo: px(1000 + side * 900, 1300) }
      // Square to (900, 300) and upward in the picture: (300, −900); from the other side square to (−900, 300): (−300, −900).
      const plumb = { levelFrom: px(1000, 1500), levelTo: px(1000 + side * 300, 600) }
      const one = mapOf(squarePhoto({ marks: { ...shared, ...level } }, { mirrored }))
      const other = mapOf(squarePhoto({ runs: 'plumb', marks: { ...shared, ...plumb } }, { mirrored }))
      for (const at of [px(0, 0), px(4000, 100), px(333, 2900)]) {
        const place = planePointAt(one, at) ?? { uMm: NaN, vMm: NaN }
        expect(missMm(other, at, place.uMm, place.vMm)).toBeLessThan(1e-6)
      }
    },
  )

  it('from above, turned by a quarter, with the front of the car at the top of the picture', () => {
    // Along the car from front to rear is down the picture; the occupant's right is then at the right of the picture, and +v.
    const marks = {
      lengthFrom: px(1000, 2000),
      lengthTo: px(3000, 2000),
      levelFrom: px(2000, 500),
      levelTo: px(2000, 2500),
      known: px(1500, 1800),
    }
    const map = mapOf(squarePhoto({ marks }, { elevation: 'top' }))
    expect(missMm(map, px(1500, 1900), 250, -50)).toBeLessThan(1e-6)
    expect(missMm(map, px(1600, 1800), 200, 0)).toBeLessThan(1e-6)
  })
})

describe('standsOnItsHead', () => {
  const swapped = {
    ...squarePhoto().calibration.marks,
    levelFrom: px(3500, 2500),
    levelTo: px(500, 2500),
  }

  it('tells a level line whose ends were swapped', () => {
    expect(standsOnItsHead(squarePhoto(), mapOf(squarePhoto()))).toBe(false)
    const photo = squarePhoto({ marks: swapped })
    expect(standsOnItsHead(photo, mapOf(photo))).toBe(true)
    // From the other side that is how it should be.
    const other = squarePhoto({ marks: swapped }, { mirrored: true })
    expect(standsOnItsHead(other, mapOf(other))).toBe(false)
  })
})

describe('a known rectangle', () => {
  const corners = [
    { xMm: 100, zMm: 50 },
    { xMm: 1300, zMm: 50 },
    { xMm: 1300, zMm: 850 },
    { xMm: 100, zMm: 850 },
  ] as const
  const MARKS = [
    { xMm: 0, zMm: 0 },
    { xMm: 700, zMm: 450 },
    { xMm: 1250, zMm: 120 },
    { xMm: 320, zMm: 780 },
    { xMm: 1400, zMm: 900 },
  ] as const

  it.each(CAMERAS.map((camera, index) => ({ camera, index })))(
    'camera $index: points of the plane are found again to a thousandth of a pixel and of a mm',
    ({ camera }) => {
      const see = (point: { readonly xMm: number; readonly zMm: number }): PicturePoint =>
        seen(camera, [point.xMm, 0, point.zMm])
      const [a, b, c, d] = corners
      const size = { widthPx: camera.widthPx, heightPx: camera.heightPx }
      const map = mapOf(rectanglePhoto([see(a), see(b), see(c), see(d)], {}, { size }))
      for (const mark of MARKS) {
        const at = see(mark)
        const place = planePointAt(map, at)
        expect(place?.uMm).toBeCloseTo(mark.xMm, 3)
        expect(place?.vMm).toBeCloseTo(mark.zMm, 3)
        const back = picturePointAt(map, { uMm: mark.xMm, vMm: mark.zMm })
        expect(back?.xPx).toBeCloseTo(at.xPx, 3)
        expect(back?.yPx).toBeCloseTo(at.yPx, 3)
      }
    },
  )

  it('from the other side the corners run the other way round, and the car still has its front at the left', () => {
    // A camera behind the plane that looks toward −y sees the front at the right.
    const camera = {
      at: [700, 2500, 500],
      looksAt: [600, 0, 400],
      up: [0, 0, 1],
      focalPx: 3000,
      widthPx: 4000,
      heightPx: 3000,
    } as const
    const see = (xMm: number, zMm: number): PicturePoint => seen(camera, [xMm, 0, zMm])
    const marks = [see(100, 50), see(1300, 50), see(1300, 850), see(100, 850)] as const
    expect(marks[0].xPx).toBeGreaterThan(marks[1].xPx)
    const map = mapOf(rectanglePhoto(marks, {}, { mirrored: true }))
    expect(missMm(map, see(700, 450), 700, 450)).toBeLessThan(1e-6)
    expect(problemOf(rectanglePhoto(marks))).toEqual({ kind: 'wrong-way-round', mirrored: false })
  })

  it('a rectangle that stands askew lies askew on the drawing, round the corner whose place is known', () => {
    // A square of 1,000 px seen squarely, 500 mm a side; turned by 90° its side from front to rear runs up.
    const marks = [px(1000, 2000), px(2000, 2000), px(2000, 1000), px(1000, 1000)] as const
    const change = {
      widthMm: 500,
      heightMm: 500,
      turnDeg: 90,
      corner: 'rearHigh',
      place: { uMm: 40, vMm: 30 },
    } as const
    const map = mapOf(rectanglePhoto(marks, change))
    expect(missMm(map, px(2000, 1000), 40, 30)).toBeLessThan(1e-6)
    expect(missMm(map, px(1000, 1000), 40, -470)).toBeLessThan(1e-6)
    expect(missMm(map, px(2000, 2000), 540, 30)).toBeLessThan(1e-6)
  })
})

describe('what gives no scale', () => {
  const plain = [px(1000, 2000), px(3000, 2000), px(3000, 1000), px(1000, 1000)] as const
  const [a, b, c, d] = plain

  it('names the crosses and the numbers that are missing, crosses first', () => {
    const photo = squarePhoto({ marks: { lengthFrom: px(1, 1), known: px(2, 2) } })
    expect(problemOf(photo)).toEqual({ kind: 'mark-missing', marks: ['lengthTo', 'levelFrom', 'levelTo'] })
    const { lengthMm: _, ...noLength } = squarePhoto().calibration as Extract<
      Photo['calibration'],
      { kind: 'known-length' }
    >
    expect(problemOf({ ...squarePhoto(), calibration: noLength })).toEqual({
      kind: 'number-missing',
      what: 'length',
    })
    const { place: __, ...noPlace } = rectanglePhoto(plain).calibration
    expect(problemOf({ ...squarePhoto(), calibration: noPlace })).toEqual({
      kind: 'number-missing',
      what: 'place',
    })
  })

  it('crosses nearer than a fiftieth of the longer side: 80 of 4,000 px', () => {
    const marks = {
      ...squarePhoto().calibration.marks,
      lengthFrom: px(1000, 2000),
      lengthTo: px(1079.9, 2000),
    }
    expect(problemOf(squarePhoto({ marks, lengthMm: 100 }))).toMatchObject({
      kind: 'points-too-near',
      marks: ['lengthFrom', 'lengthTo'],
      leastPx: 80,
    })
    const apart = { ...marks, lengthTo: px(1080, 2000) }
    expect(calibrated(squarePhoto({ marks: apart, lengthMm: 100 })).ok).toBe(true)
  })

  it('three corners in line', () => {
    // Halfway from the second corner to the fourth the line is at 2000, 1500; 20 px above it is 20·cos(atan ½) = 17.9 px off it.
    const problem = problemOf(rectanglePhoto([a, b, px(2000, 1480), d]))
    expect(problem).toMatchObject({
      kind: 'in-line',
      marks: ['rearLow', 'rearHigh', 'frontHigh'],
      leastPx: 40,
    })
    expect('offPx' in problem && problem.offPx).toBeCloseTo(40 / Math.sqrt(5), 6)
  })

  it('corners that are crossed, and one that lies inside the others', () => {
    expect(problemOf(rectanglePhoto([a, b, d, c]))).toEqual({ kind: 'corners-crossed' })
    expect(problemOf(rectanglePhoto([a, b, px(1500, 1600), d]))).toEqual({ kind: 'corners-crossed' })
    // The same the other way round: three turns are clockwise, one is not.
    const round = rectanglePhoto([d, px(1500, 1600), b, a], {}, { mirrored: true })
    expect(problemOf(round)).toEqual({ kind: 'corners-crossed' })
    expect(problemOf({ ...round, mirrored: false })).toEqual({ kind: 'corners-crossed' })
  })

  it('a plane that runs away to infinity inside the picture', () => {
    // The upper and the lower side meet at x = 3,500 px: beyond it the plane is not.
    const marks = [px(500, 2500), px(3000, 1700), px(3000, 1300), px(500, 500)] as const
    expect(problemOf(rectanglePhoto(marks))).toEqual({ kind: 'horizon-in-picture' })
    const { widthPx, heightPx } = { widthPx: 3400, heightPx: 3000 }
    expect(calibrated(rectanglePhoto(marks, {}, { size: { widthPx, heightPx } })).ok).toBe(true)
  })

  it('a length that makes a car of a matchbox, or a street of a car', () => {
    // 2,000 px are the length, the picture is 4,000 px wide: it spans twice the length.
    expect(problemOf(squarePhoto({ lengthMm: 24.9 }))).toMatchObject({
      kind: 'scale-out-of-reason',
      leastMm: 50,
    })
    expect(calibrated(squarePhoto({ lengthMm: 25 })).ok).toBe(true)
    expect(problemOf(squarePhoto({ lengthMm: 20_001 }))).toMatchObject({
      kind: 'scale-out-of-reason',
      mostMm: 40_000,
    })
  })

  it('never gives a number that is none, wherever four crosses lie', () => {
    const mark = fc.record({ xPx: fc.integer({ min: 0, max: 4000 }), yPx: fc.integer({ min: 0, max: 3000 }) })
    fc.assert(
      fc.property(mark, mark, mark, mark, fc.boolean(), (p, q, r, s, mirrored) => {
        const map = calibrated(rectanglePhoto([p, q, r, s], {}, { mirrored }))
        const at = [p, q, r, s, px(0, 0), px(4000, 3000)]
        const numbers = map.ok
          ? at.flatMap((point) => {
              const place = planePointAt(map.value, point)
              return [place?.uMm, place?.vMm, pixelMm(map.value, point)]
            })
          : Object.values(map.error).filter((value) => typeof value === 'number')
        expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([])
      }),
    )
  })
})
