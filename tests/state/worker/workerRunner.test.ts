import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { News } from '../../../src/state/worker/workerMessages'
import { createWorkerRunner } from '../../../src/state/worker/workerRunner'
import { fakeWorkers, nth } from './fakeWorkers'

type Options = Parameters<typeof createWorkerRunner>[2]

const QUIET_MS = 150

/** A runner of fake workers, and all that it has told. */
const fakeRunner = (options?: Options) => {
  const { open, workers } = fakeWorkers<string, number>()
  const heard: [string, News<number>][] = []
  const runner = createWorkerRunner(open, (question, news) => heard.push([question, news]), options)
  return { runner, workers, heard }
}

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('createWorkerRunner', () => {
  it('opens no worker before there is a question', () => {
    const { workers, runner } = fakeRunner({ keepsWorker: true })
    expect(workers).toHaveLength(0)
    expect(runner.job()).toBeNull()
  })

  it('tells progress, then the answer, and has no job any more', () => {
    const { runner, workers, heard } = fakeRunner()
    runner.start('a')
    expect(runner.job()).toBe('a')
    nth(workers, 0).say({ kind: 'progress', done: 1, total: 4 })
    expect(runner.job()).toBe('a')
    nth(workers, 0).say({ kind: 'answer', answer: 7 })
    expect(runner.job()).toBeNull()
    expect(heard).toEqual([
      ['a', { kind: 'progress', done: 1, total: 4 }],
      ['a', { kind: 'answer', answer: 7 }],
    ])
  })

  it('gives each question a worker of its own, which is stopped at its last words', () => {
    const { runner, workers } = fakeRunner()
    runner.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    expect(nth(workers, 0).isStopped).toBe(true)
    runner.start('b')
    expect(workers).toHaveLength(2)
    expect(nth(workers, 1).asked.map(({ question }) => question)).toEqual(['b'])
  })

  it('asks a kept worker again', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    for (const [question, answer] of [
      ['a', 1],
      ['b', 2],
    ] as const) {
      runner.start(question)
      nth(workers, 0).say({ kind: 'answer', answer })
    }
    expect(workers).toHaveLength(1)
    expect(nth(workers, 0).isStopped).toBe(false)
    expect(heard.map(([question]) => question)).toEqual(['a', 'b'])
  })

  it('breaks a question off for a newer one, and hears no more of it', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    runner.start('b')
    expect(nth(workers, 0).isStopped).toBe(true)
    expect(runner.job()).toBe('b')
    nth(workers, 0).say({ kind: 'progress', done: 1, total: 2 })
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    nth(workers, 0).die('too late')
    expect(heard).toEqual([])
    expect(runner.job()).toBe('b')
    nth(workers, 1).say({ kind: 'answer', answer: 2 })
    expect(heard).toEqual([['b', { kind: 'answer', answer: 2 }]])
  })

  it('takes no answer to another question for the one that is open', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    const { id } = nth(nth(workers, 0).asked, 0)
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    runner.start('b')
    nth(workers, 0).hear({ kind: 'answer', answer: 1, id })
    expect(heard).toHaveLength(1)
    expect(runner.job()).toBe('b')
  })

  it('is silent once dropped, and can start again', () => {
    const { runner, workers, heard } = fakeRunner()
    runner.drop()
    runner.start('a')
    runner.drop()
    expect(runner.job()).toBeNull()
    expect(nth(workers, 0).isStopped).toBe(true)
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    expect(heard).toEqual([])
    runner.start('a')
    nth(workers, 1).say({ kind: 'answer', answer: 1 })
    expect(heard).toEqual([['a', { kind: 'answer', answer: 1 }]])
  })

  it('keeps an idle worker at a drop, and stops it when it is closed', () => {
    const { runner, workers } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    runner.drop()
    expect(nth(workers, 0).isStopped).toBe(false)
    runner.close()
    expect(nth(workers, 0).isStopped).toBe(true)
    runner.start('b')
    expect(workers).toHaveLength(2)
  })

  it('tells what a dead worker died of, and opens another one for the next question', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    nth(workers, 0).die('out of memory')
    expect(heard).toEqual([['a', { kind: 'failed', message: 'out of memory' }]])
    expect(runner.job()).toBeNull()
    runner.start('a')
    expect(workers).toHaveLength(2)
    nth(workers, 1).say({ kind: 'answer', answer: 1 })
    expect(heard).toHaveLength(2)
  })

  it('says nothing of a worker that dies while it is idle, and does not ask it again', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    nth(workers, 0).die('gone')
    expect(heard).toHaveLength(1)
    runner.start('b')
    expect(nth(workers, 0).asked).toHaveLength(1)
    expect(nth(workers, 1).asked.map(({ question }) => question)).toEqual(['b'])
  })

  it('tells what a worker says went wrong, and asks that worker again where it is kept', () => {
    const { runner, workers, heard } = fakeRunner({ keepsWorker: true })
    runner.start('a')
    nth(workers, 0).say({ kind: 'failed', message: 'no such rule set' })
    expect(heard).toEqual([['a', { kind: 'failed', message: 'no such rule set' }]])
    runner.start('b')
    expect(workers).toHaveLength(1)
  })

  it.each([
    { what: 'opened', isAsked: false },
    { what: 'asked', isAsked: true },
  ])('tells of a worker that cannot be $what, and tries with a new one when started again', ({ isAsked }) => {
    const heard: News<number>[] = []
    let isBroken = true
    const { open, workers } = fakeWorkers<string, number>()
    const runner = createWorkerRunner<string, number>(
      (hear, fail) => {
        if (isBroken && !isAsked) throw new Error('forbidden here')
        const worker = open(hear, fail)
        if (!isBroken) return worker
        return {
          ...worker,
          ask: () => {
            throw new Error('forbidden here')
          },
        }
      },
      (_, news) => heard.push(news),
      { keepsWorker: true },
    )
    runner.start('a')
    expect(heard).toEqual([{ kind: 'failed', message: 'forbidden here' }])
    expect(runner.job()).toBeNull()
    expect(workers.every(({ isStopped }) => isStopped)).toBe(true)
    isBroken = false
    runner.start('a')
    workers.at(-1)?.say({ kind: 'answer', answer: 1 })
    expect(heard.at(-1)).toEqual({ kind: 'answer', answer: 1 })
  })

  it('may be started again by whoever hears its last words', () => {
    const { open, workers } = fakeWorkers<string, number>()
    const runner = createWorkerRunner(open, (question) => {
      if (question === 'a') runner.start('b')
    })
    runner.start('a')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    expect(runner.job()).toBe('b')
    expect(nth(workers, 1).asked.map(({ question }) => question)).toEqual(['b'])
    expect(nth(workers, 1).isStopped).toBe(false)
  })
})

