import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { clockDirection, clockLines } from '../../../../src/domain/shop/tab/clock'
import { tabOnTube } from '../../../../src/domain/shop/tab/tabOnTube'
import { spatial, tabPlates } from '../../../../src/domain/shop/tab/tabPlates'
import { wayOf } from '../../../../src/domain/shop/tab/way'
import { cosDeg, sinDeg } from '../../../../src/domain/units/angle'
import type { TabMount } from '../../../../src/domain/straps/anchor'

const tube = (id: string, points: readonly PointMm[], outsideDiameterMm = 40): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

/** Across the car from left to right at x = 1000, z = 500. */
const bar = tube('bar', [pointMm(1000, -600, 500), pointMm(1000, 600, 500)])

const tab = (point: PointMm, changes: Partial<TabMount> = {}): { readonly mount: TabMount } => ({
  mount: {
    kind: 'tab',
    point,
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12,
    shear: 'single',
    tubeId: 'bar',
    ...changes,
  },
})

describe('tabOnTube', () => {
  it('is null for the floor and for a tube that is not there', () => {
    expect(tabOnTube(tab(pointMm(0, 0, 0), { tubeId: null }), [bar])).toBeNull()
    expect(tabOnTube(tab(pointMm(0, 0, 0)), [])).toBeNull()
  })

  it('reads a 3-4-5 triangle in front of and above a bar across the car', () => {
    // 30 mm forward and 40 mm above the centre line: 50 mm away, atan(30/40) = 36.869 9° from plumb toward the front.
    const found = tabOnTube(tab(pointMm(970, 150, 540)), [bar])
    expect(found).toMatchObject({ alongTubeMm: 750, standoffMm: 30, planeToTubeDeg: 90, problem: null })
    expect(found?.foot).toEqual(pointMm(1000, 150, 500))
    expect(found?.clock).toMatchObject({ from: 'top', toward: 'front' })
    expect(Math.abs(found?.clock?.clockDeg ?? 0)).toBeCloseTo(36.869_898, 5)
    expect(found?.leanFromSquareDeg).toBeCloseTo(0, 9)
  })

  it.each([
    // Looking along +y from the left end, rear is on the right-hand side and front on the left: clockwise is up → rear.
    { at: pointMm(1050, 0, 500), clockDeg: 90, toward: 'rear' },
    { at: pointMm(950, 0, 500), clockDeg: -90, toward: 'front' },
    { at: pointMm(1000, 0, 440), clockDeg: 180, toward: 'rear' },
    { at: pointMm(1000, 0, 560), clockDeg: 0, toward: 'rear' },
  ])('puts $at.xMm/$at.zMm at $clockDeg° toward the $toward', ({ at, clockDeg, toward }) => {
    const clock = tabOnTube(tab(at), [bar])?.clock
    expect(clock?.clockDeg).toBeCloseTo(clockDeg, 9)
    expect(clock?.toward).toBe(toward)
  })

  it.each([
    { fromPlumbDeg: 9, from: 'front' },
    { fromPlumbDeg: 11, from: 'top' },
  ])('a tube $fromPlumbDeg° from plumb is counted from its $from', ({ fromPlumbDeg, from }) => {
    const post = tube('bar', [
      pointMm(0, 0, 0),
      pointMm(0, 900 * sinDeg(fromPlumbDeg), 900 * cosDeg(fromPlumbDeg)),
    ])
    expect(tabOnTube(tab(pointMm(-50, 70, 400)), [post])?.clock?.from).toBe(from)
  })

  it('tells how far the top line of a sloping tube is from plumb: its slope', () => {
    // 3-4-5: 300 mm up over 400 mm along, asin(3/5) = 36.869 9°.
    const sloping = tube('bar', [pointMm(0, 0, 0), pointMm(400, 0, 300)])
    const clock = tabOnTube(tab(pointMm(200, 40, 150)), [sloping])?.clock
    expect(clock?.zeroOffDeg).toBeCloseTo(36.869_898, 5)
    expect(tabOnTube(tab(pointMm(970, 0, 540)), [bar])?.clock?.zeroOffDeg).toBe(0)
  })

  it('counts the angle round an upright tube from the front', () => {
    const post = tube('bar', [pointMm(0, 0, 0), pointMm(0, 0, 900)])
    const clock = tabOnTube(tab(pointMm(-30, 30, 400)), [post])?.clock
    expect(clock).toMatchObject({ from: 'front' })
    expect(Math.abs(clock?.clockDeg ?? 0)).toBeCloseTo(45, 9)
    expect(clock?.toward).toBe('right')
  })

  it.each([
    // Plane fore-and-aft and upright on a bar across the car stands square across it; turned by p it is at 90 − p.
    { planDeg: 0, leanDeg: 0, planeToTubeDeg: 90 },
    { planDeg: 25, leanDeg: 0, planeToTubeDeg: 65 },
    { planDeg: 90, leanDeg: 0, planeToTubeDeg: 0 },
    { planDeg: 0, leanDeg: 60, planeToTubeDeg: 30 },
    { planDeg: 0, leanDeg: 90, planeToTubeDeg: 0 },
  ])('a tab at plan $planDeg°, lean $leanDeg° is $planeToTubeDeg° to the bar', (given) => {
    const found = tabOnTube(tab(pointMm(960, 0, 500), given), [bar])
    expect(found?.planeToTubeDeg).toBeCloseTo(given.planeToTubeDeg, 6)
  })

  it('says how far the plane leans from the line out of the tube', () => {
    // Hole straight in front of the bar, plane level-crosswise (plan 90°): it holds no forward line at all.
    expect(tabOnTube(tab(pointMm(950, 0, 500), { planDeg: 90 }), [bar])?.leanFromSquareDeg).toBeCloseTo(90, 6)
    expect(tabOnTube(tab(pointMm(950, 0, 500), { planDeg: 30 }), [bar])?.leanFromSquareDeg).toBeCloseTo(30, 6)
  })

  it('says when the hole is in the tube, past its end or in the corner of a bend', () => {
    expect(tabOnTube(tab(pointMm(1000, 0, 512)), [bar])?.problem).toEqual({
      kind: 'inside-tube',
      tubeId: 'bar',
      depthMm: 8,
    })
    expect(tabOnTube(tab(pointMm(1000, 630, 540)), [bar])?.problem).toEqual({
      kind: 'beyond-end',
      tubeId: 'bar',
      beyondMm: 30,
    })
    const bent = tube('bar', [pointMm(0, 0, 0), pointMm(0, 500, 0), pointMm(500, 500, 0)])
    expect(tabOnTube(tab(pointMm(-30, 530, 0)), [bent])?.problem).toEqual({
      kind: 'on-bend',
      tubeId: 'bar',
      pointNumber: 2,
    })
    expect(tabOnTube(tab(pointMm(-30, 500, 0)), [bent])?.problem?.kind).toBe('on-bend')
    expect(tabOnTube(tab(pointMm(-30, 499, 0)), [bent])?.problem).toBeNull()
    expect(tabOnTube(tab(pointMm(1000, 0, 520)), [bar])?.problem).toBeNull()
  })

  it('gives the distance from the nearest crossing, and which way', () => {
    const hoop = tube('hoop', [pointMm(1010, 200, 0), pointMm(1010, 200, 900)])
    const far = tube('far', [pointMm(1200, 100, 0), pointMm(1200, 100, 900)])
    const found = tabOnTube(tab(pointMm(960, 130, 500)), [bar, hoop, far])
    expect(found?.nearest?.distanceMm).toBeCloseTo(70, 9)
    expect(found?.nearest?.way).toBe('left')
    expect(found?.nearest?.mark).toMatchObject({ kind: 'crossing', otherTubeId: 'hoop' })
    expect(found?.nearest?.mark.alongTubeMm).toBeCloseTo(800, 9)
    // Without a crossing the nearest end is named.
    const alone = tabOnTube(tab(pointMm(960, 430, 500)), [bar, far])
    expect(alone?.nearest?.distanceMm).toBeCloseTo(170, 9)
    expect(alone?.nearest?.way).toBe('left')
    expect(alone?.nearest?.mark).toMatchObject({ kind: 'end', pointNumber: 2, otherTubeId: null })
  })

  it('counts a tube whose surface is 5 mm away as crossing, and one further away not', () => {
    const post = (xMm: number): Tube => tube('post', [pointMm(xMm, 0, 0), pointMm(xMm, 0, 900)])
    const kindAt = (xMm: number): string | undefined =>
      tabOnTube(tab(pointMm(960, 100, 500)), [bar, post(xMm)])?.nearest?.mark.kind
    expect(kindAt(1045)).toBe('crossing')
    expect(kindAt(1045.1)).toBe('end')
  })

  it('has no clock, standoff or plane for a wrap', () => {
    const mount = {
      kind: 'wrap',
      tubeId: 'bar',
      point: pointMm(1000, 50, 500),
      over: 'over',
      guideHoops: true,
    } as const
    expect(tabOnTube({ mount }, [bar])).toMatchObject({
      alongTubeMm: 650,
      clock: null,
      standoffMm: null,
      planeToTubeDeg: null,
      leanFromSquareDeg: null,
      problem: null,
    })
  })

  it('is read back: the angle, the standoff and the place along any tube lead to the hole again', () => {
    const coordinate = fc.double({ min: -900, max: 900, noNaN: true })
    fc.assert(
      fc.property(
        fc.record({ x: coordinate, y: coordinate, z: coordinate }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: -179, max: 180, noNaN: true }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        (end, share, clockDeg, standoffMm) => {
          const lengthMm = Math.hypot(end.x, end.y, end.z)
          fc.pre(lengthMm > 200)
          const slanted = tube('bar', [pointMm(0, 0, 0), pointMm(end.x, end.y, end.z)])
          const axis = { x: end.x / lengthMm, y: end.y / lengthMm, z: end.z / lengthMm }
          const out = clockDirection(clockLines(axis), clockDeg)
          expect(out.x * axis.x + out.y * axis.y + out.z * axis.z).toBeCloseTo(0, 9)
          expect(Math.hypot(out.x, out.y, out.z)).toBeCloseTo(1, 9)
          const point = pointMm(
            end.x * share + out.x * (20 + standoffMm),
            end.y * share + out.y * (20 + standoffMm),
            end.z * share + out.z * (20 + standoffMm),
          )
          const found = tabOnTube(tab(point), [slanted])
          expect(found?.standoffMm).toBeCloseTo(standoffMm, 6)
          expect(found?.alongTubeMm).toBeCloseTo(share * lengthMm, 6)
          expect(found?.clock?.clockDeg).toBeCloseTo(clockDeg, 5)
        },
      ),
    )
  })
})

