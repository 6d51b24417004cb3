import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import { addPlace } from '../../src/domain/layout/edit/change'
import {
  currentEvaluation,
  currentPlace,
  currentPlaceEvaluation,
  currentSitting,
  evaluationOf,
  zonesShown,
} from '../../src/state/selectors'
import type { AppState, View } from '../../src/state/appState'
import { exampleLayout } from '../support/exampleLayouts'
import { flatLayout, flatPlace, tabPair } from '../support/flatLayout'
import { createAppStore } from '../../src/state/store'

describe('evaluationOf', () => {
  it('computes a layout once, so that every view of it has the very same numbers', () => {
    const layout = emptyLayout()
    expect(evaluationOf(layout, 'everything')).toBe(evaluationOf(layout, 'everything'))
    // What is known completely is known in part.
    expect(evaluationOf(layout, 'what-moves')).toBe(evaluationOf(layout, 'everything'))
  })

  it('gives equal layouts equal evaluations and keeps the few before', () => {
    const [a, b] = [emptyLayout(), emptyLayout()]
    const first = evaluationOf(a, 'everything')
    expect(evaluationOf(b, 'everything')).toEqual(first)
    expect(evaluationOf(a, 'everything')).toBe(first)
  })
})

describe('currentEvaluation', () => {
  const wrong = exampleLayout('everything-wrong.layout.json')
  const remedyCount = (state: AppState): number =>
    (currentPlaceEvaluation(state)?.findings ?? []).filter(({ remedy }) => remedy !== null).length

  it('says nothing about remedies while a gesture moves something, and does again once it has ended', () => {
    const store = createAppStore(wrong)
    expect(remedyCount(store.state.getState())).toBeGreaterThan(0)
    store.actions.beginGesture('Move something')
    expect(remedyCount(store.state.getState())).toBeGreaterThan(0)
    store.actions.dragTo((layout) => ({ ...layout, datum: `${layout.datum}, moved` }))
    const dragged = currentEvaluation(store.state.getState())
    expect(remedyCount(store.state.getState())).toBe(0)
    store.actions.endGesture()
    expect(remedyCount(store.state.getState())).toBeGreaterThan(0)
    // But for the remedies the numbers of the drag are the final ones.
    const ended = currentEvaluation(store.state.getState())
    const bare = (evaluation: typeof ended) =>
      evaluation.places.map(({ findings, zones }) => ({
        zones,
        findings: findings.map((finding) => ({ ...finding, remedy: null })),
      }))
    expect(bare(ended)).toEqual(bare(dragged))
  })
})

describe('zonesShown', () => {
  const LAP_LEFT = 'anchor:driver:lap-left-anchor'
  const PAIR = ['lap-left-anchor', 'lap-right-anchor']
  const layout = flatLayout([
    flatPlace({
      anchors: [
        ...tabPair('lap', { xMm: 150, yMm: 230, zMm: -180 }),
        ...tabPair('shoulder', { xMm: 400, yMm: 90, zMm: 500 }),
      ],
    }),
  ])
  const shown = (showZones: View['showZones'], inHand: string | null, isMoving: boolean) => {
    const store = createAppStore(layout, { view: { showZones } })
    store.actions.selectHandle(inHand)
    if (isMoving) store.actions.beginGesture('Move')
    return zonesShown(store.state.getState())
  }

  it.each([
    { view: 'moving', inHand: LAP_LEFT, still: 'none', moving: PAIR },
    { view: 'moving', inHand: 'hip:driver', still: 'none', moving: 'all' },
    { view: 'moving', inHand: null, still: 'none', moving: 'all' },
    { view: 'in-hand', inHand: LAP_LEFT, still: PAIR, moving: PAIR },
    { view: 'in-hand', inHand: 'hip:driver', still: 'none', moving: 'all' },
    { view: 'in-hand', inHand: null, still: 'none', moving: 'all' },
    { view: 'all', inHand: LAP_LEFT, still: 'all', moving: 'all' },
    { view: 'all', inHand: null, still: 'all', moving: 'all' },
  ] as const)(
    'view "$view" with $inHand in hand: $still while still, $moving while it moves',
    ({ view, inHand, still, moving }) => {
      expect(shown(view, inHand, false)).toEqual(still)
      expect(shown(view, inHand, true)).toEqual(moving)
    },
  )
})

describe('currentSitting', () => {
  it('is the drawn position of the first occupant when none is chosen or the chosen one is gone', () => {
    const store = createAppStore(emptyLayout())
    const drawn = currentSitting(store.state.getState())?.sitting
    expect(drawn?.occupantId).toBe('occupant-1')
    expect(drawn?.slideMm).toBe(0)
    store.actions.selectSitting('place-1/nobody/0/0')
    expect(currentSitting(store.state.getState())?.sitting).toEqual(drawn)
  })

  it('belongs to the current place', () => {
    const store = createAppStore(addPlace(emptyLayout()))
    store.actions.selectPlace('place-2')
    expect(currentPlace(store.state.getState())?.id).toBe('place-2')
    expect(currentSitting(store.state.getState())?.sitting.placeId).toBe('place-2')
  })
})
