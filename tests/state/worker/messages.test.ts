import { describe, expect, it } from 'vitest'
import { answerer } from '../../../src/state/worker/answering'
import { pageWorker } from '../../../src/state/worker/pageWorker'
import type { Said } from '../../../src/state/worker/workerMessages'

describe('answerer', () => {
  const saidOf = (work: (question: number, report: (done: number, total: number) => void) => number) => {
    const said: Said<number>[] = []
    const hear = answerer(work, (words) => said.push(words))
    return { said, hear }
  }

  it('says progress and the answer under the number of the question', () => {
    const { said, hear } = saidOf((question, report) => {
      report(1, 2)
      return question + 1
    })
    hear({ id: 7, question: 41 })
    hear({ id: 8, question: 1 })
    expect(said).toEqual([
      { kind: 'progress', id: 7, done: 1, total: 2 },
      { kind: 'answer', id: 7, answer: 42 },
      { kind: 'progress', id: 8, done: 1, total: 2 },
      { kind: 'answer', id: 8, answer: 2 },
    ])
  })

  it('says what went wrong, and answers the next question', () => {
    const { said, hear } = saidOf((question) => {
      if (question === 0) throw new Error('nothing to divide by')
      return 1 / question
    })
    hear({ id: 1, question: 0 })
    hear({ id: 2, question: 2 })
    expect(said).toEqual([
      { kind: 'failed', id: 1, message: 'nothing to divide by' },
      { kind: 'answer', id: 2, answer: 0.5 },
    ])
  })
})

/** As much of the browser's worker as is used. */
class BrowserWorker extends EventTarget {
  readonly posted: unknown[] = []
  isTerminated = false
  postMessage(message: unknown): void {
    this.posted.push(message)
  }
  terminate(): void {
    this.isTerminated = true
  }
}

describe('pageWorker', () => {
  const opened = () => {
    const worker = new BrowserWorker()
    const heard: unknown[] = []
    const died: string[] = []
    const handle = pageWorker<string, number>(() => worker as unknown as Worker)(
      (said) => heard.push(said),
      (message) => died.push(message),
    )
    return { worker, heard, died, handle }
  }

  it('passes questions and words on, and stops the worker for good', () => {
    const { worker, heard, handle } = opened()
    handle.ask({ id: 1, question: 'a' })
    expect(worker.posted).toEqual([{ id: 1, question: 'a' }])
    worker.dispatchEvent(new MessageEvent('message', { data: { kind: 'answer', id: 1, answer: 2 } }))
    expect(heard).toEqual([{ kind: 'answer', id: 1, answer: 2 }])
    handle.stop()
    expect(worker.isTerminated).toBe(true)
  })

  it.each([
    { name: 'an error with words', message: 'out of memory', says: 'out of memory' },
    { name: 'a file that cannot be had', message: undefined, says: 'could not be loaded' },
    { name: 'an error with empty words', message: '', says: 'could not be loaded' },
  ])('says that it is dead: $name', ({ message, says }) => {
    const { worker, died } = opened()
    worker.dispatchEvent(Object.assign(new Event('error'), message === undefined ? {} : { message }))
    expect(died).toEqual([expect.stringContaining(says)])
  })

  it('takes an answer that cannot be read for death', () => {
    const { worker, died } = opened()
    worker.dispatchEvent(new Event('messageerror'))
    expect(died).toHaveLength(1)
  })
})
