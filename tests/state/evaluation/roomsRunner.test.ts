import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { evaluateLayout, layoutNumbers } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { AppState } from '../../../src/state/appState'
import { evaluationAnswers } from '../../../src/state/evaluation/answerEvaluation'
import {
  completionOf,
  currentEvaluation,
  movingEvaluation,
  waitingFor,
  zonesFailureOf,
  zonesWanted,
} from '../../../src/state/selectors'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { tabPair } from '../../support/flatLayout'
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

describe('startRooms with several workers', () => {
  const shown = (state: AppState) => movingEvaluation(state).places[0]?.zones

  it('has the zones in hand worked out beside the rooms, none twice, and shows them with the rooms', () => {
    const { store, state, workers, asked, open, answer, answerAll } = heldStore(wrong, 3)
    expect(asked()).toEqual(['rooms'])
    store.actions.selectHandle(LAP_LEFT)
    expect(asked()).toEqual(['rooms', 'zone', 'zone'])
    expect(open().flatMap(({ question }) => (question.kind === 'zone' ? [question.wanted] : []))).toEqual(
      zonesWanted(state()).slice(0, 2),
    )
    answer('zone')
    // A zone is nothing without the rooms of its layout, and the worker that is free goes on with the next.
    expect(shown(state())?.[0]).toMatchObject({ side: 'pending', top: 'pending' })
    expect(asked()).toEqual(['rooms', 'zone', 'zone'])
    answer('rooms')
    const zones = evaluateLayout(wrong).places[0]?.zones
    expect(rounded(shown(state())?.[0]?.side)).toEqual(rounded(zones?.[0]?.side))
    expect(shown(state())?.[0]?.top).toBe('pending')
    answerAll()
    expect(rounded(shown(state()))).toEqual(rounded(zones))
    const all = workers.flatMap((worker) =>
      worker.asked.flatMap(({ question }) =>
        question.kind === 'zone' ? [`${question.wanted.anchorId} ${question.wanted.elevation}`] : [],
      ),
    )
    expect(new Set(all).size).toBe(4)
    expect(all).toHaveLength(4)
  })

  it('asks for what is in hand first where all zones are shown', () => {
    const { store, state } = heldStore(wrong, 1)
    store.actions.setView({ showZones: 'all' })
    expect(zonesWanted(state())[0]?.anchorId).toBe('lap-left-anchor')
    store.actions.edit('Split', (layout) => ({
      ...layout,
      places: layout.places.map((place) => ({ ...place, anchors: place.anchors.toReversed() })),
    }))
    expect(zonesWanted(state())[0]?.anchorId).toBe('lap-right-anchor')
    const one = tabPair('shoulder', { xMm: 400, yMm: 90, zMm: 500 })
    store.actions.edit('Add', (layout) => ({
      ...layout,
      places: layout.places.map((place) => ({ ...place, anchors: [...one, ...place.anchors] })),
    }))
    expect(zonesWanted(state())[0]?.anchorId).toBe('shoulder-left-anchor')
    store.actions.selectHandle(LAP_LEFT)
    const wanted = zonesWanted(state()).map(({ anchorId }) => anchorId)
    expect(wanted).toHaveLength(8)
    expect(new Set(wanted.slice(0, 4))).toEqual(new Set(['lap-left-anchor', 'lap-right-anchor']))
  })

  it('does not ask for zones of a layout that is no longer drawn', () => {
    const { store, asked } = heldStore(wrong, 3)
    store.actions.edit('Seat', seatMoved(4))
    store.actions.selectHandle(LAP_LEFT)
    expect(asked()).toEqual(['rooms'])
  })
})

