import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { AppState } from '../../../src/state/appState'
import type { EvaluationQuestion } from '../../../src/state/evaluation/evaluationMessages'
import { isSameValue } from '../../../src/state/sameValue'
import {
  completionOf,
  currentEvaluation,
  movingEvaluation,
  waitingFor,
  zonesWanted,
} from '../../../src/state/selectors'
import { exampleLayout } from '../../support/exampleLayouts'
import { tabPair } from '../../support/flatLayout'
import { findingsIn, heldStore, LAP_LEFT, rounded, seatMoved, wrong } from './heldStore'

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('startRooms with several workers', () => {
  /** The rules of a place in four parts. */
  const ROOMS = ['rooms', 'rooms', 'rooms', 'rooms']

  it('shares the rules of a place out, and joins what comes back in any order to the findings of one evaluation', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const { state, open, answer } = heldStore(layout, 8)
    const parts = open().flatMap(({ question }) => (question.kind === 'rooms' ? [question.part] : []))
    expect(new Set(parts)).toEqual(new Set(['shoulder', 'lap', 'sub', 'others']))
    for (const part of parts.toReversed()) {
      expect(waitingFor(state())).toBe('rooms')
      answer('rooms', (question) => question.kind === 'rooms' && question.part === part)
    }
    expect(waitingFor(state())).toBeNull()
    expect(currentEvaluation(state()).places.map(({ findings }) => findings)).toEqual(
      evaluateLayout(layout, { extent: 'what-moves' }).places.map(({ findings }) => findings),
    )
  })

  const shown = (state: AppState) => movingEvaluation(state).places[0]?.zones

  it('has the zones in hand worked out beside the rooms, none twice, and shows them with the rooms', () => {
    const { store, state, workers, asked, open, answer, answerAll } = heldStore(wrong, 6)
    expect(asked()).toEqual(ROOMS)
    store.actions.selectHandle(LAP_LEFT)
    expect(asked()).toEqual([...ROOMS, 'zone', 'zone'])
    expect(open().flatMap(({ question }) => (question.kind === 'zone' ? [question.wanted] : []))).toEqual(
      zonesWanted(state()).slice(0, 2),
    )
    answer('zone')
    // A zone is nothing without the rooms of its layout, and the worker that is free goes on with the next.
    expect(shown(state())?.[0]).toMatchObject({ side: 'pending', top: 'pending' })
    expect(asked()).toEqual([...ROOMS, 'zone', 'zone'])
    for (const _ of ROOMS) answer('rooms')
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
    const { store, asked } = heldStore(wrong, 6)
    store.actions.edit('Seat', seatMoved(4))
    store.actions.selectHandle(LAP_LEFT)
    expect(asked()).toEqual(ROOMS)
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

  /** All that is asked of the rooms of a place, of one layout, is answered. */
  const answerPlace = (
    { open, answer }: Pick<ReturnType<typeof heldStore>, 'open' | 'answer'>,
    placeId: string,
    layout: Layout,
  ): void => {
    const isMeant = (question: EvaluationQuestion): boolean =>
      question.kind === 'rooms' && question.placeId === placeId && isSameValue(question.layout, layout)
    const count = open().filter(({ question }) => isMeant(question)).length
    expect(count).toBe(4)
    for (let left = count; left > 0; left -= 1) answer('rooms', isMeant)
  }

  it('asks several workers for parts of both places, and has the rooms when the last has answered', () => {
    const held = heldStore(two, 8)
    const { state, open } = held
    expect(new Set(placesAsked(open))).toEqual(new Set(['driver', 'co-driver']))
    answerPlace(held, 'co-driver', two)
    expect(waitingFor(state())).toBe('rooms')
    answerPlace(held, 'driver', two)
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
    const held = heldStore(two, 8)
    const { store, state, open, answerAll } = held
    open()[0]?.worker.die('out of memory')
    expect(completionOf(state())).toBe('failed')
    answerPlace(held, 'co-driver', two)
    expect(state().rooms).toBeNull()
    store.actions.tryAgain()
    answerAll()
    expect(completionOf(state())).toBe('ready')
    expect(places(state())).toEqual(evaluateLayout(two).places.map(({ findings }) => findings))
  })

  it('takes no answer about a layout of before for one about the newest', () => {
    const held = heldStore(two, 12)
    const { store, state, open, answerAll } = held
    open()[0]?.worker.die('out of memory')
    const newest = seatMoved(4)(two)
    store.actions.edit('Seat', seatMoved(4))
    answerPlace(held, 'co-driver', two)
    answerPlace(held, 'driver', newest)
    expect(waitingFor(state())).toBe('rooms')
    answerAll()
    expect(places(state())).toEqual(evaluateLayout(newest).places.map(({ findings }) => findings))
  })

  it('counts no piece twice that an older worker answers after a new one was asked for it', () => {
    const { store, state, open, answer } = heldStore(wrong, 4)
    open()[0]?.worker.die('out of memory')
    store.actions.tryAgain()
    // Three of before are still at it; the one that is free is asked for the first piece anew.
    expect(open()).toHaveLength(4)
    const [anew] = open().slice(-1)
    const isOther = (question: EvaluationQuestion): boolean => question !== anew?.question
    while (open().some(({ kind, question }) => kind === 'rooms' && isOther(question))) {
      answer('rooms', isOther)
      expect(waitingFor(state())).toBe('rooms')
    }
    answer('rooms')
    expect(findingsIn(state())).toEqual(evaluateLayout(wrong, { extent: 'what-moves' }).places[0]?.findings)
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
