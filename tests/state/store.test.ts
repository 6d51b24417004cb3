import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import type { Layout } from '../../src/domain/layout/document/layout'
import { addPlace } from '../../src/domain/layout/edit/change'
import { unsoundLines } from '../../src/state/files'
import { createAppStore } from '../../src/state/store'

const named =
  (name: string) =>
  (layout: Layout): Layout => ({ ...layout, job: { ...layout.job, name } })
const jobName = (store: ReturnType<typeof createAppStore>): string => store.state.getState().layout.job.name

describe('createAppStore', () => {
  it('makes one undo step of a drag of many moves, and undo gives back the very layout it started from', () => {
    const start = emptyLayout()
    const store = createAppStore(start)
    store.actions.beginGesture('Move the lap tab')
    for (let move = 1; move <= 200; move += 1) store.actions.dragTo(named(`move ${move}`))
    store.actions.endGesture()
    expect(jobName(store)).toBe('move 200')
    expect(store.state.getState().history.past).toHaveLength(1)
    store.actions.undo()
    expect(store.state.getState().layout).toBe(start)
  })

  it('shows a drag while it runs but keeps the history where it was, so that nothing half done is saved', () => {
    const start = emptyLayout()
    const store = createAppStore(start)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('half way'))
    expect(jobName(store)).toBe('half way')
    expect(store.state.getState().history.present).toBe(start)
  })

  it('gives every move the layout the drag started from, not the one before', () => {
    const store = createAppStore(named('a')(emptyLayout()))
    store.actions.beginGesture('Move')
    store.actions.dragTo((layout) => named(`${layout.job.name}b`)(layout))
    store.actions.dragTo((layout) => named(`${layout.job.name}b`)(layout))
    store.actions.endGesture()
    expect(jobName(store)).toBe('ab')
  })

  it('ignores a move that arrives after the drag was called off', () => {
    const start = emptyLayout()
    const store = createAppStore(start)
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('moved'))
    store.actions.cancelGesture()
    store.actions.dragTo(named('late'))
    expect(store.state.getState().layout).toBe(start)
    expect(store.state.getState().history.past).toHaveLength(0)
  })

  it('adds no step for a change that changes nothing, even when it makes new objects', () => {
    const start = emptyLayout()
    const store = createAppStore(start)
    store.actions.edit('Nothing', (layout) => structuredClone(layout))
    expect(store.state.getState().history.past).toHaveLength(0)
    expect(store.state.getState().layout).toBe(start)
  })

  it('says what was done, undone and redone', () => {
    const store = createAppStore(emptyLayout())
    store.actions.edit('Name the job', named('Dune car'))
    expect(store.state.getState().announcement).toBe('Name the job')
    store.actions.undo()
    expect(store.state.getState().announcement).toBe('Undone: Name the job')
    store.actions.redo()
    expect(store.state.getState().announcement).toBe('Redone: Name the job')
  })

  it('opens another layout as a document of its own, with nothing to undo and nothing in hand', () => {
    const store = createAppStore(named('mine')(emptyLayout()), { documentId: 'first' })
    store.actions.edit('Name the job', named('still mine'))
    store.actions.selectHandle('hip:place-1')
    store.actions.openLayout(named('theirs')(emptyLayout()), 'Open theirs')
    const opened = store.state.getState()
    expect(jobName(store)).toBe('theirs')
    expect(opened.documentId).not.toBe('first')
    expect(opened.selectedHandleId).toBeNull()
    expect(opened.announcement).toBe('Open theirs')
    store.actions.undo()
    expect(jobName(store)).toBe('theirs')
  })

  it('opens what lies in a slot under the id of the slot', () => {
    const store = createAppStore(emptyLayout())
    store.actions.openLayout(named('kept')(emptyLayout()), 'Open kept', 'slot-7')
    expect(store.state.getState().documentId).toBe('slot-7')
  })

  it('ends a drag in the document it belongs to before another is opened', () => {
    const store = createAppStore(named('mine')(emptyLayout()), { documentId: 'first' })
    const seen: string[] = []
    store.state.subscribe(({ documentId, history }) =>
      seen.push(`${documentId === 'first' ? 'first' : 'second'} ${history.present.job.name}`),
    )
    store.actions.beginGesture('Move')
    store.actions.dragTo(named('moved'))
    store.actions.openLayout(named('theirs')(emptyLayout()), 'Open theirs')
    expect(seen).toContain('first moved')
    expect(seen.at(-1)).toBe('second theirs')
  })

  it('goes back to the first place when the current one is gone', () => {
    const store = createAppStore(emptyLayout())
    store.actions.edit('Add a place', addPlace)
    store.actions.selectPlace('place-2')
    expect(store.state.getState().currentPlaceId).toBe('place-2')
    store.actions.undo()
    expect(store.state.getState().currentPlaceId).toBe('place-1')
  })

  it('does not select a place that does not exist', () => {
    const store = createAppStore(emptyLayout())
    store.actions.selectPlace('place-9')
    expect(store.state.getState().currentPlaceId).toBe('place-1')
  })

  it('forgets the chosen sitting when the place changes', () => {
    const store = createAppStore(addPlace(emptyLayout()))
    store.actions.selectSitting('place-1/occupant-1/0/20')
    store.actions.selectPlace('place-2')
    expect(store.state.getState().currentSittingId).toBeNull()
  })

  describe('with a check of what a layout can hold', () => {
    const tooTall = (layout: Layout): Layout => ({
      ...layout,
      places: layout.places.map((place) => ({
        ...place,
        occupants: place.occupants.map((occupant) => ({ ...occupant, statureMm: 17_550 })),
      })),
    })

    it('refuses an edit that a file could not hold, says why and keeps the layout', () => {
      const start = emptyLayout()
      const store = createAppStore(start, { check: unsoundLines })
      store.actions.edit('Change the stature', tooTall)
      expect(store.state.getState().layout).toBe(start)
      expect(store.state.getState().history.past).toHaveLength(0)
      expect(store.state.getState().notice?.kind).toBe('problem')
      expect(store.state.getState().notice?.details.join(' ')).toContain('17550')
    })

    it('refuses to open what a file could not hold and stays with the document that is open', () => {
      const start = emptyLayout()
      const store = createAppStore(start, { check: unsoundLines, documentId: 'first' })
      store.actions.openLayout(tooTall(start), 'Open giants')
      expect(store.state.getState().layout).toBe(start)
      expect(store.state.getState().documentId).toBe('first')
      expect(store.state.getState().notice?.kind).toBe('problem')
    })

    it('refuses a drag that ends there and puts back its start', () => {
      const start = emptyLayout()
      const store = createAppStore(start, { check: unsoundLines })
      store.actions.beginGesture('Stretch')
      store.actions.dragTo(tooTall)
      store.actions.endGesture()
      expect(store.state.getState().layout).toBe(start)
      expect(store.state.getState().gesture).toBeNull()
    })
  })

  it('points at a sitting without changing which is drawn, and tells nobody when nothing changes', () => {
    const store = createAppStore(emptyLayout())
    let told = 0
    store.state.subscribe(() => (told += 1))
    store.actions.pointAtSitting('place-1/occupant-1/0/20')
    store.actions.pointAtSitting('place-1/occupant-1/0/20')
    expect(told).toBe(1)
    expect(store.state.getState().pointedSittingId).toBe('place-1/occupant-1/0/20')
    expect(store.state.getState().currentSittingId).toBeNull()
    store.actions.pointAtSitting(null)
    expect(store.state.getState().pointedSittingId).toBeNull()
  })
})
