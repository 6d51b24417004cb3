import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CLEAR_OF_FINGER_PX, placeMagnifier } from '../../src/elevation/magnifier/placeMagnifier'

const INSET = { widthPx: 120, heightPx: 140 }
const PANE = { widthPx: 800, heightPx: 400 }

describe('placeMagnifier', () => {
  it('stands above the finger, and keeps in the pane near its sides', () => {
    expect(placeMagnifier({ xPx: 400, yPx: 300 }, PANE, INSET)).toEqual({ xPx: 340, yPx: 300 - 44 - 140 })
    expect(placeMagnifier({ xPx: 10, yPx: 300 }, PANE, INSET).xPx).toBe(0)
    expect(placeMagnifier({ xPx: 795, yPx: 300 }, PANE, INSET).xPx).toBe(680)
  })

  it('stands to the left where there is no height above, and to the right near the left edge', () => {
    expect(placeMagnifier({ xPx: 400, yPx: 100 }, PANE, INSET)).toEqual({ xPx: 400 - 44 - 120, yPx: 0 })
    expect(placeMagnifier({ xPx: 163, yPx: 100 }, PANE, INSET).xPx).toBe(163 + 44)
    expect(placeMagnifier({ xPx: 164, yPx: 100 }, PANE, INSET).xPx).toBe(0)
  })

  it('is inside a pane that can hold it and clear of the finger wherever that is, down to a phone of 320 px', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 328, max: 2000 }),
        fc.integer({ min: 140, max: 1200 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (widthPx, heightPx, across, down) => {
          const at = { xPx: across * widthPx, yPx: down * heightPx }
          const { xPx, yPx } = placeMagnifier(at, { widthPx, heightPx }, INSET)
          expect(xPx).toBeGreaterThanOrEqual(0)
          expect(yPx).toBeGreaterThanOrEqual(0)
          expect(xPx + INSET.widthPx).toBeLessThanOrEqual(widthPx)
          expect(yPx + INSET.heightPx).toBeLessThanOrEqual(heightPx)
          const beside = Math.max(xPx - at.xPx, at.xPx - xPx - INSET.widthPx)
          const above = at.yPx - yPx - INSET.heightPx
          expect(Math.max(beside, above)).toBeGreaterThanOrEqual(CLEAR_OF_FINGER_PX - 1e-9)
        },
      ),
    )
  })

  it('leans away from the finger in a pane too narrow for both', () => {
    const narrow = { widthPx: 200, heightPx: 150 }
    expect(placeMagnifier({ xPx: 110, yPx: 75 }, narrow, INSET).xPx).toBe(0)
    expect(placeMagnifier({ xPx: 90, yPx: 75 }, narrow, INSET).xPx).toBe(80)
  })
})
