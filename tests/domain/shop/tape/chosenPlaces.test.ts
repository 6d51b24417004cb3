import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointBetween, pointDistanceMm, pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import { pointToSegmentMm } from '../../../../src/domain/geometry/segment'
import { measuredPoint } from '../../../../src/domain/measure/measuredPoint'
import { isClear } from '../../../../src/domain/shop/tape/chosenPlaces'
import { byTapes, exactTapes, found } from '../../measure/support'
import { anyPoint, dilutionMmPerMm, eye, rowOf, tableOf, tube } from './support'

describe('isClear', () => {
  it('says whether any point of the line comes within the tube, as looking at many of its points does', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, anyPoint, (from, to, start, end) => {
        fc.pre(pointDistanceMm(start, end) > 1)
        const radiusMm = 60
        const bar = { ...tube('bar', [start, end]), outsideDiameterMm: 2 * radiusMm }
        const steps = 2_000
        const nearest = Math.min(
          ...Array.from({ length: steps + 1 }, (_, step) =>
            pointToSegmentMm(pointBetween(from, to, step / steps), start, end),
          ),
        )
        // Between two looked-at points the line comes at most half a step nearer; a touch 1 mm deep is none.
        const halfStepMm = pointDistanceMm(from, to) / steps / 2
        const isSure = Math.abs(nearest - (radiusMm - 1)) > halfStepMm
        expect(!isSure || isClear(from, to, [bar]) === nearest > radiusMm - 1).toBe(true)
      }),
      { numRuns: 400 },
    )
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

  const target = pointMm(1000, 0, 500)
  const around = [pointMm(1000, 0, 1400), pointMm(300, 0, 500), pointMm(1000, -500, 300)]
  /** Its near end is marked at (1000, 500, 300): 500 across and 200 down from the anchor. */
  const rail = tube('rail', [pointMm(1000, 500, 280), pointMm(1500, 500, 280)])
  const namesOf = (points: readonly PointMm[]): readonly string[] =>
    tableOf(points, [eye('lap-left', target)], [rail]).places.map(({ source }) =>
      source.kind === 'named' ? source.tapePointId : source.kind,
    )

  it('are marks where no point of the builder is as good', () => {
    expect(namesOf(around)).toEqual(['p0', 'p1', 'p2', 'tube-end'])
  })

  it('are the builder’s points rather than marks in the same direction, though the tape is longer', () => {
    expect(namesOf([...around, pointMm(1000, 700, 235)])).toEqual(['p0', 'p1', 'p2', 'p3'])
  })

  it('are the nearer of two in the same direction', () => {
    const named = namesOf([...around, pointMm(1000, 700, 235), pointMm(1000, 0, 1900)])
    expect(named).toContain('p0')
    expect(named).not.toContain('p4')
  })

  it('are looked for in every direction, not only among the many that are nearest', () => {
    // Twenty marks side by side on the floor, and three far ones behind, to the left and above.
    const beams = Array.from({ length: 10 }, (_, index) =>
      tube(`beam${index}`, [pointMm(700, -270 + 60 * index, 0), pointMm(900, -270 + 60 * index, 0)]),
    )
    const far = [
      tube('rear', [pointMm(2600, 300, 600), pointMm(2900, 300, 600)]),
      tube('left', [pointMm(1100, -1800, 300), pointMm(1100, -2100, 300)]),
      tube('roof', [pointMm(1100, 100, 2300), pointMm(1400, 100, 2300)]),
    ]
    const { rows } = tableOf([], [eye('lap-left', target)], [...beams, ...far])
    expect(rows[0]?.told).toEqual({ kind: 'determined' })
    expect(rows[0]?.mmPerMm).toBeLessThan(2.2)
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

describe('worstMoveMmPerMm', () => {
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
