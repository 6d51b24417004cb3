import type { Layout, Variant, Variants } from '../document/layout'
import { COUNTS } from '../document/limits'
import { sameVariantName } from '../document/variantContradictions'
import { freshId } from './change'

/*
 * Variants of one car. The drawn one lies in the layout itself and the others wait beside it; drawing another swaps the two and loses
 * nothing. Everything else belongs to the car and holds for each of them: what was welded and measured, belts, tape points, rule sets.
 * Each edit gives the very same layout when there is nothing to change.
 */

/** A variant as a layout of its own, which knows of no other. */
export interface VariantLayout {
  /** Empty where the layout has no variants, and so is the name. */
  readonly id: string
  readonly name: string
  readonly layout: Layout
}

/** Whatever may have variants. */
export interface MaybeVariants {
  readonly variants?: Variants | undefined
}

/** What a variant is built of. */
export type Built = Pick<Layout, 'tubes' | 'places'>

/** The most variants that one layout may hold, the drawn one among them. */
export const MOST_VARIANTS = COUNTS.otherVariants.max + 1

/** All variants in their order, the drawn one where it stands among them. Of a layout without variants: itself, unnamed. */
export const variantsOf = (layout: Layout): readonly VariantLayout[] => {
  if (layout.variants === undefined) return [{ id: '', name: '', layout }]
  const { variants: _variants, ...plain } = layout
  return allOf(layout, layout.variants).map(({ id, name, tubes, places }) => ({
    id,
    name,
    layout: { ...plain, tubes, places },
  }))
}

/** The id of the drawn variant; empty where there are none. */
export const drawnVariantId = ({ variants }: MaybeVariants): string => variants?.drawn.id ?? ''

/** What the drawn variant is called; empty where there is only one way to build the car. */
export const drawnVariantName = ({ variants }: MaybeVariants): string => variants?.drawn.name ?? ''

/** What all variants are called, in their order; empty where there is only one. */
export const variantLabels = ({ variants }: MaybeVariants): readonly Pick<Variant, 'id' | 'name'>[] => {
  if (variants === undefined) return []
  const { drawn, others } = variants
  return [...others.slice(0, drawn.index), drawn, ...others.slice(drawn.index)].map(({ id, name }) => ({
    id,
    name,
  }))
}

const allOf = ({ tubes, places }: Built, { drawn, others }: Variants): readonly Variant[] => [
  ...others.slice(0, drawn.index),
  { id: drawn.id, name: drawn.name, tubes, places },
  ...others.slice(drawn.index),
]

/** The layout with these variants in this order, and the one with `drawnId` drawn. The only one left is none, unless something names it. */
const withAll = (layout: Layout, all: readonly Variant[], drawnId: string): Layout => {
  const index = all.findIndex(({ id }) => id === drawnId)
  const drawn = all[index]
  if (drawn === undefined) throw new RangeError(`no variant ${drawnId} to draw`)
  const { tubes, places } = drawn
  const { variants: _variants, ...plain } = layout
  const built = { ...plain, tubes, places }
  if (all.length === 1 && namedIds(layout).every((named) => named.id !== drawn.id)) return built
  const others = all.filter((_, at) => at !== index)
  return { ...built, variants: { drawn: { id: drawn.id, name: drawn.name, index }, others } }
}

/** The first of "Variant A" to "Variant D" … that no variant is called. */
export const freeVariantName = ({ variants }: MaybeVariants): string => {
  const names = variants === undefined ? [] : [variants.drawn, ...variants.others].map(({ name }) => name)
  for (let letter = 0; ; letter += 1) {
    const name = `Variant ${String.fromCharCode('A'.charCodeAt(0) + letter)}`
    if (names.every((other) => !sameVariantName(other, name))) return name
  }
}

/** Whether a variant may be called so: not empty, and no other of the layout is. `id` is the one that is to get the name. */
export const isFreeVariantName = ({ variants }: MaybeVariants, name: string, id: string): boolean =>
  name.trim() !== '' &&
  (variants === undefined ||
    [variants.drawn, ...variants.others].every(
      (other) => other.id === id || !sameVariantName(other.name, name),
    ))

