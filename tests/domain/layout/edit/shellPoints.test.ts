import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import type { HandleRef } from '../../../../src/domain/layout/edit/handle'
import { handleById, handleId, handlesOf, shellHandlesOf } from '../../../../src/domain/layout/edit/handles'
import { movedHandle } from '../../../../src/domain/layout/edit/move'
import {
  addShellPoint,
  removeShellPoint,
  shellPoints,
  withShellPoint,
} from '../../../../src/domain/layout/edit/shellPoints'
import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { layoutArb, pointInCar } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')

const only = (layout: Layout): Place => {
  const place = layout.places[0]
  if (place === undefined) throw new Error('no place')
  return place
}

/** The first place with a known seat: hip point (1000, 300, 200), torso line 30° back, a triangle and a square. */
const bench: Layout = {
  ...rock,
  places: [
    {
      ...only(rock),
      seat: {
        ...only(rock).seat,
        hipPoint: { xMm: 1000, yMm: 300, zMm: 200 },
        reclineDeg: 30,
        reclineRange: { uprightDeg: 30, reclinedDeg: 30 },
        sideOutline: [
          { xMm: -400, zMm: -100 },
          { xMm: 150, zMm: 0 },
          { xMm: 150, zMm: 400 },
        ],
        topOutline: [
          { xMm: -400, yMm: -200 },
          { xMm: 200, yMm: -250 },
          { xMm: 200, yMm: 250 },
          { xMm: -400, yMm: 210 },
        ],
      },
    },
  ],
}
const placeId = only(bench).id

const ref = (elevation: 'side' | 'top', index: number): HandleRef => ({
  kind: 'shell-point',
  placeId,
  elevation,
  index,
})

const pointOf = (layout: Layout, handle: HandleRef): PointMm => {
  const found = handleById(layout, handleId(handle))
  if (found === null) throw new Error(`no handle ${handleId(handle)}`)
  return found.point
}

describe('shellHandlesOf', () => {
  it('puts side points where the recline turns them and top points beside the hip point', () => {
    const side = pointOf(bench, ref('side', 2))
    // (150, 400) turned back by 30°: x 150 cos 30° + 400 sin 30°, z −150 sin 30° + 400 cos 30°, from the hip point.
    expect(side.xMm).toBeCloseTo(1000 + 150 * (Math.sqrt(3) / 2) + 200, 9)
    expect(side.zMm).toBeCloseTo(200 - 75 + 200 * Math.sqrt(3), 9)
    expect(pointOf(bench, ref('top', 1))).toEqual({ xMm: 1200, yMm: 50, zMm: 200 })
  })

  it('is where the drawing has its corners', () => {
    const evaluation = evaluateLayout(bench)
    for (const elevation of ['side', 'top'] as const) {
      const { primitives } = elevationDrawing(bench, evaluation, elevation, {
        placeId,
        sittingId: null,
        ghosts: false,
        zones: 'none',
        focusedFindingId: null,
        dimensions: 'none',
        lengthUnit: 'mm',
        angles: false,
        handles: false,
        labels: false,
      })
      const shell = primitives.find((primitive) => primitive.key === `${placeId}/seat/outline`)
      const corners = shell?.kind === 'polyline' ? shell.points : []
      const handles = shellHandlesOf(only(bench)).filter(
        (handle) => handle.ref.kind === 'shell-point' && handle.ref.elevation === elevation,
      )
      expect(handles).toHaveLength(corners.length)
      handles.forEach(({ point }, index) => {
        expect(point.xMm).toBeCloseTo(corners[index]?.uMm ?? NaN, 9)
        expect(elevation === 'side' ? point.zMm : point.yMm).toBeCloseTo(corners[index]?.vMm ?? NaN, 9)
      })
    }
  })

  it('stays out of the list of parts, and has ids of its own that lead back to it', () => {
    expect(handlesOf(bench).some((handle) => handle.ref.kind === 'shell-point')).toBe(false)
    const handles = shellHandlesOf(only(bench))
    expect(handles.map((handle) => handle.id)).toEqual([
      ...[0, 1, 2].map((index) => `shell-point:${placeId}:side:${index}`),
      ...[0, 1, 2, 3].map((index) => `shell-point:${placeId}:top:${index}`),
    ])
    for (const handle of handles) expect(handleById(bench, handle.id)).toEqual(handle)
    expect(handleById(bench, `shell-point:${placeId}:side:3`)).toBeNull()
  })
})

