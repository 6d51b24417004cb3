import type { Layout } from '../../domain/layout/document/layout'
import { reviewsLost } from '../../domain/layout/edit/reviews'
import { unsoundLines } from '../files'

/**
 * Why an edit may not be done: a layout file could not hold what comes of it, or it would drop or change something that was said
 * between shop and customer, which is only ever added to. Undo is no edit and takes back what was entered last.
 */
export const soundStep = (layout: Layout, before: Layout | null): readonly string[] => {
  const lost = before === null ? 0 : reviewsLost(before, layout)
  const lines = unsoundLines(layout)
  if (lost === 0) return lines
  const what = lost === 1 ? 'One entry' : `${lost} entries`
  return [
    ...lines,
    `${what} of what the customer was shown or said would be lost or changed. Entries are only ever added; write another one.`,
  ]
}
