import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { insertCope, type InsertCope } from '../../../../src/domain/shop/tab/insertCope'
import { tabOnTube } from '../../../../src/domain/shop/tab/tabOnTube'
import type { TabMount } from '../../../../src/domain/straps/anchor'
import { cosDeg, sinDeg } from '../../../../src/domain/units/angle'

/** Along the car through the origin, 20 mm radius. */
const rail: Tube = {
  id: 'rail',
  name: 'Rail',
  role: 'cage',
  points: [pointMm(-500, 0, 0), pointMm(500, 0, 0)],
  outsideDiameterMm: 40,
  wallMm: 2,
}

const insert = (point: PointMm, changes: Partial<TabMount> = {}): TabMount => ({
  kind: 'tab',
  form: 'insert',
  point,
  planDeg: 0,
  leanDeg: 0,
  thicknessMm: 30,
  holeDiameterMm: 12,
  widthMm: 24,
  shear: 'single',
  tubeId: 'rail',
  ...changes,
})

const copeOf = (mount: TabMount): ReturnType<typeof insertCope> => {
  const on = tabOnTube({ mount }, [rail])
  if (on === null) throw new Error('no tube')
  return insertCope(mount, on)
}
const goodCope = (mount: TabMount): InsertCope => {
  const cope = copeOf(mount)
  if ('kind' in cope) throw new Error(cope.kind)
  return cope
}

describe('insertCope', () => {
  it('is the saddle of two tubes crossing squarely: y = √(R² − r² sin²φ) from the axis', () => {
    // Beside the rail, its axis (the normal of an upright fore-and-aft plane) straight across the car into the rail.
    const cope = goodCope(insert(pointMm(0, 60, 0)))
    expect(cope.circumferenceMm).toBeCloseTo(Math.PI * 24, 9)
    // Source: the saddle of two cylinders whose axes cross at right angles, any handbook of sheet-metal development.
    for (const { xMm, yMm } of cope.edge) {
      const turnDeg = (360 * xMm) / cope.circumferenceMm
      expect(yMm).toBeCloseTo(-(60 - Math.sqrt(400 - 144 * sinDeg(turnDeg) ** 2)), 9)
    }
    // Shortest along the rail, where it meets the crest: 60 − 20; longest beside it: 60 − 16 (12-16-20).
    expect(cope.shortestMm).toBeCloseTo(40, 9)
    expect(cope.longestMm).toBeCloseTo(44, 9)
    expect(cope).toMatchObject({ drawnMm: 30, alongWay: 'rear' })
  })

  it('has every place of its edge on both cylinders, and turns the right way round', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.double({ min: -9, max: 9, noNaN: true }),
        (planDeg, leanDeg, sideY, besideMm) => {
          const normal = {
            x: -sinDeg(planDeg) * cosDeg(leanDeg),
            y: cosDeg(planDeg) * cosDeg(leanDeg),
            z: sinDeg(leanDeg),
          }
          // The face 70 mm out along the axis, which passes beside the middle of the rail.
          const across = Math.hypot(normal.y, normal.z)
          const face = pointMm(
            70 * sideY * normal.x,
            70 * sideY * normal.y - (besideMm * normal.z) / across,
            70 * sideY * normal.z + (besideMm * normal.y) / across,
          )
          const cope = copeOf(insert(face, { planDeg, leanDeg, widthMm: 16 }))
          fc.pre(!('kind' in cope))
          const inward = { x: -sideY * normal.x, y: -sideY * normal.y, z: -sideY * normal.z }
          // Independently: the line that faces along the rail is the rail's direction less its share along the insert.
          const along = 1 - inward.x ** 2
          const g = {
            x: along / Math.sqrt(along),
            y: (-inward.x * inward.y) / Math.sqrt(along),
            z: (-inward.x * inward.z) / Math.sqrt(along),
          }
          // Seen from outside with the face up, going right is up × out: up = −inward, out = g.
          const right = {
            x: -inward.y * g.z + inward.z * g.y,
            y: -inward.z * g.x + inward.x * g.z,
            z: -inward.x * g.y + inward.y * g.x,
          }
          for (const { xMm, yMm } of cope.edge.filter((_, index) => index % 16 === 0)) {
            const turnDeg = (360 * (xMm - cope.alongMm)) / cope.circumferenceMm
            const [c, s] = [8 * cosDeg(turnDeg), 8 * sinDeg(turnDeg)]
            const y = face.yMm + c * g.y + s * right.y - yMm * inward.y
            const z = face.zMm + c * g.z + s * right.z - yMm * inward.z
            expect(Math.hypot(y, z)).toBeCloseTo(20, 6)
          }
        },
      ),
    )
  })

  it('is refused beside the tube, with the gap, and where part of it passes', () => {
    // Turned to run along the rail, 35 mm above its axis: 35 − 20 − 12 = 3 mm from surface to surface.
    const beside = copeOf(insert(pointMm(0, 0, 35), { planDeg: 90 }))
    expect(beside).toMatchObject({ kind: 'insert-beside' })
    expect('gapMm' in beside ? beside.gapMm : Number.NaN).toBeCloseTo(3, 9)
    expect(copeOf(insert(pointMm(0, 60, 10)))).toEqual({ kind: 'insert-passes' })
    expect(copeOf(insert(pointMm(0, 60, 7.9)))).not.toHaveProperty('kind')
    expect(copeOf(insert(pointMm(0, 10, 0)))).toMatchObject({ kind: 'inside-tube' })
  })
})
