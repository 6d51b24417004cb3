import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { vehiclePoint } from '../../../../src/domain/body/pose'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import type { HandleRef } from '../../../../src/domain/layout/edit/handle'
import { drawnPose, handlesOf } from '../../../../src/domain/layout/edit/handles'
import { movedHandle } from '../../../../src/domain/layout/edit/move'
import { layoutArb, pointInCar } from '../../../support/arbitraries'
import { anchorPoint, handlePoint, placeOf, rock, trail } from './movedParts'

const splitPairs = (layout: Layout): Layout => ({
  ...layout,
  places: layout.places.map((place) => ({ ...place, mirrored: { shoulder: false, lap: false, sub: false } })),
})

const hip: HandleRef = { kind: 'hip', placeId: 'driver' }
const recline: HandleRef = { kind: 'recline', placeId: 'driver' }
const shoulder: HandleRef = { kind: 'shoulder-point', placeId: 'driver' }
const lapLeft: HandleRef = { kind: 'anchor', placeId: 'driver', anchorId: 'driver-lap-left' }

describe('movedHandle, any handle', () => {
  const handleAndTarget = layoutArb.chain((layout) => {
    const handles = handlesOf(layout)
    return fc.record({
      layout: fc.constant(layout),
      handle: fc.constantFrom(...handles),
      to: pointInCar,
      axes: fc.subarray(['xMm', 'yMm', 'zMm'] as const, { minLength: 1 }),
    })
  })
  const part = (to: PointMm, axes: readonly (keyof PointMm)[]): Partial<PointMm> =>
    Object.fromEntries(axes.map((axis) => [axis, to[axis]]))

  it('always leaves a layout that can be saved and opened again', () => {
    fc.assert(
      fc.property(handleAndTarget, ({ layout, handle, to, axes }) => {
        const moved = movedHandle(layout, handle.ref, part(to, axes))
        expect(parseLayout(moved)).toEqual({ ok: true, value: moved })
      }),
    )
  })

  it('stays a valid layout for targets far outside any car', () => {
    fc.assert(
      fc.property(handleAndTarget, fc.constantFrom(-1e7, 1e7), ({ layout, handle, axes }, far) => {
        const moved = movedHandle(layout, handle.ref, part({ xMm: far, yMm: far, zMm: far }, axes))
        expect(parseLayout(moved).ok).toBe(true)
      }),
    )
  })

  it('brings a free handle exactly to the one coordinate that was typed', () => {
    const isFree = (kind: HandleRef['kind']): boolean => kind === 'hip' || kind === 'tube-point'
    fc.assert(
      fc.property(handleAndTarget, ({ layout, handle, to, axes }) => {
        fc.pre(isFree(handle.ref.kind))
        const axis = axes[0] ?? 'xMm'
        const moved = movedHandle(layout, handle.ref, { [axis]: to[axis] })
        fc.pre(moved !== layout) // a tube point that would touch its neighbour stays
        expect(handlePoint(moved, handle.ref)).toEqual({ ...handle.point, [axis]: to[axis] })
      }),
    )
  })

  it('changes nothing for references that do not exist, and for coordinates that are no number', () => {
    const unknown: readonly HandleRef[] = [
      { kind: 'hip', placeId: 'nobody' },
      { kind: 'anchor', placeId: 'driver', anchorId: 'gone' },
      { kind: 'slot', placeId: 'driver', slotId: 'gone' },
      { kind: 'tube-point', tubeId: 'gone', index: 0 },
      { kind: 'tube-point', tubeId: 'harness-bar', index: 2 },
      { kind: 'tube-height', tubeId: 'gone' },
    ]
    for (const ref of unknown) expect(movedHandle(rock, ref, { xMm: 1, yMm: 2, zMm: 3 })).toEqual(rock)
    expect(movedHandle(rock, hip, { xMm: NaN, zMm: Infinity })).toEqual(rock)
  })

  it('never changes the layout it was given', () => {
    const before = structuredClone(rock)
    for (const { ref } of handlesOf(rock)) movedHandle(rock, ref, { xMm: 500, yMm: 500, zMm: 500 })
    expect(rock).toEqual(before)
  })
})

describe('movedHandle, hip point', () => {
  it('takes the seat with everything in its frame along and leaves the anchors on the car', () => {
    const before = placeOf(rock)
    const after = placeOf(movedHandle(rock, hip, { xMm: 1230, zMm: 210 })) // from (1200, 360, 230): +30, −20
    expect(after.seat).toEqual({ ...before.seat, hipPoint: { xMm: 1230, yMm: 360, zMm: 210 } })
    expect(after.anchors).toEqual(before.anchors)
    const slot = before.seat.slots[0]?.centre ?? { xMm: 0, yMm: 0, zMm: 0 }
    const was = vehiclePoint(drawnPose(before), slot)
    const is = vehiclePoint(drawnPose(after), slot)
    expect(is.xMm - was.xMm).toBeCloseTo(30, 9)
    expect(is.zMm - was.zMm).toBeCloseTo(-20, 9)
  })
})

