import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { Measurement, TapeReading } from '../../../src/domain/measure/measurement'
import { measuredPoint } from '../../../src/domain/measure/measuredPoint'
import { byTapes, found, refused, tapesFrom, type Triple } from './support'

const floor: readonly Triple[] = [
  [0, 0, 0],
  [1000, 0, 0],
  [0, 500, 0],
]

/** Tapes of these lengths from three points of a level floor: 1000 along, 500 across. */
const onFloor = (...lengthsMm: readonly number[]): readonly TapeReading[] =>
  tapesFrom(floor.map((point, index) => [point, lengthsMm[index] ?? 0]))

const floorTapes = (...lengthsMm: readonly number[]): Measurement => byTapes(onFloor(...lengthsMm), 'normal')

describe('two tapes that do not meet', () => {
  it('are told when they are too short together, and by how much', () => {
    expect(refused(floorTapes(400, 580, 600))).toMatchObject({
      kind: 'tapes-too-short',
      first: { index: 0, name: 'A' },
      second: { index: 1, name: 'B' },
      apartMm: 1000,
      shortMm: 20,
    })
  })

  it('are told when one is too long for the other, and by how much', () => {
    expect(refused(floorTapes(1625, 600, 1500))).toMatchObject({
      kind: 'tape-too-long',
      longer: { name: 'A' },
      shorter: { name: 'B' },
      apartMm: 1000,
      overMm: 25,
    })
  })

  it('meet when they only just reach, and not a millionth of a millimetre beyond', () => {
    // On the straight line between both points, 400 from the first: the third is 500·√… away by Pythagoras.
    const third = Math.hypot(400, 500)
    const { point, mirror } = found(floorTapes(400, 600, third))
    expect(point.xMm).toBeCloseTo(400, 6)
    expect(mirror).toBeNull()
    expect(refused(floorTapes(400, 600 - 1e-6, third)).kind).toBe('tapes-too-short')
  })

  it('meet when one only just reaches past the other, and not a millionth beyond', () => {
    const third = Math.hypot(1600, 500)
    expect(found(floorTapes(1600, 600, third)).point.xMm).toBeCloseTo(1600, 6)
    expect(refused(floorTapes(1600 + 1e-6, 600, third)).kind).toBe('tape-too-long')
  })

  it('may miss each other by what a tape is read to while there is another to fit them by', () => {
    // Between the first two points, 400 from one; the tapes there are read 1 mm short together.
    const tapes = tapesFrom([
      [[0, 0, 0], 399.5],
      [[1000, 0, 0], 599.5],
      [[0, 500, 0], Math.hypot(400, 500)],
      [[400, 0, 700], 700],
    ])
    const { point, residualMm } = found(byTapes(tapes, 'normal'))
    expect(point.xMm).toBeCloseTo(400, 1)
    expect(residualMm).toBeCloseTo(0.5, 1)
    const far = tapes.map((tape, index) => (index === 0 ? { ...tape, lengthsMm: [390] } : tape))
    expect(refused(byTapes(far)).kind).toBe('tapes-too-short')
  })
})

describe('a third tape', () => {
  it('touches where the other two meet on its side, and not a millionth less', () => {
    // 3-4-5: the first two meet in a ring of 300 about (400, 0, 0). Straight up its edge is 100·√… from a point above it.
    const tapes = (third: number): Measurement =>
      byTapes(
        tapesFrom([
          [[0, 0, 0], 500],
          [[800, 0, 0], 500],
          [[400, 700, 0], third],
        ]),
      )
    expect(found(tapes(400)).point.yMm).toBeCloseTo(300, 6)
    expect(found(tapes(400)).mirror).toBeNull()
    expect(refused(tapes(400 - 1e-6))).toMatchObject({
      kind: 'third-tape-misses',
      third: { name: 'C' },
      nearestMm: expect.closeTo(400, 7),
    })
    expect(found(tapes(1000)).point.yMm).toBeCloseTo(-300, 6)
    expect(refused(tapes(1000 + 1e-6))).toMatchObject({ third: { name: 'C' }, lengthMm: 1000 + 1e-6 })
  })
})

