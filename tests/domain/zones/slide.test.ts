import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, type PointMm } from '../../../src/domain/geometry/point'
import { nearestOnPolyline } from '../../../src/domain/geometry/segment'
import type { Tube } from '../../../src/domain/geometry/tube'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { moveOf, movedScene } from '../../../src/domain/zones/move'
import { halfAlongMm, isBetweenEnds, runsAlong, slidPoint } from '../../../src/domain/zones/slide'
import { bar, belt, lapTabs, point, scene as handScene, tab, wrap } from '../straps/scenes'
import { zoneCaseOf } from './zoneCases'

const OUTWARD = { x: 0, y: 1, z: 0 }
const REARWARD = { x: 1, y: 0, z: 0 }
const UP = { x: 0, y: 0, z: 1 }

const slid = (anchor: Anchor, tube: Tube, way: typeof UP, byMm: number): PointMm | null =>
  slidPoint({ anchor, point: anchor.mount.point, tube, belt: belt(6) }, way, byMm)

const bent = (points: readonly PointMm[]): Tube => ({ ...bar(0, 0, 40), points })

describe('slidPoint', () => {
  // The bar goes from −600 to 600 mm across; straps of 76 mm.
  const across = bar(400, 450, 40)

  it('keeps a tab within the end of its tube, less half its thickness where its plane is square to it', () => {
    const anchor = tab('shoulder-right', point(360, 590, 460), { tubeId: 'bar' })
    expect(slid(anchor, across, OUTWARD, 7)).toEqual(point(360, 597, 460))
    expect(slid(anchor, across, OUTWARD, 8)).toBeNull()
    expect(halfAlongMm(anchor, OUTWARD, belt(6))).toBeCloseTo(2.5, 12)
  })

  it('keeps the hole of a tab that lies along the tube within the end', () => {
    // A plane through the tube's direction: the edge of the 12 mm hole is 6 mm along.
    const anchor = tab('shoulder-right', point(360, 590, 460), { tubeId: 'bar', planDeg: 90 })
    expect(halfAlongMm(anchor, OUTWARD, belt(6))).toBeCloseTo(6, 12)
    expect(slid(anchor, across, OUTWARD, 4)?.yMm).toBeCloseTo(594, 9)
    expect(slid(anchor, across, OUTWARD, 5)).toBeNull()
  })

  it('keeps the whole webbing of a wrap on the bar', () => {
    const anchor = wrap('shoulder-right', point(400, 500, 450), 'over')
    expect(slid(anchor, across, OUTWARD, 62)).toEqual(point(400, 562, 450))
    expect(slid(anchor, across, OUTWARD, 63)).toBeNull()
  })

  it('leaves an overhang that is there, but makes it no larger and takes nothing beside the end for on the tube', () => {
    const half = wrap('shoulder-right', point(400, 590, 450), 'over')
    expect(slid(half, across, OUTWARD, 1)).toBeNull()
    expect(slid(half, across, { x: 0, y: -1, z: 0 }, 1)?.yMm).toBe(589)
    const beside = tab('shoulder-right', point(360, 800, 460), { tubeId: 'bar' })
    expect(isBetweenEnds(across, beside.mount.point)).toBe(false)
    expect(slid(beside, across, OUTWARD, 10)).toBeNull()
    expect(slid(beside, across, { x: 0, y: -1, z: 0 }, 100)).toBeNull()
    expect(slid(beside, across, { x: 0, y: -1, z: 0 }, 203)?.yMm).toBe(597)
  })

  it('goes along a slanted tube until it has gone as far in the direction asked for', () => {
    // 30° in plan: 20 mm across are 20·tan 30° fore and aft.
    const slanted = bent([
      point(0, 0, 0),
      point(1000 * Math.sin(Math.PI / 6), 1000 * Math.cos(Math.PI / 6), 0),
    ])
    const at = point(500 * Math.sin(Math.PI / 6), 500 * Math.cos(Math.PI / 6), 30)
    const to = slid(tab('lap-right', at, { tubeId: 'bar' }), slanted, OUTWARD, 20)
    expect(to?.yMm).toBeCloseTo(at.yMm + 20, 9)
    expect(to?.xMm).toBeCloseTo(at.xMm + 20 * Math.tan(Math.PI / 6), 9)
    expect(to?.zMm).toBe(30)
    expect(runsAlong(slanted, at, REARWARD)).toBe(false)
  })

  it('goes round a gentle bend with a wrap and stops where the tube turns off', () => {
    // Across to y = 100, then rising at 20° to y = 300, then straight up.
    const rise = 200 * Math.tan(Math.PI / 9)
    const tube = bent([point(0, 0, 0), point(0, 100, 0), point(0, 300, rise), point(0, 300, rise + 500)])
    const anchor = wrap('shoulder-right', point(0, 50, 0), 'over')
    const to = slid(anchor, tube, OUTWARD, 150)
    expect(to?.yMm).toBeCloseTo(200, 9)
    expect(to?.zMm).toBeCloseTo(100 * Math.tan(Math.PI / 9), 9)
    expect(slid(anchor, tube, OUTWARD, 251)).toBeNull()
  })

  it('puts nothing beside or off a tube, however long, bent and slanted, in random cases', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max })
    const spot = fc.record({ xMm: mm(-400, 400), yMm: mm(-600, 600), zMm: mm(-300, 300) })
    let seen = 0
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 2, maxLength: 4 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.record({ xMm: mm(-40, 40), yMm: mm(-40, 40), zMm: mm(-40, 40) }),
        fc.constantFrom(OUTWARD, REARWARD, UP, { x: -1, y: 0, z: 0 }),
        mm(1, 400),
        (points, share, off, way, byMm) => {
          fc.pre(points.slice(1).every((to, index) => pointDistanceMm(points[index] ?? to, to) > 1))
          const tube = bent(points)
          const [from, to] = points
          if (from === undefined || to === undefined) return
          const at = (axis: keyof PointMm): number => from[axis] + share * (to[axis] - from[axis]) + off[axis]
          const anchor = tab('lap-left', point(at('xMm'), at('yMm'), at('zMm')), { tubeId: 'bar' })
          const moved = slid(anchor, tube, way, byMm)
          if (moved === null) return
          seen += 1
          const before = nearestOnPolyline(points, anchor.mount.point)
          const after = nearestOnPolyline(points, moved)
          expect(isBetweenEnds(tube, moved)).toBe(true)
          expect(after.distanceMm).toBeLessThan(before.distanceMm + 1 + 1e-6)
          const gone =
            way.x * (moved.xMm - anchor.mount.point.xMm) +
            way.y * (moved.yMm - anchor.mount.point.yMm) +
            way.z * (moved.zMm - anchor.mount.point.zMm)
          expect(gone).toBeCloseTo(byMm, 6)
        },
      ),
      { numRuns: 2000 },
    )
    expect(seen).toBeGreaterThan(100)
  })
})

