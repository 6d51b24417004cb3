import { describe, expect, it } from 'vitest'
import type { News } from '../../../src/state/worker/workerMessages'
import { createWorkerPool } from '../../../src/state/worker/workerPool'
import { fakeWorkers, nth } from './fakeWorkers'

const fakePool = (size: number) => {
  const { open, workers } = fakeWorkers<string, number>()
  const heard: [string, News<number>][] = []
  const pool = createWorkerPool(open, (question, news) => heard.push([question, news]), size)
  return { pool, workers, heard }
}

describe('createWorkerPool', () => {
  it('works on as many questions at once as it has workers, and opens none that it does not need', () => {
    const { pool, workers } = fakePool(3)
    expect(workers).toHaveLength(0)
    pool.start('a')
    expect(workers).toHaveLength(1)
    pool.start('b')
    expect(pool.hasIdle()).toBe(true)
    pool.start('c')
    expect(workers).toHaveLength(3)
    expect(pool.hasIdle()).toBe(false)
    expect(pool.jobs()).toEqual(['a', 'b', 'c'])
    expect(() => pool.start('d')).toThrow('all 3 workers are busy')
  })

  it('hears answers in whatever order they come, each to its own question, and asks the same workers again', () => {
    const { pool, workers, heard } = fakePool(2)
    pool.start('a')
    pool.start('b')
    nth(workers, 1).say({ kind: 'answer', answer: 2 })
    expect(pool.jobs()).toEqual(['a'])
    pool.start('c')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    nth(workers, 1).say({ kind: 'answer', answer: 3 })
    expect(workers).toHaveLength(2)
    expect(heard).toEqual([
      ['b', { kind: 'answer', answer: 2 }],
      ['a', { kind: 'answer', answer: 1 }],
      ['c', { kind: 'answer', answer: 3 }],
    ])
  })

  it('tells of one that dies, and goes on with the others and with a new one in its stead', () => {
    const { pool, workers, heard } = fakePool(2)
    pool.start('a')
    pool.start('b')
    nth(workers, 0).die('out of memory')
    expect(heard).toEqual([['a', { kind: 'failed', message: 'out of memory' }]])
    expect(pool.jobs()).toEqual(['b'])
    pool.start('a')
    expect(workers).toHaveLength(3)
    nth(workers, 1).say({ kind: 'answer', answer: 2 })
    expect(heard.at(-1)).toEqual(['b', { kind: 'answer', answer: 2 }])
  })

  it('drops everything when it is closed, idle workers too', () => {
    const { pool, workers, heard } = fakePool(2)
    pool.start('a')
    pool.start('b')
    nth(workers, 0).say({ kind: 'answer', answer: 1 })
    pool.close()
    expect(workers.map(({ isStopped }) => isStopped)).toEqual([true, true])
    nth(workers, 1).say({ kind: 'answer', answer: 2 })
    expect(heard).toHaveLength(1)
  })
})
