import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanePointMm } from '../../src/domain/geometry/plane'
import {
  fittedView,
  isAnotherDrawing,
  MAX_PX_PER_MM,
  MIN_PX_PER_MM,
  type PaneBounds,
  paneTransform,
  panned,
  pinched,
  type PointPx,
  resizedView,
  type SharedView,
  toMm,
  toPx,
  visibleBox,
  zoomedAbout,
} from '../../src/elevation/viewTransform'

const coordinate = fc.double({ min: -5000, max: 5000, noNaN: true })
const pointMm: fc.Arbitrary<PlanePointMm> = fc.record({ uMm: coordinate, vMm: coordinate })
const pointPx: fc.Arbitrary<PointPx> = fc.record({
  xPx: fc.double({ min: 0, max: 2000, noNaN: true }),
  yPx: fc.double({ min: 0, max: 2000, noNaN: true }),
})
const sharedView: fc.Arbitrary<SharedView> = fc.record({
  pxPerMm: fc.double({ min: 0.05, max: 4, noNaN: true }),
  originXPx: coordinate,
  originYPx: fc.record({ side: coordinate, top: coordinate }),
})
const elevation = fc.constantFrom('side' as const, 'top' as const)
const factor = fc.double({ min: 0.2, max: 5, noNaN: true })
const SIZES = { side: { widthPx: 900, heightPx: 400 }, top: { widthPx: 900, heightPx: 300 } }

describe('toPx and toMm', () => {
  it('put the datum where the view says and turn v upward into y downward', () => {
    const view = { pxPerMm: 0.5, originXPx: 100, originYPx: 300 }
    expect(toPx(view, { uMm: 0, vMm: 0 })).toEqual({ xPx: 100, yPx: 300 })
    // 200 mm rearward and 100 mm up at half a px per mm: 100 px right, 50 px up.
    expect(toPx(view, { uMm: 200, vMm: 100 })).toEqual({ xPx: 200, yPx: 250 })
    expect(toMm(view, { xPx: 200, yPx: 250 })).toEqual({ uMm: 200, vMm: 100 })
  })

  it('undo each other', () => {
    fc.assert(
      fc.property(sharedView, elevation, pointMm, (view, pane, point) => {
        const back = toMm(paneTransform(view, pane), toPx(paneTransform(view, pane), point))
        expect(back.uMm).toBeCloseTo(point.uMm, 6)
        expect(back.vMm).toBeCloseTo(point.vMm, 6)
      }),
    )
  })
})

describe('zoomedAbout', () => {
  it('keeps the point under the pointer where it is', () => {
    fc.assert(
      fc.property(sharedView, elevation, pointPx, factor, (view, pane, at, by) => {
        const before = toMm(paneTransform(view, pane), at)
        const zoomed = zoomedAbout(view, { elevation: pane, at, factor: by }, SIZES)
        const after = toPx(paneTransform(zoomed, pane), before)
        expect(after.xPx).toBeCloseTo(at.xPx, 5)
        expect(after.yPx).toBeCloseTo(at.yPx, 5)
      }),
    )
  })

  it('keeps both elevations on one x axis and the middle of the other one in the middle', () => {
    fc.assert(
      fc.property(sharedView, pointPx, factor, (view, at, by) => {
        const middle = { xPx: at.xPx, yPx: SIZES.top.heightPx / 2 }
        const before = toMm(paneTransform(view, 'top'), middle)
        const zoomed = zoomedAbout(view, { elevation: 'side', at, factor: by }, SIZES)
        const after = toPx(paneTransform(zoomed, 'top'), before)
        expect(after.xPx).toBeCloseTo(middle.xPx, 5)
        expect(after.yPx).toBeCloseTo(middle.yPx, 5)
      }),
    )
  })

  it('stops at the smallest and the largest scale without moving the point', () => {
    const view: SharedView = { pxPerMm: 1, originXPx: 50, originYPx: { side: 60, top: 70 } }
    const at = { xPx: 10, yPx: 20 }
    const fixed = toMm(paneTransform(view, 'side'), at)
    for (const [by, limit] of [
      [1e6, MAX_PX_PER_MM],
      [1e-6, MIN_PX_PER_MM],
    ] as const) {
      const zoomed = zoomedAbout(view, { elevation: 'side', at, factor: by }, SIZES)
      expect(zoomed.pxPerMm).toBe(limit)
      expect(toPx(paneTransform(zoomed, 'side'), fixed).xPx).toBeCloseTo(at.xPx, 6)
    }
  })
})

describe('panned', () => {
  it('moves x in both elevations and y only in the one under the pointer', () => {
    const view: SharedView = { pxPerMm: 1, originXPx: 0, originYPx: { side: 0, top: 0 } }
    expect(panned(view, 'top', { xPx: 5, yPx: 7 })).toEqual({
      pxPerMm: 1,
      originXPx: 5,
      originYPx: { side: 0, top: 7 },
    })
  })
})

