import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import {
  addOccupant,
  addPlace,
  freshId,
  removeOccupant,
  removePlace,
  withJob,
  withOccupant,
  withPlace,
  withSeat,
  withSettings,
} from '../../../../src/domain/layout/edit/change'
import { removeAnchor } from '../../../../src/domain/layout/edit/changeAnchors'
import { withAdjuster, withBelt, withShoulderTail } from '../../../../src/domain/layout/edit/changeBelt'
import { addSlot, removeSlot, withSlot } from '../../../../src/domain/layout/edit/changeSlots'
import { addTube, removeTube, withTube } from '../../../../src/domain/layout/edit/changeTubes'
import { ARRANGEMENTS, STRAP_IDS } from '../../../../src/domain/straps/strap'
import { layoutArb } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const trail = exampleLayout('trail-car-two-seat.layout.json')
const first = (layout: Layout): Place => {
  const place = layout.places[0]
  if (place === undefined) throw new Error('no place')
  return place
}

describe('plain edits', () => {
  it('always leave a layout that can be saved and opened again', () => {
    const edits: readonly ((layout: Layout) => Layout)[] = [
      (layout) => withJob(layout, { name: 'Second frame' }),
      (layout) => withSettings(layout, { datum: 'Left seat bolt', dustyOrMuddyUse: false }),
      (layout) => withPlace(layout, 'place-1', { name: 'Driver' }),
      (layout) =>
        withSeat(layout, 'place-1', { reclineDeg: 33, reclineRange: { uprightDeg: 40, reclinedDeg: 12 } }),
      ...ARRANGEMENTS.map((arrangement) => (layout: Layout) => withBelt(layout, 'place-1', { arrangement })),
      (layout) => withBelt(layout, 'place-1', { diagonal: 'right' }),
      (layout) => withBelt(layout, 'place-1', { thighStraps: 'under-thighs' }),
      (layout) => withShoulderTail(layout, 'place-1', 180),
      (layout) => withShoulderTail(layout, 'place-1', null),
      ...(['shoulder', 'lap', 'sub'] as const).map(
        (family) => (layout: Layout) =>
          withAdjuster(layout, 'place-1', family, { fromAnchorMm: 0, lengthMm: 80 }),
      ),
      (layout) => withAdjuster(layout, 'place-1', 'lap', null),
      (layout) => withSeat(layout, 'place-1', { shellThicknessMm: 12 }),
      (layout) => withOccupant(layout, 'place-1', 'occupant-1', { massKg: 91, measured: {} }),
      (layout) => addOccupant(layout, 'place-1'),
      (layout) => removeOccupant(layout, 'place-1', 'occupant-1'),
      addPlace,
      (layout) => removePlace(layout, 'place-1'),
      ...(['harness-bar', 'cage', 'floor'] as const).map((role) => (layout: Layout) => addTube(layout, role)),
      (layout) => removeTube(layout, 'tube-1'),
      (layout) => withTube(layout, 'tube-1', { outsideDiameterMm: 8, wallMm: 12 }),
      (layout) =>
        withTube(layout, 'tube-1', {
          points: [
            { xMm: 0, yMm: 0, zMm: 0 },
            { xMm: 0, yMm: 9, zMm: 0 },
          ],
        }),
      ...STRAP_IDS.map((strap) => (layout: Layout) => addSlot(layout, 'place-1', strap)),
      (layout) => withSlot(layout, 'place-1', 'slot-1', { straps: ['lap-left', 'sub-centre'], turnDeg: 12 }),
      (layout) => removeSlot(layout, 'place-1', 'slot-1'),
      (layout) => removeAnchor(layout, 'place-1', 'place-1-lap-left'),
    ]
    fc.assert(
      fc.property(layoutArb, fc.constantFrom(...edits), (layout, edit) => {
        const edited = edit(layout)
        expect(parseLayout(edited)).toEqual({ ok: true, value: edited })
      }),
      { numRuns: 500 },
    )
  })

  it('change nothing at a place, person, tube or slot that does not exist', () => {
    expect(withSeat(rock, 'nobody', { hipHeightMm: 90 })).toBe(rock)
    expect(withBelt(rock, 'nobody', { material: 'nylon' })).toBe(rock)
    expect(addOccupant(rock, 'nobody')).toBe(rock)
    expect(withTube(rock, 'gone', { name: 'x' })).toBe(rock)
    expect(withSlot(rock, 'driver', 'gone', { turnDeg: 5 })).toBe(rock)
  })

  it('keep the last person and the last place', () => {
    expect(removeOccupant(rock, 'driver', 'dallow')).toBe(rock)
    expect(removePlace(rock, 'driver')).toBe(rock)
    expect(removePlace(trail, 'driver').places.map((place) => place.id)).toEqual(['co-driver'])
  })

  it('give new things ids that nothing has', () => {
    expect(freshId('tube', [{ id: 'tube-1' }, { id: 'tube-3' }])).toBe('tube-2')
    const twice = addPlace(addPlace(emptyLayout()))
    expect(twice.places.map((place) => place.id)).toEqual(['place-1', 'place-2', 'place-3'])
    expect(addOccupant(trail, 'driver').places[0]?.occupants.map(({ id }) => id)).toEqual([
      'r-ventry',
      't-ventry',
      'occupant-1',
    ])
  })
})

