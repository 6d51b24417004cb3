import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { movedHandle } from '../../../src/domain/layout/edit/move'
import { askedPlace } from '../../../src/domain/layout/firstLayout/askedPlace'
import { askedQuestions } from '../../../src/domain/layout/firstLayout/questions'
import { movedOn, questionStatus, unmeasured, withLeft } from '../../../src/state/firstLayout/guide'
import { guideKeeper, startFirstLayout, startFromPattern } from '../../../src/state/firstLayout/guideKeeper'
import { createAppStore } from '../../../src/state/store'
import { exampleLayout } from '../../support/exampleLayouts'

/** What a browser's storage does, without a browser. */
const fakeStorage = () => {
  const kept = new Map<string, string>()
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  }
}

beforeEach(() => Object.assign(globalThis, { localStorage: fakeStorage() }))
afterEach(() => Reflect.deleteProperty(globalThis, 'localStorage'))

const started = () => {
  const store = createAppStore(emptyLayout())
  startFirstLayout(store)
  const keeper = guideKeeper(store)
  const present = () => store.state.getState().history.present
  const guide = () => {
    const now = keeper.state.getState()
    if (now === null) throw new Error('the questions have begun')
    return now
  }
  const status = (id: string) => {
    const question = askedQuestions(present()).find((each) => each.id === id)
    return question === undefined ? null : questionStatus(guide(), present(), question)
  }
  const hip = () => askedPlace(present()).seat.hipPoint
  const next = () => {
    const question = askedQuestions(present()).find(({ id }) => id === guide().at)
    if (question !== undefined)
      keeper.move((now) => movedOn(withLeft(now, present(), question), present(), 1))
  }
  return { store, keeper, present, guide, status, hip, next }
}

