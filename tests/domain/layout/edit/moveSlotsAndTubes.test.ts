import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import type { HandleRef } from '../../../../src/domain/layout/edit/handle'
import { movedHandle } from '../../../../src/domain/layout/edit/move'
import { anchorPoint, handlePoint, placeOf, rock, trail } from './movedParts'

const lapSlot: HandleRef = { kind: 'slot', placeId: 'driver', slotId: 'lap-slot-left' }

describe('movedHandle, slots', () => {
  it('moves a slot to the vehicle point asked for and its partner to the mirror image', () => {
    const to = { xMm: 1270, yMm: 118, zMm: 140 }
    const moved = movedHandle(rock, lapSlot, to)
    const point = handlePoint(moved, lapSlot)
    expect(point.xMm).toBeCloseTo(1270, 9)
    expect(point.yMm).toBeCloseTo(118, 9)
    expect(point.zMm).toBeCloseTo(140, 9)
    const partner = handlePoint(moved, { kind: 'slot', placeId: 'driver', slotId: 'lap-slot-right' })
    expect(partner.yMm).toBeCloseTo(2 * 360 - 118, 9)
    expect(partner.zMm).toBeCloseTo(140, 9)
  })

  it('moves the one slot of both thigh straps alone', () => {
    const moved = movedHandle(rock, { kind: 'slot', placeId: 'driver', slotId: 'sub-slot' }, { yMm: 365 })
    const changed = placeOf(moved).seat.slots.filter((slot, i) => slot !== placeOf(rock).seat.slots[i])
    expect(changed.map((slot) => slot.id)).toEqual(['sub-slot'])
  })
})

describe('movedHandle, tubes', () => {
  it('raises a bar with the wraps of every place on it', () => {
    const moved = movedHandle(trail, { kind: 'tube-height', tubeId: 'harness-bar' }, { zMm: 722 })
    const bar = moved.tubes.find((tube) => tube.id === 'harness-bar')
    expect(bar?.points.map((point) => point.zMm)).toEqual([722, 722])
    for (const placeId of ['driver', 'co-driver']) {
      expect(anchorPoint(moved, 'shoulder-left', placeId).zMm).toBeCloseTo(722, 9)
      expect(anchorPoint(moved, 'lap-left', placeId)).toEqual(anchorPoint(trail, 'lap-left', placeId))
    }
  })

  it('raises the tabs on a bar by the same amount', () => {
    const moved = movedHandle(rock, { kind: 'tube-height', tubeId: 'harness-bar' }, { zMm: 642 }) // from 620
    expect(anchorPoint(moved, 'shoulder-left').zMm).toBeCloseTo(
      anchorPoint(rock, 'shoulder-left').zMm + 22,
      9,
    )
    expect(anchorPoint(moved, 'shoulder-left').xMm).toBeCloseTo(1612, 9)
  })

  it('keeps each wrap at its share of the bar when one end is moved', () => {
    // Bar from y −38 to 1338 (1376 long); the driver's left wrap at y = 220 is at 258/1376 = 0.1875 of it.
    // The right end rises by 160: 160 · 0.1875 = 30.
    const moved = movedHandle(trail, { kind: 'tube-point', tubeId: 'harness-bar', index: 1 }, { zMm: 860 })
    expect(anchorPoint(moved, 'shoulder-left').zMm).toBeCloseTo(730, 9)
    expect(anchorPoint(moved, 'shoulder-left').yMm).toBeCloseTo(220, 9)
  })

  it('puts a wrap that was a little off the centre line on it', () => {
    const off: Layout = {
      ...trail,
      places: trail.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) =>
          anchor.mount.kind === 'wrap'
            ? { ...anchor, mount: { ...anchor.mount, point: { ...anchor.mount.point, zMm: 700.8 } } }
            : anchor,
        ),
      })),
    }
    expect(parseLayout(off).ok).toBe(true)
    const moved = movedHandle(off, { kind: 'tube-height', tubeId: 'harness-bar' }, { zMm: 710 })
    expect(anchorPoint(moved, 'shoulder-left').zMm).toBeCloseTo(710, 9)
  })

  it('keeps each tab at its offset from the bar when one end is moved', () => {
    // Bar from y −28 to 748 (776 long) at z 620; the left tab is at y = 250, z = 632: share 278/776, 12 above, 36 ahead.
    const moved = movedHandle(rock, { kind: 'tube-point', tubeId: 'harness-bar', index: 1 }, { zMm: 720 })
    expect(anchorPoint(moved, 'shoulder-left').zMm - 12 - 620).toBeCloseTo((100 * 278) / 776, 9)
    expect(anchorPoint(moved, 'shoulder-left').xMm).toBeCloseTo(1612, 9)
  })

  it('keeps a tube point that would come closer than 1 mm to its neighbour where it is', () => {
    const ref: HandleRef = { kind: 'tube-point', tubeId: 'harness-bar', index: 1 }
    expect(movedHandle(rock, ref, { yMm: -27.5 })).toBe(rock)
    expect(handlePoint(movedHandle(rock, ref, { yMm: -27 }), ref).yMm).toBe(-27)
  })
})
