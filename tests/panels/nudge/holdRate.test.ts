import { describe, expect, it } from 'vitest'
import { HOLD_DELAY_MS, pauseAfterMs } from '../../../src/panels/nudge/holdRate'

describe('pauseAfterMs', () => {
  it('waits longest after the first step, so that a press is one step', () => {
    expect(pauseAfterMs(1)).toBe(HOLD_DELAY_MS)
    for (let steps = 2; steps < 100; steps += 1) expect(pauseAfterMs(steps)).toBeLessThan(HOLD_DELAY_MS)
  })

  it('never waits longer than before, and gets faster', () => {
    for (let steps = 2; steps < 100; steps += 1)
      expect(pauseAfterMs(steps)).toBeLessThanOrEqual(pauseAfterMs(steps - 1))
    expect(pauseAfterMs(10)).toBeLessThan(pauseAfterMs(3) / 2)
  })

  it('leaves time to see every step: never more than twenty in a second', () => {
    for (const steps of [10, 100, 10_000]) expect(pauseAfterMs(steps)).toBeGreaterThanOrEqual(1000 / 20)
  })
})
