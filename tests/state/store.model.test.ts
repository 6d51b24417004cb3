import fc from 'fast-check'
import { expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import type { Layout } from '../../src/domain/layout/document/layout'
import { createAppStore, type AppStore } from '../../src/state/store'

/*
 * The store against the plainest model there is: a list of numbers with a finger on one of them. The model knows nothing of
 * past, future or snapshots; a gesture is a number that hides the one under the finger until it ends.
 */
interface Model {
  steps: number[]
  at: number
  hidden: number | null
}

const withNumber = (layout: Layout, number: number): Layout => ({
  ...layout,
  job: { ...layout.job, notes: String(number) },
})
const shownNumber = (store: AppStore): number => Number(store.state.getState().layout.job.notes)
const modelNumber = (model: Model): number => model.hidden ?? model.steps[model.at] ?? Number.NaN

const committed = (model: Model, number: number): void => {
  model.hidden = null
  if (model.steps[model.at] === number) return
  model.steps = [...model.steps.slice(0, model.at + 1), number]
  model.at = model.steps.length - 1
}
const ended = (model: Model): void => {
  if (model.hidden !== null) committed(model, model.hidden)
}

type Command = fc.Command<Model, AppStore>

const command = (
  name: string,
  onModel: (model: Model) => void,
  onStore: (store: AppStore) => void,
): Command => ({
  check: () => true,
  run: (model, store) => {
    onModel(model)
    onStore(store)
    expect(shownNumber(store)).toBe(modelNumber(model))
    const { history, gesture } = store.state.getState()
    expect(history.past.length).toBe(model.at)
    expect(history.future.length).toBe(model.steps.length - 1 - model.at)
    expect(gesture !== null).toBe(model.hidden !== null)
  },
  toString: () => name,
})

const edit = (number: number): Command =>
  command(
    `edit ${number}`,
    (model) => {
      ended(model)
      committed(model, number)
    },
    (store) => store.actions.edit('Edit', (layout) => withNumber(layout, number)),
  )

const drag = (number: number): Command =>
  command(
    `drag ${number}`,
    (model) => {
      if (model.hidden !== null) model.hidden = number
    },
    (store) => store.actions.dragTo((start) => withNumber(start, number)),
  )

const begin = command(
  'begin',
  (model) => {
    ended(model)
    model.hidden = model.steps[model.at] ?? null
  },
  (store) => store.actions.beginGesture('Drag'),
)
const end = command('end', ended, (store) => store.actions.endGesture())
const cancel = command(
  'cancel',
  (model) => {
    model.hidden = null
  },
  (store) => store.actions.cancelGesture(),
)
const undo = command(
  'undo',
  (model) => {
    if (model.hidden === null) model.at = Math.max(0, model.at - 1)
    model.hidden = null
  },
  (store) => store.actions.undo(),
)
const redo = command(
  'redo',
  (model) => {
    if (model.hidden === null) model.at = Math.min(model.steps.length - 1, model.at + 1)
    model.hidden = null
  },
  (store) => store.actions.redo(),
)

it('any run of edits, drags, cancels, undo and redo does what a finger on a list of numbers does', () => {
  const small = fc.nat(3)
  const property = fc.property(
    fc.commands(
      [
        small.map(edit),
        small.map(drag),
        fc.constant(begin),
        fc.constant(end),
        fc.constant(cancel),
        fc.constant(undo),
        fc.constant(redo),
      ],
      { maxCommands: 60 },
    ),
    (commands) => {
      fc.modelRun(
        () => ({
          model: { steps: [0], at: 0, hidden: null },
          real: createAppStore(withNumber(emptyLayout(), 0)),
        }),
        commands,
      )
    },
  )
  expect(() => fc.assert(property)).not.toThrow()
})