describe('movedHandle, shell point', () => {
  const arb = layoutArb.chain((layout) =>
    fc.record({
      layout: fc.constant(layout),
      handle: fc.constantFrom(...layout.places.flatMap(shellHandlesOf)),
      by: fc.record({
        xMm: fc.integer({ min: -50, max: 50 }),
        yMm: fc.integer({ min: -50, max: 50 }),
        zMm: fc.integer({ min: -50, max: 50 }),
      }),
    }),
  )

  it('goes exactly where it is asked in its own elevation, and nowhere across it', () => {
    const side = movedHandle(bench, ref('side', 1), { xMm: 1111, yMm: 999, zMm: 222 })
    expect(pointOf(side, ref('side', 1)).xMm).toBeCloseTo(1111, 9)
    expect(pointOf(side, ref('side', 1)).zMm).toBeCloseTo(222, 9)
    expect(pointOf(side, ref('side', 1)).yMm).toBe(300)
    const top = movedHandle(bench, ref('top', 0), { xMm: 700, yMm: 120, zMm: 999 })
    expect(pointOf(top, ref('top', 0))).toEqual({ xMm: 700, yMm: 120, zMm: 200 })
  })

  it('moves by whole mm and back to where it was, and leaves the rest of the seat alone', () => {
    fc.assert(
      fc.property(arb, ({ layout, handle, by }) => {
        const { ref: point } = handle
        if (point.kind !== 'shell-point') throw new Error('no shell point')
        const to = {
          xMm: handle.point.xMm + by.xMm,
          yMm: handle.point.yMm + by.yMm,
          zMm: handle.point.zMm + by.zMm,
        }
        const moved = movedHandle(layout, point, to)
        const is = pointOf(moved, point)
        expect(is.xMm).toBeCloseTo(to.xMm, 6)
        const across = point.elevation === 'side' ? 'zMm' : 'yMm'
        expect(is[across]).toBeCloseTo(to[across], 6)
        const back = pointOf(movedHandle(moved, point, handle.point), point)
        expect(back.xMm).toBeCloseTo(handle.point.xMm, 6)
        const placeBefore = layout.places.find((place) => place.id === point.placeId)
        const placeAfter = moved.places.find((place) => place.id === point.placeId)
        expect(placeAfter?.seat.backrestRim).toEqual(placeBefore?.seat.backrestRim)
        expect(placeAfter?.seat.slots).toEqual(placeBefore?.seat.slots)
        expect(placeAfter?.anchors).toEqual(placeBefore?.anchors)
      }),
    )
  })

  it('always leaves a layout that can be saved and opened again, however far away it is asked to', () => {
    fc.assert(
      fc.property(arb, pointInCar, fc.constantFrom(1, 1e6), ({ layout, handle }, to, times) => {
        const asked = { xMm: to.xMm * times, yMm: to.yMm * times, zMm: to.zMm * times }
        expect(parseLayout(movedHandle(layout, handle.ref, asked)).ok).toBe(true)
      }),
    )
  })

  it('takes its mirror image along where there is one, and only there', () => {
    const pair = only(movedHandle(bench, ref('top', 1), { xMm: 1230, yMm: 70 })).seat.topOutline
    expect(pair[1]).toEqual({ xMm: 230, yMm: -230 })
    expect(pair[2]).toEqual({ xMm: 230, yMm: 230 })
    const single = only(movedHandle(bench, ref('top', 0), { yMm: 120 })).seat.topOutline
    expect(single[0]).toEqual({ xMm: -400, yMm: -180 })
    expect(single[3]).toEqual({ xMm: -400, yMm: 210 })
  })

  it('changes nothing for a point or place that does not exist', () => {
    expect(movedHandle(bench, ref('side', 3), { xMm: 1 })).toBe(bench)
    expect(
      movedHandle(bench, { kind: 'shell-point', placeId: 'nobody', elevation: 'top', index: 0 }, { xMm: 1 }),
    ).toBe(bench)
  })
})

describe('outline points as a list', () => {
  it('types one coordinate in the seat frame and keeps the other', () => {
    const typed = withShellPoint(bench, placeId, { elevation: 'side', index: 2 }, { zMm: 444 })
    expect(only(typed).seat.sideOutline[2]).toEqual({ xMm: 150, zMm: 444 })
  })

  it('adds half way to the next point, past the last one too', () => {
    const added = only(addShellPoint(bench, placeId, 'side', 0)).seat.sideOutline
    expect(added).toHaveLength(4)
    expect(added[1]).toEqual({ xMm: -125, zMm: -50 })
    const closing = only(addShellPoint(bench, placeId, 'top', 3)).seat.topOutline
    expect(closing[4]).toEqual({ xMm: -400, yMm: 5 })
  })

  it('removes what was added', () => {
    const added = addShellPoint(bench, placeId, 'top', 1)
    expect(removeShellPoint(added, placeId, 'top', 2)).toEqual(bench)
  })

  it('never leaves fewer than three points nor more than a layout may hold', () => {
    expect(removeShellPoint(bench, placeId, 'side', 0)).toBe(bench)
    let full = bench
    for (let count = 3; count < 200; count += 1) full = addShellPoint(full, placeId, 'side', 0)
    expect(shellPoints(only(full).seat, 'side')).toHaveLength(200)
    expect(addShellPoint(full, placeId, 'side', 0)).toBe(full)
    expect(parseLayout(full).ok).toBe(true)
  })
})
