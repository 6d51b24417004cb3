import type { EvaluatedVariant } from '../../domain/layout/compare/comparedFindings'
import type { Layout } from '../../domain/layout/document/layout'
import { drawnVariantId, type VariantLayout, variantsOf } from '../../domain/layout/edit/changeVariants'
import { orderedFindings, layoutNumbers } from '../../domain/layout/evaluate/evaluateLayout'
import type { ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { WeldedFindings } from '../welded/weldedMessages'

/** All variants of a layout with what the page works out of each at once. */
export interface ShownVariants {
  readonly variants: readonly VariantLayout[]
  /** Which of them is drawn. */
  readonly drawn: number
}

const isShallowlySame = (a: Layout, b: Layout): boolean => {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as ReadonlySet<keyof Layout>
  return [...keys].every((key) => a[key] === b[key])
}

let last: { readonly layout: Layout; readonly shown: ShownVariants } | null = null

/** The variants of a layout: the same objects as before for every one that has not changed, so that nothing is worked out twice. */
export const shownVariants = (layout: Layout): ShownVariants => {
  if (last?.layout === layout) return last.shown
  const before = last?.shown.variants ?? []
  const variants = variantsOf(layout).map((variant) => {
    const same = before
      .filter((other) => isShallowlySame(other.layout, variant.layout))
      .toSorted((a, b) => Number(b.id === variant.id) - Number(a.id === variant.id))[0]
    return same === undefined ? variant : { ...variant, layout: same.layout }
  })
  const drawn = Math.max(
    0,
    variants.findIndex(({ id }) => id === drawnVariantId(layout)),
  )
  const shown = { variants, drawn }
  last = { layout, shown }
  return shown
}

const numbers = new WeakMap<Layout, ShownEvaluation>()

/** Paths and numbers of one variant, worked out once as long as it does not change; rooms are pending. */
export const variantNumbers = (layout: Layout): ShownEvaluation => {
  const known = numbers.get(layout)
  if (known !== undefined) return known
  const evaluation = layoutNumbers(layout)
  numbers.set(layout, evaluation)
  return evaluation
}

/** A variant with as much as is known of it: the rooms too where a worker has worked out its findings. */
export const evaluatedVariant = (layout: Layout, findings: WeldedFindings | null): EvaluatedVariant => {
  const evaluation = variantNumbers(layout)
  if (findings === null || findings.length !== evaluation.places.length) return { layout, evaluation }
  const places = evaluation.places.map((place, index) => ({
    ...place,
    findings: orderedFindings(findings[index] ?? place.findings),
  }))
  return { layout, evaluation: { ...evaluation, places } }
}
