import fc from 'fast-check'
import { expect } from 'vitest'
import type { FlatFigure, FlatLayer, FlatPoint, FlatShape } from '../../src/domain/shop/flat/flatFigure'
import { type ReadShape } from './dxfReader'

const length = fc.double({ min: -5_000, max: 5_000, noNaN: true }).map((value) => (value === 0 ? 0 : value))
const size = fc.double({ min: 0.01, max: 2_000, noNaN: true })
const layer = fc.constantFrom<FlatLayer>('CUT', 'DRILL', 'MARK', 'CHECK', 'TEXT', 'OUTLINE')
const point: fc.Arbitrary<FlatPoint> = fc.record({ xMm: length, yMm: length })

/** Names as people and files have them: accents, other scripts, line breaks, control characters, codes of the format, very long ones. */
export const anyWords = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({ minLength: 260, maxLength: 400 }),
  fc.constantFrom('  0\r\nLINE\r\n', '%%u100%%', '\\U+0041', '^J^', 'Ø 5 ± 3°', 'Größe ½″', '日本 🙂', ''),
)

/** Any figure that may be made, whether or not it makes sense to cut it. */
export const anyFigure: fc.Arbitrary<FlatFigure> = fc.record({
  id: fc.constant('figure-1'),
  title: anyWords,
  shapes: fc.array(
    fc.oneof<fc.Arbitrary<FlatShape>[]>(
      fc.record({
        kind: fc.constant('polyline' as const),
        layer,
        points: fc.array(point, { minLength: 2, maxLength: 6 }),
        closed: fc.boolean(),
      }),
      fc.record({ kind: fc.constant('circle' as const), layer, centre: point, radiusMm: size }),
      fc.record({
        kind: fc.constant('arc' as const),
        layer,
        centre: point,
        radiusMm: size,
        fromDeg: fc.integer({ min: -360, max: 360 }),
        toDeg: fc.integer({ min: -360, max: 360 }),
      }),
      fc.record({
        kind: fc.constant('text' as const),
        layer,
        at: point,
        text: anyWords,
        heightMm: size,
        align: fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
        turnDeg: fc.integer({ min: -180, max: 180 }),
      }),
    ),
    { maxLength: 12 },
  ),
})

const ALIGNS = { left: 0, centre: 1, right: 2 } as const

/** How far a coordinate may be off when it is read back, in the file's own unit. */
const READ_TOLERANCE = 1e-6

const expectNear = (found: number, wanted: number, what: string): void => {
  expect(Math.abs(found - wanted), `${what}: ${found} for ${wanted}`).toBeLessThanOrEqual(READ_TOLERANCE)
}

/** The shape that a reader found is the one that was drawn: `perUnit` mm are one unit of the file. */
export const expectSameShape = (found: ReadShape | undefined, drawn: FlatShape, perUnit: number): void => {
  if (found === undefined) throw new Error(`no ${drawn.kind} was found`)
  expect(found.layer).toBe(drawn.layer)
  const near = (at: readonly [number, number], wanted: FlatPoint): void => {
    expectNear(at[0], wanted.xMm / perUnit, `${drawn.kind} x`)
    expectNear(at[1], wanted.yMm / perUnit, `${drawn.kind} y`)
  }
  if (drawn.kind === 'polyline' && found.kind === 'polyline') {
    expect(found.points).toHaveLength(drawn.points.length)
    expect(found.closed).toBe(drawn.closed && drawn.points.length > 2)
    drawn.points.forEach((each, index) => near(found.points[index] ?? [NaN, NaN], each))
  } else if (drawn.kind === 'circle' && found.kind === 'circle') {
    near(found.centre, drawn.centre)
    expectNear(found.radius, drawn.radiusMm / perUnit, 'radius')
  } else if (drawn.kind === 'arc' && (found.kind === 'arc' || found.kind === 'circle')) {
    near(found.centre, drawn.centre)
    expectNear(found.radius, drawn.radiusMm / perUnit, 'radius')
    const isWhole = Math.abs(drawn.toDeg - drawn.fromDeg) >= 360
    expect(found.kind).toBe(isWhole ? 'circle' : 'arc')
    if (found.kind === 'arc') {
      // The same direction, however many turns it is told with.
      for (const [is, wanted] of [
        [found.fromDeg, drawn.fromDeg],
        [found.toDeg, drawn.toDeg],
      ] as const)
        expectNear(Math.abs(Math.sin(((is - wanted) * Math.PI) / 360)), 0, 'arc angle')
    }
  } else if (drawn.kind === 'text' && found.kind === 'text') {
    near(found.at, drawn.at)
    expect(found.align).toBe(ALIGNS[drawn.align])
    expectNear(Math.abs(Math.sin(((found.turnDeg - drawn.turnDeg) * Math.PI) / 360)), 0, 'turn')
  } else throw new Error(`a ${drawn.kind} came back as a ${found.kind}`)
}
