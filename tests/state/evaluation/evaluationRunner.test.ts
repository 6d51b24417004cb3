import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { evaluateLayout, layoutNumbers } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { ShownEvaluation } from '../../../src/domain/layout/evaluate/evaluation'
import { startCompleting } from '../../../src/state/evaluation/evaluationRunner'
import { whenComplete } from '../../../src/state/evaluation/whenComplete'
import {
  completeEvaluation,
  completionOf,
  currentEvaluation,
  movingEvaluation,
  waitingFor,
} from '../../../src/state/selectors'
import { createAppStore } from '../../../src/state/store'
import { answerTo, wrong, raised, heldStore, firstAsked, findingsIn } from './heldStore'

const remedies = ({ places }: ShownEvaluation): number =>
  places.flatMap(({ findings }) => findings.filter(({ remedy }) => remedy !== null)).length

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('startCompleting', () => {
  it('has all numbers at once, then every room, then the remedies', () => {
    const { state, asked, answer } = heldStore()
    expect(asked()).toEqual(['rooms'])
    expect(completionOf(state())).toBe('working')
    expect(completeEvaluation(state())).toBeNull()
    expect(currentEvaluation(state())).toEqual(layoutNumbers(wrong))
    expect(waitingFor(state())).toBe('rooms')
    answer('rooms')
    expect(asked()).toEqual(['complete'])
    expect(waitingFor(state())).toBeNull()
    expect(findingsIn(state())).toEqual(evaluateLayout(wrong, { extent: 'what-moves' }).places[0]?.findings)
    expect(remedies(currentEvaluation(state()))).toBe(0)
    answer('complete')
    expect(completionOf(state())).toBe('ready')
    // The very findings of the command line, which evaluates in one go.
    expect(findingsIn(state())).toEqual(evaluateLayout(wrong).places[0]?.findings)
    expect(remedies(currentEvaluation(state()))).toBeGreaterThan(0)
  })

  it('leaves what is drawn the same object when the remedies come, so that nothing is drawn twice', () => {
    const { state, answer } = heldStore()
    answer('rooms')
    const before = movingEvaluation(state())
    answer('complete')
    expect(movingEvaluation(state())).toBe(before)
    expect(currentEvaluation(state()).places[0]?.sittings).toBe(before.places[0]?.sittings)
  })

  it('asks the same two workers again while they are idle', () => {
    const { store, state, workers, answerAll } = heldStore()
    answerAll()
    store.actions.edit('Up', raised(5))
    expect(completionOf(state())).toBe('working')
    answerAll()
    expect(workers).toHaveLength(2)
    expect(findingsIn(state())).toEqual(evaluateLayout(raised(5)(wrong)).places[0]?.findings)
  })

  it('stops a worker busy with remedies at a newer edit, and asks a new one for the newest alone', () => {
    const { store, state, workers, answer, open } = heldStore()
    answer('rooms')
    store.actions.edit('Up', raised(5))
    expect(workers[1]?.isStopped).toBe(true)
    store.actions.edit('Up', raised(5))
    store.actions.edit('Up', raised(5))
    answer('rooms')
    answer('rooms')
    expect(workers).toHaveLength(2)
    vi.runAllTimers()
    expect(workers).toHaveLength(3)
    expect(open().map(({ question }) => question.layout)).toEqual([state().layout])
    workers[1]?.hear(answerTo({ ...firstAsked(workers[1]), id: firstAsked(workers[2]).id }))
    workers[1]?.die('too late')
    expect(completionOf(state())).toBe('working')
    answer('complete')
    expect(findingsIn(state())).toEqual(evaluateLayout(state().layout).places[0]?.findings)
  })

  it('works no remedy out while a gesture runs, and drops what was under way', () => {
    const { store, state, workers, answer, answerAll } = heldStore()
    answer('rooms')
    store.actions.beginGesture('Move')
    expect(workers[1]?.isStopped).toBe(true)
    store.actions.dragTo(raised(3))
    answerAll()
    expect(waitingFor(state())).toBeNull()
    expect(completionOf(state())).toBe('held')
    expect(workers).toHaveLength(2)
    store.actions.endGesture()
    answerAll()
    expect(completionOf(state())).toBe('ready')
  })

  it('knows a layout that undo, redo or Escape brings back, without asking', () => {
    const { store, state, asked, answerAll } = heldStore()
    answerAll()
    const first = completeEvaluation(state())
    store.actions.edit('Up', raised(5))
    answerAll()
    const second = completeEvaluation(state())
    store.actions.undo()
    expect(completeEvaluation(state())).toBe(first)
    expect(waitingFor(state())).toBeNull()
    store.actions.redo()
    expect(completeEvaluation(state())).toBe(second)
    expect(asked()).toEqual([])
    store.actions.beginGesture('Move')
    store.actions.dragTo(raised(3))
    expect(completeEvaluation(state())).toBeNull()
    expect(completionOf(state())).toBe('held')
    store.actions.cancelGesture()
    expect(completeEvaluation(state())).toBe(second)
  })

  it('goes the same way for a layout that is opened', () => {
    const { store, state, answerAll } = heldStore()
    answerAll()
    const opened = raised(-20)(wrong)
    store.actions.openLayout(opened, 'Open')
    expect(completionOf(state())).toBe('working')
    answerAll()
    expect(findingsIn(state())).toEqual(evaluateLayout(opened).places[0]?.findings)
  })

  it.each(['rooms', 'complete'] as const)(
    'says what a worker on %s died of, works it out on the page when asked to, and goes on with a new worker',
    (kind) => {
      const { store, state, open, answer, answerAll } = heldStore()
      if (kind === 'complete') answer('rooms')
      open()[0]?.worker.die('out of memory')
      expect(completionOf(state())).toBe('failed')
      expect(state().completion).toMatchObject({ message: 'out of memory' })
      expect(open()).toEqual([])
      expect(waitingFor(state())).toBeNull()
      store.actions.completeHere()
      expect(findingsIn(state())).toEqual(evaluateLayout(wrong).places[0]?.findings)
      expect(open()).toEqual([])
      store.actions.edit('Up', raised(5))
      answerAll()
      expect(completionOf(state())).toBe('ready')
      store.actions.undo()
      expect(completionOf(state())).toBe('ready')
    },
  )

  it.each(['rooms', 'complete'] as const)(
    'asks once more beside the page for what a worker on %s died of, when somebody asks for that',
    (kind) => {
      const { store, state, open, asked, answer, answerAll, workers } = heldStore()
      if (kind === 'complete') answer('rooms')
      open()[0]?.worker.die('out of memory')
      expect(asked()).toEqual([])
      const before = workers.length
      store.actions.tryAgain()
      expect(completionOf(state())).toBe('working')
      expect(asked()).toEqual([kind])
      expect(workers).toHaveLength(before + 1)
      answerAll()
      expect(completionOf(state())).toBe('ready')
      expect(findingsIn(state())).toEqual(evaluateLayout(wrong).places[0]?.findings)
    },
  )

  it('changes nothing where there is nothing to try again', () => {
    const { store, state, answerAll } = heldStore()
    answerAll()
    const { completion } = state()
    store.actions.tryAgain()
    expect(state().completion).toBe(completion)
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

  it('stops the worker on remedies when somebody who cannot wait has worked them out on the page', () => {
    const { store, state, workers, answer } = heldStore()
    answer('rooms')
    store.actions.completeHere()
    const done = completeEvaluation(state())
    expect(workers[1]?.isStopped).toBe(true)
    workers[1]?.hear(answerTo(firstAsked(workers[1])))
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
    const { store, answerAll } = heldStore()
    const waiting = whenComplete(store)
    expect(await isSettled(waiting)).toBe(false)
    store.actions.edit('Up', raised(5))
    await vi.advanceTimersByTimeAsync(1000)
    expect(await isSettled(waiting)).toBe(false)
    answerAll()
    expect(await isSettled(waiting)).toBe(true)
  })

  it('does on the page what the worker could not', async () => {
    const { store, state, workers } = heldStore()
    const waiting = whenComplete(store)
    workers[0]?.die('gone')
    expect(await isSettled(waiting)).toBe(true)
    expect(completeEvaluation(state())).toEqual(evaluateLayout(wrong))
  })
})
