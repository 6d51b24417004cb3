import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { Evaluation } from '../../../src/domain/layout/evaluate/evaluation'
import { answerEvaluation } from '../../../src/state/evaluation/answerEvaluation'
import type { EvaluationAnswer, EvaluationQuestion } from '../../../src/state/evaluation/evaluationMessages'
import { startCompleting } from '../../../src/state/evaluation/evaluationRunner'
import { whenComplete } from '../../../src/state/evaluation/whenComplete'
import {
  completeEvaluation,
  completionOf,
  currentEvaluation,
  movingEvaluation,
} from '../../../src/state/selectors'
import { createAppStore } from '../../../src/state/store'
import { exampleLayout } from '../../support/exampleLayouts'

const wrong: Layout = exampleLayout('everything-wrong.layout.json')
const raised =
  (byMm: number) =>
  (layout: Layout): Layout => ({
    ...layout,
    tubes: layout.tubes.map((tube) => ({
      ...tube,
      points: tube.points.map((point) => ({ ...point, zMm: point.zMm + byMm })),
    })),
  })

interface HeldWorker {
  readonly asked: EvaluationQuestion[]
  readonly hear: (answer: EvaluationAnswer) => void
  readonly fail: (message: string) => void
  isStopped: boolean
}

/** A store whose workers answer when the test says so; every answer goes the way of a message between threads. */
const heldStore = (layout = wrong) => {
  const store = createAppStore(layout)
  const workers: HeldWorker[] = []
  const stop = startCompleting(store, (hear, fail) => {
    const worker: HeldWorker = { asked: [], hear, fail, isStopped: false }
    workers.push(worker)
    return {
      ask: (question) => worker.asked.push(structuredClone(question)),
      stop: () => {
        worker.isStopped = true
      },
    }
  })
  const state = () => store.state.getState()
  /** The newest worker answers its last question. */
  const answer = (): void => {
    const worker = workers.at(-1)
    const question = worker?.asked.at(-1)
    if (worker === undefined || question === undefined) throw new Error('nothing was asked')
    worker.hear(structuredClone(answerEvaluation(question)))
  }
  return { store, state, workers, answer, stop }
}

