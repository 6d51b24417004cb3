import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { addAnchor, withAnchor } from '../../../../src/domain/layout/edit/changeAnchors'
import { withBelt } from '../../../../src/domain/layout/edit/changeBelt'
import { addSlot } from '../../../../src/domain/layout/edit/changeSlots'
import { crossedFace } from '../../../../src/domain/layout/edit/startingSlot'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Slot } from '../../../../src/domain/straps/seat'
import { STRAP_IDS, type StrapId } from '../../../../src/domain/straps/strap'

const PLACE = 'place-1'

const first = (layout: Layout): Place => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  return place
}

/** The same with the tab of a strap, and of the other side, elsewhere. */
const withTab = (layout: Layout, strap: StrapId, point: PointMm): Layout => {
  const anchor = first(layout).anchors.find((each) => each.strap === strap)
  if (anchor === undefined) throw new Error(`no anchor for ${strap}`)
  return withAnchor(layout, PLACE, anchor.id, { ...anchor.mount, point })
}

/** The starting layout with a tab for every strap of a belt, the lap tabs so far outside that their straps come in over the shell. */
const anchored = (arrangement: 6 | 7 = 6): Layout =>
  withTab(
    STRAP_IDS.reduce(
      (layout, strap) => addAnchor(layout, PLACE, strap),
      withBelt(emptyLayout(), PLACE, { arrangement }),
    ),
    'lap-left',
    { xMm: 1040, yMm: -330, zMm: 68 },
  )

const withSeat = (layout: Layout, change: Partial<Place['seat']>): Layout => ({
  ...layout,
  places: layout.places.map((place) => ({ ...place, seat: { ...place.seat, ...change } })),
})

const drawn = (layout: Layout) => {
  const sitting = layoutNumbers(layout).places[0]?.sittings[0]
  if (sitting === undefined) throw new Error('nobody sits there')
  return sitting
}

const withoutSlot = (layout: Layout): readonly StrapId[] =>
  drawn(layout).problems.flatMap(({ kind, strap }) => (kind === 'no-slot' ? [strap] : []))

/** How much the slot bends the strap of the drawn occupant, degrees. */
const bendDeg = (layout: Layout, strap: StrapId): number | undefined =>
  drawn(layout).quantities.find(({ id, subject }) => id === 'slot-bend' && subject === strap)?.value

const slotOf = (layout: Layout, strap: StrapId): Slot => {
  const slot = first(layout).seat.slots.find(({ straps }) => straps.includes(strap))
  if (slot === undefined) throw new Error(`no slot for ${strap}`)
  return slot
}

