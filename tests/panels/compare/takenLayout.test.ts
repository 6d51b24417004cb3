import { describe, expect, it } from 'vitest'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { variantLabels, variantsOf, withVariantAdded } from '../../../src/domain/layout/edit/changeVariants'
import { takeVariantFrom } from '../../../src/panels/compare/takenLayout'
import { createAppStore } from '../../../src/state/store'
import { exampleLayout } from '../../support/exampleLayouts'

const buggy = exampleLayout('rock-buggy.layout.json')
const racer = exampleLayout('student-racer-under-thighs.layout.json')

const storeOf = (layout: Layout) => createAppStore(layout)

describe('takeVariantFrom', () => {
  it('takes what another layout builds as one more variant, by the name of its job, and one undo takes it away', () => {
    const store = storeOf(buggy)
    expect(takeVariantFrom(store, layoutText(racer), 'racer.layout.json')).toBe(true)
    const { layout, notice } = store.state.getState()
    expect(variantLabels(layout).map(({ name }) => name)).toEqual(['Variant A', racer.job.name])
    expect(layout.places).toEqual(racer.places)
    expect(layout.datum).toBe(buggy.datum)
    // Nothing is converted, so whoever takes positions over is told from where they are measured.
    expect(notice?.details[0]).toContain(racer.datum)
    expect(notice?.details[0]).toContain(buggy.datum)
    store.actions.undo()
    expect(store.state.getState().layout).toBe(buggy)
  })

  it('takes the drawn one of a layout with variants and says so', () => {
    const store = storeOf(buggy)
    takeVariantFrom(store, layoutText(withVariantAdded(racer, 'Low bar')), 'two.layout.json')
    const { layout, notice } = store.state.getState()
    expect(layout.variants?.drawn.name).toBe('Low bar')
    expect(notice?.details.join(' ')).toContain('has 2 variants; the one that is drawn there was taken')
  })

  it('gives another name where that one is not free', () => {
    const store = storeOf(buggy)
    takeVariantFrom(store, layoutText(racer), 'a')
    takeVariantFrom(store, layoutText(racer), 'b')
    expect(variantLabels(store.state.getState().layout).map(({ name }) => name)).toEqual([
      'Variant A',
      racer.job.name,
      'Variant B',
    ])
  })

  it('changes nothing for a damaged text or when there are four already, and says why', () => {
    const damaged = storeOf(buggy)
    expect(takeVariantFrom(damaged, '{"version": 1', 'half.layout.json')).toBe(false)
    expect(damaged.state.getState().layout).toBe(buggy)
    expect(damaged.state.getState().notice?.text).toBe(
      'half.layout.json cannot be taken. Nothing was changed.',
    )
    const four = withVariantAdded(withVariantAdded(withVariantAdded(buggy)))
    const full = storeOf(four)
    expect(takeVariantFrom(full, layoutText(racer), 'racer')).toBe(false)
    expect(variantsOf(full.state.getState().layout)).toHaveLength(4)
    expect(full.state.getState().notice?.text).toContain('at most 4 variants')
  })
})