describe('withSeat', () => {
  it('draws the recline into a range that no longer holds it', () => {
    const { seat } = first(withSeat(rock, 'driver', { reclineRange: { uprightDeg: 20, reclinedDeg: 30 } })) // was 15°
    expect(seat.reclineDeg).toBe(20)
  })

  it('turns a range given backwards round', () => {
    const { seat } = first(withSeat(rock, 'driver', { reclineRange: { uprightDeg: 18, reclinedDeg: 12 } }))
    expect(seat.reclineRange).toEqual({ uprightDeg: 12, reclinedDeg: 18 })
    expect(seat.reclineDeg).toBe(15)
  })

  it('mounts a fixed back at the new recline and holds a reclining one to its range', () => {
    expect(first(withSeat(rock, 'driver', { reclineDeg: 22 })).seat.reclineRange).toEqual({
      uprightDeg: 22,
      reclinedDeg: 22,
    })
    const ranged = withSeat(rock, 'driver', { reclineRange: { uprightDeg: 12, reclinedDeg: 18 } })
    expect(first(withSeat(ranged, 'driver', { reclineDeg: 22 })).seat.reclineDeg).toBe(18)
  })
})

describe('tubes', () => {
  it('take their wraps away with them and leave their tabs on no tube', () => {
    const without = removeTube(trail, 'harness-bar')
    expect(without.places.flatMap((place) => place.anchors).some(({ mount }) => mount.kind === 'wrap')).toBe(
      false,
    )
    const tabs = first(removeTube(rock, 'harness-bar')).anchors
    expect(tabs).toHaveLength(6)
    expect(tabs[0]?.mount.tubeId).toBe(null)
  })

  it('carry what is fixed to them when their points are typed', () => {
    const up = (zMm: number) => [
      { xMm: 1690, yMm: -38, zMm },
      { xMm: 1690, yMm: 1338, zMm },
    ]
    const raised = withTube(trail, 'harness-bar', { points: up(730) })
    expect(first(raised).anchors[0]?.mount.point.zMm).toBeCloseTo(730, 9)
  })

  it('keep wraps on the centre line when a bend is added', () => {
    const bent = withTube(trail, 'harness-bar', {
      points: [
        { xMm: 1690, yMm: -38, zMm: 700 },
        { xMm: 1720, yMm: 650, zMm: 700 },
        { xMm: 1690, yMm: 1338, zMm: 700 },
      ],
    })
    expect(parseLayout(bent).ok).toBe(true)
    expect(first(bent).anchors[0]?.mount.point.xMm).toBeGreaterThan(1690)
  })

  it('hold the wall to a solid bar', () => {
    const thin = withTube(rock, 'harness-bar', { outsideDiameterMm: 5.5 }) // its wall is 3
    expect(thin.tubes.find((tube) => tube.id === 'harness-bar')?.wallMm).toBe(2.75)
  })
})

describe('slots', () => {
  it('are added for both sides of a pair that moves as one, sized to the webbing', () => {
    const { seat, belt } = first(addSlot(emptyLayout(), 'place-1', 'lap-right'))
    expect(seat.slots.map((slot) => slot.straps)).toEqual([['lap-right'], ['lap-left']])
    expect(seat.slots[0]?.lengthMm).toBe(belt.webbingMm.lap + 15)
    expect(seat.slots[0]?.centre.yMm).toBe(-(seat.slots[1]?.centre.yMm ?? 0))
    expect(seat.slots[0]?.centre.yMm).toBeGreaterThan(0)
  })

  it('are not added for a strap that has one', () => {
    expect(addSlot(rock, 'driver', 'lap-left')).toBe(rock)
  })

  it('turn the other way on the other side of the back, the same way in a side wall', () => {
    const turned = (id: string): readonly (number | undefined)[] => {
      const { slots } = first(withSlot(rock, 'driver', id, { turnDeg: 9 })).seat
      return slots.map((slot) => slot.turnDeg)
    }
    expect(turned('shoulder-slot-left')).toEqual([9, -9, 53, 53, 0])
    expect(turned('lap-slot-left')).toEqual([0, 0, 9, 9, 0])
  })

  it('give up a strap that is led through another one', () => {
    const { slots } = first(
      withSlot(rock, 'driver', 'lap-slot-left', { straps: ['lap-left', 'sub-left'] }),
    ).seat
    expect(slots.find((slot) => slot.id === 'sub-slot')?.straps).toEqual(['sub-right'])
  })
})
