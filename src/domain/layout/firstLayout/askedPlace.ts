import type { Layout, Place } from '../document/layout'

/** The place that the questions are about: the first one. */
export const askedPlace = (layout: Layout): Place => {
  const place = layout.places[0]
  if (place === undefined) throw new Error('a layout has at least one place')
  return place
}
