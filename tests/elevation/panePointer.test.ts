import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { HandleSpot } from '../../src/elevation/handles/handleHit'
import { PanePointer, type PanePort, TAP_SLACK_PX } from '../../src/elevation/panePointer'
import type { SharedView } from '../../src/elevation/viewTransform'

const SPOTS: readonly HandleSpot[] = [
  { id: 'tab', at: { xPx: 100, yPx: 100 }, isMovable: true, isMinor: false },
  { id: 'wrap', at: { xPx: 300, yPx: 100 }, isMovable: false, isMinor: false },
]

/** A page that only writes down what it is told. Frames come when the test says so. */
const page = () => {
  const log: string[] = []
  let view: SharedView = { pxPerMm: 0.5, originXPx: 0, originYPx: { side: 0, top: 0 } }
  let selected: string | null = null
  let isRunning = false
  let frames: (() => void)[] = []
  const port: PanePort = {
    elevation: 'side',
    spots: () => SPOTS,
    selectedId: () => selected,
    view: () => view,
    sizes: () => ({ side: { widthPx: 800, heightPx: 400 } }),
    setView: (next) => {
      view = next
    },
    select: (id) => {
      selected = id
      log.push(`select ${id}`)
    },
    refuse: (id) => log.push(`refuse ${id}`),
    beginDrag: (id) => {
      isRunning = true
      log.push(`begin ${id}`)
    },
    dragBy: ({ uMm, vMm }) => log.push(`by ${uMm},${vMm}`),
    endDrag: () => {
      isRunning = false
      log.push('end')
    },
    cancelDrag: () => {
      isRunning = false
      log.push('cancel')
    },
    isDragRunning: () => isRunning,
    onNextFrame: (callback) => frames.push(callback),
  }
  return {
    pointer: new PanePointer(port),
    log,
    view: () => view,
    callOff: () => {
      isRunning = false
    },
    frame: () => {
      const due = frames
      frames = []
      for (const callback of due) callback()
      return due.length
    },
  }
}

describe('PanePointer', () => {
  it('selects on a tap and begins no gesture', () => {
    const { pointer, log } = page()
    pointer.down(1, { xPx: 103, yPx: 98 })
    pointer.move(1, { xPx: 103 + TAP_SLACK_PX - 0.1, yPx: 98 })
    pointer.up(1)
    expect(log).toEqual(['select tab'])
  })

  it('drags by the distance from where the finger came down, once per frame', () => {
    const { pointer, log, frame } = page()
    pointer.down(1, { xPx: 103, yPx: 98 })
    pointer.move(1, { xPx: 113, yPx: 98 })
    pointer.move(1, { xPx: 123, yPx: 88 })
    expect(frame()).toBe(1)
    pointer.up(1)
    // 20 px right and 10 px up at half a px per mm; the finger's 3 px beside the handle do not count.
    expect(log).toEqual(['select tab', 'begin tab', 'by 40,20', 'by 40,20', 'end'])
  })

  it('ends where the finger left the glass even when the frame has not come', () => {
    const { pointer, log } = page()
    pointer.down(1, { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.up(1)
    expect(log.slice(-2)).toEqual(['by 20,0', 'end'])
  })

  it('refuses what cannot move here and does not pan with it', () => {
    const { pointer, log, view } = page()
    const before = view()
    pointer.down(1, { xPx: 300, yPx: 100 })
    pointer.move(1, { xPx: 350, yPx: 150 })
    pointer.up(1)
    expect(log).toEqual(['select wrap', 'refuse wrap'])
    expect(view()).toBe(before)
  })

  it('pans on empty paper and deselects only on a tap there', () => {
    const { pointer, log, view } = page()
    pointer.down(1, { xPx: 500, yPx: 300 })
    pointer.move(1, { xPx: 530, yPx: 290 })
    pointer.up(1)
    expect(view()).toMatchObject({ originXPx: 30, originYPx: { side: -10, top: 0 } })
    expect(log).toEqual([])
    pointer.down(1, { xPx: 500, yPx: 300 })
    pointer.up(1)
    expect(log).toEqual(['select null'])
  })

  it('calls a drag off when a second finger lands, pinches instead, and goes on panning with the last finger', () => {
    const { pointer, log, view, frame } = page()
    pointer.down(1, { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.down(2, { xPx: 210, yPx: 100 })
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
    pointer.down(1, { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.cancel(1)
    pointer.up(1)
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
  })

  it('keeps dragging when a pointer that was never down is cancelled', () => {
    const { pointer, log } = page()
    pointer.down(1, { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.cancel(2)
    pointer.up(1)
    expect(log.at(-1)).toBe('end')
  })

  it('calls a drag off when its pointer comes down a second time without having been lifted', () => {
    const { pointer, log } = page()
    pointer.down(3, { xPx: 85, yPx: 84 })
    pointer.move(3, { xPx: 60, yPx: 60 })
    pointer.down(3, { xPx: 60, yPx: 60 })
    expect(log).toEqual(['select tab', 'begin tab', 'cancel'])
  })

  it('lets go of a drag that something else called off', () => {
    const { pointer, log, frame, callOff } = page()
    pointer.down(1, { xPx: 100, yPx: 100 })
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
      kind: fc.constantFrom('down', 'move', 'up', 'cancel', 'frame'),
      id: fc.integer({ min: 1, max: 3 }),
      xPx: fc.integer({ min: 60, max: 340 }),
      yPx: fc.integer({ min: 60, max: 140 }),
    })
    fc.assert(
      fc.property(fc.array(event, { maxLength: 60 }), (events) => {
        const { pointer, log, frame } = page()
        for (const { kind, id, xPx, yPx } of events) {
          if (kind === 'down') pointer.down(id, { xPx, yPx })
          if (kind === 'move') pointer.move(id, { xPx, yPx })
          if (kind === 'up') pointer.up(id)
          if (kind === 'cancel') pointer.cancel(id)
          if (kind === 'frame') frame()
        }
        for (const id of [1, 2, 3]) pointer.up(id)
        const begun = log.filter((line) => line.startsWith('begin')).length
        const closed = log.filter((line) => line === 'end' || line === 'cancel').length
        expect(closed).toBe(begun)
      }),
    )
  })
})
