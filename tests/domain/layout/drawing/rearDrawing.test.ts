import { describe, expect, it } from 'vitest'
import { projected } from '../../../../src/domain/geometry/plane'
import { pointMm } from '../../../../src/domain/geometry/point'
import { harnessBars, rearDrawing, type RearDrawing } from '../../../../src/domain/layout/drawing/rearDrawing'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const drawn = (layout: Layout): RearDrawing => {
  const drawing = rearDrawing(layout, evaluateLayout(layout))
  if (drawing === null) throw new Error('the car has a bar')
  return drawing
}

describe('projected to the rear', () => {
  it('has the occupant’s left at the left and up at the top, as somebody behind the car sees it', () => {
    // Looking toward −x with z up: the right hand points along (−x) × z = +y. Source: cross product, right-handed frame.
    expect(projected(pointMm(100, -200, 300), 'rear')).toEqual({ uMm: -200, vMm: 300 })
  })
})

describe('rearDrawing', () => {
  it('is not there for a car without a harness bar', () => {
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const drawing = rearDrawing(layout, evaluateLayout(layout))
      expect(drawing === null).toBe(layout.tubes.every(({ role }) => role !== 'harness-bar'))
    }
  })

  it('marks the anchors that are on a bar, each where it is, and no other', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    const bars = new Set(harnessBars(layout).map(({ id }) => id))
    const expected = layout.places.flatMap(({ anchors }) =>
      anchors
        .filter(({ mount }) => mount.tubeId !== null && bars.has(mount.tubeId))
        .map(({ mount }) => ({ uMm: mount.point.yMm, vMm: mount.point.zMm })),
    )
    const marks = drawn(layout).primitives.flatMap((primitive) =>
      primitive.kind === 'mark' ? [primitive.at] : [],
    )
    expect(expected).toHaveLength(4)
    expect(marks).toEqual(expected)
  })

  it('draws the bar as wide and thick as it is, with the datum in sight to either side', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const [bar] = harnessBars(layout)
    const drawing = drawn(layout)
    const outline = drawing.primitives.find(
      (primitive) => primitive.kind === 'polyline' && primitive.style === 'tube',
    )
    const us = outline?.kind === 'polyline' ? outline.points.map(({ uMm }) => uMm) : []
    const vs = outline?.kind === 'polyline' ? outline.points.map(({ vMm }) => vMm) : []
    const ys = (bar?.points ?? []).map(({ yMm }) => yMm)
    expect(Math.min(...us)).toBeCloseTo(Math.min(...ys), 6)
    expect(Math.max(...us)).toBeCloseTo(Math.max(...ys), 6)
    expect(Math.max(...vs) - Math.min(...vs)).toBeCloseTo(bar?.outsideDiameterMm ?? 0, 6)
    const moved = drawn({
      ...layout,
      tubes: layout.tubes.map((tube) => ({
        ...tube,
        points: tube.points.map((point) => ({ ...point, yMm: point.yMm + 500 })),
      })),
    })
    expect(moved.bounds.min.uMm).toBe(0)
  })

  it('shows the backrest slots of the shoulder straps, and the straps only as far as those', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const keys = drawn(layout).primitives.map(({ key }) => key)
    const slots = layout.places[0]?.seat.slots.filter(({ face }) => face === 'back') ?? []
    expect(slots.length).toBeGreaterThan(0)
    for (const { id } of slots) expect(keys.some((key) => key.includes(`/slot/${id}`))).toBe(true)
    const straps = drawn(layout).primitives.filter(({ key }) => key.includes('/strap/'))
    expect(straps.map(({ part }) => part)).toEqual(['driver/shoulder-left', 'driver/shoulder-right'])
  })
})
