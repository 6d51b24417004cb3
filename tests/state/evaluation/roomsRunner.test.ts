import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { evaluateLayout, layoutNumbers } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { evaluationAnswers } from '../../../src/state/evaluation/answerEvaluation'
import { currentEvaluation, movingEvaluation, waitingFor } from '../../../src/state/selectors'
import { wrong, LAP_LEFT, raised, seatMoved, heldStore, findingsIn } from './heldStore'

/** Zones asked for in another order may differ in the last digit: what was asked before is kept. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, each: unknown) =>
      typeof each === 'number' ? Number(each.toFixed(6)) : each,
    ),
  )

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('startRooms', () => {
  it('has rooms worked out while a gesture runs: never broken off, then those of the newest layout', () => {
    const { store, state, workers, open, answer } = heldStore()
    store.actions.beginGesture('Move')
    for (const mm of [1, 2, 3]) store.actions.dragTo(seatMoved(mm))
    expect(workers[0]?.isStopped).toBe(false)
    expect(open().map(({ question }) => question.layout)).toEqual([wrong])
    expect(currentEvaluation(state())).toEqual(layoutNumbers(state().layout))
    answer('rooms')
    // What came is of another seat: nothing of it is shown.
    expect(currentEvaluation(state())).toEqual(layoutNumbers(state().layout))
    expect(open().map(({ question }) => question.layout)).toEqual([seatMoved(3)(wrong)])
    answer('rooms')
    expect(waitingFor(state())).toBe('zones')
    expect(findingsIn(state())).toEqual(
      evaluateLayout(seatMoved(3)(wrong), { extent: 'what-moves' }).places[0]?.findings,
    )
  })

  it('works out the zones of the anchor in hand, one after the other, and keeps them while it moves in their plane', () => {
    const { store, state, asked, answerAll } = heldStore()
    store.actions.selectHandle(LAP_LEFT)
    answerAll()
    const zones = evaluateLayout(wrong).places[0]?.zones
    const shown = () => movingEvaluation(state()).places[0]?.zones
    expect(rounded(shown())).toEqual(rounded(zones))
    store.actions.beginGesture('Move')
    store.actions.dragTo(raised(-4))
    expect(asked()).toEqual(['rooms'])
    // Up and down: in the side elevation it is the same zone; seen from above it lies at another height.
    expect(rounded(shown()?.map(({ side }) => side))).toEqual(rounded(zones?.map(({ side }) => side)))
    expect(shown()?.map(({ top }) => top)).toEqual(['pending', 'pending'])
    store.actions.dragTo(seatMoved(4))
    expect(shown()?.map(({ side }) => side)).toEqual(['pending', 'pending'])
    answerAll()
    expect(rounded(shown())).toEqual(rounded(evaluateLayout(seatMoved(4)(wrong)).places[0]?.zones))
    expect(waitingFor(state())).toBeNull()
  })

  it('waits for no zone that a worker died of, and leaves it unknown', () => {
    const { store, state, open, answer } = heldStore()
    store.actions.selectHandle(LAP_LEFT)
    answer('rooms')
    open()
      .find(({ kind }) => kind === 'zone')
      ?.worker.fail('gone')
    store.actions.beginGesture('Move')
    expect(waitingFor(state())).toBeNull()
    expect(movingEvaluation(state()).places[0]?.zones[0]).toMatchObject({ side: 'pending', top: 'pending' })
  })
})

describe('evaluationAnswers', () => {
  it('answers what goes wrong too', () => {
    const layout = { ...wrong, ruleSetId: 'made-up' }
    expect(evaluationAnswers()({ kind: 'rooms', id: 7, layoutNumber: 1, layout })).toMatchObject({
      kind: 'failed',
      id: 7,
      message: expect.stringContaining('made-up'),
    })
  })

  it('answers for a zone of a layout whose rooms it was never asked for', () => {
    const wanted = { placeId: 'driver', anchorId: 'lap-left-anchor', elevation: 'side' } as const
    const answer = evaluationAnswers()
    answer({ kind: 'rooms', id: 1, layoutNumber: 1, layout: seatMoved(40)(wrong) })
    expect(rounded(answer({ kind: 'zone', id: 2, layoutNumber: 2, layout: wrong, wanted }))).toEqual(
      rounded({ kind: 'zone', id: 2, region: evaluateLayout(wrong).places[0]?.zones[0]?.side }),
    )
  })
})
