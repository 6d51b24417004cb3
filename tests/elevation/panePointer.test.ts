import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PEN_MEMORY_MS, TAP_SLACK_PX } from '../../src/elevation/panePointer'
import { finger, page } from './pointerPage'

describe('PanePointer', () => {
  it('selects on a tap and begins no gesture', () => {
    const { pointer, log } = page()
    pointer.down(finger(1), { xPx: 103, yPx: 98 })
    pointer.move(1, { xPx: 103 + TAP_SLACK_PX - 0.1, yPx: 98 })
    pointer.up(1)
    expect(log).toEqual(['select tab'])
  })

  it('drags by the distance from where the finger came down, once per frame', () => {
    const { pointer, log, frame } = page()
    pointer.down(finger(1), { xPx: 103, yPx: 98 })
    pointer.move(1, { xPx: 113, yPx: 98 })
    pointer.move(1, { xPx: 123, yPx: 88 })
    expect(frame()).toBe(1)
    pointer.up(1)
    // 20 px right and 10 px up at half a px per mm; the finger's 3 px beside the handle do not count.
    expect(log).toEqual(['select tab', 'begin tab', 'by 40,20', 'by 40,20', 'end'])
  })

  it('ends where the finger left the glass even when the frame has not come', () => {
    const { pointer, log } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.up(1)
    expect(log.slice(-2)).toEqual(['by 20,0', 'end'])
  })

  it('refuses what cannot move here and does not pan with it', () => {
    const { pointer, log, view } = page()
    const before = view()
    pointer.down(finger(1), { xPx: 300, yPx: 100 })
    pointer.move(1, { xPx: 350, yPx: 150 })
    pointer.up(1)
    expect(log).toEqual(['select wrap', 'refuse wrap'])
    expect(view()).toBe(before)
  })

  it('pans on empty paper and deselects only on a tap there', () => {
    const { pointer, log, view } = page()
    pointer.down(finger(1), { xPx: 500, yPx: 300 })
    pointer.move(1, { xPx: 530, yPx: 290 })
    pointer.up(1)
    expect(view()).toMatchObject({ originXPx: 30, originYPx: { side: -10, top: 0 } })
    expect(log).toEqual([])
    pointer.down(finger(1), { xPx: 500, yPx: 300 })
    pointer.up(1)
    expect(log).toEqual(['select null'])
  })

  it('calls a drag off when a second finger lands, pinches instead, and goes on panning with the last finger', () => {
    const { pointer, log, view, frame } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.down(finger(2), { xPx: 210, yPx: 100 })
    frame()
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
    pointer.move(2, { xPx: 310, yPx: 100 })
    expect(view().pxPerMm).toBe(1)
    pointer.up(1)
    const before = view()
    pointer.move(2, { xPx: 315, yPx: 100 })
    expect(view().originXPx).toBeCloseTo(before.originXPx + 5, 9)
    pointer.up(2)
    expect(log).toHaveLength(3)
  })

  it('gives everything back when the pointer is cancelled', () => {
    const { pointer, log } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.cancel(1)
    pointer.up(1)
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
  })

  it('keeps dragging when a pointer that was never down is cancelled', () => {
    const { pointer, log } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.cancel(2)
    pointer.up(1)
    expect(log.at(-1)).toBe('end')
  })

  it('calls a drag off when its pointer comes down a second time without having been lifted', () => {
    const { pointer, log } = page()
    pointer.down(finger(3), { xPx: 85, yPx: 84 })
    pointer.move(3, { xPx: 60, yPx: 60 })
    pointer.down(finger(3), { xPx: 60, yPx: 60 })
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
  })

  it('lets go of a drag that something else called off', () => {
    const { pointer, log, frame, callOff } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    frame()
    callOff()
    pointer.move(1, { xPx: 140, yPx: 100 })
    frame()
    pointer.move(1, { xPx: 150, yPx: 100 })
    expect(frame()).toBe(0)
    expect(log).toEqual(['select tab', 'begin tab', 'by 20,0'])
  })

  it('ignores a pointer that never came down, such as a hovering mouse', () => {
    const { pointer, log, view } = page()
    const before = view()
    pointer.move(1, { xPx: 500, yPx: 100 })
    pointer.up(1)
    expect(log).toEqual([])
    expect(view()).toBe(before)
  })

  it('ends or cancels every drag it begins, whatever the fingers do', () => {
    const event = fc.record({
      what: fc.constantFrom('down', 'move', 'up', 'cancel', 'cancel all', 'frame'),
      kind: fc.constantFrom('touch' as const, 'pen' as const, 'mouse' as const),
      timeMs: fc.integer({ min: 0, max: 2 * PEN_MEMORY_MS }),
      id: fc.integer({ min: 1, max: 3 }),
      xPx: fc.integer({ min: 60, max: 340 }),
      yPx: fc.integer({ min: 60, max: 140 }),
    })
    fc.assert(
      fc.property(fc.array(event, { maxLength: 60 }), (events) => {
        const { pointer, log, frame } = page()
        for (const { what, kind, timeMs, id, xPx, yPx } of events) {
          if (what === 'down') pointer.down({ id, kind, timeMs }, { xPx, yPx })
          if (what === 'move') pointer.move(id, { xPx, yPx })
          if (what === 'up') pointer.up(id)
          if (what === 'cancel') pointer.cancel(id)
          if (what === 'cancel all') pointer.cancelAll()
          if (what === 'frame') frame()
        }
        for (const id of [1, 2, 3]) pointer.up(id)
        const begun = log.filter((line) => line.startsWith('begin')).length
        const closed = log.filter((line) => line === 'end' || line === 'cancel').length
        expect(closed).toBe(begun)
      }),
    )
  })

  it('follows the car under the finger when the drawing is zoomed or moved meanwhile', () => {
    const { pointer, log, show } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    // The datum from px 0 to px 50 and twice as large: px 110 showed 220 mm and now shows 60.
    show({ pxPerMm: 1, originXPx: 50, originYPx: { side: 0, top: 0 } })
    pointer.up(1)
    expect(log.slice(-2)).toEqual(['by -140,100', 'end'])
  })

  it('calls everything off at once when the device is turned', () => {
    const { pointer, log, view } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.cancelAll()
    const before = view()
    pointer.move(1, { xPx: 300, yPx: 300 })
    pointer.up(1)
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
    expect(view()).toBe(before)
  })

  it('pinches on when a third finger lands, moves and is lifted', () => {
    const { pointer, view } = page()
    pointer.down(finger(1), { xPx: 400, yPx: 300 })
    pointer.down(finger(2), { xPx: 500, yPx: 300 })
    pointer.down(finger(3), { xPx: 600, yPx: 100 })
    pointer.move(3, { xPx: 100, yPx: 200 })
    pointer.move(2, { xPx: 600, yPx: 300 })
    expect(view().pxPerMm).toBe(1)
    pointer.cancel(3)
    pointer.move(2, { xPx: 450, yPx: 300 })
    expect(view().pxPerMm).toBe(0.25)
  })

  it('keeps what lay between two fingers between them while they spread and move on together', () => {
    const { pointer, view } = page()
    pointer.down(finger(1), { xPx: 300, yPx: 200 })
    pointer.down(finger(2), { xPx: 400, yPx: 200 })
    // The middle shows 700 mm, 400 mm below the datum, at half a px per mm.
    pointer.move(1, { xPx: 320, yPx: 260 })
    pointer.move(2, { xPx: 620, yPx: 260 })
    const { pxPerMm, originXPx, originYPx } = view()
    expect(pxPerMm).toBeCloseTo(1.5, 12)
    expect((470 - originXPx) / pxPerMm).toBeCloseTo(700, 9)
    expect((originYPx.side - 260) / pxPerMm).toBeCloseTo(-400, 9)
  })
})
