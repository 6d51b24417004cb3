import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import type { PointMm } from '../../../../src/domain/geometry/point'
import {
  projectedRuns,
  tubeOutline,
  tubePrimitives,
} from '../../../../src/domain/layout/drawing/tubePrimitives'

const tube = (id: string, points: readonly PointMm[], outsideDiameterMm = 40): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

describe('tubeOutline', () => {
  it('is a rectangle of the outside diameter about a straight piece', () => {
    const outline = tubeOutline(
      [
        { uMm: 0, vMm: 0 },
        { uMm: 100, vMm: 0 },
      ],
      20,
    )
    expect(outline).toEqual([
      { uMm: 0, vMm: 20 },
      { uMm: 100, vMm: 20 },
      { uMm: 100, vMm: -20 },
      { uMm: 0, vMm: -20 },
    ])
  })

  it('meets in a mitre at a bend: at a right angle both coordinates are half a diameter away', () => {
    const outline = tubeOutline(
      [
        { uMm: 0, vMm: 0 },
        { uMm: 100, vMm: 0 },
        { uMm: 100, vMm: 100 },
      ],
      20,
    )
    expect(outline[1]?.uMm).toBeCloseTo(80, 9)
    expect(outline[1]?.vMm).toBeCloseTo(20, 9)
    expect(outline[4]?.uMm).toBeCloseTo(120, 9)
    expect(outline[4]?.vMm).toBeCloseTo(-20, 9)
  })

  it('stays blunt where the tube doubles back, instead of shooting out', () => {
    const outline = tubeOutline(
      [
        { uMm: 0, vMm: 0 },
        { uMm: 100, vMm: 0 },
        { uMm: 0, vMm: 5 },
      ],
      20,
    )
    expect(Math.max(...outline.map((corner) => corner.uMm))).toBeLessThan(100 + 20 + 1e-9)
  })
})

const HOOP = tube('hoop', [
  pointMm(500, -400, 0),
  pointMm(450, -400, 900),
  pointMm(450, 400, 900),
  pointMm(500, 400, 0),
])

describe('projectedRuns', () => {
  it('draws a hoop once in side elevation, with its cross piece end on', () => {
    const runs = projectedRuns(HOOP, 'side')
    expect(runs.lines).toEqual([
      [
        { uMm: 500, vMm: 0 },
        { uMm: 450, vMm: 900 },
      ],
    ])
    expect(runs.endOn).toEqual([{ uMm: 450, vMm: 900 }])
  })

  it('keeps the hoop in one piece in top elevation', () => {
    expect(projectedRuns(HOOP, 'top').lines).toEqual([
      [
        { uMm: 500, vMm: -400 },
        { uMm: 450, vMm: -400 },
        { uMm: 450, vMm: 400 },
        { uMm: 500, vMm: 400 },
      ],
    ])
  })
})

describe('tubePrimitives', () => {
  it('shows a bar across the car as a circle of its outside diameter in side elevation', () => {
    const bar = tube('bar', [pointMm(900, -500, 700), pointMm(900, 500, 700)], 38.1)
    expect(tubePrimitives([bar], 'side')).toMatchObject([
      { kind: 'circle', centre: { uMm: 900, vMm: 700 }, radiusMm: 19.05, style: 'tube' },
    ])
  })

  it('draws the right-hand rail behind the left-hand one only once, also when it runs the other way', () => {
    const left = tube('left', [pointMm(0, -300, 0), pointMm(800, -300, 50)])
    const right = tube('right', [pointMm(800, 300, 50), pointMm(0, 300, 0)])
    expect(tubePrimitives([left, right], 'side').map((primitive) => primitive.key)).toEqual([
      'tube/left/0/outline',
      'tube/left/0/centre',
    ])
    expect(tubePrimitives([left, right], 'top')).toHaveLength(4)
  })

  it('draws both of two tubes on one line whose diameters differ', () => {
    const thin = tube('thin', [pointMm(0, -300, 0), pointMm(800, -300, 0)], 25)
    const thick = tube('thick', [pointMm(0, 300, 0), pointMm(800, 300, 0)], 40)
    expect(tubePrimitives([thin, thick], 'side')).toHaveLength(4)
  })
})
