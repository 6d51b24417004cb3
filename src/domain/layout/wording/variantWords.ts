import type { AsWeldedRecord } from '../../measure/asWeldedRecord'
import type { Layout } from '../document/layout'
import { drawnVariantName, type MaybeVariants, variantLabels } from '../edit/changeVariants'

type Named = Pick<Layout, 'job'> & MaybeVariants

/** The drawn variant by its name, which need not say that it is one: "variant Low bar", "Variant B"; empty where there is only one. */
export const drawnVariantWords = (layout: MaybeVariants): string => {
  const name = drawnVariantName(layout)
  return name === '' || /^variant\b/i.test(name) ? name : `variant ${name}`
}

/** What a paper or file is of: the job's name, and which variant where the car has several. */
export const jobWords = ({ job, variants }: Named): string =>
  [job.name.trim(), drawnVariantWords({ variants })].filter((word) => word !== '').join(', ')

/** What whoever reads a record of one variant while another is drawn has to know; null where there is nothing to know. */
export const otherVariantText = (
  { plannedVariant }: Pick<AsWeldedRecord, 'plannedVariant'>,
  { variants }: MaybeVariants,
): string | null => {
  const labels = variantLabels({ variants })
  if (plannedVariant === undefined) {
    if (variants === undefined) return null
    return `This record was begun while the car had no variants; which of them was welded is not written down. ${variants.drawn.name} is drawn now.`
  }
  if (labels.every(({ id }) => id !== plannedVariant.id))
    return `This record is of ${plannedVariant.name}, which the layout does not have any more. Deviations are from what was planned when the record was begun; findings are of what is drawn now with its anchors where they were measured.`
  if (variants === undefined || plannedVariant.id === variants.drawn.id) return null
  const drawn = variants.drawn.name
  return (
    `This record is of ${plannedVariant.name}, and ${drawn} is drawn now. Deviations are from what was planned when the record was begun; ` +
    `findings are of the seat, people and tubes of ${drawn} with the anchors where they were measured. Draw ${plannedVariant.name} to see those of what was welded.`
  )
}

/** Where a belt is whose place is not among the drawn ones: in another variant, or in none any more. */
export const otherPlaceWords = (placeId: string, { variants }: MaybeVariants): string => {
  for (const variant of variants?.others ?? []) {
    const place = variant.places.find(({ id }) => id === placeId)
    if (place !== undefined)
      return `${place.name.trim() === '' ? `place ${placeId}` : place.name.trim()}, in ${variant.name} only`
  }
  return 'no longer in the layout'
}
