import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanePointMm } from '../../../../../src/domain/geometry/plane'
import { explanationOf } from '../../../../../src/domain/layout/drawing/explain/explain'
import type { Explanation, ExplainFigure } from '../../../../../src/domain/layout/drawing/explain/explanation'
import type { Primitive } from '../../../../../src/domain/layout/drawing/primitive'
import { solvedSittings, sittingEvaluation } from '../../../../../src/domain/layout/evaluate/solvedSittings'
import {
  QUANTITY_IDS,
  type QuantityId,
  quantityUnit,
  type QuantityValue,
} from '../../../../../src/domain/straps/quantity'
import { layoutArb } from '../../../../support/arbitraries'
import { exampleLayout } from '../../../../support/exampleLayouts'
import { disturbedArb, EXAMPLES, type Explained, explainedOf, OUTFITTED } from './explainedLayouts'

const last = ({ figures }: Explanation): ExplainFigure => {
  const figure = figures.at(-1)
  if (figure === undefined) throw new Error('no figure')
  return figure
}

const lineOf = (figure: ExplainFigure, key: string): readonly [PlanePointMm, PlanePointMm] | null => {
  const found = figure.primitives.find((primitive) => primitive.key === `explain/${key}`)
  if (found?.kind !== 'polyline') return null
  const [from, to] = found.points
  return from === undefined || to === undefined ? null : [from, to]
}

const valueOf = (figure: ExplainFigure): Extract<Primitive, { kind: 'angle' | 'dimension' }> | null => {
  const found = figure.primitives.find(({ key }) => key === 'explain/value')
  return found?.kind === 'angle' || found?.kind === 'dimension' ? found : null
}

/*
 * Plane trigonometry on the two drawn lines alone: the turn from the first to the second by cross and dot product.
 * Source: definition of both products; anticlockwise is plus.
 */
const drawnTurnDeg = (figure: ExplainFigure): number | null => {
  const zero = lineOf(figure, 'zero')
  const measured = lineOf(figure, 'measured')
  if (zero === null || measured === null) return null
  expect(measured[0]).toEqual(zero[0])
  const [ax, ay] = [zero[1].uMm - zero[0].uMm, zero[1].vMm - zero[0].vMm]
  const [bx, by] = [measured[1].uMm - measured[0].uMm, measured[1].vMm - measured[0].vMm]
  return (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI
}

/**
 * Which way a positive value turns on the drawing, from the definitions: front at the left and z up, "falls to the rear" is clockwise
 * from rearward, "above horizontal, forward" is clockwise from forward, "rearward of straight down" is anticlockwise.
 */
const CLOCKWISE: readonly QuantityId[] = [
  'shoulder-drop',
  'shoulder-to-spine',
  'shoulder-rim-drop',
  'lap-angle',
  'lap-run-angle',
  'lap-shifted-angle',
]
const ANTICLOCKWISE: readonly QuantityId[] = ['sub-to-vertical', 'sub-to-chest']
const INWARD: readonly QuantityId[] = ['shoulder-plan', 'shoulder-reference-plan']

const signOf = ({ id, subject }: QuantityValue, turnDeg: number): 1 | -1 => {
  if (CLOCKWISE.includes(id)) return -1
  if (ANTICLOCKWISE.includes(id)) return 1
  if (INWARD.includes(id)) return subject === 'shoulder-right' ? -1 : 1
  // Those without a sign.
  return turnDeg < 0 ? -1 : 1
}

/** The same direction: a full turn more or less does not count. */
const differenceDeg = (a: number, b: number): number => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180)

const lengthMm = (from: PlanePointMm, to: PlanePointMm): number =>
  Math.hypot(to.uMm - from.uMm, to.vMm - from.vMm)

const directionDeg = (ends: readonly [PlanePointMm, PlanePointMm] | null): number =>
  ends === null ? NaN : (Math.atan2(ends[1].vMm - ends[0].vMm, ends[1].uMm - ends[0].uMm) * 180) / Math.PI

