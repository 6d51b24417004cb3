import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { agreementOf } from '../../../../src/domain/layout/agreement/agreement'
import { layoutFingerprint, reviewedVariantsOf } from '../../../../src/domain/layout/agreement/fingerprint'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { withVariantAdded, withVariantDrawn } from '../../../../src/domain/layout/edit/changeVariants'
import { withDecision, withShown } from '../../../../src/domain/layout/edit/reviews'
import { exampleLayout } from '../../../support/exampleLayouts'
import { decision, shownLayout } from '../../../support/reviews'

const rockBuggy = exampleLayout('rock-buggy.layout.json')
const shown = shownLayout(rockBuggy)
const agreed = withDecision(shown, decision(rockBuggy))

/** The first tube a millimetre higher. */
const raised = (layout: Layout): Layout => ({
  ...layout,
  tubes: layout.tubes.map((tube, index) =>
    index === 0 ? { ...tube, points: tube.points.map((point) => ({ ...point, zMm: point.zMm + 1 })) } : tube,
  ),
})

describe('agreementOf', () => {
  it('goes from not shown to open to agreed as drawn', () => {
    expect(agreementOf(rockBuggy)).toEqual({ kind: 'not-shown' })
    expect(agreementOf(shown)).toMatchObject({ kind: 'open', shown: { id: 'shown-1' } })
    expect(agreementOf(agreed)).toMatchObject({
      kind: 'agreed',
      to: 'as-drawn',
      decision: { by: 'Ines', date: '2026-06-03' },
      changedParts: [],
    })
  })

  it('says that the drawing has changed since, and which parts, and takes it back with the change', () => {
    const changed = raised(agreed)
    expect(agreementOf(changed)).toMatchObject({
      kind: 'agreed',
      to: 'changed',
      changedParts: [`tube:${rockBuggy.tubes[0]?.id}`],
    })
    expect(agreementOf({ ...changed, tubes: agreed.tubes })).toMatchObject({ to: 'as-drawn' })
  })

  it('names removed parts too', () => {
    const anchor = rockBuggy.places[0]?.anchors.at(-1)
    const [place, ...places] = agreed.places
    if (place === undefined || anchor === undefined) throw new Error('no anchor')
    const without = { ...place, anchors: place.anchors.filter(({ id }) => id !== anchor.id) }
    expect(agreementOf({ ...agreed, places: [without, ...places] })).toMatchObject({
      to: 'changed',
      changedParts: [`anchor:${place.id}:${anchor.id}`],
    })
  })

  it('says when the customer looked at something that was not shown', () => {
    const other = withDecision(
      shown,
      decision(rockBuggy, { fingerprint: layoutFingerprint(raised(rockBuggy)) }),
    )
    expect(agreementOf(other)).toMatchObject({ kind: 'agreed', to: 'not-as-shown' })
  })

  it('tells a variant that is not drawn from a drawing that has changed', () => {
    const two = raised(withVariantAdded(rockBuggy))
    const variants = reviewedVariantsOf(two)
    const [a, b] = variants
    if (a === undefined || b === undefined) throw new Error('two variants were made')
    const both = withShown(two, { id: 'shown-1', date: '2026-06-01', by: 'Kit', to: 'Ines', variants })
    const toA = withDecision(both, decision(two, { variantId: a.variantId, fingerprint: a.fingerprint }))
    expect(agreementOf(toA)).toMatchObject({ to: 'other-variant', variantName: a.name })
    expect(agreementOf(withVariantDrawn(toA, a.variantId))).toMatchObject({ to: 'as-drawn' })
  })

  it('asks again after a wish for a change once something newer was shown', () => {
    const asked = withDecision(shown, decision(rockBuggy, { kind: 'change-asked', text: 'Lower, please' }))
    expect(agreementOf(asked)).toMatchObject({ kind: 'change-asked', decision: { text: 'Lower, please' } })
    const again = withShown(raised(asked), {
      id: 'shown-2',
      date: '2026-06-09',
      by: 'Kit',
      to: 'Ines',
      variants: reviewedVariantsOf(raised(asked)),
    })
    expect(agreementOf(again)).toMatchObject({ kind: 'open', shown: { id: 'shown-2' } })
  })

  it('goes by the last day, and on one day by what was entered last', () => {
    const earlier = withDecision(agreed, decision(rockBuggy, { id: 'd-2', by: 'Ola', date: '2026-06-01' }))
    expect(agreementOf(earlier)).toMatchObject({ kind: 'agreed', decision: { by: 'Ines' } })
    const sameDay = withDecision(agreed, decision(rockBuggy, { id: 'd-2', kind: 'change-asked' }))
    expect(agreementOf(sameDay)).toMatchObject({ kind: 'change-asked' })
  })

  it('keeps a wish for a change that was entered last, whatever day its clock said', () => {
    const late = decision(rockBuggy, { id: 'd-2', kind: 'change-asked', date: '2026-06-01' })
    expect(agreementOf(withDecision(agreed, late))).toMatchObject({ kind: 'change-asked' })
  })

  it('never calls a drawing agreed that differs in any coordinate from the one agreed to', () => {
    const points = agreed.tubes.flatMap((tube, tubeIndex) =>
      tube.points.map((_, pointIndex) => [tubeIndex, pointIndex] as const),
    )
    fc.assert(
      fc.property(
        fc.constantFrom(...points),
        fc.constantFrom('xMm' as const, 'yMm' as const, 'zMm' as const),
        fc.double({ min: 0.001, max: 500, noNaN: true }),
        ([tubeIndex, pointIndex], axis, byMm) => {
          const tubes = agreed.tubes.map((tube, index) =>
            index === tubeIndex
              ? {
                  ...tube,
                  points: tube.points.map((point, at) =>
                    at === pointIndex ? { ...point, [axis]: point[axis] + byMm } : point,
                  ),
                }
              : tube,
          )
          expect(agreementOf({ ...agreed, tubes })).toMatchObject({ kind: 'agreed', to: 'changed' })
        },
      ),
    )
  })
})
