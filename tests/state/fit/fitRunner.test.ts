import { describe, expect, it } from 'vitest'
import { answerFit } from '../../../src/state/fit/answerFit'
import type { FitAnswer, FitQuestion } from '../../../src/state/fit/fitMessages'
import { createFitRunner } from '../../../src/state/fit/fitRunner'
import { isSameCount, questionOf } from '../../../src/state/fit/staleFit'
import { exampleLayout } from '../../support/exampleLayouts'

const layout = exampleLayout('rock-buggy.layout.json')
const placeId = layout.places[0]?.id ?? ''
const question: FitQuestion = { layout, placeId }

interface HeldWorker {
  readonly question: FitQuestion
  readonly hear: (answer: FitAnswer) => void
  readonly fail: (message: string) => void
  isStopped: boolean
}

/** A runner whose workers answer when the test says so. */
const heldRunner = () => {
  const workers: HeldWorker[] = []
  const runner = createFitRunner((asked, hear, fail) => {
    const worker: HeldWorker = { question: asked, hear, fail, isStopped: false }
    workers.push(worker)
    return {
      stop: () => {
        worker.isStopped = true
      },
    }
  })
  return { runner, workers }
}

const finished = (): Extract<FitAnswer, { kind: 'done' }> => {
  const answers: FitAnswer[] = []
  answerFit(question, (answer) => answers.push(answer))
  const last = answers.at(-1)
  if (last?.kind !== 'done') throw new Error('the count came to no end')
  return last
}

describe('answering who fits', () => {
  it('reports progress from 0 on, rising, and ends with all 1,200 people', () => {
    const answers: FitAnswer[] = []
    answerFit(question, (answer) => answers.push(answer))
    const progress = answers.flatMap((answer) => (answer.kind === 'progress' ? [answer.done] : []))
    expect(progress[0]).toBe(0)
    expect(progress.length).toBeGreaterThan(10)
    expect(progress).toEqual(progress.toSorted((a, b) => a - b))
    const last = answers.at(-1)
    expect(last?.kind === 'done' && last.result.people).toHaveLength(1200)
  })

  it('survives the way to another thread unchanged', () => {
    const answer = finished()
    expect(structuredClone(answer)).toEqual(answer)
  })

  it('says so when the place is gone', () => {
    const answers: FitAnswer[] = []
    answerFit({ layout, placeId: 'nowhere' }, (answer) => answers.push(answer))
    expect(answers).toEqual([{ kind: 'failed', message: 'This place or its rule set is gone.' }])
  })
})

describe('runner', () => {
  it('shows progress, then the result of the layout that was asked about, and stops the worker', () => {
    const { runner, workers } = heldRunner()
    let calls = 0
    runner.subscribe(() => (calls += 1))
    runner.start(question)
    expect(runner.state().running).toMatchObject({ done: 0, total: 0 })
    workers[0]?.hear({ kind: 'progress', done: 600, total: 1200 })
    expect(runner.state().running).toMatchObject({ placeId, done: 600, total: 1200 })
    const answer = finished()
    workers[0]?.hear(answer)
    expect(runner.state()).toEqual({ running: null, last: { layout, result: answer.result }, ended: null })
    expect(workers[0]?.isStopped).toBe(true)
    expect(calls).toBe(3)
  })

  it('cancels at once, keeps the last result and hears nothing more of the cancelled count', () => {
    const { runner, workers } = heldRunner()
    const answer = finished()
    runner.start(question)
    workers[0]?.hear(answer)
    runner.start({ ...question, placeId: 'other' })
    runner.cancel()
    expect(workers[1]?.isStopped).toBe(true)
    expect(runner.state().running).toBeNull()
    expect(runner.state().ended).toEqual({ question: { layout, placeId: 'other' }, message: null })
    const before = runner.state()
    workers[1]?.hear({ kind: 'progress', done: 60, total: 1200 })
    workers[1]?.hear(answer)
    workers[1]?.fail('too late')
    expect(runner.state()).toBe(before)
    expect(runner.state().last?.result).toBe(answer.result)
  })

  it('drops a running count for a new one', () => {
    const { runner, workers } = heldRunner()
    runner.start(question)
    const changed = { ...question, layout: { ...layout, dustyOrMuddyUse: !layout.dustyOrMuddyUse } }
    runner.start(changed)
    expect(workers[0]?.isStopped).toBe(true)
    workers[0]?.hear(finished())
    expect(runner.state().last).toBeNull()
    expect(runner.state().running?.layout).toBe(changed.layout)
  })

  it('says why a count failed, and tries again when asked', () => {
    const { runner, workers } = heldRunner()
    runner.start(question)
    workers[0]?.fail('no such file')
    expect(runner.state()).toEqual({
      running: null,
      last: null,
      ended: { question, message: 'no such file' },
    })
    runner.start(question)
    expect(runner.state().ended).toBeNull()
    expect(runner.state().running).not.toBeNull()
  })

  it('has nothing to cancel when nothing runs', () => {
    const { runner } = heldRunner()
    runner.cancel()
    expect(runner.state()).toEqual({ running: null, last: null, ended: null })
  })
})

describe('a count', () => {
  const withPlace = (change: object): FitQuestion => ({
    placeId,
    layout: {
      ...layout,
      places: layout.places.map((place) => (place.id === placeId ? { ...place, ...change } : place)),
    },
  })

  it('still holds when the job, the units, names or the occupants change', () => {
    const renamed = { ...layout, job: { ...layout.job, name: 'another' }, datum: 'elsewhere' }
    expect(isSameCount(question, { layout: renamed, placeId })).toBe(true)
    const inches = { ...layout, units: { ...layout.units, length: 'in' as const } }
    expect(isSameCount(question, { layout: inches, placeId })).toBe(true)
    expect(isSameCount(question, withPlace({ name: 'x', occupants: [] }))).toBe(true)
    expect(isSameCount(question, structuredClone(question))).toBe(true)
  })

  it('is stale when seat, belt, anchors, tubes, use or rule set change, or another place is looked at', () => {
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    const stale: readonly FitQuestion[] = [
      withPlace({ seat: { ...place.seat, reclineDeg: place.seat.reclineDeg + 1 } }),
      withPlace({ belt: { ...place.belt, headAndNeckRestraint: !place.belt.headAndNeckRestraint } }),
      withPlace({ anchors: place.anchors.slice(1) }),
      { placeId, layout: { ...layout, tubes: layout.tubes.slice(1) } },
      { placeId, layout: { ...layout, dustyOrMuddyUse: !layout.dustyOrMuddyUse } },
      { placeId, layout: { ...layout, ruleSetId: 'us-road-210' } },
      { ...question, placeId: 'other' },
    ]
    for (const other of stale) expect(isSameCount(question, other)).toBe(false)
  })

  it('knows the question it answered', () => {
    expect(questionOf({ layout, result: finished().result })).toEqual(question)
  })
})