describe('startRooms with two places', () => {
  const [driver] = wrong.places
  if (driver === undefined) throw new Error('no place')
  const two: Layout = { ...wrong, places: [driver, { ...driver, id: 'co-driver', name: 'Co-driver' }] }
  const places = (state: AppState) => currentEvaluation(state).places.map(({ findings }) => findings)
  const expected = evaluateLayout(two, { extent: 'what-moves' }).places.map(({ findings }) => findings)
  const placesAsked = (open: ReturnType<typeof heldStore>['open']) =>
    open().map(({ question }) => (question.kind === 'rooms' ? question.placeId : question.kind))

  it('asks several workers for a place each, and has the rooms when the last has answered', () => {
    const { state, open, answer } = heldStore(two, 2)
    expect(placesAsked(open)).toEqual(['driver', 'co-driver'])
    answer('rooms', (question) => question.kind === 'rooms' && question.placeId === 'co-driver')
    expect(waitingFor(state())).toBe('rooms')
    answer('rooms')
    expect(waitingFor(state())).toBeNull()
    expect(places(state())).toEqual(expected)
  })

  it('asks a single worker for one after the other, the place that is looked at first', () => {
    const { store, state, open, answer } = heldStore(two, 1)
    answer('rooms')
    answer('rooms')
    answer('complete')
    store.actions.selectPlace('co-driver')
    store.actions.edit('Seat', seatMoved(4))
    expect(placesAsked(open)).toEqual(['co-driver'])
    answer('rooms')
    expect(placesAsked(open)).toEqual(['driver'])
    answer('rooms')
    expect(places(state())).toEqual(
      evaluateLayout(seatMoved(4)(two), { extent: 'what-moves' }).places.map(({ findings }) => findings),
    )
  })

  it('finishes the rooms that it has begun before it goes on with the newest layout', () => {
    const { store, state, open, answer } = heldStore(two, 1)
    store.actions.beginGesture('Move')
    store.actions.dragTo(seatMoved(1))
    answer('rooms')
    store.actions.dragTo(seatMoved(2))
    expect(open().map(({ question }) => question.layout)).toEqual([two])
    answer('rooms')
    expect(state().rooms?.layout).toEqual(two)
    expect(open().map(({ question }) => question.layout)).toEqual([seatMoved(2)(two)])
  })

  it('fails when one place does, hears no more of the others, and begins anew when asked to', () => {
    const { store, state, open, answer, answerAll } = heldStore(two, 2)
    open()[0]?.worker.die('out of memory')
    expect(completionOf(state())).toBe('failed')
    answer('rooms', (question) => question.kind === 'rooms' && question.placeId === 'co-driver')
    expect(state().rooms).toBeNull()
    store.actions.tryAgain()
    answerAll()
    expect(completionOf(state())).toBe('ready')
    expect(places(state())).toEqual(evaluateLayout(two).places.map(({ findings }) => findings))
  })

  it('takes no answer about a layout of before for one about the newest', () => {
    const { store, state, open, answer, answerAll } = heldStore(two, 2)
    open()[0]?.worker.die('out of memory')
    const before = open()[0]?.question.layout
    store.actions.edit('Seat', seatMoved(4))
    answer('rooms', ({ layout }) => layout === before)
    answer('rooms', (question) => question.kind === 'rooms' && question.placeId === 'driver')
    expect(waitingFor(state())).toBe('rooms')
    answerAll()
    expect(places(state())).toEqual(evaluateLayout(seatMoved(4)(two)).places.map(({ findings }) => findings))
  })

  it('hears no more of the rooms once the page has worked them out', () => {
    const { store, state, answer } = heldStore(two, 1)
    answer('rooms')
    store.actions.completeHere()
    const { rooms } = state()
    answer('rooms')
    expect(state().rooms).toBe(rooms)
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
    answer({ kind: 'rooms', layoutNumber: 1, layout, placeId: 'driver' })
    expect(rounded(answer({ kind: 'zone', layoutNumber: 1, layout, wanted }))).toEqual(
      rounded({ kind: 'zone', region: evaluateLayout(wrong).places[0]?.zones[0]?.side }),
    )
  })

  it('answers for a zone of a layout whose rooms it was never asked for', () => {
    const wanted = { placeId: 'driver', anchorId: 'lap-left-anchor', elevation: 'side' } as const
    const answer = evaluationAnswers()
    answer({ kind: 'rooms', layoutNumber: 1, layout: seatMoved(40)(wrong), placeId: 'driver' })
    expect(rounded(answer({ kind: 'zone', layoutNumber: 2, layout: wrong, wanted }))).toEqual(
      rounded({ kind: 'zone', region: evaluateLayout(wrong).places[0]?.zones[0]?.side }),
    )
  })
})
