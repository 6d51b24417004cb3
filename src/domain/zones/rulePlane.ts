import type { Elevation } from '../geometry/plane'
import type { QuantityRule } from '../rules/rule'
import type { QuantityId } from '../straps/quantity'

/** Quantities that a turn of the tab or eye, another occupant or a longer belt clears, not another place for the anchor. */
const NOT_OF_POSITION: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'tab-twist',
  'shank-angle',
  'strap-length',
  'helmet-clearance',
  'body-clearance',
])

export const isNotOfPosition = (id: QuantityId): boolean => NOT_OF_POSITION.has(id)

/** Distances across the seat between two anchors, or from its middle: a height or a fore-and-aft move does not matter. */
const ACROSS_ONLY: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'lap-spacing',
  'lap-off-centre',
  'sub-spacing',
])

/** Whether moving the anchor in an elevation can decide about a rule. A mirrored pair moves together. */
export const isDecidedIn = (
  { quantity }: Pick<QuantityRule, 'quantity'>,
  mirrored: boolean,
  elevation: Elevation,
): boolean => {
  if (NOT_OF_POSITION.has(quantity)) return false
  if (quantity === 'lap-mirror' || quantity === 'shoulder-mirror' || quantity === 'sub-mirror')
    return !mirrored
  return elevation === 'top' || !ACROSS_ONLY.has(quantity)
}

/** The plane a rule lives in: the one in which the room is measured. */
export const homeElevation = (rule: Pick<QuantityRule, 'quantity'>, mirrored: boolean): Elevation => {
  switch (rule.quantity) {
    case 'shoulder-plan':
    case 'shoulder-reference-plan':
    case 'lap-off-centre':
    case 'lap-spacing':
    case 'sub-spacing':
    case 'wrap-square':
      return 'top'
    case 'shoulder-spacing':
      return mirrored ? 'top' : 'side'
    case 'shoulder-drop':
    case 'shoulder-to-spine':
    case 'shoulder-rim-drop':
    case 'shoulder-height':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'spine-load-share':
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
    case 'lap-mirror':
    case 'shoulder-mirror':
    case 'sub-mirror':
    case 'lap-over-asis':
    case 'sub-to-chest':
    case 'sub-to-vertical':
    case 'slot-bend':
    case 'tab-twist':
    case 'shank-angle':
    case 'shoulder-junction':
    case 'adjuster-clearance':
    case 'tube-clearance':
    case 'helmet-clearance':
    case 'body-clearance':
    case 'strap-length':
      return 'side'
  }
}
