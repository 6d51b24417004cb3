import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planePoint } from '../../../src/domain/geometry/plane'
import type { Region } from '../../../src/domain/geometry/polygon'
import { boxRegion, regionContains, regionUnion } from '../../../src/domain/geometry/region'
import { zoneWays } from '../../../src/domain/zones/zoneWays'

const box = (left: number, low: number, right: number, high: number): Region =>
  boxRegion(planePoint(left, low), planePoint(right, high))

describe('zoneWays', () => {
  it('reads the four ways off a box', () => {
    expect(zoneWays(box(-10, -20, 30, 40), planePoint(0, 0))).toEqual({
      forwardMm: 10,
      rearwardMm: 30,
      lowMm: 20,
      highMm: 40,
    })
  })

  it('follows a slanting edge: below the line v = u / 2 there are 50 mm of height 100 mm behind its foot', () => {
    const wedge: Region = [[planePoint(0, 0), planePoint(200, 0), planePoint(200, 100)]]
    expect(zoneWays(wedge, planePoint(100, 10))).toEqual({
      forwardMm: 80,
      rearwardMm: 100,
      lowMm: 10,
      highMm: 40,
    })
  })

  it('goes on through pieces that touch, and not over a gap', () => {
    const joined: Region = [...box(0, 0, 10, 10), ...box(10, 0, 25, 10), ...box(30, 0, 40, 10)]
    expect(zoneWays(joined, planePoint(5, 5))?.rearwardMm).toBe(20)
    expect(zoneWays(joined, planePoint(35, 5))?.forwardMm).toBe(5)
  })

  it('is null outside, and nothing is left at a corner one way', () => {
    expect(zoneWays(box(0, 0, 10, 10), planePoint(11, 5))).toBeNull()
    expect(zoneWays([], planePoint(0, 0))).toBeNull()
    expect(zoneWays(box(0, 0, 10, 10), planePoint(10, 10))).toMatchObject({
      rearwardMm: 0,
      highMm: 0,
      forwardMm: 10,
    })
  })

  it('agrees with walking there in steps of a mm', () => {
    const side = fc.integer({ min: -60, max: 60 })
    const part = fc.tuple(side, side, fc.integer({ min: 5, max: 50 }), fc.integer({ min: 5, max: 50 }))
    fc.assert(
      fc.property(part, part, ([u, v, w, h], [u2, v2, w2, h2]) => {
        const region = regionUnion(box(u, v, u + w, v + h), box(u2, v2, u2 + w2, v2 + h2))
        const at = planePoint(u + w / 2, v + h / 2)
        const ways = zoneWays(region, at)
        let walked = 0
        while (regionContains(region, planePoint(at.uMm + walked + 1, at.vMm), 1e-9)) walked += 1
        expect(Math.abs((ways?.rearwardMm ?? NaN) - walked)).toBeLessThan(1)
      }),
    )
  })
})
