import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PointMm } from '../../../src/domain/geometry/point'
import { placeStraps } from '../../../src/domain/straps/placeStraps'
import { straightRunOf, type StraightRun, tubePieces, tubeRoom } from '../../../src/domain/straps/tubePieces'
import { bar, lapTabs, point, scene, tab } from './scenes'

/** A lateral bar of 40 mm through the datum. */
const BAR = tubePieces([bar(0, 0, 40, 'own')])

const run = (points: readonly PointMm[], changes: Partial<StraightRun> = {}): StraightRun => ({
  touching: 0,
  ends: points.slice(1).flatMap((to, index) => {
    const from = points[index] ?? to
    return [from.xMm, from.yMm, from.zMm, to.xMm, to.yMm, to.zMm]
  }),
  ownId: null,
  wrappedId: null,
  ...changes,
})

/** From a mount 30 mm above the bar's middle, in such a direction that the straight strap passes so near to that middle. */
const passing = (nearMm: number): StraightRun => {
  const [sine, cosine] = [nearMm / 30, Math.sqrt(1 - (nearMm / 30) ** 2)]
  return run([point(0, 0, 30), point(500 * sine, 0, 30 - 500 * cosine)], { ownId: 'own' })
}

describe('tubeRoom of tubes that the mount is not on', () => {
  it('is the distance to the surface, negative inside it', () => {
    expect(tubeRoom(BAR, run([point(-300, 0, 50), point(300, 0, 50)])).othersMm).toBeCloseTo(30, 9)
    expect(tubeRoom(BAR, run([point(-300, 0, 5), point(300, 0, 5)])).othersMm).toBeCloseTo(-15, 9)
    // Ends 40 mm behind and 30 mm above the middle: 50 mm from it.
    expect(tubeRoom(BAR, run([point(400, 0, 330), point(40, 0, 30)])).othersMm).toBeCloseTo(30, 9)
  })

  it('is that of the nearest piece of the strap', () => {
    const bent = run([point(-300, 0, 200), point(0, 0, 60), point(300, 0, 200)])
    expect(tubeRoom(BAR, bent)).toEqual({ othersMm: 40, ownMm: Infinity })
  })

  it('is no more than was asked for, and without tubes nothing', () => {
    const far = run([point(-300, 0, 500), point(300, 0, 500)])
    expect(tubeRoom(BAR, far, 100)).toEqual({ othersMm: 100, ownMm: 100 })
    expect(tubeRoom([], far)).toEqual({ othersMm: Infinity, ownMm: Infinity })
  })
})

describe('tubeRoom of the tube that the mount is on', () => {
  it('is what the mount has where the strap leaves the tube', () => {
    // 30 mm from the middle of a tube of radius 20, and never nearer: the mount’s own 10 mm.
    const leaving = run([point(0, 0, 30), point(200, 0, 200)], { ownId: 'own' })
    expect(tubeRoom(BAR, leaving)).toEqual({ othersMm: Infinity, ownMm: 10 })
  })

  it('is 0 where the strap leaves a hole that is drawn inside the tube', () => {
    const inside = run([point(0, 0, 12), point(0, 0, 300)], { ownId: 'own' })
    expect(tubeRoom(BAR, inside).ownMm).toBe(0)
  })

  it.each([
    // Least distance d of the strap to the middle, h = 30, R = 20: the larger of d − 20 and d − 30.
    ['clears the tube', 25, 5],
    ['grazes the tube', 20, 0],
    ['cuts into the tube', 15, -5],
    ['runs straight through the tube', 0, -20],
  ])('changes evenly where the strap %s', (_name, nearMm, roomMm) => {
    expect(tubeRoom(BAR, passing(nearMm)).ownMm).toBeCloseTo(roomMm, 9)
  })

  it('counts how much nearer the strap comes where the hole is drawn inside the tube', () => {
    // From 12 mm above the middle down through it: 12 mm nearer than it began.
    expect(tubeRoom(BAR, run([point(0, 0, 12), point(0, 0, -300)], { ownId: 'own' })).ownMm).toBeCloseTo(
      -12,
      9,
    )
  })

  it('is not looked at where the strap is wrapped round the tube', () => {
    const wrapped = run([point(0, 0, 20), point(0, 0, -300)], { wrappedId: 'own' })
    expect(tubeRoom(BAR, wrapped)).toEqual({ othersMm: Infinity, ownMm: Infinity })
  })

  it('never jumps: moved by some way it changes by twice that way at most', () => {
    const mm = fc.double({ min: -80, max: 80, noNaN: true })
    const places = fc.record({ mount: fc.tuple(mm, mm, mm), end: fc.tuple(mm, mm, mm) })
    const small = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(places, fc.array(small, { minLength: 6, maxLength: 6 }), ({ mount, end }, moved) => {
        const ends = [...mount, ...end]
        const here = tubeRoom(BAR, { ...run([]), ends, ownId: 'own' }).ownMm
        const there = ends.map((each, index) => each + (moved[index] ?? 0))
        const wayMm = Math.max(Math.hypot(...moved.slice(0, 3)), Math.hypot(...moved.slice(3)))
        const after = tubeRoom(BAR, { ...run([]), ends: there, ownId: 'own' }).ownMm
        expect(Math.abs(after - here)).toBeLessThanOrEqual(2 * wayMm + 1e-5)
      }),
    )
  })
})

describe('straightRunOf', () => {
  it('holds the straight pieces from the mount to the body and nothing after', () => {
    // Shoulder point at z = 590, arc of radius 100: the level strap meets it straight above its middle.
    const given = scene({
      anchors: [...lapTabs, tab('shoulder-left', point(400, -80, 590), { tubeId: 'rail' })],
    })
    const solved = placeStraps(given).straps.find(({ anchor }) => anchor.strap === 'shoulder-left')
    if (solved === undefined) throw new Error('the strap has a path')
    const { ends, ownId, wrappedId } = straightRunOf(solved)
    expect([ownId, wrappedId]).toEqual(['rail', null])
    expect(ends.slice(0, 3)).toEqual([400, -80, 590])
    expect(ends[3]).toBeCloseTo(0, 6)
    expect(ends[4]).toBeCloseTo(-80, 6)
    expect(ends[5]).toBeCloseTo(590, 6)
  })
})