const checkAngle = ({ quantity, explanation }: Explained): void => {
  const figure = last(explanation)
  const turnDeg = drawnTurnDeg(figure)
  if (turnDeg === null) {
    // Nothing to turn: said in words.
    expect(quantity.id).toBe('slot-bend')
    expect(quantity.value).toBe(0)
    expect(figure.primitives.some(({ key }) => key === 'explain/note')).toBe(true)
    return
  }
  expect(differenceDeg(signOf(quantity, turnDeg) * turnDeg, quantity.value)).toBeLessThan(1e-6)
  const arc = valueOf(figure)
  if (arc?.kind !== 'angle') throw new Error(`${quantity.id} has no arc`)
  // The arc spans the same angle, from one of the two lines to the other, about the point where they meet.
  expect(differenceDeg(arc.toDeg - arc.fromDeg, Math.abs(quantity.value))).toBeLessThan(1e-6)
  const directions = ['zero', 'measured'].map((key) => directionDeg(lineOf(figure, key)))
  const ends = turnDeg >= 0 ? directions : directions.toReversed()
  expect(differenceDeg(arc.fromDeg, ends[0] ?? NaN)).toBeLessThan(1e-6)
  expect(differenceDeg(arc.toDeg, ends[1] ?? NaN)).toBeLessThan(1e-6)
  expect(arc.apex).toEqual(lineOf(figure, 'zero')?.[0])
}

/** Sum of the pieces that a length is added up from, each starting under the end of the one before; null without pieces. */
const piecesMm = (figure: ExplainFigure): number | null => {
  const pieces = figure.primitives.flatMap((primitive) =>
    primitive.kind === 'polyline' && primitive.key.startsWith('explain/piece/') ? [primitive.points] : [],
  )
  if (pieces.length === 0) return null
  let endMm = 0
  for (const [from, to] of pieces) {
    if (from === undefined || to === undefined) throw new Error('a piece has two ends')
    expect(from.uMm).toBeCloseTo(endMm, 9)
    endMm = to.uMm
  }
  return endMm
}

const checkLength = ({ quantity, explanation }: Explained): void => {
  const figure = last(explanation)
  const dimension = valueOf(figure)
  if (dimension?.kind !== 'dimension') throw new Error(`${quantity.id} has no dimension`)
  const drawnMm = lengthMm(dimension.from, dimension.to)
  if (quantityUnit(quantity.id) === 'ratio') {
    const scale = lineOf(figure, 'scale')
    if (scale === null) throw new Error(`${quantity.id} has no scale`)
    expect(Math.abs(drawnMm / lengthMm(...scale) - Math.abs(quantity.value))).toBeLessThan(1e-9)
    return
  }
  // Lengths of a few metres, in which a double keeps about 1e-12 of each.
  expect(Math.abs(drawnMm - Math.abs(quantity.value))).toBeLessThan(1e-6)
  const pieces = piecesMm(figure)
  if (pieces !== null) expect(Math.abs(pieces - quantity.value)).toBeLessThan(1e-6)
}

const check = (explained: Explained): void => {
  if (quantityUnit(explained.quantity.id) === 'deg') checkAngle(explained)
  else checkLength(explained)
}

const hasOnlyFiniteNumbers = (given: unknown): boolean => {
  if (typeof given === 'number') return Number.isFinite(given)
  if (typeof given !== 'object' || given === null) return true
  return Object.values(given).every(hasOnlyFiniteNumbers)
}

/** A layout has some hundred drawings, so fewer layouts than usual are as many cases. */
const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 5)