/**
 * One more variant, the last of them, and drawn: what is changed next is the new one. It begins as a copy of the one drawn before, or as
 * what another layout builds, whose positions are from its own datum and are taken as they are. The first one added gives the one that
 * was there a name too. Unchanged when there are as many as a layout may hold, or the name is not free.
 */
export const withVariantAdded = (
  layout: Layout,
  name: string = freeVariantName(withFirstNamed(layout)),
  from: Built = layout,
): Layout => {
  const named = withFirstNamed(layout)
  const all = allOf(named, named.variants)
  if (all.length >= MOST_VARIANTS || !isFreeVariantName(named, name, '')) return layout
  const id = freshId('variant', [...all, ...namedIds(layout)])
  const { tubes, places } = from
  return withAll(named, [...all, { id, name: name.trim(), tubes, places }], id)
}

/**
 * Variants that somebody looked at or that were welded, removed ones among them: what was said or measured of one must not be taken to
 * be of another.
 */
const namedIds = ({ reviews = [], asWelded = [] }: Layout): readonly { readonly id: string }[] =>
  [
    ...reviews.flatMap((entry) =>
      entry.kind === 'shown' ? entry.variants.map(({ variantId }) => variantId) : [entry.variantId],
    ),
    ...asWelded.flatMap(({ plannedVariant }) => plannedVariant?.id ?? []),
  ].map((id) => ({ id }))

/** Lets the only way to build the car be one of several; never kept so, because a layout holds two or more. */
const withFirstNamed = (layout: Layout): Layout & { readonly variants: Variants } => ({
  ...layout,
  variants: layout.variants ?? {
    drawn: { id: freshId('variant', namedIds(layout)), name: freeVariantName(layout), index: 0 },
    others: [],
  },
})

/** Another variant drawn; the one that was drawn waits where it stands among them. */
export const withVariantDrawn = (layout: Layout, id: string): Layout => {
  const { variants } = layout
  if (variants === undefined || variants.drawn.id === id) return layout
  const all = allOf(layout, variants)
  return all.some((variant) => variant.id === id) ? withAll(layout, all, id) : layout
}

/** A variant by another name. Unchanged when the name is not free. */
export const withVariantRenamed = (layout: Layout, id: string, name: string): Layout => {
  const { variants } = layout
  if (variants === undefined || !isFreeVariantName(layout, name, id)) return layout
  const all = allOf(layout, variants)
  const changed = all.map((variant) => (variant.id === id ? { ...variant, name: name.trim() } : variant))
  if (changed.every((variant, at) => variant.name === all[at]?.name)) return layout
  return withAll(layout, changed, variants.drawn.id)
}

/**
 * A variant less. Is it the drawn one, its neighbour is drawn: the one after it, else the one before. With only one left the layout is
 * as one that never had variants, unless a record or a review names that one: then it keeps its id and its name. The last one stays.
 */
export const withoutVariant = (layout: Layout, id: string): Layout => {
  const { variants } = layout
  if (variants === undefined) return layout
  const all = allOf(layout, variants)
  const index = all.findIndex((variant) => variant.id === id)
  if (index === -1 || all.length < 2) return layout
  const neighbour = all[index + 1] ?? all[index - 1]
  const drawnId = variants.drawn.id === id && neighbour !== undefined ? neighbour.id : variants.drawn.id
  return withAll(
    layout,
    all.filter((_, at) => at !== index),
    drawnId,
  )
}

/** A variant one step earlier or later in their order. */
export const withVariantMoved = (layout: Layout, id: string, step: -1 | 1): Layout => {
  const { variants } = layout
  if (variants === undefined) return layout
  const all = [...allOf(layout, variants)]
  const index = all.findIndex((variant) => variant.id === id)
  const [here, there] = [all[index], all[index + step]]
  if (here === undefined || there === undefined) return layout
  all[index] = there
  all[index + step] = here
  return withAll(layout, all, variants.drawn.id)
}
