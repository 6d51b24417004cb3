import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { committed, historyOf, redone, undone, type History } from '../../src/state/history'

const steps = (numbers: readonly number[]): History<number> =>
  numbers.reduce((history, number) => committed(history, `to ${number}`, number), historyOf(0))

describe('history', () => {
  it('has nothing to undo or redo at first', () => {
    const start = historyOf(7)
    expect(undone(start)).toBe(start)
    expect(redone(start)).toBe(start)
  })

  it('drops what could be redone as soon as something new is done', () => {
    expect(committed(undone(steps([1, 2])), 'to 3', 3).future).toEqual([])
  })

  it('names a step alike when it is undone and redone', () => {
    expect(undone(steps([1])).future.at(-1)?.label).toBe('to 1')
    expect(redone(undone(steps([1]))).past.at(-1)?.label).toBe('to 1')
  })

  it('undoing everything and redoing everything ends where it began, with no limit on steps', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(9), { maxLength: 500 }), (numbers) => {
        const done = steps(numbers)
        let history = done
        while (history.past.length > 0) history = undone(history)
        expect(history.present).toBe(0)
        while (history.future.length > 0) history = redone(history)
        expect(history).toEqual(done)
      }),
    )
  })
})