describe('explanationOf', () => {
  const all = [
    ...EXAMPLES.flatMap((layout) => explainedOf(layout)),
    ...OUTFITTED.flatMap((layout) => explainedOf(layout, 2)),
  ]

  it.each(QUANTITY_IDS)(
    'draws %s of the examples, as they are and with other outfits, at its value',
    (id: QuantityId) => {
      const explained = all.filter(({ quantity }) => quantity.id === id)
      expect(explained.length).toBeGreaterThan(0)
      for (const each of explained) check(each)
    },
  )

  it('draws every number of any layout at its value, and nothing that is not finite', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        for (const explained of explainedOf(layout, 1)) {
          check(explained)
          expect(hasOnlyFiniteNumbers(explained.explanation)).toBe(true)
        }
      }),
      { numRuns },
    )
  }, 30_000)

  it('draws every number of a car with its anchors and seat moved about at its value', () => {
    const seen = new Set<string>()
    fc.assert(
      fc.property(disturbedArb, (layout) => {
        for (const explained of explainedOf(layout, 1)) {
          seen.add(explained.quantity.id)
          check(explained)
          expect(hasOnlyFiniteNumbers(explained.explanation)).toBe(true)
        }
      }),
      { numRuns },
    )
    expect(QUANTITY_IDS.filter((id) => !seen.has(id))).toEqual([])
  }, 30_000)

  /*
   * 76/115/EEC, Annex I 4.4.4.3: B lies 260 mm + S up the torso line, the plane FK passes B at 120° to that line, S is the lateral
   * distance of the anchorage from the middle of the seat. The distance is taken square to the plane and ends at the contact.
   */
  it('draws the plane FK through B at 120° to the torso line, and measures square to it', () => {
    const explained = all.filter(({ quantity }) => quantity.id === 'shoulder-behind-fk')
    expect(explained.length).toBeGreaterThan(0)
    for (const { explanation } of explained) {
      const figure = last(explanation)
      const fk = lineOf(figure, 'fk')
      const torso = lineOf(figure, 'torso')
      const dimension = valueOf(figure)
      const end = explanation.points.find(({ letter }) => letter === 'E')?.point
      const hip = explanation.points.find(({ letter }) => letter === 'H')?.point
      if (fk === null || torso === null || dimension?.kind !== 'dimension' || !end || !hip)
        throw new Error('FK')
      expect(lengthMm(...torso)).toBeCloseTo(260 + Math.abs(end.yMm - hip.yMm), 6)
      // As a line, 120° and −60° are one.
      expect(differenceDeg(2 * (directionDeg(torso) - directionDeg(fk)), 2 * 120)).toBeLessThan(1e-6)
      const along = { u: fk[1].uMm - fk[0].uMm, v: fk[1].vMm - fk[0].vMm }
      for (const point of [torso[1], dimension.from]) {
        const cross = along.u * (point.vMm - fk[0].vMm) - along.v * (point.uMm - fk[0].uMm)
        expect(cross / lengthMm(...fk)).toBeCloseTo(0, 6)
      }
      expect(dimension.to).toEqual({ uMm: end.xMm, vMm: end.zMm })
    }
  })

  it('shows a figure that is 4 wide and 3 high and holds its measured ends', () => {
    for (const { explanation } of all) {
      for (const { bounds, primitives } of explanation.figures) {
        const widthMm = bounds.max.uMm - bounds.min.uMm
        expect(widthMm / (bounds.max.vMm - bounds.min.vMm)).toBeCloseTo(4 / 3, 6)
        for (const primitive of primitives) {
          if (primitive.kind !== 'mark') continue
          expect(primitive.at.uMm).toBeGreaterThanOrEqual(bounds.min.uMm)
          expect(primitive.at.uMm).toBeLessThanOrEqual(bounds.max.uMm)
          expect(primitive.at.vMm).toBeGreaterThanOrEqual(bounds.min.vMm)
          expect(primitive.at.vMm).toBeLessThanOrEqual(bounds.max.vMm)
        }
      }
    }
  })

  it('gives the same drawing for the same sitting, and another for another sitting', () => {
    const layout = OUTFITTED.find(({ places }) => places.length > 1)
    if (layout === undefined) throw new Error('no example with two seats')
    const [first, again] = [explainedOf(layout), explainedOf(layout)]
    expect(first.map(({ explanation }) => explanation)).toEqual(again.map(({ explanation }) => explanation))
    const place = layout.places[0]?.id
    const angles = first.filter(
      ({ quantity, sitting }) =>
        quantity.id === 'lap-angle' && quantity.subject === 'lap-left' && sitting.sitting.placeId === place,
    )
    expect(angles.length).toBeGreaterThan(1)
    expect(new Set(angles.map(({ explanation }) => JSON.stringify(explanation))).size).toBe(angles.length)
  })

  it('has nothing to draw for a strap without a path', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    const place = layout.places[0]
    const solved =
      place &&
      solvedSittings({ ...layout, places: [{ ...place, anchors: [] }] }, { ...place, anchors: [] })[0]
    if (place === undefined || solved === undefined) throw new Error('no sitting')
    expect(
      explanationOf({
        place,
        sitting: sittingEvaluation(solved),
        tubes: layout.tubes,
        lengthUnit: 'mm',
        id: 'lap-angle',
        subject: 'lap-left',
        value: 45,
      }),
    ).toBeNull()
  })
})
