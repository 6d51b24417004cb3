import { describe, expect, it } from 'vitest'
import { err, ok, type Result } from '../../../src/domain/result'
import { createTask } from '../../../src/state/worker/task'
import { fakeWorkers, nth } from './fakeWorkers'

const fakeTask = () => {
  const { open, workers } = fakeWorkers<string, Result<number, 'no-tubes'>>()
  const task = createTask(open)
  return { task, workers, state: task.state.getState }
}

describe('createTask', () => {
  it('shows progress, then the answer to what was asked', () => {
    const { task, workers, state } = fakeTask()
    expect(state()).toEqual({ running: null, last: null, ended: null })
    task.start('a')
    expect(state().running).toEqual({ question: 'a', done: 0, total: 0 })
    nth(workers, 0).say({ kind: 'progress', done: 600, total: 1200 })
    expect(state().running).toEqual({ question: 'a', done: 600, total: 1200 })
    nth(workers, 0).say({ kind: 'answer', answer: ok(7) })
    expect(state()).toEqual({ running: null, last: { question: 'a', value: 7 }, ended: null })
    expect(nth(workers, 0).isStopped).toBe(true)
  })

  it('cancels at once, keeps the last answer and hears nothing more of what was cancelled', () => {
    const { task, workers, state } = fakeTask()
    task.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: ok(7) })
    task.start('b')
    expect(state().last?.value).toBe(7)
    task.cancel()
    expect(nth(workers, 1).isStopped).toBe(true)
    expect(state()).toEqual({
      running: null,
      last: { question: 'a', value: 7 },
      ended: { question: 'b', kind: 'cancelled' },
    })
    const before = state()
    nth(workers, 1).say({ kind: 'progress', done: 1, total: 2 })
    nth(workers, 1).say({ kind: 'answer', answer: ok(8) })
    nth(workers, 1).die('too late')
    expect(state()).toBe(before)
  })

  it('drops a running question for a new one, and forgets how the one before ended', () => {
    const { task, workers, state } = fakeTask()
    task.start('a')
    task.cancel()
    task.start('b')
    expect(state().ended).toBeNull()
    task.start('c')
    expect(nth(workers, 1).isStopped).toBe(true)
    nth(workers, 1).say({ kind: 'answer', answer: ok(1) })
    expect(state()).toEqual({ running: { question: 'c', done: 0, total: 0 }, last: null, ended: null })
  })

  it('says that a question was refused, and why', () => {
    const { task, workers, state } = fakeTask()
    task.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: err('no-tubes') })
    expect(state()).toEqual({
      running: null,
      last: null,
      ended: { question: 'a', kind: 'refused', problem: 'no-tubes' },
    })
  })

  it('says what a worker died of, and tries again when asked', () => {
    const { task, workers, state } = fakeTask()
    task.start('a')
    nth(workers, 0).die('no such file')
    expect(state()).toEqual({
      running: null,
      last: null,
      ended: { question: 'a', kind: 'failed', message: 'no such file' },
    })
    task.start('a')
    expect(state()).toEqual({ running: { question: 'a', done: 0, total: 0 }, last: null, ended: null })
    nth(workers, 1).say({ kind: 'answer', answer: ok(7) })
    expect(state().last).toEqual({ question: 'a', value: 7 })
  })

  it('fails in words where no worker can be started', () => {
    const task = createTask<string, number, never>(() => {
      throw new Error('workers are forbidden here')
    })
    task.start('a')
    expect(task.state.getState()).toEqual({
      running: null,
      last: null,
      ended: { question: 'a', kind: 'failed', message: 'workers are forbidden here' },
    })
  })

  it('has nothing to cancel when nothing runs', () => {
    const { task, state } = fakeTask()
    const before = state()
    task.cancel()
    expect(state()).toBe(before)
  })
})
