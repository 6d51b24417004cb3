import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { addTapePoint } from '../../../src/domain/layout/edit/changeTapePoints'
import { parseLayout } from '../../../src/domain/layout/document/parseLayout'
import { createAppStore } from '../../../src/state/store'
import { createTracing, tapeTargetId, tracedLine } from '../../../src/state/trace/trace'

const bench = (layout: Layout = emptyLayout()) => ({
  store: createAppStore(layout),
  tracing: createTracing(),
})

describe('tracing a tube', () => {
  it('is one undo step, on whole mm, each point with the y that was typed before it', () => {
    const { store, tracing } = bench()
    const before = store.state.getState().layout
    tracing.startTube(store, 'side')
    tracing.change({ acrossMm: -420.5, outsideDiameterMm: 44.5, wallMm: 3 })
    tracing.tap(store, 'side', { uMm: 100.4, vMm: 300.6 })
    tracing.tap(store, 'side', { uMm: 500.1, vMm: 900.2 })
    tracing.change({ acrossMm: -300 })
    tracing.tap(store, 'side', { uMm: 900, vMm: 950 })
    expect(store.state.getState().layout).toBe(before)
    expect(tracedLine(tracing.state.getState(), 'side')).toEqual([
      { uMm: 100, vMm: 301 },
      { uMm: 500, vMm: 900 },
      { uMm: 900, vMm: 950 },
    ])
    tracing.finish(store)
    const { layout, history } = store.state.getState()
    expect(layout.tubes.at(-1)).toMatchObject({
      name: 'Traced cage tube',
      role: 'cage',
      outsideDiameterMm: 44.5,
      wallMm: 3,
      points: [
        { xMm: 100, yMm: -420.5, zMm: 301 },
        { xMm: 500, yMm: -420.5, zMm: 900 },
        { xMm: 900, yMm: -300, zMm: 950 },
      ],
    })
    expect(parseLayout(layout).ok).toBe(true)
    expect(history.past).toHaveLength(1)
    store.actions.undo()
    expect(store.state.getState().layout).toBe(before)
    expect(tracing.state.getState()).toEqual({ kind: 'off' })
  })

  it('from above takes y from the tap and z as typed', () => {
    const { store, tracing } = bench()
    tracing.startTube(store, 'top')
    tracing.change({ acrossMm: 610 })
    tracing.tap(store, 'top', { uMm: 1, vMm: -450 })
    tracing.tap(store, 'top', { uMm: 1, vMm: 450 })
    tracing.finish(store)
    expect(store.state.getState().layout.tubes.at(-1)?.points).toEqual([
      { xMm: 1, yMm: -450, zMm: 610 },
      { xMm: 1, yMm: 450, zMm: 610 },
    ])
  })

  it('goes to whole sixteenths where the shop works in inches', () => {
    const inches = { ...emptyLayout(), units: { ...emptyLayout().units, length: 'in' as const } }
    const { store, tracing } = bench(inches)
    tracing.startTube(store, 'side')
    // 1 in is 25.4 mm: 25.9 mm is nearest to 16/16 in, 26.3 mm to 17/16 in, 26.9875 mm.
    tracing.tap(store, 'side', { uMm: 25.9, vMm: 26.3 })
    const [point] = tracedLine(tracing.state.getState(), 'side')
    expect(point?.uMm).toBeCloseTo(25.4, 9)
    expect(point?.vMm).toBeCloseTo(26.9875, 9)
  })

  it('takes the last point back, passes over a tap on the last one, and makes nothing of one point', () => {
    const { store, tracing } = bench()
    const before = store.state.getState().layout
    tracing.startTube(store, 'side')
    for (const uMm of [0, 0.2, 50]) tracing.tap(store, 'side', { uMm, vMm: 0 })
    expect(tracedLine(tracing.state.getState(), 'side')).toHaveLength(2)
    tracing.removeLast()
    tracing.finish(store)
    expect(store.state.getState().layout).toBe(before)
    expect(tracing.state.getState().kind).toBe('tube')
    tracing.callOff()
    expect(tracing.state.getState().kind).toBe('off')
    expect(store.state.getState().layout).toBe(before)
  })

  it('hears only the elevation it was begun on', () => {
    const { store, tracing } = bench()
    tracing.startTube(store, 'side')
    tracing.tap(store, 'top', { uMm: 5, vMm: 5 })
    expect(tracedLine(tracing.state.getState(), 'side')).toEqual([])
  })
})