describe('the questions of a first layout', () => {
  it('open another document, so that nothing is written over, beside the drawing', () => {
    const store = createAppStore(emptyLayout())
    const { documentId } = store.state.getState()
    startFirstLayout(store)
    const state = store.state.getState()
    expect(state.documentId).not.toBe(documentId)
    expect(state.view).toMatchObject({ screen: 'drawing', side: 'first-layout' })
    expect(state.history.past).toEqual([])
  })

  it('make one undo step of each answer, and undo takes the answer and its mark back together', () => {
    const { store, keeper, status, hip, guide, next } = started()
    for (const _question of ['job', 'datum']) next()
    const before = hip()
    keeper.answer('Seat', 'seat.cushion', 300)
    next()
    keeper.answer('Recline', 'seat.recline', 25)
    expect(store.state.getState().history.past).toHaveLength(2)
    expect([status('seat'), status('recline')]).toEqual(['answered', 'answered'])
    store.actions.undo()
    expect([status('seat'), status('recline')]).toEqual(['answered', 'open'])
    expect(guide().at).toBe('recline')
    store.actions.undo()
    expect([status('seat'), status('recline')]).toEqual(['open', 'open'])
    expect(hip()).toEqual(before)
    // Undo leads back to where the answer was given.
    expect(guide().at).toBe('seat')
    store.actions.redo()
    expect(status('seat')).toBe('answered')
  })

  it('answer after an undo as if the undone answer had never been', () => {
    const [a, b] = [started(), started()]
    a.keeper.answer('Seat', 'seat.back', 1400)
    a.store.actions.undo()
    a.keeper.answer('Seat', 'seat.cushion', 300)
    b.keeper.answer('Seat', 'seat.cushion', 300)
    expect(layoutText(a.present())).toBe(layoutText(b.present()))
  })

  it('draw a number while it is typed, as one step with its answer and without one when it is called off', () => {
    const { store, keeper, hip, present } = started()
    const before = present()
    keeper.preview('Seat', 'seat.cushion', 30)
    keeper.preview('Seat', 'seat.cushion', 300)
    const drawn = store.state.getState().layout
    expect(askedPlace(drawn).seat.hipPoint.zMm).toBeGreaterThan(hip().zMm)
    keeper.preview('Seat', 'seat.cushion', null)
    expect(store.state.getState().layout).toBe(before)
    keeper.preview('Seat', 'seat.cushion', 300)
    keeper.answer('Seat', 'seat.cushion', 300)
    expect(store.state.getState().history.past).toHaveLength(1)
    expect(layoutText(present())).toBe(layoutText(drawn))
    expect(store.state.getState().gesture).toBeNull()
  })

  it('leave a number that nobody typed unmeasured, however it was left, until somebody says that it was measured', () => {
    const { keeper, guide, present, next, status } = started()
    for (const _question of ['job', 'datum', 'seat']) next()
    expect([status('job'), status('datum'), status('seat')]).toEqual(['answered', 'answered', 'skipped'])
    const seat = askedQuestions(present()).find(({ id }) => id === 'seat')
    if (seat === undefined) throw new Error('the seat is asked for')
    expect(unmeasured(guide(), present(), seat).map(({ id }) => id)).toEqual([
      'seat.back',
      'seat.cushion',
      'seat.middle',
    ])
    keeper.answer('Seat', 'seat.back', 1100)
    expect(unmeasured(guide(), present(), seat).map(({ id }) => id)).toEqual(['seat.cushion', 'seat.middle'])
    keeper.confirm('Measured', 'seat')
    expect(unmeasured(guide(), present(), seat)).toEqual([])
  })

  it('write into the layout what nobody has measured, so that it is known wherever the layout goes', () => {
    const { store, keeper, present } = started()
    const first = present().notMeasured ?? []
    expect(first).toEqual(expect.arrayContaining(['seat', 'recline', 'people', 'bar', 'lap']))
    expect(first).not.toContain('job')
    keeper.answer('Recline', 'seat.recline', 25)
    expect(present().notMeasured).toEqual(first.filter((id) => id !== 'recline'))
    keeper.confirm('Measured', 'seat')
    expect(present().notMeasured).toEqual(first.filter((id) => id !== 'recline' && id !== 'seat'))
    store.actions.undo()
    expect(present().notMeasured).toContain('seat')
    store.actions.redo()
    keeper.restart('Back to the start', 'seat')
    expect(present().notMeasured).toContain('seat')
  })

  it('do not call unmeasured what was moved by hand, once they are opened again', () => {
    const { store, keeper, present } = started()
    store.actions.setView({ side: 'panels' })
    store.actions.edit('Recline', (layout) => ({
      ...layout,
      places: layout.places.map((place) => ({
        ...place,
        seat: { ...place.seat, reclineDeg: 31, reclineRange: { uprightDeg: 31, reclinedDeg: 31 } },
      })),
    }))
    expect(present().notMeasured).toContain('recline')
    keeper.open()
    expect(present().notMeasured).not.toContain('recline')
    expect(present().notMeasured).toContain('bar')
  })

  it('keep no such account of a layout that did not come of questions', () => {
    const store = createAppStore(exampleLayout('rock-buggy.layout.json'))
    const keeper = guideKeeper(store)
    keeper.open()
    keeper.answer('Recline', 'seat.recline', 25)
    expect(store.state.getState().history.present.notMeasured).toBeUndefined()
  })

  it('count what was dragged as answered', () => {
    const { store, present, status } = started()
    const { id } = askedPlace(present())
    store.actions.edit('Move the hip point', (layout) =>
      movedHandle(layout, { kind: 'hip', placeId: id }, { zMm: 400 }),
    )
    expect(status('seat')).toBe('answered')
  })

  it('are there again after a reload, and gone from another document', () => {
    const { store, keeper, present } = started()
    keeper.answer('Seat', 'seat.back', 1234)
    keeper.move((now) => ({ ...now, at: 'belt' }))
    const { documentId } = store.state.getState()
    const reloaded = createAppStore(present(), { documentId })
    const again = guideKeeper(reloaded).state.getState()
    expect(again?.at).toBe('belt')
    expect(again?.progress.answers).toEqual({ 'seat.back': 1234 })
    guideKeeper(reloaded).answer('Seat', 'seat.back', null)
    keeper.answer('Seat', 'seat.back', null)
    expect(layoutText(reloaded.state.getState().history.present)).toBe(layoutText(present()))
    reloaded.actions.openLayout(emptyLayout(), 'Start a new layout')
    expect(guideKeeper(reloaded).state.getState()).toBeNull()
  })

  it('begin anew where what was kept is damaged', () => {
    const { store } = started()
    const { documentId } = store.state.getState()
    for (const text of ['{', '[1]', `[{"documentId":"${documentId}","guide":{"progress":{"begun":3}}}]`]) {
      localStorage.setItem('tabwright-first-layouts', text)
      expect(guideKeeper(createAppStore(emptyLayout(), { documentId })).state.getState()).toBeNull()
    }
  })

  it('keep the questions when the same document goes on in another slot', () => {
    const { store, keeper, guide } = started()
    keeper.answer('Seat', 'seat.back', 1234)
    store.actions.moveTo('another-slot')
    expect(guide().progress.answers).toEqual({ 'seat.back': 1234 })
  })

  it('begin with a similar car as it is, without its job', () => {
    const store = createAppStore(emptyLayout())
    const car = exampleLayout('rock-buggy.layout.json')
    startFromPattern(store, car)
    const { present } = store.state.getState().history
    expect(present.tubes).toEqual(car.tubes)
    expect(present.job.name).toBe('')
    expect(guideKeeper(store).state.getState()?.progress.begun.isFresh).toBe(false)
  })
})
