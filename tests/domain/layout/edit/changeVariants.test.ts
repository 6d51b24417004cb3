import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import { addPlace } from '../../../../src/domain/layout/edit/change'
import {
  drawnVariantId,
  drawnVariantName,
  freeVariantName,
  isFreeVariantName,
  MOST_VARIANTS,
  variantsOf,
  variantLabels,
  withoutVariant,
  withVariantAdded,
  withVariantDrawn,
  withVariantMoved,
  withVariantRenamed,
} from '../../../../src/domain/layout/edit/changeVariants'
import { layoutArb } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const buggy = exampleLayout('rock-buggy.layout.json')
const racer = exampleLayout('student-racer-under-thighs.layout.json')

const names = (layout: Layout): readonly string[] => variantsOf(layout).map(({ name }) => name)

const anyLayout = layoutArb
const anyWithVariants = layoutArb.map((layout) =>
  layout.variants === undefined ? withVariantAdded(layout) : layout,
)

describe('withVariantAdded', () => {
  it('draws a copy of what was drawn, and names the one that was there too', () => {
    const two = withVariantAdded(buggy)
    expect(names(two)).toEqual(['Variant A', 'Variant B'])
    expect(drawnVariantName(two)).toBe('Variant B')
    expect(two.places).toBe(buggy.places)
    expect(two.variants?.others[0]?.places).toBe(buggy.places)
    expect(parseLayout(two).ok).toBe(true)
  })

  it('takes the tubes and the places of another layout and nothing else of it', () => {
    const two = withVariantAdded(buggy, 'Like the racer', racer)
    const { variants: _variants, tubes, places, ...rest } = two
    expect(tubes).toBe(racer.tubes)
    expect(places).toBe(racer.places)
    expect(rest).toEqual((({ tubes: _t, places: _p, ...plain }) => plain)(buggy))
    expect(variantsOf(two)[0]?.layout).toEqual(buggy)
  })

  it('changes nothing beyond four, nor under a name that another has or that is empty', () => {
    let full: Layout = buggy
    for (let count = 1; count < MOST_VARIANTS; count += 1) full = withVariantAdded(full)
    expect(names(full)).toEqual(['Variant A', 'Variant B', 'Variant C', 'Variant D'])
    expect(withVariantAdded(full)).toBe(full)
    const two = withVariantAdded(buggy)
    expect(withVariantAdded(two, ' variant  a ')).toBe(two)
    expect(withVariantAdded(buggy, '  ')).toBe(buggy)
  })

  it('gives no id that something was said of before', () => {
    const said = {
      id: 'r1',
      date: '2026-03-01',
      by: 'Ada',
      kind: 'comment',
      shownId: 'r0',
      variantId: 'variant-2',
      partId: '',
      text: 'Lower, please.',
    } as const
    expect(drawnVariantId(withVariantAdded({ ...buggy, reviews: [said] }))).toBe('variant-3')
  })
})

describe('withVariantDrawn', () => {
  it('always gives back the very same file when the first one is drawn again', () => {
    fc.assert(
      fc.property(anyWithVariants, (layout) => {
        const before = layoutText(layout)
        for (const { id } of variantsOf(layout)) {
          const drawn = withVariantDrawn(layout, id)
          expect(drawnVariantId(drawn)).toBe(id)
          expect(layoutText(withVariantDrawn(drawn, drawnVariantId(layout)))).toBe(before)
        }
      }),
    )
  })

  it('never loses, changes or reorders a variant, and never touches what belongs to the car', () => {
    fc.assert(
      fc.property(anyWithVariants, fc.array(fc.nat(3), { maxLength: 6 }), (layout, steps) => {
        let drawn = layout
        for (const step of steps) {
          const all = variantsOf(drawn)
          drawn = withVariantDrawn(drawn, all[step % all.length]?.id ?? '')
          expect(variantsOf(drawn)).toEqual(variantsOf(layout))
          expect(variantLabels(drawn)).toEqual(variantsOf(layout).map(({ id, name }) => ({ id, name })))
          expect(parseLayoutText(layoutText(drawn))).toEqual({ ok: true, value: drawn })
        }
      }),
    )
  })

  it('leaves the layout as it is for the drawn one and for one that does not exist', () => {
    const two = withVariantAdded(buggy)
    expect(withVariantDrawn(two, drawnVariantId(two))).toBe(two)
    expect(withVariantDrawn(two, 'nowhere')).toBe(two)
    expect(withVariantDrawn(buggy, 'variant-1')).toBe(buggy)
  })
})

