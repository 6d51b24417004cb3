import { vi } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import type { AppState } from '../../../src/state/appState'
import { evaluationAnswers } from '../../../src/state/evaluation/answerEvaluation'
import type { EvaluationAnswer, EvaluationQuestion } from '../../../src/state/evaluation/evaluationMessages'
import { startCompleting } from '../../../src/state/evaluation/evaluationRunner'
import { currentEvaluation } from '../../../src/state/selectors'
import { createAppStore } from '../../../src/state/store'
import type { Asked, Said } from '../../../src/state/worker/workerMessages'
import { flatLayout, flatPlace, tabPair } from '../../support/flatLayout'
import { type FakeWorker, fakeWorkers } from '../worker/fakeWorkers'

/** Lap straps that come down more steeply than 49 CFR 571.210 S4.3.1.1 allows (75°, read): atan(380 / 100) = 75.3°. */
export const wrong: Layout = flatLayout(
  [flatPlace({ anchors: tabPair('lap', { xMm: 100, yMm: 230, zMm: -380 }) })],
  { ruleSetId: 'us-road-anchorages-571-210' },
)
export const LAP_LEFT = 'anchor:driver:lap-left-anchor'

/** Every anchor higher. */
export const raised =
  (byMm: number) =>
  (layout: Layout): Layout => ({
    ...layout,
    places: layout.places.map((place) => ({
      ...place,
      anchors: place.anchors.map((anchor) => ({
        ...anchor,
        mount: { ...anchor.mount, point: { ...anchor.mount.point, zMm: anchor.mount.point.zMm + byMm } },
      })),
    })),
  })

/** The seat further to the rear. */
export const seatMoved =
  (byMm: number) =>
  (layout: Layout): Layout => ({
    ...layout,
    places: layout.places.map((place) => ({
      ...place,
      seat: { ...place.seat, hipPoint: { ...place.seat.hipPoint, xMm: place.seat.hipPoint.xMm + byMm } },
    })),
  })

/** What a worker says to a question. */
export const answerTo = ({ id, question }: Asked<EvaluationQuestion>): Said<EvaluationAnswer> =>
  structuredClone({ kind: 'answer', id, answer: evaluationAnswers()(question) })

/** A store whose workers answer when the test says so; every answer goes the way of a message between threads. */
export const heldStore = (layout = wrong, roomsWorkers = 1) => {
  const store = createAppStore(layout)
  const { open: openWorker, workers } = fakeWorkers<EvaluationQuestion, EvaluationAnswer>()
  const answered = new Set<Asked<EvaluationQuestion>>()
  const stop = startCompleting(store, openWorker, roomsWorkers)
  const state = () => store.state.getState()
  /** What workers that were not stopped still have to answer. */
  const open = () =>
    workers.flatMap((worker) =>
      worker.isStopped
        ? []
        : worker.asked
            .filter((asked) => !answered.has(asked))
            .map((asked) => ({ worker, asked, question: asked.question, kind: asked.question.kind })),
    )
  /** The first open question of a kind is answered, or the one that is meant. */
  const answer = (
    kind: EvaluationQuestion['kind'],
    isMeant: (question: EvaluationQuestion) => boolean = () => true,
  ): void => {
    const found = open().find((each) => each.kind === kind && isMeant(each.question))
    if (found === undefined) throw new Error(`nothing of ${kind} is asked`)
    answered.add(found.asked)
    found.worker.hear(answerTo(found.asked))
  }
  /** Everything is answered until nothing more is asked. */
  const answerAll = (): void => {
    vi.runAllTimers()
    for (let next = open()[0]; next !== undefined; next = open()[0]) {
      answer(next.kind)
      vi.runAllTimers()
    }
  }
  const asked = () => open().map(({ kind }) => kind)
  return { store, state, workers, open, asked, answer, answerAll, stop }
}

/** What a worker was asked first. */
export const firstAsked = (
  worker: FakeWorker<EvaluationQuestion, EvaluationAnswer> | undefined,
): Asked<EvaluationQuestion> => {
  const asked = worker?.asked[0]
  if (asked === undefined) throw new Error('nothing was asked')
  return asked
}

export const findingsIn = (state: AppState) => currentEvaluation(state).places[0]?.findings

/** Zones asked for in another order may differ in the last digit: what was asked before is kept. */
export const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, each: unknown) =>
      typeof each === 'number' ? Number(each.toFixed(6)) : each,
    ),
  )