describe('a runner that waits after breaking off', () => {
  it('starts at once when nothing was broken off', () => {
    const { runner, workers } = fakeRunner({ quietMs: QUIET_MS })
    runner.start('a')
    expect(workers).toHaveLength(1)
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    runner.start('b')
    expect(workers).toHaveLength(2)
  })

  it('opens one worker, for the last of many questions in a row', () => {
    const { runner, workers } = fakeRunner({ quietMs: QUIET_MS })
    runner.start('a')
    for (const question of ['b', 'c', 'd']) {
      runner.start(question)
      expect(runner.job()).toBe(question)
      vi.advanceTimersByTime(QUIET_MS - 1)
    }
    expect(workers).toHaveLength(1)
    vi.advanceTimersByTime(1)
    expect(workers).toHaveLength(2)
    expect(nth(workers, 1).asked.map(({ question }) => question)).toEqual(['d'])
  })

  it('waits too after a drop, and never opens a worker for what was dropped while it waited', () => {
    const { runner, workers } = fakeRunner({ quietMs: QUIET_MS })
    runner.start('a')
    runner.drop()
    runner.start('b')
    expect(workers).toHaveLength(1)
    runner.drop()
    expect(runner.job()).toBeNull()
    vi.runAllTimers()
    expect(workers).toHaveLength(1)
  })

  it('hears nothing of what was broken off while the next question waits', () => {
    const { runner, workers, heard } = fakeRunner({ quietMs: QUIET_MS })
    runner.start('a')
    runner.start('b')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    expect(heard).toEqual([])
    expect(runner.job()).toBe('b')
  })

  it('starts at once again after it has waited once', () => {
    const { runner, workers } = fakeRunner({ quietMs: QUIET_MS })
    runner.start('a')
    runner.start('b')
    vi.runAllTimers()
    nth(workers, 1).say({ kind: 'answer', answer: 1 })
    runner.start('c')
    expect(workers).toHaveLength(3)
  })
})