describe('a coordinate', () => {
  const ring = tapesFrom([
    [[0, 0, 0], 500],
    [[800, 0, 0], 500],
  ])
  it('is reached at the top of the ring of two tapes, and not a millionth above', () => {
    const top = found(byTapes(ring, null, { axis: 'z', readingsMm: [300] }))
    expect(top.point.zMm).toBeCloseTo(300, 9)
    expect(top.point.yMm).toBeCloseTo(0, 3)
    expect(top.mirror).toBeNull()
    expect(refused(byTapes(ring, null, { axis: 'z', readingsMm: [300 + 1e-6] }))).toMatchObject({
      kind: 'coordinate-out-of-reach',
      axis: 'z',
      nearestMm: expect.closeTo(300, 7),
    })
    expect(refused(byTapes(ring, null, { axis: 'z', readingsMm: [-310] }))).toMatchObject({
      coordinateMm: -310,
      nearestMm: expect.closeTo(-300, 7),
    })
  })

  it('is reached less far by a ring that leans', () => {
    // A 3-4-5 slope: 1000 from one point to the other, the ring of 300 halfway up at 400, leaning so that it rises 3/5 of its radius.
    const lengthMm = Math.hypot(500, 300)
    const leaning = tapesFrom([
      [[0, 0, 0], lengthMm],
      [[600, 0, 800], lengthMm],
    ])
    expect(found(byTapes(leaning, null, { axis: 'z', readingsMm: [580] })).point.zMm).toBeCloseTo(580, 6)
    expect(refused(byTapes(leaning, null, { axis: 'z', readingsMm: [590] }))).toMatchObject({
      kind: 'coordinate-out-of-reach',
      nearestMm: expect.closeTo(580, 6),
    })
  })

  it('along the line of the known points tells nothing new', () => {
    expect(refused(byTapes(ring, 'normal', { axis: 'x', readingsMm: [400] }))).toMatchObject({
      kind: 'points-along-axis',
      axis: 'x',
    })
  })
})

describe('known points', () => {
  it('that are one point given twice are named', () => {
    const tapes = tapesFrom([
      [[0, 0, 0], 700],
      [[1000, 0, 0], 700],
      [[0, 0.4, 0], 702],
    ])
    expect(refused(byTapes(tapes, 'normal'))).toMatchObject({
      kind: 'same-point-twice',
      first: { index: 0, name: 'A' },
      second: { index: 2, name: 'C' },
      apartMm: 0.4,
    })
  })

  it('in one line are told how far they are off it', () => {
    const tapes = tapesFrom([
      [[0, 0, 0], 700],
      [[500, 0.6, 0], 600],
      [[1000, 0, 0], 700],
    ])
    const problem = refused(byTapes(tapes, 'normal'))
    expect(problem.kind === 'points-in-line' && problem.offMm).toBeCloseTo(0.6, 9)
  })

  it('too few of them are counted', () => {
    expect(refused(byTapes([]))).toEqual({ kind: 'too-few-tapes', tapes: 0, hasCoordinate: false })
    const [one, two] = onFloor(700, 700)
    if (one === undefined || two === undefined) throw new Error('three tapes')
    expect(refused(byTapes([one], null, { axis: 'z', readingsMm: [1] }))).toMatchObject({ tapes: 1 })
    expect(refused(byTapes([one, two]))).toMatchObject({ tapes: 2, hasCoordinate: false })
  })

  it('more than eight of them are too many', () => {
    const many = Array.from({ length: 9 }, (_, index) => [[index * 100, index * index, 0], 800] as const)
    expect(refused(byTapes(tapesFrom(many)))).toMatchObject({ kind: 'too-many-tapes', tapes: 9, most: 8 })
  })

  it('further away than anything on a car are refused', () => {
    const far = tapesFrom([[[1e300, 0, 0], 700], ...floor.slice(1).map((p) => [p, 700] as const)])
    expect(refused(byTapes(far))).toMatchObject({ kind: 'known-point-unusable', name: 'A' })
    expect(refused(byTapes(tapesFrom([[[Number.NaN, 0, 0], 700]]))).kind).toBe('known-point-unusable')
  })
})