describe('variantsOf', () => {
  it('gives sound layouts that know of no other variant', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        for (const variant of variantsOf(layout)) {
          expect(variant.layout.variants).toBeUndefined()
          expect(parseLayout(variant.layout)).toEqual({ ok: true, value: variant.layout })
        }
      }),
    )
  })

  it('is the layout itself, unnamed, where there is only one way to build the car', () => {
    expect(variantsOf(buggy)).toEqual([{ id: '', name: '', layout: buggy }])
  })
})

describe('withoutVariant', () => {
  it('leaves a layout that never had variants when one is left', () => {
    const two = withVariantAdded(buggy)
    expect(withoutVariant(two, drawnVariantId(two))).toEqual(buggy)
    expect('variants' in withoutVariant(two, 'variant-1')).toBe(false)
  })

  it('draws the neighbour of the drawn one: the one after it, else the one before', () => {
    const three = withVariantDrawn(withVariantAdded(withVariantAdded(buggy)), 'variant-2')
    const later = withoutVariant(three, 'variant-2')
    expect(drawnVariantId(later)).toBe('variant-3')
    expect(names(later)).toEqual(['Variant A', 'Variant C'])
    expect(drawnVariantId(withoutVariant(withVariantDrawn(three, 'variant-3'), 'variant-3'))).toBe(
      'variant-2',
    )
    expect(drawnVariantId(withoutVariant(three, 'variant-1'))).toBe('variant-2')
  })

  it('always keeps every other variant as it was', () => {
    fc.assert(
      fc.property(anyWithVariants, fc.nat(3), (layout, pick) => {
        const all = variantsOf(layout)
        const gone = all[pick % all.length]
        const left = withoutVariant(layout, gone?.id ?? '')
        const kept = all.filter((variant) => variant !== gone)
        expect(variantsOf(left).map((variant) => variant.layout)).toEqual(kept.map((one) => one.layout))
        expect(parseLayout(left)).toEqual({ ok: true, value: left })
      }),
    )
  })
})

describe('names and order', () => {
  it('a name changes only to one that no other variant has', () => {
    const two = withVariantAdded(buggy)
    expect(names(withVariantRenamed(two, 'variant-1', ' Low bar '))).toEqual(['Low bar', 'Variant B'])
    expect(names(withVariantRenamed(two, 'variant-2', 'High bar'))).toEqual(['Variant A', 'High bar'])
    expect(withVariantRenamed(two, 'variant-2', 'VARIANT A')).toBe(two)
    expect(withVariantRenamed(two, 'variant-2', 'Variant B')).toBe(two)
    expect(isFreeVariantName(two, 'variant b', 'variant-2')).toBe(true)
    expect(isFreeVariantName(two, 'variant b', 'variant-1')).toBe(false)
    expect(freeVariantName(two)).toBe('Variant C')
  })

  it('a step later and a step earlier gives the same file, whichever is drawn', () => {
    const three = withVariantAdded(withVariantAdded(buggy))
    for (const drawn of ['variant-1', 'variant-2', 'variant-3']) {
      const layout = withVariantDrawn(three, drawn)
      const moved = withVariantMoved(layout, 'variant-1', 1)
      expect(names(moved)).toEqual(['Variant B', 'Variant A', 'Variant C'])
      expect(drawnVariantId(moved)).toBe(drawn)
      expect(layoutText(withVariantMoved(moved, 'variant-1', -1))).toBe(layoutText(layout))
    }
    expect(withVariantMoved(three, 'variant-3', 1)).toBe(three)
    expect(withVariantMoved(three, 'variant-1', -1)).toBe(three)
  })
})

describe('places of variants', () => {
  it('a place added in one variant is never taken for another one of another variant', () => {
    const first = addPlace(withVariantAdded(buggy))
    const second = addPlace(withVariantDrawn(first, 'variant-1'))
    expect(second.places.at(-1)?.id).not.toBe(first.places.at(-1)?.id)
  })
})
