import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { evaluateLayout, layoutNumbers } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { AppState } from '../../../src/state/appState'
import { evaluationAnswers } from '../../../src/state/evaluation/answerEvaluation'
import { currentEvaluation, movingEvaluation, waitingFor, zonesFailureOf } from '../../../src/state/selectors'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { wrong, LAP_LEFT, raised, rounded, seatMoved, heldStore, findingsIn } from './heldStore'

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

  /** A tab is in hand and moves; a worker has died of its zone. */
  const withLostZone = () => {
    const held = heldStore()
    held.store.actions.selectHandle(LAP_LEFT)
    held.answer('rooms')
    held
      .open()
      .find(({ kind }) => kind === 'zone')
      ?.worker.die('gone')
    held.store.actions.beginGesture('Move')
    return held
  }
  const zones = (state: AppState) => movingEvaluation(state).places[0]?.zones

  it('waits for no zone that a worker died of, leaves it unknown and says why', () => {
    const { state, asked } = withLostZone()
    expect(waitingFor(state())).toBeNull()
    expect(zones(state())?.[0]).toMatchObject({ side: 'pending', top: 'pending' })
    expect(zonesFailureOf(state())).toBe('gone')
    expect(asked()).not.toContain('zone')
  })

  it('works a lost zone out when somebody asks for it once more', () => {
    const { store, state, asked, answerAll } = withLostZone()
    store.actions.tryAgain()
    expect(zonesFailureOf(state())).toBeNull()
    expect(waitingFor(state())).toBe('zones')
    expect(asked()).toContain('zone')
    answerAll()
    expect(rounded(zones(state()))).toEqual(rounded(evaluateLayout(wrong).places[0]?.zones))
    expect(zonesFailureOf(state())).toBeNull()
  })

  it('tries the zones of the next layout by itself, and says no more of the failure once one has come', () => {
    const { store, state, answer, answerAll } = withLostZone()
    store.actions.dragTo(seatMoved(4))
    expect(zonesFailureOf(state())).toBe('gone')
    answer('rooms')
    expect(waitingFor(state())).toBe('zones')
    answerAll()
    expect(zonesFailureOf(state())).toBeNull()
    expect(rounded(zones(state()))).toEqual(rounded(evaluateLayout(seatMoved(4)(wrong)).places[0]?.zones))
  })

  it('says why zones are missing where their rooms failed, until the page has worked them out', () => {
    const { store, state, open } = heldStore()
    store.actions.selectHandle(LAP_LEFT)
    expect(zonesFailureOf(state())).toBeNull()
    open()[0]?.worker.die('out of memory')
    expect(zonesFailureOf(state())).toBe('out of memory')
    store.actions.completeHere()
    expect(zonesFailureOf(state())).toBeNull()
    expect(rounded(zones(state()))).toEqual(rounded(evaluateLayout(wrong).places[0]?.zones))
  })
})

describe('evaluationAnswers', () => {
  it('answers for a zone of another place than the one whose rooms it was asked for', () => {
    const layout: Layout = {
      ...wrong,
      places: [...seatMoved(40)(wrong).places, ...wrong.places.map((place) => ({ ...place, id: 'other' }))],
    }
    const wanted = { placeId: 'other', anchorId: 'lap-left-anchor', elevation: 'side' } as const
    const answer = evaluationAnswers()
    answer({ kind: 'rooms', layoutNumber: 1, layout, placeId: 'driver', part: 'all' })
    expect(rounded(answer({ kind: 'zone', layoutNumber: 1, layout, wanted }))).toEqual(
      rounded({ kind: 'zone', region: evaluateLayout(wrong).places[0]?.zones[0]?.side }),
    )
  })

  it('answers for a zone of a layout whose rooms it was never asked for', () => {
    const wanted = { placeId: 'driver', anchorId: 'lap-left-anchor', elevation: 'side' } as const
    const answer = evaluationAnswers()
    answer({ kind: 'rooms', layoutNumber: 1, layout: seatMoved(40)(wrong), placeId: 'driver', part: 'all' })
    expect(rounded(answer({ kind: 'zone', layoutNumber: 2, layout: wrong, wanted }))).toEqual(
      rounded({ kind: 'zone', region: evaluateLayout(wrong).places[0]?.zones[0]?.side }),
    )
  })
})