describe('pinched', () => {
  it('doubles the scale when the fingers are twice as far apart, from the first move on', () => {
    const view: SharedView = { pxPerMm: 1, originXPx: 0, originYPx: { side: 0, top: 0 } }
    const start = {
      view,
      fingers: [
        { xPx: 100, yPx: 100 },
        { xPx: 200, yPx: 100 },
      ],
    } as const
    const apart = [
      { xPx: 50, yPx: 100 },
      { xPx: 250, yPx: 100 },
    ] as const
    expect(pinched(start, apart, 'side', SIZES).pxPerMm).toBe(2)
  })

  it('keeps what lay under each finger under it while they move without turning', () => {
    fc.assert(
      fc.property(sharedView, pointPx, pointPx, factor, pointPx, (view, first, second, by, shift) => {
        fc.pre(Math.hypot(second.xPx - first.xPx, second.yPx - first.yPx) > 5)
        fc.pre(view.pxPerMm * by > MIN_PX_PER_MM && view.pxPerMm * by < MAX_PX_PER_MM)
        const moved = (finger: PointPx): PointPx => ({
          xPx: finger.xPx * by + shift.xPx,
          yPx: finger.yPx * by + shift.yPx,
        })
        const under = toMm(paneTransform(view, 'side'), first)
        const after = pinched(
          { view, fingers: [first, second] },
          [moved(first), moved(second)],
          'side',
          SIZES,
        )
        const at = toPx(paneTransform(after, 'side'), under)
        expect(at.xPx).toBeCloseTo(moved(first).xPx, 4)
        expect(at.yPx).toBeCloseTo(moved(first).yPx, 4)
      }),
    )
  })

  it('only pans while both fingers are on one spot', () => {
    const view: SharedView = { pxPerMm: 1, originXPx: 0, originYPx: { side: 0, top: 0 } }
    const spot = { xPx: 10, yPx: 10 }
    const to = { xPx: 30, yPx: 15 }
    expect(pinched({ view, fingers: [spot, spot] }, [to, to], 'side', SIZES)).toEqual(
      panned(view, 'side', { xPx: 20, yPx: 5 }),
    )
  })
})

const CAR: PaneBounds = {
  side: { min: { uMm: -100, vMm: -50 }, max: { uMm: 2000, vMm: 1400 } },
  top: { min: { uMm: -100, vMm: -700 }, max: { uMm: 2100, vMm: 700 } },
}

describe('fittedView', () => {
  it('shows everything of both elevations and touches the margin somewhere', () => {
    const view = fittedView(CAR, SIZES)
    for (const pane of ['side', 'top'] as const) {
      const box = visibleBox(paneTransform(view, pane), SIZES[pane])
      expect(box.min.uMm).toBeLessThanOrEqual(CAR[pane].min.uMm)
      expect(box.max.uMm).toBeGreaterThanOrEqual(CAR[pane].max.uMm)
      expect(box.min.vMm).toBeLessThanOrEqual(CAR[pane].min.vMm)
      expect(box.max.vMm).toBeGreaterThanOrEqual(CAR[pane].max.vMm)
    }
    // The tightest of the four: the top elevation's 1400 mm in 300 px less 2 × 20 px.
    expect(view.pxPerMm).toBeCloseTo(260 / 1400, 9)
  })

  it('fits one elevation alone as large as it can', () => {
    const view = fittedView(CAR, { side: SIZES.side })
    // 1450 mm high in 400 px less 40 px; the 2100 mm wide would allow 0.41.
    expect(view.pxPerMm).toBeCloseTo(360 / 1450, 9)
    const middle = toPx(paneTransform(view, 'side'), { uMm: 950, vMm: 675 })
    expect(middle.xPx).toBeCloseTo(450, 9)
    expect(middle.yPx).toBeCloseTo(200, 9)
  })
})

describe('resizedView', () => {
  it('keeps the middle of each stage in the middle', () => {
    fc.assert(
      fc.property(sharedView, elevation, (view, pane) => {
        const after = { side: { widthPx: 500, heightPx: 640 }, top: { widthPx: 500, heightPx: 222 } }
        const middle = { xPx: SIZES[pane].widthPx / 2, yPx: SIZES[pane].heightPx / 2 }
        const inMiddle = toMm(paneTransform(view, pane), middle)
        const at = toPx(paneTransform(resizedView(view, SIZES, after), pane), inMiddle)
        expect(at.xPx).toBeCloseTo(250, 5)
        expect(at.yPx).toBeCloseTo(after[pane].heightPx / 2, 5)
      }),
    )
  })
})

describe('isAnotherDrawing', () => {
  const moved = (byMm: number): PaneBounds['side'] => ({
    min: CAR.side.min,
    max: { ...CAR.side.max, uMm: CAR.side.max.uMm + byMm },
  })

  it('is one more than a third of the extent away, not a third', () => {
    expect(isAnotherDrawing(CAR.side, moved(700))).toBe(false) // 2100 / 3
    expect(isAnotherDrawing(CAR.side, moved(700.1))).toBe(true)
  })
})
