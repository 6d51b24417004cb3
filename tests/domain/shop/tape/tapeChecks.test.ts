import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { isClear } from '../../../../src/domain/shop/tape/chosenPlaces'
import { dilutionMmPerMm } from '../../../../src/domain/shop/tape/dilution'
import {
  type AnchorChecks,
  type TapeCheckTable,
  tapeChecks,
} from '../../../../src/domain/shop/tape/tapeChecks'
import { measuredPoint } from '../../../../src/domain/measure/measuredPoint'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import type { StrapId } from '../../../../src/domain/straps/strap'
import { byTapes, exactTapes, found } from '../../measure/support'

const eye = (strap: StrapId, point: PointMm): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'eye',
    point,
    planDeg: 0,
    riseDeg: 0,
    threadDiameterMm: 11,
    eyeDiameterMm: 25,
    tubeId: null,
  },
})

const tube = (id: string, points: readonly PointMm[]): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm: 40,
  wallMm: 2,
})

const tableOf = (
  tapePoints: readonly PointMm[],
  anchors: readonly Anchor[],
  tubes: readonly Tube[] = [],
): TapeCheckTable =>
  tapeChecks({
    tapePoints: tapePoints.map((point, index) => ({ id: `p${index}`, name: `p${index}`, point })),
    tubes,
    places: [{ id: 'driver', anchors }],
  })

const rowOf = (tapePoints: readonly PointMm[], held: PointMm, tubes: readonly Tube[] = []): AnchorChecks => {
  const [row] = tableOf(tapePoints, [eye('lap-left', held)], tubes).rows
  if (row === undefined) throw new Error('one anchor, one row')
  return row
}

/** A whole-millimetre point where a car is, every one as likely as any other. */
const anyPoint = fc
  .tuple(
    fc.noBias(fc.integer({ min: 0, max: 2_400 })),
    fc.noBias(fc.integer({ min: -800, max: 800 })),
    fc.noBias(fc.integer({ min: -100, max: 1_400 })),
  )
  .map(([x, y, z]) => pointMm(x, y, z))

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

describe('the places of an anchor', () => {
  it('are those that give the smallest error: no other four of them do better by more than a mark or some tape is worth', () => {
    fc.assert(
      fc.property(fc.array(anyPoint, { minLength: 4, maxLength: 7 }), anyPoint, (points, target) => {
        const row = rowOf(points, target)
        fc.pre(row.told.kind === 'determined' && row.mmPerMm !== null)
        const { places } = tableOf(points, [eye('lap-left', target)])
        const from = row.distances.map(({ letter }) => places.find((place) => place.letter === letter)?.point)
        const chosen = from.flatMap((point) => (point === undefined ? [] : [point]))
        // By working the measurement again with every tape off, as measuring in does.
        const { point, mirror, sensitivity } = found(byTapes(exactTapes(chosen, target)))
        expect(pointDistanceMm(point, target)).toBeLessThan(1e-5)
        expect(mirror).toBeNull()
        expect(sensitivity.mmPerMm / (row.mmPerMm ?? 1)).toBeGreaterThan(0.97)
        expect(sensitivity.mmPerMm / (row.mmPerMm ?? 1)).toBeLessThan(1.03)
        const all = [pointMm(0, 0, 0), ...points].filter((each) => {
          const lengthMm = pointDistanceMm(each, target)
          return lengthMm >= 50 && lengthMm <= 5_000
        })
        const least = Math.min(...fours(all).map((four) => fourTells(four, target)))
        // A metre of tape is worth 0.05: four tapes of up to 5 m.
        expect(row.mmPerMm).toBeLessThanOrEqual(least + 0.05 * 4 * 5)
      }),
      { numRuns: 60 },
    )
  })

  const fours = (points: readonly PointMm[]): readonly (readonly PointMm[])[] =>
    points.flatMap((a, i) =>
      points
        .slice(i + 1)
        .flatMap((b, j) =>
          points
            .slice(i + j + 2)
            .flatMap((c, k) => points.slice(i + j + k + 3).map((d) => [a, b, c, d] as const)),
        ),
    )

  /** Worst move for 1 mm in each tape where the four tell one place with something to spare; Infinity where they do not. */
  const fourTells = (four: readonly PointMm[], target: PointMm): number => {
    const measured = byTapes(exactTapes(four, target))
    const mmPerMm = dilutionMmPerMm(target, four)
    if (!(mmPerMm < 4)) return Number.POSITIVE_INFINITY
    try {
      return found(measured).mirror === null && heightsMm(four).every((mm) => mm > 300) ? mmPerMm : Infinity
    } catch {
      return Number.POSITIVE_INFINITY
    }
  }

  /** How far each of four points is off the plane of the others, by determinants. */
  const heightsMm = (four: readonly PointMm[]): readonly number[] =>
    four.map((p, index) => {
      const [a, b, c] = four.filter((_, other) => other !== index) as [PointMm, PointMm, PointMm]
      const u = [b.xMm - a.xMm, b.yMm - a.yMm, b.zMm - a.zMm] as const
      const v = [c.xMm - a.xMm, c.yMm - a.yMm, c.zMm - a.zMm] as const
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const
      const size = Math.hypot(...n)
      const volume = (p.xMm - a.xMm) * n[0] + (p.yMm - a.yMm) * n[1] + (p.zMm - a.zMm) * n[2]
      return size === 0 ? 0 : Math.abs(volume) / size
    })

  it('prefer the builder’s points to marks, and short tapes to long ones, when equally good', () => {
    // A mirror image of the car about the anchor's own upright plane: the left has named points where the right has marks.
    const target = pointMm(1000, 0, 500)
    const right = tube('right', [pointMm(600, 400, 180), pointMm(600, 800, 180)])
    const points = [
      pointMm(600, -400, 200),
      pointMm(1400, -400, 200),
      pointMm(1400, 400, 200),
      pointMm(1000, 0, 1400),
      pointMm(1000, 0, 1900),
    ]
    const { places, rows } = tableOf(points, [eye('lap-left', target)], [right])
    const named = places.flatMap(({ source }) => (source.kind === 'named' ? [source.tapePointId] : []))
    expect(rows[0]?.told.kind).toBe('determined')
    expect(places.every(({ source }) => source.kind !== 'tube-end')).toBe(true)
    // Straight above the same way: the nearer of the two.
    expect(named).not.toContain('p4')
  })
})

