import type { Layout } from '../../domain/layout/document/layout'
import { currentPlace, movingEvaluation, zonesWanted } from '../selectors'
import type { AppState } from '../appState'
import type { AppStore } from '../store'
import type { News } from '../worker/workerMessages'
import { createWorkerPool } from '../worker/workerPool'
import {
  type EvaluationAnswer,
  type EvaluationQuestion,
  evaluationQuestion,
  type EvaluationWork,
  type OpenEvaluationWorker,
  type WantedZone,
} from './evaluationMessages'
import { isZonePending, type Rooms, withoutZones, withZone } from './rooms'
import { SHARED_PARTS } from './roomsPart'
import { newRound, type RoomsRound, roomsOf, withFindings } from './roomsRound'

/** Of how many layouts rooms and zones are kept: the drawn one and a few steps of undo. Our judgement. */
const KEPT = 4

const isSameZone = (a: WantedZone, b: WantedZone): boolean =>
  a.placeId === b.placeId && a.anchorId === b.anchorId && a.elevation === b.elevation

/** The next zone of the drawn layout that nobody has worked out or is at; null when there is none, or it will not come. */
const nextZone = (
  state: AppState,
  round: RoomsRound | null,
  jobs: readonly EvaluationQuestion[],
): EvaluationWork | null => {
  const { layout, zonesFailure } = state
  if (zonesFailure?.layout === layout) return null
  const evaluation = movingEvaluation(state)
  const underWay = [
    ...jobs.flatMap((job) => (job.kind === 'zone' && job.layout === layout ? [job.wanted] : [])),
    ...(round?.zones ?? []).map(({ wanted }) => wanted),
  ]
  const wanted = zonesWanted(state).find(
    (zone) => isZonePending(evaluation, zone) && !underWay.some((other) => isSameZone(zone, other)),
  )
  return wanted === undefined ? null : { kind: 'zone', layout, wanted }
}

/** The rooms and zones of the last few layouts. */
const keptRooms = (store: AppStore) => {
  let known: readonly Rooms[] = []
  return {
    of: (layout: Layout): Rooms | null => known.find((rooms) => rooms.layout === layout) ?? null,
    keep: (rooms: Rooms): void => {
      known = [rooms, ...known.filter(({ layout }) => layout !== rooms.layout)].slice(0, KEPT)
      store.actions.setRooms(rooms)
    },
  }
}

/** Takes in what workers say about rooms and zones. */
const roomsBook = (store: AppStore) => {
  const kept = keptRooms(store)
  let round: RoomsRound | null = null
  const takeRooms = (work: EvaluationWork & { readonly kind: 'rooms' }, answer: EvaluationAnswer): void => {
    const { layout, placeId, part } = work
    if (round?.layout !== layout || answer.kind !== 'findings') return
    round = withFindings(round, { placeId, part }, answer.findings[0] ?? [])
    const rooms = roomsOf(round, store.state.getState().rooms)
    if (rooms === null) return
    round = null
    kept.keep(rooms)
  }
  const takeZone = (layout: Layout, wanted: WantedZone, answer: EvaluationAnswer): void => {
    if (answer.kind !== 'zone') return
    const rooms = kept.of(layout)
    if (rooms !== null) kept.keep(withZone(rooms, wanted, answer.region))
    else if (round?.layout === layout)
      round = { ...round, zones: [...round.zones, { wanted, region: answer.region }] }
    if (store.state.getState().zonesFailure !== null) store.actions.setZonesFailure(null)
  }
  return {
    ...kept,
    round: () => round,
    setRound: (next: RoomsRound | null): void => {
      round = next
    },
    take: (question: EvaluationQuestion, answer: EvaluationAnswer): void => {
      const { layout } = question
      if (question.kind === 'rooms') takeRooms(question, answer)
      else if (question.kind === 'zone') takeZone(layout, question.wanted, answer)
    },
    fail: (question: EvaluationQuestion, message: string): void => {
      const { layout, kind } = question
      if (kind === 'zone') return store.actions.setZonesFailure({ layout, message })
      // What other workers still say about this layout comes too late.
      if (round?.layout === layout) round = null
      if (store.state.getState().layout === layout)
        store.actions.setCompletion({ kind: 'failed', layout, message })
      return undefined
    },
  }
}

/**
 * Has rooms and zones worked out beside the page, while something is dragged too, by some workers at once: the rooms of a layout
 * piece by piece, and those of its zones that are wanted. What is begun is never broken off, and rooms that are begun are finished
 * before those of a newer layout are, or a hand that does not rest would never see an answer. Returns a function that stops it.
 */
export const startRooms = (store: AppStore, open: OpenEvaluationWorker, workers: number): (() => void) => {
  const book = roomsBook(store)
  /** Whether the last worker failed: then the page has to do by itself. */
  let isWorkerLost = false
  const hear = (question: EvaluationQuestion, news: News<EvaluationAnswer>): void => {
    isWorkerLost = news.kind === 'failed'
    if (news.kind === 'failed') book.fail(question, news.message)
    else if (news.kind === 'answer') book.take(question, news.answer)
    follow()
  }
  const pool = createWorkerPool(open, hear, workers)
  // A worker alone asks the solver less when it has all rules at once.
  const parts = workers > 1 ? SHARED_PARTS : (['all'] as const)
  /** The next piece of the rooms; null when every one has been asked for, or the rooms are there, or will not come. */
  const nextRooms = (state: AppState): EvaluationWork | null => {
    const { layout, completion } = state
    const isWanted =
      book.round() === null &&
      book.of(layout) === null &&
      !(completion.kind === 'failed' && completion.layout === layout)
    if (isWanted) book.setRound(newRound(layout, currentPlace(state)?.id ?? '', parts))
    const round = book.round()
    const [piece, ...unasked] = round?.unasked ?? []
    if (round === null || piece === undefined) return null
    book.setRound({ ...round, unasked })
    return { kind: 'rooms', layout: round.layout, ...piece }
  }
  const nextWork = (): EvaluationWork | null => {
    const state = store.state.getState()
    const rooms = nextRooms(state)
    if (rooms !== null) return rooms
    const round = book.round()
    const isOfDrawn = round === null ? book.of(state.layout) !== null : round.layout === state.layout
    return isOfDrawn ? nextZone(state, round, pool.jobs()) : null
  }
  const follow = (): void => {
    const { layout, rooms, completion } = store.state.getState()
    const found = book.of(layout)
    if (found !== null && rooms !== found) return store.actions.setRooms(found)
    // Somebody who could not wait has worked it out on the page.
    if (found === null && completion.kind === 'ready' && completion.layout === layout) {
      book.setRound(null)
      return book.keep(
        isWorkerLost
          ? { layout, evaluation: completion.evaluation }
          : withoutZones(layout, completion.evaluation),
      )
    }
    while (pool.hasIdle()) {
      const work = nextWork()
      if (work === null) return undefined
      pool.start(evaluationQuestion(work))
    }
    return undefined
  }
  follow()
  const unsubscribe = store.state.subscribe(follow)
  return () => {
    unsubscribe()
    pool.close()
  }
}
