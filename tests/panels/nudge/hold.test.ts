import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { handleById } from '../../../src/domain/layout/edit/handles'
import { Hold } from '../../../src/panels/nudge/hold'
import { HOLD_DELAY_MS } from '../../../src/panels/nudge/holdRate'
import { type AppStore, createAppStore } from '../../../src/state/store'
import { exampleLayout } from '../../support/exampleLayouts'

const TAB = 'anchor:driver:driver-lap-left'
const UP = { key: 'zMm', byMm: 1 } as const

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

const opened = (): AppStore => createAppStore(exampleLayout('rock-buggy.layout.json'))

const heightOf = ({ state }: AppStore): number => {
  const handle = handleById(state.getState().layout, TAB)
  if (handle === null) throw new Error(`no ${TAB}`)
  return handle.point.zMm
}

describe('Hold', () => {
  it('is one step, and one to undo, when it is let go at once', () => {
    const store = opened()
    const before = heightOf(store)
    new Hold(store, TAB, UP).end()
    vi.advanceTimersByTime(10_000)
    expect(heightOf(store)).toBe(before + 1)
    store.actions.undo()
    expect(heightOf(store)).toBe(before)
    expect(store.state.getState().history.past).toHaveLength(0)
  })

  it('goes on ever faster while it is held, all of it one step to undo', () => {
    const store = opened()
    const before = heightOf(store)
    const hold = new Hold(store, TAB, UP)
    vi.advanceTimersByTime(HOLD_DELAY_MS - 1)
    expect(heightOf(store)).toBe(before + 1)
    vi.advanceTimersByTime(1)
    expect(heightOf(store)).toBe(before + 2)
    vi.advanceTimersByTime(1000)
    const early = heightOf(store)
    vi.advanceTimersByTime(1000)
    expect(heightOf(store) - early).toBeGreaterThan(early - before)
    hold.end()
    const reached = heightOf(store)
    vi.advanceTimersByTime(10_000)
    expect(heightOf(store)).toBe(reached)
    expect(store.state.getState().history.past).toHaveLength(1)
  })

  it('stops where something else calls the move off, and ends no gesture but its own', () => {
    const store = opened()
    const before = heightOf(store)
    const hold = new Hold(store, TAB, UP)
    vi.advanceTimersByTime(2000)
    store.actions.cancelGesture()
    vi.advanceTimersByTime(2000)
    expect(heightOf(store)).toBe(before)
    store.actions.beginGesture('Move something else')
    hold.end()
    expect(store.state.getState().gesture?.label).toBe('Move something else')
  })

  it('does nothing for a part that there is not', () => {
    const store = opened()
    const { layout } = store.state.getState()
    new Hold(store, 'anchor:driver:nobody', UP).end()
    expect(store.state.getState().layout).toBe(layout)
    expect(store.state.getState().gesture).toBeNull()
  })
})
