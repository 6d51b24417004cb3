import { describe, expect, it } from 'vitest'

import { withAnchorMoved } from '../../../src/domain/layout/edit/anchorMove'
import { withProposal } from '../../../src/domain/layout/propose/propose'
import { answerPropose } from '../../../src/state/propose/answerPropose'
import type { ProposeAnswer, ProposeQuestion } from '../../../src/state/propose/proposeMessages'
import { createProposeRunner } from '../../../src/state/propose/proposeRunner'
import { areStillGood, isTaken } from '../../../src/state/propose/staleProposals'
import { chosenTubeIds, createDraftStore, FIRST_DRAFT, wishOf } from '../../../src/state/propose/wishDraft'
import { createAppStore } from '../../../src/state/store'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../support/flatLayout'

const layout = flatLayout(
  [flatPlace({ anchors: tabPair('lap', { xMm: 150, yMm: 230, zMm: -180 }, 'floor') })],
  {
    tubes: [crossTube('floor', 150, -200, 'floor'), crossTube('other', 300, 0)],
  },
)
const placeId = 'driver'
const box = { min: { xMm: 150, yMm: -230, zMm: -400 }, max: { xMm: 150, yMm: -230, zMm: -60 } }
const question: ProposeQuestion = {
  layout,
  wish: {
    placeId,
    anchorId: 'lap-left-anchor',
    space: { kind: 'anywhere', box },
    symmetric: true,
    apartMm: 40,
  },
}

interface HeldWorker {
  readonly hear: (answer: ProposeAnswer) => void
  readonly fail: (message: string) => void
  isStopped: boolean
}

/** A runner whose workers answer when the test says so. */
const heldRunner = () => {
  const workers: HeldWorker[] = []
  const runner = createProposeRunner((_, hear, fail) => {
    const worker: HeldWorker = { hear, fail, isStopped: false }
    workers.push(worker)
    return {
      stop: () => {
        worker.isStopped = true
      },
    }
  })
  return { runner, workers }
}

const answersTo = (asked: ProposeQuestion): readonly ProposeAnswer[] => {
  const answers: ProposeAnswer[] = []
  answerPropose(asked, (answer) => answers.push(answer))
  return answers
}

const doneAnswer = (): Extract<ProposeAnswer, { kind: 'done' }> => {
  const last = answersTo(question).at(-1)
  if (last?.kind !== 'done') throw new Error('the search came to no end')
  return last
}

describe('answering a wish', () => {
  it('reports progress from 0 on, rising, and ends with proposals that survive the way to another thread', () => {
    const answers = answersTo(question)
    const progress = answers.flatMap((answer) => (answer.kind === 'progress' ? [answer.done] : []))
    expect(progress[0]).toBe(0)
    expect(progress).toEqual(progress.toSorted((a, b) => a - b))
    const last = answers.at(-1)
    expect(last?.kind === 'done' && last.result.proposals.length).toBeGreaterThan(0)
    expect(structuredClone(last)).toEqual(last)
  })

  it('says what is wrong with a wish instead of failing', () => {
    const wish = { ...question.wish, anchorId: 'nobody' }
    expect(answersTo({ layout, wish }).at(-1)).toEqual({
      kind: 'refused',
      problem: { kind: 'anchor-unknown', anchorId: 'nobody' },
    })
  })
})

