import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import { addPlace } from '../../src/domain/layout/edit/change'
import { currentPlace, currentSitting, evaluationOf } from '../../src/state/selectors'
import { createAppStore } from '../../src/state/store'

describe('evaluationOf', () => {
  it('computes a layout once, so that every view of it has the very same numbers', () => {
    const layout = emptyLayout()
    expect(evaluationOf(layout)).toBe(evaluationOf(layout))
  })

  it('gives equal layouts equal evaluations and keeps the few before', () => {
    const [a, b] = [emptyLayout(), emptyLayout()]
    const first = evaluationOf(a)
    expect(evaluationOf(b)).toEqual(first)
    expect(evaluationOf(a)).toBe(first)
  })
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
