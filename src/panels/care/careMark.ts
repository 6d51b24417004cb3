import { isOutOfUse } from '../../domain/care/concern'
import type { Layout } from '../../domain/layout/document/layout'
import { ruleSetOf } from '../../domain/layout/document/ruleSetOf'
import { today } from '../../state/today'

/** How many belts of the layout's places must not be worn today. */
export const beltsOutOfUse = (layout: Layout): number => {
  const ruleSet = ruleSetOf(layout)
  if (ruleSet === null || layout.belts === undefined) return 0
  const places = new Set(layout.places.map(({ id }) => id))
  return layout.belts.filter((belt) => places.has(belt.placeId) && isOutOfUse(belt, ruleSet, today())).length
}