describe('moveOf', () => {
  const shoulderTabs = (tubeId: string | null) => [
    tab('shoulder-left', point(360, -80, 450), { tubeId }),
    tab('shoulder-right', point(360, 80, 450), { tubeId }),
  ]

  it('slides a pair along its bar, moves the bar off it, and nothing but the tabs where there is no tube', () => {
    const scene = (tubeId: string | null) =>
      handScene({ anchors: [...lapTabs, ...shoulderTabs(tubeId)], tubes: [bar(400, 450, 40)] })
    const onBar = zoneCaseOf([scene('bar')], 'shoulder-left', true)
    const ids = ['shoulder-left', 'shoulder-right']
    expect(moveOf('inward', 5, onBar)).toMatchObject({ anchorIds: ids, tubeIds: [] })
    expect(moveOf('up', 5, onBar)).toMatchObject({ anchorIds: [], tubeIds: ['bar'] })
    expect(moveOf('forward', 5, onBar)).toMatchObject({ anchorIds: [], tubeIds: ['bar'] })
    const free = zoneCaseOf([scene(null)], 'shoulder-left', true)
    expect(moveOf('up', 5, free)).toMatchObject({ anchorIds: ids, tubeIds: [] })
  })

  it('names both rails where each side hangs on its own, and offers no way across them', () => {
    const rail = (yMm: number, id: string): Tube => ({
      ...bent([point(-500, yMm, -250), point(500, yMm, -250)]),
      id,
    })
    const anchors = [
      tab('lap-left', point(200, -250, -200), { tubeId: 'left' }),
      tab('lap-right', point(200, 250, -200), { tubeId: 'right' }),
    ]
    const scene = handScene({ anchors, tubes: [rail(-250, 'left'), rail(250, 'right')] })
    const zoneCase = zoneCaseOf([scene], 'lap-left', true)
    const down = moveOf('down', 30, zoneCase)
    expect(down).toMatchObject({ anchorIds: [], tubeIds: ['left', 'right'] })
    expect(moveOf('forward', 30, zoneCase)).toMatchObject({
      anchorIds: ['lap-left', 'lap-right'],
      tubeIds: [],
    })
    expect(moveOf('outward', 30, zoneCase)).toBeNull()
    const moved = down && movedScene(scene, [down])
    expect(moved?.anchors.map(({ mount }) => mount.point.zMm)).toEqual([-230, -230])
    expect(moved?.tubes.flatMap(({ points }) => points.map(({ zMm }) => zMm))).toEqual([
      -280, -280, -280, -280,
    ])
  })
})