describe('a slot for a strap that has none', () => {
  it('lets the thigh straps of the starting layout through its cushion without bending them', () => {
    const layout = anchored()
    expect(withoutSlot(layout)).toEqual(['sub-left', 'sub-right'])
    expect(crossedFace(layout, first(layout), 'sub-left')).toBe('cushion')
    const mended = addSlot(layout, PLACE, 'sub-left')
    for (const strap of ['sub-left', 'sub-right'] as const) {
      expect(withoutSlot(mended)).not.toContain(strap)
      expect(bendDeg(mended, strap)).toBe(0)
    }
    expect(first(mended).seat.slots.map(({ face }) => face)).toEqual(['cushion', 'cushion'])
  })

  it('lies in the middle of the wall that the strap crosses', () => {
    const slot = slotOf(addSlot(anchored(), PLACE, 'sub-left'), 'sub-left')
    // The starting cushion ahead of the hip: its top falls from (-60, -105) to (-400, -160), its underside from (-60, -150) to
    // (-405, -205).
    const topMm = -105 + ((slot.centre.xMm + 60) / -340) * -55
    const underMm = -150 + ((slot.centre.xMm + 60) / -345) * -55
    // The strap leans in the seat, so that the middle of its way through is not quite half of the height.
    expect(slot.centre.zMm).toBeGreaterThan(underMm + 15)
    expect(slot.centre.zMm).toBeLessThan(topMm - 15)
    expect(Math.abs(slot.centre.zMm - (topMm + underMm) / 2)).toBeLessThan(3)
  })

  it('serves the crotch strap of a 7-point belt too', () => {
    const layout = anchored(7)
    const mended = (['sub-left', 'sub-centre'] as const).reduce(
      (before, strap) => addSlot(before, PLACE, strap),
      layout,
    )
    expect(withoutSlot(mended)).not.toContain('sub-centre')
    expect(bendDeg(mended, 'sub-centre')).toBe(0)
    expect(slotOf(mended, 'sub-centre').centre.yMm).toBe(0)
  })

  it('is cut in the backrest for a lap strap from behind between the sides', () => {
    // Seat 250 wide to each side; 200 behind its back and lower than the hip.
    const layout = withTab(anchored(), 'lap-left', { xMm: 1250, yMm: -150, zMm: 150 })
    expect(withoutSlot(layout)).toContain('lap-left')
    const mended = addSlot(layout, PLACE, 'lap-left')
    expect(slotOf(mended, 'lap-left').face).toBe('back')
    expect(withoutSlot(mended)).not.toContain('lap-left')
    expect(bendDeg(mended, 'lap-left')).toBe(0)
  })

  it('is cut in the cushion for a lap strap that comes in under the side of the shell', () => {
    // Outside the shell, 250 from its middle, and well below it.
    const layout = withTab(anchored(), 'lap-left', { xMm: 960, yMm: -280, zMm: 0 })
    expect(crossedFace(layout, first(layout), 'lap-left')).toBe('cushion')
    const mended = addSlot(layout, PLACE, 'lap-left')
    expect(withoutSlot(mended)).not.toContain('lap-left')
    expect(bendDeg(mended, 'lap-left')).toBe(0)
    expect(Math.abs(slotOf(mended, 'lap-left').centre.yMm)).toBeLessThan(250)
  })

  it('is cut in the side of the shell, across the strap, for one that comes in through it', () => {
    // A shell as high as the hip beside it: the straight strap from a tab far outside meets it.
    const walls = [
      { xMm: -400, zMm: 60 },
      { xMm: 190, zMm: 60 },
      { xMm: 190, zMm: -205 },
      { xMm: -400, zMm: -205 },
    ]
    const layout = withTab(withSeat(anchored(), { sideOutline: walls }), 'lap-left', {
      xMm: 1100,
      yMm: -420,
      zMm: 100,
    })
    const mended = addSlot(layout, PLACE, 'lap-left')
    const slot = slotOf(mended, 'lap-left')
    expect(slot.face).toBe('side')
    expect(slot.centre.yMm).toBe(-250)
    expect(bendDeg(mended, 'lap-left')).toBe(0)
    // In side view the strap runs from the tab toward the hip (900, 250): 200 to 150 is 36.9° from level, 16.9° in a seat that
    // reclines 20°; the slit stands square to it. The strap aims past the hip by less than 10°.
    expect(Math.abs(slot.turnDeg - (90 - 16.9))).toBeLessThan(10)
    expect(slotOf(mended, 'lap-right')).toMatchObject({ face: 'side', turnDeg: slot.turnDeg })
  })

  it('is cut in the backrest below its rim for a shoulder strap that would pass through it', () => {
    const layout = withTab(withSeat(anchored(), { backrestRim: { xMm: 165, zMm: 700 } }), 'shoulder-left', {
      xMm: 1350,
      yMm: -100,
      zMm: 640,
    })
    expect(crossedFace(layout, first(layout), 'shoulder-left')).toBe('back')
    const mended = addSlot(layout, PLACE, 'shoulder-left')
    expect(slotOf(mended, 'shoulder-left')).toMatchObject({ face: 'back', centre: { xMm: 165 } })
    expect(bendDeg(mended, 'shoulder-left')).toBe(0)
  })

  it('starts where such slots usually are while the strap crosses nothing', () => {
    expect(crossedFace(emptyLayout(), first(emptyLayout()), 'lap-left')).toBeNull()
    expect(slotOf(addSlot(emptyLayout(), PLACE, 'lap-left'), 'lap-left')).toMatchObject({
      face: 'side',
      centre: { xMm: 70, yMm: -250, zMm: -60 },
      turnDeg: 38,
    })
    // The starting shoulder straps pass over the rim, at x 165 and 480 up the back.
    const layout = anchored()
    expect(crossedFace(layout, first(layout), 'shoulder-left')).toBeNull()
    expect(slotOf(addSlot(layout, PLACE, 'shoulder-left'), 'shoulder-left')).toMatchObject({
      face: 'back',
      centre: { xMm: 165, yMm: -80, zMm: 450 },
    })
  })

  it('is wide enough for a strap that slants through a thick shell', () => {
    const thin = addSlot(anchored(), PLACE, 'sub-left')
    const thick = addSlot(withSeat(anchored(), { shellThicknessMm: 50 }), PLACE, 'sub-left')
    expect(slotOf(thick, 'sub-left').heightMm).toBeGreaterThan(slotOf(thin, 'sub-left').heightMm)
    expect(bendDeg(thick, 'sub-left')).toBe(0)
  })

  it('lies where the strap is in a wall that it runs through almost along', () => {
    // From far behind and nearly level: half a millimetre across the wall is several along it.
    const layout = withTab(anchored(), 'sub-left', { xMm: 1268, yMm: 0, zMm: 0 })
    expect(withoutSlot(layout)).toContain('sub-left')
    expect(bendDeg(addSlot(layout, PLACE, 'sub-left'), 'sub-left')).toBe(0)
  })

  it('always lets the drawn strap through clean, and leaves a layout that can be saved and opened again', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max })
    fc.assert(
      fc.property(
        fc.constantFrom<StrapId>('sub-left', 'sub-centre', 'lap-right', 'shoulder-right'),
        fc.record({ xMm: mm(700, 1500), yMm: mm(-320, 320), zMm: mm(-100, 900) }),
        mm(0, 60),
        (strap, point, shellThicknessMm) => {
          const layout = withTab(withSeat(anchored(7), { shellThicknessMm }), strap, point)
          fc.pre(withoutSlot(layout).includes(strap))
          const mended = addSlot(layout, PLACE, strap)
          expect(parseLayout(mended)).toEqual({ ok: true, value: mended })
          expect(withoutSlot(mended)).not.toContain(strap)
          const bend = bendDeg(mended, strap)
          expect(bend ?? 0).toBeLessThan(0.001)
        },
      ),
    )
  })
})
