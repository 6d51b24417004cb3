import { describe, expect, it } from 'vitest'
import type { HandleSpot } from '../../src/elevation/handles/handleHit'
import { PEN_MEMORY_MS } from '../../src/elevation/panePointer'
import { finger, mouse, page, pen } from './pointerPage'

describe('PanePointer and crowds', () => {
  const CROWD: readonly HandleSpot[] = [
    { id: 'left', at: { xPx: 100, yPx: 100 }, isMovable: true, isMinor: false },
    { id: 'right', at: { xPx: 103, yPx: 100 }, isMovable: true, isMinor: false },
    { id: 'fixed', at: { xPx: 100, yPx: 108 }, isMovable: false, isMinor: false },
    { id: 'beside', at: { xPx: 120, yPx: 100 }, isMovable: true, isMinor: false },
  ]

  it('offers everything a tap may have meant, nearest first, after selecting the nearest', () => {
    const { pointer, log } = page(CROWD)
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.up(1)
    // 20 px away is in reach of the finger and clearly not what was tapped.
    expect(log).toEqual(['select left', 'offer left right fixed'])
  })

  it('offers what a tap on a part that does not move here may have meant as well', () => {
    const spots = [
      ...CROWD.filter(({ id }) => id === 'fixed'),
      { id: 'wrap', at: { xPx: 100, yPx: 110 }, isMovable: false, isMinor: false },
    ]
    const { pointer, log } = page(spots)
    pointer.down(finger(1), { xPx: 100, yPx: 108 })
    pointer.up(1)
    expect(log).toEqual(['select fixed', 'refuse fixed', 'offer fixed wrap'])
  })

  it('asks nothing after a drag, of a mouse, or where one handle lies alone', () => {
    const { pointer, log } = page(CROWD)
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 130, yPx: 100 })
    pointer.up(1)
    pointer.down(mouse(1), { xPx: 100, yPx: 100 })
    pointer.up(1)
    const alone = page()
    alone.pointer.down(finger(1), { xPx: 100, yPx: 100 })
    alone.pointer.up(1)
    expect([...log, ...alone.log].filter((line) => line.startsWith('offer'))).toEqual([])
  })

  it('reaches further for a finger than for a mouse', () => {
    const { pointer, log } = page()
    pointer.down(mouse(1), { xPx: 118, yPx: 100 })
    pointer.up(1)
    pointer.down(finger(1), { xPx: 118, yPx: 100 })
    pointer.up(1)
    expect(log).toEqual(['select null', 'select tab'])
  })
})

describe('PanePointer with a pen', () => {
  it('drops what the hand began and does not hear it while the pen is down', () => {
    const { pointer, log, view } = page()
    pointer.down(finger(1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 110, yPx: 100 })
    pointer.down(pen(2), { xPx: 102, yPx: 100 })
    pointer.move(2, { xPx: 112, yPx: 100 })
    const before = view()
    pointer.down(finger(3), { xPx: 400, yPx: 300 })
    pointer.move(3, { xPx: 500, yPx: 300 })
    pointer.move(1, { xPx: 200, yPx: 100 })
    pointer.up(3)
    pointer.up(1)
    pointer.up(2)
    expect(view()).toBe(before)
    expect(log).toEqual(['select tab', 'begin tab', 'cancel', 'select tab', 'begin tab', 'by 20,0', 'end'])
  })

  it('lets fingers pan but take no handle and deselect nothing shortly after a pen was near', () => {
    const { pointer, log, view } = page()
    pointer.penSeen(1000)
    pointer.down(finger(1, 1000 + PEN_MEMORY_MS - 1), { xPx: 100, yPx: 100 })
    pointer.up(1)
    pointer.down(finger(1, 1000 + PEN_MEMORY_MS - 1), { xPx: 100, yPx: 100 })
    pointer.move(1, { xPx: 130, yPx: 100 })
    pointer.up(1)
    expect(view().originXPx).toBe(30)
    expect(log).toEqual([])
    pointer.down(finger(1, 1000 + PEN_MEMORY_MS), { xPx: 100, yPx: 100 })
    pointer.up(1)
    expect(log).toEqual(['select tab'])
  })
})