describe('movedHandle, recline', () => {
  // The rock buggy has a fixed back at 15° with its hip point at x = 1200, z = 230.
  it.each([
    { xMm: 1200, zMm: 900, reclineDeg: 0 },
    { xMm: 1200 + 300, zMm: 230 + 300, reclineDeg: 45 },
    { xMm: 1200 + 400, zMm: 230 + 300, reclineDeg: 53.130_102 }, // 3-4-5 triangle: atan(4/3)
    { xMm: 1200 - 300, zMm: 230 + 300, reclineDeg: -10 }, // −45° is held to the −10° a layout may hold
  ])('points the torso line at ($xMm, $zMm): $reclineDeg°', ({ xMm, zMm, reclineDeg }) => {
    const { seat } = placeOf(movedHandle(rock, recline, { xMm, zMm }))
    expect(seat.reclineDeg).toBeCloseTo(reclineDeg, 6)
    // A fixed back is mounted at another angle as a whole.
    expect(seat.reclineRange).toEqual({ uprightDeg: seat.reclineDeg, reclinedDeg: seat.reclineDeg })
  })

  it('stays inside the range of a back that reclines', () => {
    const ranged: Layout = {
      ...rock,
      places: rock.places.map((place) => ({
        ...place,
        seat: { ...place.seat, reclineRange: { uprightDeg: 10, reclinedDeg: 25 } },
      })),
    }
    const at = (xMm: number, zMm: number): Place['seat'] =>
      placeOf(movedHandle(ranged, recline, { xMm, zMm })).seat
    expect(at(1200, 900).reclineDeg).toBe(10)
    expect(at(1500, 530).reclineDeg).toBe(25)
    expect(at(1500, 530).reclineRange).toEqual({ uprightDeg: 10, reclinedDeg: 25 })
  })

  it('has exactly the one coordinate that was typed', () => {
    const handle = handlePoint(rock, recline)
    for (const axis of ['xMm', 'zMm'] as const) {
      const moved = movedHandle(rock, recline, { [axis]: handle[axis] - 7 })
      expect(handlePoint(moved, recline)[axis]).toBeCloseTo(handle[axis] - 7, 9)
    }
  })

  it('keeps its distance from the hip point', () => {
    const length = (layout: Layout): number => {
      const point = handlePoint(layout, recline)
      const { hipPoint } = placeOf(layout).seat
      return Math.hypot(point.xMm - hipPoint.xMm, point.zMm - hipPoint.zMm)
    }
    expect(length(movedHandle(rock, recline, { xMm: 1500, zMm: 530 }))).toBeCloseTo(length(rock), 9)
  })
})

describe('movedHandle, shoulder point', () => {
  it('sets the first occupant’s hip-to-shoulder length by the way along the torso line', () => {
    const start = handlePoint(rock, shoulder)
    // 30 mm straight up the torso line, which leans 15°: (30 sin 15°, 30 cos 15°) = (7.764571, 28.977775)
    const once = movedHandle(rock, shoulder, { xMm: start.xMm, zMm: start.zMm })
    const first = placeOf(once).occupants[0]?.measured.hipToShoulderMm ?? 0
    const moved = movedHandle(rock, shoulder, { xMm: start.xMm + 7.764_571, zMm: start.zMm + 28.977_775 })
    expect(placeOf(moved).occupants[0]?.measured.hipToShoulderMm).toBeCloseTo(first + 30, 5)
    expect(handlePoint(moved, shoulder).zMm).toBeCloseTo(start.zMm + 28.977_775, 5)
  })

  it('gives nothing for a way square to the torso line', () => {
    const start = handlePoint(rock, shoulder)
    // (cos 15°, −sin 15°) · 40
    const moved = movedHandle(rock, shoulder, { xMm: start.xMm + 38.637_033, zMm: start.zMm - 10.352_762 })
    expect(handlePoint(moved, shoulder).zMm).toBeCloseTo(start.zMm, 5)
  })

  it('stops where the person’s other measures end it: 50 mm below the head, 2.5 radii of the shoulder above the hip', () => {
    const person = placeOf(rock).occupants[0]
    if (person === undefined) throw new Error('nobody sits there')
    const measured = { headCentreAboveHipMm: 640, shoulderArcRadiusMm: 120 }
    const place = { ...placeOf(rock), occupants: [{ ...person, measured }] }
    const layout = { ...rock, places: [place] }
    const lengthAt = (zMm: number) =>
      placeOf(movedHandle(layout, shoulder, { zMm })).occupants[0]?.measured.hipToShoulderMm
    expect(lengthAt(3000)).toBeCloseTo(590, 4)
    // 120/0.4 = 300
    expect(lengthAt(-3000)).toBeCloseTo(300, 4)
  })

  it('has exactly the height that was typed', () => {
    const { zMm } = handlePoint(rock, shoulder)
    expect(handlePoint(movedHandle(rock, shoulder, { zMm: zMm + 12 }), shoulder).zMm).toBeCloseTo(zMm + 12, 9)
  })

  it('leaves the other occupants as they are', () => {
    const start = handlePoint(trail, shoulder)
    const moved = placeOf(movedHandle(trail, shoulder, { zMm: start.zMm + 5 }))
    expect(moved.occupants.slice(1)).toEqual(placeOf(trail).occupants.slice(1))
  })
})