describe('runner', () => {
  it('shows progress, then the proposals of what was asked, and stops the worker', () => {
    const { runner, workers } = heldRunner()
    runner.start(question)
    expect(runner.state().running).toEqual({ question, done: 0, total: 0 })
    workers[0]?.hear({ kind: 'progress', done: 50, total: 200 })
    expect(runner.state().running).toEqual({ question, done: 50, total: 200 })
    runner.show('proposal-1')
    const answer = doneAnswer()
    workers[0]?.hear(answer)
    expect(runner.state()).toMatchObject({ running: null, ended: null, shownId: null })
    expect(runner.state().last).toEqual({ question, result: answer.result })
    expect(workers[0]?.isStopped).toBe(true)
  })

  it('cancels at once, keeps the last proposals and hears nothing more of the cancelled search', () => {
    const { runner, workers } = heldRunner()
    const answer = doneAnswer()
    runner.start(question)
    workers[0]?.hear(answer)
    runner.start(question)
    runner.cancel()
    expect(workers[1]?.isStopped).toBe(true)
    expect(runner.state().ended).toEqual({ kind: 'cancelled', question })
    const before = runner.state()
    workers[1]?.hear({ kind: 'progress', done: 60, total: 200 })
    workers[1]?.hear(answer)
    workers[1]?.fail('too late')
    expect(runner.state()).toBe(before)
    expect(runner.state().last?.result).toBe(answer.result)
    runner.cancel()
    expect(runner.state()).toBe(before)
  })

  it('drops a running search for a new one, and says why one came to nothing', () => {
    const { runner, workers } = heldRunner()
    runner.start(question)
    runner.start(question)
    expect(workers[0]?.isStopped).toBe(true)
    workers[0]?.hear(doneAnswer())
    expect(runner.state().last).toBeNull()
    workers[1]?.fail('no such file')
    expect(runner.state()).toMatchObject({
      running: null,
      ended: { kind: 'failed', message: 'no such file', question },
    })
    runner.start(question)
    expect(runner.state().ended).toBeNull()
    workers[2]?.hear({ kind: 'refused', problem: { kind: 'no-tubes' } })
    expect(runner.state().ended).toMatchObject({ kind: 'refused', problem: { kind: 'no-tubes' } })
  })

  it('tells its listeners only of changes', () => {
    const { runner } = heldRunner()
    let calls = 0
    const leave = runner.subscribe(() => (calls += 1))
    runner.setInView(true)
    runner.setInView(true)
    runner.show('proposal-2')
    runner.show('proposal-2')
    expect(calls).toBe(2)
    leave()
    runner.setInView(false)
    expect(calls).toBe(2)
  })
})

describe('proposals that may have gone stale', () => {
  const { result } = doneAnswer()
  const [first] = result.proposals
  if (first === undefined) throw new Error('no proposal')

  it('still hold after names, units and the job have changed', () => {
    const renamed = {
      ...layout,
      job: { ...layout.job, name: 'Another' },
      units: { ...layout.units, length: 'in' as const },
      tubes: layout.tubes.map((tube) => ({ ...tube, name: 'Renamed' })),
    }
    expect(areStillGood(layout, renamed, result)).toBe(true)
  })

  it('still hold once one of them is taken, in one step that one undo takes back', () => {
    const store = createAppStore(layout)
    store.actions.edit('Take position 1', (now) => withProposal(now, placeId, first))
    const taken = store.state.getState().layout
    expect(store.state.getState().history.past).toHaveLength(1)
    expect(isTaken(taken, placeId, first)).toBe(true)
    expect(isTaken(layout, placeId, first)).toBe(false)
    expect(areStillGood(layout, taken, result)).toBe(true)
    store.actions.undo()
    expect(store.state.getState().layout).toBe(layout)
  })

  it('hold no longer after a move, another rule set, another tube or another tab', () => {
    expect(
      areStillGood(layout, withAnchorMoved(layout, placeId, 'lap-left-anchor', { xMm: 160 }), result),
    ).toBe(false)
    expect(areStillGood(layout, { ...layout, ruleSetId: 'student-cars-2026' }, result)).toBe(false)
    expect(areStillGood(layout, { ...layout, tubes: [crossTube('floor', 151, -200, 'floor')] }, result)).toBe(
      false,
    )
    const thicker = {
      ...layout,
      places: layout.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) =>
          anchor.mount.kind === 'tab' ? { ...anchor, mount: { ...anchor.mount, thicknessMm: 8 } } : anchor,
        ),
      })),
    }
    expect(areStillGood(layout, thicker, result)).toBe(false)
  })
})

describe('the wish on the page', () => {
  it('starts with the tubes that the anchors are on, and all anchors', () => {
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    expect(chosenTubeIds(FIRST_DRAFT, layout, place)).toEqual(['floor'])
    expect(wishOf(FIRST_DRAFT, layout, place)).toEqual({
      placeId,
      anchorId: null,
      space: { kind: 'tubes', tubeIds: ['floor'], standOffMm: 25 },
      symmetric: true,
      apartMm: 40,
    })
  })

  it('leaves out tubes and anchors that are gone, and takes the box only where anywhere is asked for', () => {
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    const store = createDraftStore()
    store.change({ tubeIds: ['other', 'gone'], anchorId: 'gone', box })
    expect(wishOf(store.draft(), layout, place)).toMatchObject({
      anchorId: null,
      space: { kind: 'tubes', tubeIds: ['other'] },
    })
    store.change({ where: 'anywhere', anchorId: 'lap-right-anchor' })
    expect(wishOf(store.draft(), layout, place)).toMatchObject({
      anchorId: 'lap-right-anchor',
      space: { kind: 'anywhere', box },
    })
  })
})
