import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm } from '../../../../src/domain/geometry/point'
import { isClear } from '../../../../src/domain/shop/tape/chosenPlaces'
import { eye, rowOf, tableOf, tube } from './support'

const held = pointMm(900, 300, 200)
const corner = [pointMm(1500, 0, 0), pointMm(0, 700, 0)] as const

describe('an anchor’s position', () => {
  it('cannot be told from the datum and one point', () => {
    expect(rowOf([pointMm(1500, 0, 0)], held).told).toEqual({
      kind: 'not-enough-points',
      because: 'fewer-than-three',
    })
  })

  it('cannot be told from points in one line', () => {
    const inLine = [pointMm(500, 0, 0), pointMm(1000, 0, 0), pointMm(1500, 0, 0)]
    expect(rowOf(inLine, held).told).toEqual({ kind: 'not-enough-points', because: 'in-line' })
  })

  it('cannot be told from points that it is nearly in one plane with', () => {
    // 5 mm above the floor that all points are on: the tapes pull along it.
    const { told, mmPerMm } = rowOf([...corner, pointMm(1500, 700, 0)], pointMm(900, 300, 5))
    expect(told).toEqual({ kind: 'not-enough-points', because: 'badly-placed' })
    expect(mmPerMm).toBeGreaterThan(50)
  })

  it('can be told but for its mirror from points in one plane, three or four', () => {
    for (const points of [corner, [...corner, pointMm(1500, 700, 0)]]) {
      const { told, distances } = rowOf(points, pointMm(900, 300, 600))
      if (told.kind !== 'mirror-only') throw new Error(told.kind)
      expect(pointDistanceMm(told.mirror, pointMm(900, 300, -600))).toBeLessThan(1e-6)
      expect(distances).toHaveLength(points.length + 1)
    }
  })

  it('can be told from four points that are in no plane', () => {
    const { told, distances } = rowOf([...corner, pointMm(900, 300, 1300)], held)
    expect(told).toEqual({ kind: 'determined' })
    expect(distances.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'D'])
    // 900-300-200 from the datum.
    expect(distances[0]?.lengthMm).toBeCloseTo(Math.hypot(900, 300, 200), 9)
  })

  it('is not told by points out of reach of a tape, or too near to read one', () => {
    const far = [...corner, pointMm(900, 300, 5_300), pointMm(900, 300, 240)]
    expect(rowOf(far, held).told.kind).not.toBe('determined')
    expect(rowOf(far, held).distances.every(({ lengthMm }) => lengthMm >= 50 && lengthMm <= 5_000)).toBe(true)
  })

  it('is not told by a distance that a tube is in the way of', () => {
    const roof = pointMm(900, 300, 1300)
    // Across the car halfway up to the roof point.
    const across = tube('dash', [pointMm(900, -200, 700), pointMm(900, 900, 700)])
    expect(isClear(held, roof, [across])).toBe(false)
    expect(rowOf([...corner, roof], held, [across]).told.kind).not.toBe('determined')
    // The tape touches it 20 mm from its centre line, and has room at 25.
    for (const [aside, expected] of [
      [18, false],
      [20, true],
      [25, true],
    ] as const) {
      const beside = tube('dash', [pointMm(900 + aside, -200, 700), pointMm(900 + aside, 900, 700)])
      expect(isClear(held, roof, [beside])).toBe(expected)
    }
  })
})

describe('distances between anchors', () => {
  const anchors = [
    eye('shoulder-left', pointMm(1600, 200, 600)),
    eye('shoulder-right', pointMm(1600, 500, 600)),
    eye('lap-left', pointMm(1300, 50, 100)),
    eye('lap-right', pointMm(1300, 650, 100)),
    eye('sub-centre', pointMm(1000, 350, 100)),
  ]

  it('go across each pair and from each family to the next on the other side', () => {
    const { pairs } = tableOf([], anchors)
    expect(pairs.map(({ kind, from, to }) => `${kind}: ${from.strap} – ${to.strap}`)).toEqual([
      'across: shoulder-left – shoulder-right',
      'across: lap-left – lap-right',
      'diagonal: shoulder-left – lap-right',
      'diagonal: shoulder-right – lap-left',
      'diagonal: lap-left – sub-centre',
      'diagonal: lap-right – sub-centre',
    ])
    expect(pairs[1]?.lengthMm).toBe(600)
    // 300 back, 450 across, 500 up.
    expect(pairs[2]?.lengthMm).toBeCloseTo(Math.hypot(300, 450, 500), 9)
  })

  it('of joined shoulder straps have one end there, in one row that names both', () => {
    const joined = [
      eye('shoulder-left', pointMm(1600, 350, 600)),
      eye('shoulder-right', pointMm(1600, 350, 600)),
      ...anchors.slice(2),
    ]
    const { rows, pairs } = tableOf([], joined)
    expect(rows.map(({ strap }) => strap)).toEqual(['shoulder-left', 'lap-left', 'lap-right', 'sub-centre'])
    expect(rows[0]?.sameAs).toEqual([
      { placeId: 'driver', anchorId: 'shoulder-right', strap: 'shoulder-right' },
    ])
    expect(pairs.some(({ from, to }) => from.strap === 'shoulder-left' && to.strap === 'lap-right')).toBe(
      true,
    )
    expect(pairs.some(({ to }) => to.strap === 'shoulder-right')).toBe(false)
  })

  it('that a tube is in the way of are left out', () => {
    const tunnel = tube('tunnel', [pointMm(0, 350, 100), pointMm(1800, 350, 100)])
    const { pairs } = tableOf([], anchors, [tunnel])
    expect(pairs.some(({ from }) => from.strap === 'lap-left')).toBe(false)
  })
})

describe('letters', () => {
  it('stand for places that are used only, in the order datum, builder’s points, marks; I and O are left out', () => {
    const points = Array.from({ length: 30 }, (_, index) =>
      pointMm(300 + 120 * index, 600 * ((index % 3) - 1), 400 * (index % 4)),
    )
    const targets = (
      [
        'shoulder-left',
        'shoulder-right',
        'lap-left',
        'lap-right',
        'sub-left',
        'sub-right',
        'sub-centre',
      ] as const
    ).map((strap, index) => eye(strap, pointMm(400 + 500 * index, 37 * index, 300)))
    const { places, rows, placePairs } = tableOf(points, targets)
    const letters = places.map(({ letter }) => letter)
    expect(letters.slice(0, 9)).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J'])
    expect(letters).not.toContain('I')
    expect(new Set(rows.flatMap(({ distances }) => distances.map(({ letter }) => letter)))).toEqual(
      new Set(letters),
    )
    for (const letter of letters.slice(1)) expect(placePairs.some(({ to }) => to === letter)).toBe(true)
  })
})