describe('readings', () => {
  it.each([
    { lengthsMm: [], kind: 'no-readings' },
    { lengthsMm: [700, Number.NaN], kind: 'not-finite' },
    { lengthsMm: [700, Number.POSITIVE_INFINITY], kind: 'not-finite' },
    { lengthsMm: [700, 0], kind: 'not-above-zero' },
    { lengthsMm: [-700], kind: 'not-above-zero' },
    { lengthsMm: [700, 100_001], kind: 'out-of-range' },
  ])('$lengthsMm of a tape are $kind', ({ lengthsMm, kind }) => {
    const [first, ...others] = onFloor(700, 900, 800)
    if (first === undefined) throw new Error('three tapes')
    const problem = refused(byTapes([{ ...first, lengthsMm }, ...others], 'normal'))
    expect(problem).toMatchObject({ kind, of: { kind: 'tape', index: 0, name: 'A' } })
    expect('index' in problem ? problem.index : lengthsMm.length - 1).toBe(lengthsMm.length - 1)
  })

  it('of a coordinate that is missing are named by its axis', () => {
    expect(refused({ kind: 'coordinates', xMm: [1], yMm: [], zMm: [2] })).toEqual({
      kind: 'no-readings',
      of: { kind: 'coordinate', axis: 'y' },
    })
  })
})

describe('measuredPoint', () => {
  it('never gives a number that is none, whatever was typed', () => {
    const any = fc.oneof(fc.double(), fc.double({ min: -2000, max: 2000 }), fc.constantFrom(0, 1, 500))
    const point = fc.record({ xMm: any, yMm: any, zMm: any })
    const readings = fc.array(any, { maxLength: 3 })
    const known = fc.record({ name: fc.string(), point })
    const side = fc.constantFrom(null, 'normal' as const, 'opposite' as const)
    const coordinate = fc.record({
      axis: fc.constantFrom('x' as const, 'y' as const, 'z' as const),
      readingsMm: readings,
    })
    const tape = fc.record({ from: known, lengthsMm: readings })
    const measurement: fc.Arbitrary<Measurement> = fc.oneof(
      fc.record({ kind: fc.constant('coordinates' as const), xMm: readings, yMm: readings, zMm: readings }),
      fc.record({
        kind: fc.constant('tapes' as const),
        tapes: fc.array(tape, { maxLength: 5 }),
        coordinate: fc.option(coordinate),
        side,
      }),
      fc.record({
        kind: fc.constant('angle' as const),
        from: known,
        stringDeg: readings,
        lengthMm: readings,
        runs: fc.constantFrom('forward' as const, 'rearward' as const),
        aside: fc.oneof(
          fc.record({ kind: fc.constant('y' as const), readingsMm: readings }),
          fc.record({ kind: fc.constant('plan' as const), readingsDeg: readings }),
        ),
      }),
    )
    fc.assert(
      fc.property(measurement, (measured) => {
        const result = measuredPoint(measured)
        if (!result.ok) return
        const { point: at, residualMm, mirror, sensitivity, scatters } = result.value
        const numbers = [
          ...Object.values(at),
          ...Object.values(mirror ?? {}),
          residualMm ?? 0,
          sensitivity.mmPerMm,
          sensitivity.mmPerDeg ?? 0,
          ...scatters.flatMap(({ mean, spread }) => [mean, spread]),
        ]
        expect(numbers.every((value) => Number.isFinite(value))).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })
})
