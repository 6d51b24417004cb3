import { describe, expect, it } from 'vitest'
import { type FitBounds, freshView, heldView } from '../../src/elevation/heldView'
import { paneSizes } from '../../src/elevation/paneSizes'
import type { PaneBounds } from '../../src/elevation/viewTransform'
import { wheelFactor } from '../../src/elevation/wheelFactor'

const bounds = (sideMm: number, topMm: number): PaneBounds => ({
  side: { min: { uMm: 0, vMm: 0 }, max: { uMm: 2000, vMm: sideMm } },
  top: { min: { uMm: 0, vMm: -topMm / 2 }, max: { uMm: 2000, vMm: topMm / 2 } },
})
const ROOM = { widthPx: 800, heightPx: 601 }

describe('paneSizes', () => {
  it('shares the height as the two elevations need it, in whole px that add up', () => {
    const sizes = paneSizes(ROOM, 'both', bounds(1500, 1000))
    expect(sizes.top).toEqual({ widthPx: 800, heightPx: 240 }) // 601 · 1000/2500 = 240.4
    expect(sizes.side).toEqual({ widthPx: 800, heightPx: 361 })
  })

  it('squeezes neither elevation below its least share', () => {
    expect(paneSizes(ROOM, 'both', bounds(5000, 10)).top?.heightPx).toBe(216) // 601 · 0.36 = 216.4
    expect(paneSizes(ROOM, 'both', bounds(10, 5000)).side?.heightPx).toBe(216) // 601 − round(601 · 0.64 = 384.6)
  })

  it('gives the whole room to a single elevation', () => {
    expect(paneSizes(ROOM, 'top', bounds(1, 1))).toEqual({ top: ROOM })
  })
})

describe('heldView', () => {
  const car = bounds(1500, 1000)
  const first: FitBounds = { placeId: 'driver', place: bounds(900, 600), car }
  const sizes = paneSizes(ROOM, 'both', car)
  const fitted = freshView(first, sizes, 'place')
  const onCar = freshView(first, sizes, 'car')
  const own = { ...fitted, fitted: null }

  it('begins with the place, drawn larger than the whole car would be', () => {
    expect(heldView(null, first, sizes)).toEqual(fitted)
    expect(fitted.view.pxPerMm).toBeGreaterThan(onCar.view.pxPerMm)
  })

  it('is the same object when nothing changed', () => {
    expect(heldView(fitted, first, sizes)).toBe(fitted)
  })

  it('leaves the view alone after an ordinary edit', () => {
    const edited = { ...first, place: bounds(920, 600), car: bounds(1520, 1000) }
    expect(heldView(fitted, edited, sizes).view).toBe(fitted.view)
    expect(heldView(onCar, edited, sizes).view).toBe(onCar.view)
  })

  it('fits another car as the one before was fitted, the whole of it when the view was chosen by hand', () => {
    const other = { ...first, car: bounds(4000, 1000) }
    expect(heldView(fitted, other, sizes)).toEqual(freshView(other, sizes, 'place'))
    expect(heldView(onCar, other, sizes)).toEqual(freshView(other, sizes, 'car'))
    expect(heldView(own, other, sizes)).toEqual(freshView(other, sizes, 'car'))
  })

  it('goes along to another place only when fitted to the one before', () => {
    const other: FitBounds = { ...first, placeId: 'co-driver', place: bounds(920, 600) }
    expect(heldView(fitted, other, sizes)).toEqual(freshView(other, sizes, 'place'))
    expect(heldView(onCar, other, sizes).view).toBe(onCar.view)
    expect(heldView(own, other, sizes).view).toBe(own.view)
  })

  it('fits again on another page size only while nobody has zoomed or panned', () => {
    const larger = paneSizes({ widthPx: 1000, heightPx: 700 }, 'both', car)
    expect(heldView(fitted, first, larger)).toEqual(freshView(first, larger, 'place'))
    expect(heldView(onCar, first, larger)).toEqual(freshView(first, larger, 'car'))
    expect(heldView(own, first, larger).view.pxPerMm).toBe(fitted.view.pxPerMm)
    expect(heldView(own, first, larger).view.originXPx).toBe(fitted.view.originXPx + 100)
  })

  it('fits again when other elevations are shown', () => {
    const alone = paneSizes(ROOM, 'side', car)
    expect(heldView(own, first, alone)).toEqual(freshView(first, alone, 'place'))
    expect(heldView(onCar, first, alone)).toEqual(freshView(first, alone, 'car'))
  })
})

describe('wheelFactor', () => {
  it('zooms in when turned away, out when turned back, and the two undo each other', () => {
    const away = wheelFactor({ deltaY: -100, deltaMode: 0, ctrlKey: false })
    const back = wheelFactor({ deltaY: 100, deltaMode: 0, ctrlKey: false })
    expect(away).toBeGreaterThan(1)
    expect(away * back).toBeCloseTo(1, 12)
  })

  it('takes lines and pages and never runs away', () => {
    const line = wheelFactor({ deltaY: -1, deltaMode: 1, ctrlKey: false })
    expect(line).toBeCloseTo(wheelFactor({ deltaY: -16, deltaMode: 0, ctrlKey: false }), 12)
    const wild = wheelFactor({ deltaY: -1e9, deltaMode: 2, ctrlKey: false })
    expect(wild).toBe(wheelFactor({ deltaY: -400, deltaMode: 0, ctrlKey: false }))
  })
})
