import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm } from '../../../../src/domain/geometry/point'
import { nearestOnPolyline } from '../../../../src/domain/geometry/segment'
import type { Tube } from '../../../../src/domain/geometry/tube'
import {
  alongTube,
  crossingsAlong,
  firstLooks,
  heldToAxis,
  roundedOnAxis,
  standingTrack,
  wrapTrack,
} from '../../../../src/domain/layout/propose/track'
import { crossTube } from '../../../support/flatLayout'

const bent: Tube = {
  ...crossTube('bent', 0, 0),
  points: [pointMm(0, -300, 0), pointMm(0, 0, 0), pointMm(0, 0, 400)],
}

describe('tracks', () => {
  it('goes along a bent tube by its length', () => {
    expect(alongTube(bent.points, 100)?.point).toEqual(pointMm(0, -200, 0))
    expect(alongTube(bent.points, 300 + 250)?.point).toEqual(pointMm(0, 0, 250))
    expect(alongTube(bent.points, 9999)?.point).toEqual(pointMm(0, 0, 400))
  })

  it('puts a hole at the typed distance from the surface, above the tube first and then round it', () => {
    // 38 mm tube across the car, hole 25 mm off its surface: 19 + 25 = 44 mm from the centre line.
    const track = standingTrack(crossTube('bar', 500, 200), 25)
    expect(track.spotAt([600, 0])?.point).toEqual(pointMm(500, 0, 244))
    const quarter = track.spotAt([600, 90])?.point
    expect(Math.abs((quarter?.xMm ?? 0) - 500)).toBeCloseTo(44, 9)
    expect(quarter?.zMm).toBeCloseTo(200, 9)
  })

  it('always keeps that distance, and finds its own coordinates again', () => {
    const track = standingTrack(bent, 30)
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 700, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        (alongMm, roundDeg) => {
          const spot = track.spotAt([alongMm, roundDeg])
          // In the bend there are places where the next piece would be too near.
          if (spot === null) return
          expect(nearestOnPolyline(bent.points, spot.point).distanceMm).toBeCloseTo(49, 6)
          const again = track.spotAt(track.nearestAt(spot.point))
          // Beyond the outside of the bend the nearest piece may be the other one.
          const isNearBend = alongMm <= 60 || Math.abs(alongMm - 300) <= 60
          const offMm = again === null || isNearBend ? 0 : pointDistanceMm(again.point, spot.point)
          expect(offMm).toBeLessThan(1e-6)
        },
      ),
    )
  })

  it('leaves out places in a bend that would be nearer to the next piece', () => {
    // 10 mm before the bend, above the level piece: inside the upright one.
    expect(standingTrack(bent, 25).spotAt([290, 0])).toBeNull()
  })

  it('looks at both ends and never at one turn twice', () => {
    const alongs = firstLooks(wrapTrack(crossTube('bar', 0, 0))).map(([along]) => along)
    expect(alongs[0]).toBe(0)
    expect(alongs.at(-1)).toBe(1200)
    const turns = new Set(firstLooks(standingTrack(crossTube('bar', 0, 0), 25)).map(([, turn]) => turn))
    expect(turns.size).toBe(16)
    expect(turns.has(360)).toBe(false)
  })

  it('goes round at the end of a turn and stops at the end of a length', () => {
    const round = { low: 0, high: 360, looks: 17, isRound: true, roundTo: 0.1 }
    expect(heldToAxis(round, -10)).toBe(350)
    expect(heldToAxis(round, 370)).toBe(10)
    const along = { low: 0, high: 1200.04, looks: 9, isRound: false, roundTo: 0.1 }
    expect(heldToAxis(along, 1300)).toBe(1200.04)
    expect(roundedOnAxis(along, 33.333)).toBe(33.3)
    expect(roundedOnAxis(along, 1200.04)).toBe(1200)
  })

  it('names where a tube crosses the middle of the seat', () => {
    expect(crossingsAlong(crossTube('bar', 0, 0), 100)).toEqual([700])
    expect(crossingsAlong(bent, 0)).toEqual([300])
    expect(crossingsAlong(bent, 50)).toEqual([])
  })
})