describe('what the table calls determined', () => {
  it('is found again from distances rounded to 0.1 mm without being told a side, within the error it says', () => {
    fc.assert(
      fc.property(fc.array(anyPoint, { minLength: 3, maxLength: 8 }), anyPoint, (points, target) => {
        const { places, rows } = tableOf(points, [eye('lap-left', target)])
        const row = rows[0]
        fc.pre(row !== undefined && row.told.kind !== 'not-enough-points')
        if (row === undefined) return
        const tapes = row.distances.map(({ letter, lengthMm }) => ({
          from: {
            name: letter,
            point: places.find((place) => place.letter === letter)?.point ?? pointMm(0, 0, 0),
          },
          lengthsMm: [Math.round(lengthMm * 10) / 10],
        }))
        // Half a tenth in every tape, times at most 4.
        const withinMm = 0.05 * 4 * 1.05
        // With its mirror open measuring in may tell more, since it needs half as much to tell the places apart; never wrongly.
        const plain = measuredPoint(byTapes(tapes))
        const isFound = plain.ok && pointDistanceMm(plain.value.point, target) < withinMm
        const isOpen = !plain.ok && plain.error.kind === 'side-not-chosen'
        expect(isFound || (isOpen && row.told.kind === 'mirror-only')).toBe(true)
        expect(plain.ok ? plain.value.mirror : null).toBeNull()
        const both = (['normal', 'opposite'] as const).map((side) => found(byTapes(tapes, side)).point)
        expect(Math.min(...both.map((point) => pointDistanceMm(point, target)))).toBeLessThan(withinMm)
      }),
    )
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

describe('dilutionMmPerMm', () => {
  it('is √3 for three tapes square to each other and has no bound for tapes in one plane', () => {
    const square = [pointMm(700, 0, 0), pointMm(0, 900, 0), pointMm(0, 0, 300)]
    expect(dilutionMmPerMm(pointMm(0, 0, 0), square)).toBeCloseTo(Math.sqrt(3), 9)
    expect(dilutionMmPerMm(pointMm(0, 0, 0), [pointMm(1, 1, 0), pointMm(0, 1, 0), pointMm(1, 0, 0)])).toBe(
      Number.POSITIVE_INFINITY,
    )
  })

  it('halves a tape’s part where two are pulled the same way', () => {
    // Along x two tapes whose errors may both be +1: the mean is off by 1 all the same; apart they cancel.
    const twice = [pointMm(700, 0, 0), pointMm(1400, 0, 0), pointMm(0, 900, 0), pointMm(0, 0, 300)]
    expect(dilutionMmPerMm(pointMm(0, 0, 0), twice)).toBeCloseTo(Math.sqrt(3), 9)
  })
})