describe('tabPlates', () => {
  it('sets the two plates of a clevis as far apart as its fitting needs, each hole in the middle of its plate', () => {
    const clevis = tab(pointMm(1000, 0, 560), { form: 'clevis', shear: 'double', gapMm: 9, planDeg: 20 })
    const on = tabOnTube(clevis, [bar])
    const found = on === null ? null : tabPlates(clevis.mount, on)
    if (found === null || 'kind' in found) throw new Error('no plates')
    const [near, far] = found.plates
    // 9 mm clear and twice half of a 5 mm plate, along the normal (−sin 20°, cos 20°, 0).
    const [dx, dy] = [
      (near?.hole.xMm ?? 0) - (far?.hole.xMm ?? 0),
      (near?.hole.yMm ?? 0) - (far?.hole.yMm ?? 0),
    ]
    expect(dx).toBeCloseTo(-14 * sinDeg(20), 9)
    expect(dy).toBeCloseTo(14 * cosDeg(20), 9)
    // Both stand on the tube the same way, so that the clevis is not a pair of scissors.
    expect(near?.slice.up).toEqual(far?.slice.up)
    for (const plate of found.plates) {
      const foot = spatial(plate.hole, plate.slice, { xMm: 0, yMm: -plate.slice.reachMm, depthMm: 0 })
      expect(Math.hypot(foot.xMm - 1000, foot.zMm - 500)).toBeCloseTo(20, 9)
    }
  })
})

describe('wayOf', () => {
  it.each([
    { x: 1, y: 0, z: 0, way: 'rear' },
    { x: -1, y: 0.2, z: 0.5, way: 'front' },
    { x: 0, y: 1, z: 0, way: 'right' },
    { x: 0, y: -1, z: 0.9, way: 'left' },
    { x: -1, y: -1, z: 0, way: 'front left' },
    { x: 1, y: -1, z: 0, way: 'rear left' },
    { x: 0.1, y: 0, z: 1, way: 'up' },
    { x: 0, y: 0.5, z: -0.8, way: 'down' },
  ])('($x, $y, $z) is $way', ({ way, ...direction }) => {
    expect(wayOf(direction)).toBe(way)
  })
})
