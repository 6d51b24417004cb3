import { describe, expect, it } from 'vitest'
import {
  withVariantAdded,
  withVariantDrawn,
  withVariantRenamed,
} from '../../../src/domain/layout/edit/changeVariants'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { evaluatedVariant, shownVariants, variantNumbers } from '../../../src/state/compare/shownVariants'
import { answerWelded } from '../../../src/state/welded/answerWelded'
import { exampleLayout } from '../../support/exampleLayouts'

const two = withVariantAdded(exampleLayout('rock-buggy.layout.json'), 'Other')

describe('shownVariants', () => {
  it('works nothing out twice when another is drawn or renamed', () => {
    const before = shownVariants(two)
    expect(before.drawn).toBe(1)
    const after = shownVariants(withVariantRenamed(withVariantDrawn(two, 'variant-1'), 'variant-1', 'First'))
    expect(after.drawn).toBe(0)
    expect(after.variants.map(({ name }) => name)).toEqual(['First', 'Other'])
    for (const [index, { layout }] of after.variants.entries()) {
      expect(layout).toBe(before.variants[index]?.layout)
      expect(variantNumbers(layout)).toBe(variantNumbers(layout))
    }
  })
})

describe('evaluatedVariant', () => {
  it('has the rooms once a worker has worked them out, the same as one evaluation of the whole', () => {
    const { layout } = shownVariants(two).variants[0] ?? { layout: two }
    const pending = evaluatedVariant(layout, null).evaluation
    expect(
      pending.places.flatMap(({ findings }) => findings).some(({ roomMm }) => roomMm === 'pending'),
    ).toBe(true)
    const answer = answerWelded({ layout })
    const known = evaluatedVariant(layout, answer.ok ? answer.value : null).evaluation
    const whole = evaluateLayout(layout, { extent: 'what-moves' })
    expect(known.places.map(({ findings }) => findings)).toEqual(whole.places.map(({ findings }) => findings))
    expect(known.places[0]?.sittings).toBe(pending.places[0]?.sittings)
  })
})
