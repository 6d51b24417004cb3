import type { Layout } from '../../domain/layout/document/layout'
import { numbersOf, zonesWanted } from '../selectors'
import type { AppState } from '../appState'
import type { AppStore } from '../store'
import type { News } from '../worker/workerMessages'
import { createWorkerRunner } from '../worker/workerRunner'
import {
  type EvaluationAnswer,
  evaluationQuestion,
  type EvaluationWork,
  type OpenEvaluationWorker,
} from './evaluationMessages'
import { isZonePending, type Rooms, roomsWith, withoutZones, withZone } from './rooms'

/** Of how many layouts rooms and zones are kept: the drawn one and a few steps of undo. Our judgement. */
const KEPT = 4

/** What is to be worked out next for what is drawn; null when all of it is there, or will not come. */
const nextWork = (state: AppState, rooms: Rooms | null): EvaluationWork | null => {
  const { layout, completion, zonesFailure } = state
  if (rooms === null)
    return completion.kind === 'failed' && completion.layout === layout ? null : { kind: 'rooms', layout }
  if (zonesFailure?.layout === layout) return null
  const wanted = zonesWanted(state).find((zone) => isZonePending(rooms.evaluation, zone))
  return wanted === undefined ? null : { kind: 'zone', layout, wanted }
}

/**
 * Has rooms and zones worked out beside the page, while something is dragged too: one piece at a time, each for the layout that is
 * drawn when the piece before it has ended. A piece is never broken off, or a hand that does not rest would never see an answer.
 * Returns a function that stops it.
 */
export const startRooms = (store: AppStore, open: OpenEvaluationWorker): (() => void) => {
  let known: readonly Rooms[] = []
  /** Whether the last worker failed: then the page has to do by itself. */
  let isWorkerLost = false
  const knownOf = (layout: Layout): Rooms | null => known.find((rooms) => rooms.layout === layout) ?? null
  const keep = (rooms: Rooms): void => {
    known = [rooms, ...known.filter(({ layout }) => layout !== rooms.layout)].slice(0, KEPT)
    store.actions.setRooms(rooms)
  }
  const fail = (layout: Layout, message: string): void => {
    if (knownOf(layout) !== null) store.actions.setZonesFailure({ layout, message })
    else if (store.state.getState().layout === layout)
      store.actions.setCompletion({ kind: 'failed', layout, message })
  }
  const take = (work: EvaluationWork, answer: EvaluationAnswer): void => {
    const { layout } = work
    if (answer.kind === 'findings')
      return keep(roomsWith(layout, numbersOf(layout), answer.findings, store.state.getState().rooms))
    const rooms = knownOf(layout)
    if (rooms !== null && work.kind === 'zone') keep(withZone(rooms, work.wanted, answer.region))
    if (store.state.getState().zonesFailure !== null) store.actions.setZonesFailure(null)
    return undefined
  }
  const hear = (work: EvaluationWork, news: News<EvaluationAnswer>): void => {
    isWorkerLost = news.kind === 'failed'
    if (news.kind === 'failed') fail(work.layout, news.message)
    else if (news.kind === 'answer') take(work, news.answer)
    follow()
  }
  const runner = createWorkerRunner(open, hear, { keepsWorker: true })
  const follow = (): void => {
    const { layout, rooms, completion } = store.state.getState()
    const found = knownOf(layout)
    if (found !== null && rooms !== found) return store.actions.setRooms(found)
    // Somebody who could not wait has worked it out on the page.
    if (found === null && completion.kind === 'ready' && completion.layout === layout)
      return keep(
        isWorkerLost
          ? { layout, evaluation: completion.evaluation }
          : withoutZones(layout, completion.evaluation),
      )
    if (runner.job() !== null) return undefined
    const work = nextWork(store.state.getState(), found)
    return work === null ? undefined : runner.start(evaluationQuestion(work))
  }
  follow()
  const unsubscribe = store.state.subscribe(follow)
  return () => {
    unsubscribe()
    runner.close()
  }
}