const remedies = ({ places }: Evaluation): number =>
  places.flatMap(({ findings }) => findings.filter(({ remedy }) => remedy !== null)).length

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('startCompleting', () => {
  it('asks for the layout there is at once; until the answer all numbers are there but no remedy', () => {
    const { state, workers, answer } = heldStore()
    expect(workers[0]?.asked.map(({ layout }) => layout)).toEqual([wrong])
    expect(completionOf(state())).toBe('working')
    expect(completeEvaluation(state())).toBeNull()
    expect(currentEvaluation(state())).toEqual(evaluateLayout(wrong, { extent: 'what-moves' }))
    expect(remedies(currentEvaluation(state()))).toBe(0)
    answer()
    expect(completionOf(state())).toBe('ready')
    // The very numbers of the command line, which evaluates in one go.
    expect(currentEvaluation(state())).toEqual(evaluateLayout(wrong))
    expect(remedies(currentEvaluation(state()))).toBeGreaterThan(0)
  })

  it('leaves what is drawn the same object when the remedies come, so that nothing is drawn twice', () => {
    const { state, answer } = heldStore()
    const before = movingEvaluation(state())
    answer()
    expect(movingEvaluation(state())).toBe(before)
    expect(currentEvaluation(state()).places[0]?.sittings).toBe(before.places[0]?.sittings)
  })

  it('asks the same worker again while it is idle', () => {
    const { store, state, workers, answer } = heldStore()
    answer()
    store.actions.edit('Up', raised(5))
    expect(completionOf(state())).toBe('working')
    expect(workers).toHaveLength(1)
    expect(workers[0]?.asked[1]?.layout).toEqual(raised(5)(wrong))
    answer()
    expect(currentEvaluation(state())).toEqual(evaluateLayout(raised(5)(wrong)))
  })

  it('stops a busy worker at a newer edit, asks a new one for the newest alone, and hears nothing more of the old', () => {
    const { store, state, workers, answer } = heldStore()
    store.actions.edit('Up', raised(5))
    expect(workers[0]?.isStopped).toBe(true)
    store.actions.edit('Up', raised(5))
    store.actions.edit('Up', raised(5))
    expect(workers).toHaveLength(1)
    vi.runAllTimers()
    expect(workers).toHaveLength(2)
    expect(workers[1]?.asked.map(({ layout }) => layout)).toEqual([state().layout])
    const late = answerEvaluation({ id: workers[1]?.asked[0]?.id ?? 0, layout: wrong })
    workers[0]?.hear(late)
    workers[0]?.fail('too late')
    expect(completionOf(state())).toBe('working')
    answer()
    expect(currentEvaluation(state())).toEqual(evaluateLayout(state().layout))
  })

  it('takes no answer to another question than the last', () => {
    const { store, state, workers, answer } = heldStore()
    answer()
    store.actions.edit('Up', raised(5))
    workers[0]?.hear(answerEvaluation({ id: workers[0].asked[0]?.id ?? 0, layout: wrong }))
    expect(completionOf(state())).toBe('working')
  })

  it('works nothing out while a gesture runs, and drops what was under way', () => {
    const { store, state, workers, answer } = heldStore()
    store.actions.beginGesture('Move')
    expect(workers[0]?.isStopped).toBe(true)
    store.actions.dragTo(raised(3))
    expect(completionOf(state())).toBe('held')
    vi.runAllTimers()
    expect(workers).toHaveLength(1)
    store.actions.endGesture()
    expect(workers[1]?.asked[0]?.layout).toEqual(raised(3)(wrong))
    answer()
    expect(completionOf(state())).toBe('ready')
  })

  it('knows a layout that undo, redo or Escape brings back, without asking', () => {
    const { store, state, workers, answer } = heldStore()
    answer()
    const first = completeEvaluation(state())
    store.actions.edit('Up', raised(5))
    answer()
    const second = completeEvaluation(state())
    store.actions.undo()
    expect(completeEvaluation(state())).toBe(first)
    store.actions.redo()
    expect(completeEvaluation(state())).toBe(second)
    store.actions.beginGesture('Move')
    store.actions.dragTo(raised(3))
    expect(completeEvaluation(state())).toBeNull()
    expect(completionOf(state())).toBe('held')
    store.actions.cancelGesture()
    expect(completeEvaluation(state())).toBe(second)
    expect(workers[0]?.asked).toHaveLength(2)
  })

  it('goes the same way for a layout that is opened', () => {
    const { store, state, answer } = heldStore()
    answer()
    const opened = exampleLayout('rock-buggy.layout.json')
    store.actions.openLayout(opened, 'Open')
    expect(completionOf(state())).toBe('working')
    answer()
    expect(completeEvaluation(state())).toEqual(evaluateLayout(opened))
  })

  it('says what a worker died of, works it out on the page when asked to, and has the next layout done by a new worker', () => {
    const { store, state, workers, answer } = heldStore()
    workers[0]?.fail('out of memory')
    expect(completionOf(state())).toBe('failed')
    expect(state().completion).toMatchObject({ message: 'out of memory' })
    expect(currentEvaluation(state())).toEqual(evaluateLayout(wrong, { extent: 'what-moves' }))
    store.actions.completeHere()
    expect(completeEvaluation(state())).toEqual(evaluateLayout(wrong))
    store.actions.edit('Up', raised(5))
    expect(workers).toHaveLength(2)
    answer()
    expect(completionOf(state())).toBe('ready')
    store.actions.undo()
    expect(completionOf(state())).toBe('ready')
  })

  it('fails, and goes on, where no worker can be started at all', () => {
    const store = createAppStore(wrong)
    startCompleting(store, () => {
      throw new Error('workers are forbidden here')
    })
    expect(store.state.getState().completion).toMatchObject({
      kind: 'failed',
      message: 'workers are forbidden here',
    })
    store.actions.completeHere()
    expect(completionOf(store.state.getState())).toBe('ready')
  })

  it('stops the worker when somebody who cannot wait has worked it out on the page', () => {
    const { store, state, workers } = heldStore()
    store.actions.completeHere()
    const done = completeEvaluation(state())
    expect(workers[0]?.isStopped).toBe(true)
    workers[0]?.hear(answerEvaluation({ id: 1, layout: wrong }))
    expect(completeEvaluation(state())).toBe(done)
  })
})

describe('without a worker', () => {
  it('gives whoever reads everything at once', () => {
    const store = createAppStore(wrong)
    expect(completionOf(store.state.getState())).toBe('ready')
    expect(completeEvaluation(store.state.getState())).toEqual(evaluateLayout(wrong))
    store.actions.completeHere()
    expect(store.state.getState().completion).toEqual({ kind: 'direct' })
  })
})

describe('answerEvaluation', () => {
  it('answers what goes wrong too', () => {
    expect(answerEvaluation({ id: 7, layout: { ...wrong, ruleSetId: 'made-up' } })).toMatchObject({
      kind: 'failed',
      id: 7,
      message: expect.stringContaining('made-up'),
    })
  })
})

describe('whenComplete', () => {
  /** Whether a promise has come to its end once everything that can run has run. */
  const isSettled = async (promise: Promise<void>): Promise<boolean> => {
    let settled = false
    void promise.then(() => {
      settled = true
    })
    await vi.advanceTimersByTimeAsync(0)
    return settled
  }

  it('waits for the newest layout', async () => {
    const { store, answer } = heldStore()
    const waiting = whenComplete(store)
    expect(await isSettled(waiting)).toBe(false)
    store.actions.edit('Up', raised(5))
    await vi.advanceTimersByTimeAsync(1000)
    expect(await isSettled(waiting)).toBe(false)
    answer()
    expect(await isSettled(waiting)).toBe(true)
  })

  it('does on the page what the worker could not', async () => {
    const { store, state, workers } = heldStore()
    const waiting = whenComplete(store)
    workers[0]?.fail('gone')
    expect(await isSettled(waiting)).toBe(true)
    expect(completeEvaluation(state())).toEqual(evaluateLayout(wrong))
  })
})
