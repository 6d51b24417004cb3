import { describe, expect, it } from 'vitest'

import { withAnchorMoved } from '../../../src/domain/layout/edit/anchorMove'
import type { Proposals } from '../../../src/domain/layout/propose/proposal'
import { withProposal } from '../../../src/domain/layout/propose/propose'
import { answerPropose } from '../../../src/state/propose/answerPropose'
import type { ProposeAnswer, ProposeQuestion } from '../../../src/state/propose/proposeMessages'
import { createSearch } from '../../../src/state/propose/search'
import { areStillGood, isTaken } from '../../../src/state/propose/staleProposals'
import { chosenTubeIds, FIRST_DRAFT, pageDraft, wishOf } from '../../../src/state/propose/wishDraft'
import { createAppStore } from '../../../src/state/store'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../support/flatLayout'
import { fakeWorkers, nth } from '../worker/fakeWorkers'

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

/** The answer, and the progress that was reported on the way. */
const answered = (asked: ProposeQuestion) => {
  const progress: number[] = []
  const answer = answerPropose(asked, (done) => progress.push(done))
  return { answer, progress }
}

const found = (): Proposals => {
  const { answer } = answered(question)
  if (!answer.ok) throw new Error('the search was refused')
  return answer.value
}

describe('answering a wish', () => {
  it('reports progress from 0 on, rising, and ends with proposals that survive the way to another thread', () => {
    const { answer, progress } = answered(question)
    expect(progress[0]).toBe(0)
    expect(progress).toEqual(progress.toSorted((a, b) => a - b))
    expect(answer.ok && answer.value.proposals.length).toBeGreaterThan(0)
    expect(structuredClone(answer)).toEqual(answer)
  })

  it('says what is wrong with a wish instead of failing', () => {
    const wish = { ...question.wish, anchorId: 'nobody' }
    expect(answered({ layout, wish }).answer).toEqual({
      ok: false,
      error: { kind: 'anchor-unknown', anchorId: 'nobody' },
    })
  })
})

describe('search', () => {
  it('forgets which proposal was picked out once there are others, and not before', () => {
    const { open, workers } = fakeWorkers<ProposeQuestion, ProposeAnswer>()
    const search = createSearch(open)
    const result = found()
    search.start(question)
    nth(workers, 0).say({ kind: 'answer', answer: { ok: true, value: result } })
    expect(search.state.getState().last).toEqual({ question, value: result })
    search.view.setState({ isInView: true, shownId: 'proposal-1' })
    search.start(question)
    nth(workers, 1).say({ kind: 'progress', done: 1, total: 2 })
    search.cancel()
    expect(search.view.getState()).toEqual({ isInView: true, shownId: 'proposal-1' })
    search.start(question)
    nth(workers, 2).say({ kind: 'answer', answer: { ok: true, value: result } })
    expect(search.view.getState()).toEqual({ isInView: true, shownId: null })
  })
})

describe('proposals that may have gone stale', () => {
  const result = found()
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
    pageDraft.setState({ tubeIds: ['other', 'gone'], anchorId: 'gone', box })
    expect(wishOf(pageDraft.getState(), layout, place)).toMatchObject({
      anchorId: null,
      space: { kind: 'tubes', tubeIds: ['other'] },
    })
    pageDraft.setState({ where: 'anywhere', anchorId: 'lap-right-anchor' })
    expect(wishOf(pageDraft.getState(), layout, place)).toMatchObject({
      anchorId: 'lap-right-anchor',
      space: { kind: 'anywhere', box },
    })
  })
})