describe('setting a point', () => {
  it('puts a part where somebody taps, as one undo step, and leaves the third coordinate', () => {
    const { store, tracing } = bench()
    const place = store.state.getState().layout.places[0]
    const yMm = place?.seat.hipPoint.yMm
    tracing.startPoint(store, `hip:${place?.id ?? ''}`)
    tracing.tap(store, 'side', { uMm: 321.2, vMm: 123.4 })
    expect(store.state.getState().layout.places[0]?.seat.hipPoint).toEqual({ xMm: 321, yMm, zMm: 123 })
    expect(store.state.getState().history.past).toHaveLength(1)
    expect(tracing.state.getState().kind).toBe('off')
    // Beside 0 on either side is 0, never −0.
    tracing.startPoint(store, `hip:${place?.id ?? ''}`)
    tracing.tap(store, 'side', { uMm: -0.2, vMm: 0.2 })
    expect(store.state.getState().layout.places[0]?.seat.hipPoint).toEqual({ xMm: 0, yMm, zMm: 0 })
    store.actions.undo()
    // A second tap sets nothing.
    tracing.tap(store, 'side', { uMm: 0, vMm: 0 })
    expect(store.state.getState().history.past).toHaveLength(1)
  })

  it('puts a tape point, from above too', () => {
    const { store, tracing } = bench(addTapePoint(emptyLayout()))
    tracing.startPoint(store, tapeTargetId('tape-point-1'))
    tracing.tap(store, 'top', { uMm: 10, vMm: -20 })
    expect(store.state.getState().layout.tapePoints?.[0]?.point).toEqual({ xMm: 10, yMm: -20, zMm: 0 })
  })

  it('of a part that is gone sets nothing', () => {
    const { store, tracing } = bench()
    const before = store.state.getState().layout
    tracing.startPoint(store, 'anchor:nowhere:nothing')
    tracing.tap(store, 'side', { uMm: 0, vMm: 0 })
    expect(store.state.getState().layout).toBe(before)
    expect(tracing.state.getState().kind).toBe('off')
  })
})

describe('a trace that is begun', () => {
  it('goes when another layout is opened, so that its points never come into that one', () => {
    const { store, tracing } = bench()
    tracing.startTube(store, 'side')
    tracing.tap(store, 'side', { uMm: 100, vMm: 300 })
    tracing.tap(store, 'side', { uMm: 500, vMm: 900 })
    store.actions.openLayout(emptyLayout(), 'Open another')
    expect(tracing.state.getState()).toEqual({ kind: 'off' })
    const { layout } = store.state.getState()
    tracing.finish(store)
    expect(store.state.getState().layout).toBe(layout)
  })

  it('of a part goes too', () => {
    const { store, tracing } = bench()
    tracing.startPoint(store, `hip:${store.state.getState().layout.places[0]?.id ?? ''}`)
    store.actions.openLayout(emptyLayout(), 'Open another')
    const { layout } = store.state.getState()
    tracing.tap(store, 'side', { uMm: 1, vMm: 2 })
    expect(store.state.getState().layout).toBe(layout)
  })

  it('stays while the same layout is changed or kept in another place', () => {
    const { store, tracing } = bench()
    tracing.startTube(store, 'side')
    store.actions.edit('Name', (layout) => ({ ...layout, datum: 'Bolt' }))
    store.actions.moveTo('elsewhere')
    expect(tracing.state.getState().kind).toBe('tube')
    store.actions.openLayout(emptyLayout(), 'Open another')
    expect(tracing.state.getState().kind).toBe('off')
  })
})
