import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/domain/result'
import { createInTurn } from '../../../src/state/compare/inTurn'
import { fakeWorkers, nth } from '../worker/fakeWorkers'

const inTurn = () => {
  const { open, workers } = fakeWorkers<string, Result<number, string>>()
  const run = createInTurn<string, number, string>(open, (a, b) => a === b)
  const now = () => run.state.getState()
  return { run, now, workers }
}

describe('questions in turn', () => {
  it('are asked one after the other, each with its progress, and keep their answers', () => {
    const { run, now, workers } = inTurn()
    run.want(['a', 'b', 'a'])
    expect(workers).toHaveLength(1)
    expect(now()).toMatchObject({ running: { question: 'a', done: 0 }, waiting: ['b'] })
    nth(workers, 0).say({ kind: 'progress', done: 60, total: 1200 })
    expect(now().running).toEqual({ question: 'a', done: 60, total: 1200 })
    nth(workers, 0).say({ kind: 'answer', answer: { ok: true, value: 1 } })
    expect(now()).toMatchObject({ running: { question: 'b' }, waiting: [] })
    nth(workers, 1).say({ kind: 'answer', answer: { ok: true, value: 2 } })
    expect(now().running).toBeNull()
    expect(now().answers).toEqual([
      { question: 'b', value: 2 },
      { question: 'a', value: 1 },
    ])
  })

  it('that are answered, or came to nothing, are not asked again by themselves', () => {
    const { run, now, workers } = inTurn()
    run.want(['a', 'b'])
    nth(workers, 0).say({ kind: 'answer', answer: { ok: false, error: 'no' } })
    nth(workers, 1).die('gone')
    expect(now().ended).toMatchObject([
      { question: 'a', kind: 'refused', problem: 'no' },
      { question: 'b', kind: 'failed' },
    ])
    run.want(['a', 'b'])
    expect(now().running).toBeNull()
    run.tryAgain(['b'])
    expect(now()).toMatchObject({ running: { question: 'b' }, ended: [{ question: 'a' }] })
  })

  it('that are no longer wanted are dropped, and one under way that still is goes on', () => {
    const { run, now, workers } = inTurn()
    run.want(['a', 'b', 'c'])
    run.want(['a', 'd'])
    expect(nth(workers, 0).isStopped).toBe(false)
    expect(now()).toMatchObject({ running: { question: 'a' }, waiting: ['d'] })
    run.want(['d'])
    expect(nth(workers, 0).isStopped).toBe(true)
    expect(now()).toMatchObject({ running: { question: 'd' }, waiting: [] })
    run.want([])
    expect(now().running).toBeNull()
    expect(nth(workers, 1).isStopped).toBe(true)
  })

  it('are all called off together', () => {
    const { run, now, workers } = inTurn()
    run.want(['a', 'b'])
    run.cancel()
    expect(nth(workers, 0).isStopped).toBe(true)
    expect(now()).toMatchObject({ running: null, waiting: [] })
    expect(now().ended.map(({ question, kind }) => [question, kind])).toEqual([
      ['a', 'cancelled'],
      ['b', 'cancelled'],
    ])
    run.cancel()
    expect(now().ended).toHaveLength(2)
  })
})
