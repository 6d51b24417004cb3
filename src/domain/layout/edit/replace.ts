import type { Tube } from '../../geometry/tube'
import type { Layout, Place } from '../document/layout'

/** `items` with the one of this id changed; the very same list when no item has the id or the change keeps it. */
export const withReplaced = <Item extends { readonly id: string }>(
  items: readonly Item[],
  id: string,
  change: (item: Item) => Item,
): readonly Item[] => {
  const changed = items.map((item) => (item.id === id ? change(item) : item))
  return changed.some((item, index) => item !== items[index]) ? changed : items
}

/** The layout with one place changed; the same layout when there is no such place or nothing changed. */
export const withPlaceChanged = (
  layout: Layout,
  placeId: string,
  change: (place: Place) => Place,
): Layout => {
  const places = withReplaced(layout.places, placeId, change)
  return places === layout.places ? layout : { ...layout, places }
}

/** The layout with one tube changed as it is; what is attached to it stays where it was. */
export const withTubeChanged = (layout: Layout, tubeId: string, change: (tube: Tube) => Tube): Layout => {
  const tubes = withReplaced(layout.tubes, tubeId, change)
  return tubes === layout.tubes ? layout : { ...layout, tubes }
}
