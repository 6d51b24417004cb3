import type { Layout } from '../domain/layout/document/layout'
import { sameVariantName } from '../domain/layout/document/variantContradictions'
import { variantsOf, withVariantDrawn } from '../domain/layout/edit/changeVariants'
import { err, ok, type Result } from '../domain/result'

const VARIANT = '--variant='

export const VARIANT_USAGE = `${VARIANT}NAME`

export const isVariantWord = (word: string): boolean => word.startsWith(VARIANT)

/** The variant that is asked for, or null for the drawn one; the last word counts. */
export const variantWord = (words: readonly string[]): string | null =>
  words.findLast(isVariantWord)?.slice(VARIANT.length) ?? null

/** The layout with the variant of that name drawn; fails with a sentence when it has none of that name. */
export const withVariantNamed = (layout: Layout, name: string | null): Result<Layout, string> => {
  if (name === null) return ok(layout)
  if (layout.variants === undefined)
    return err(`there is no variant "${name}": this layout has no variants. Leave ${VARIANT_USAGE} out.`)
  const variants = variantsOf(layout)
  const wanted = variants.find((variant) => sameVariantName(variant.name, name))
  if (wanted !== undefined) return ok(withVariantDrawn(layout, wanted.id))
  const names = variants.map((variant) => `"${variant.name}"`).join(', ')
  return err(`there is no variant "${name}". Name one of these: ${names}.`)
}