describe('movedHandle, anchors', () => {
  it('moves a tab to the point and the other side of the pair to its mirror image', () => {
    // The seat's mid-plane is at y = 360, so y = 150 is mirrored to 570.
    const moved = movedHandle(rock, lapLeft, { xMm: 1340, yMm: 150, zMm: 44 })
    expect(anchorPoint(moved, 'lap-left')).toEqual({ xMm: 1340, yMm: 150, zMm: 44 })
    expect(anchorPoint(moved, 'lap-right')).toEqual({ xMm: 1340, yMm: 570, zMm: 44 })
    expect(anchorPoint(moved, 'sub-left')).toEqual(anchorPoint(rock, 'sub-left'))
  })

  it('moves one side of a split pair alone', () => {
    const split = splitPairs(rock)
    const moved = movedHandle(split, lapLeft, { xMm: 1340 })
    expect(anchorPoint(moved, 'lap-left')).toEqual({ ...anchorPoint(rock, 'lap-left'), xMm: 1340 })
    expect(anchorPoint(moved, 'lap-right')).toEqual(anchorPoint(rock, 'lap-right'))
  })

  const wrapLeft: HandleRef = { kind: 'anchor', placeId: 'driver', anchorId: 'driver-shoulder-left' }

  it('slides a wrap along its tube only, and its partner with it', () => {
    // The bar of the trail car is straight across at x = 1690, z = 700; the driver's mid-plane is at y = 335.
    const moved = movedHandle(trail, wrapLeft, { xMm: 1500, yMm: 230, zMm: 900 })
    expect(anchorPoint(moved, 'shoulder-left')).toEqual({ xMm: 1690, yMm: 230, zMm: 700 })
    expect(anchorPoint(moved, 'shoulder-right')).toEqual({ xMm: 1690, yMm: 440, zMm: 700 })
    expect(placeOf(moved, 'co-driver')).toEqual(placeOf(trail, 'co-driver'))
  })

  it('stops a wrap at the end of its tube', () => {
    const moved = movedHandle(splitPairs(trail), wrapLeft, { yMm: -500 })
    expect(anchorPoint(moved, 'shoulder-left')).toEqual({ xMm: 1690, yMm: -38, zMm: 700 })
    const right = movedHandle(splitPairs(trail), wrapLeft, { yMm: 2_000 })
    expect(anchorPoint(right, 'shoulder-left')).toEqual({ xMm: 1690, yMm: 1338, zMm: 700 })
  })

  it('puts a wrap on a bent tube exactly at the one coordinate that was typed, on the nearer piece', () => {
    // A bar that drops by 100 over each half: y −400 → 0 → 400, z 600 → 500 → 600. z = 550 is at y = ±200.
    const bent: Layout = {
      ...splitPairs(trail),
      tubes: trail.tubes.map((tube) =>
        tube.id === 'harness-bar'
          ? {
              ...tube,
              points: [
                { xMm: 1690, yMm: -400, zMm: 600 },
                { xMm: 1690, yMm: 0, zMm: 500 },
                { xMm: 1690, yMm: 400, zMm: 600 },
              ],
            }
          : tube,
      ),
    }
    const onRight = movedHandle(bent, wrapLeft, { yMm: 120 })
    expect(anchorPoint(onRight, 'shoulder-left').zMm).toBeCloseTo(530, 9) // 500 + 100 · 120/400
    expect(anchorPoint(movedHandle(onRight, wrapLeft, { zMm: 550 }), 'shoulder-left')).toEqual({
      xMm: 1690,
      yMm: 200,
      zMm: 550,
    })
  })
})
