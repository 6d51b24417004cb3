import type { WeldTolerance } from '../../../rules/tolerance'
import { strapsOfPair } from '../../../rules/subjects'
import type { QuantityId, Subject } from '../../../straps/quantity'
import { strapFamily, type StrapId } from '../../../straps/strap'
import type { Anchor } from '../../../straps/anchor'
import type { Place } from '../../document/layout'

type Axis = 'xMm' | 'yMm' | 'zMm'

/** One thing that may be off by ± `size` (> 0), in the unit that the field or axis is named by. */
export type ErrorVariable =
  | { readonly kind: 'anchor'; readonly anchorId: string; readonly axis: Axis; readonly size: number }
  | { readonly kind: 'tubes'; readonly axis: Axis; readonly size: number }
  | {
      readonly kind: 'tab'
      readonly anchorId: string
      readonly angle: 'planDeg' | 'leanDeg'
      readonly size: number
    }
  | { readonly kind: 'recline'; readonly size: number }

/** Sides of the side elevation first: there most rules live, and the search starts from their corners. */
const AXES: readonly Axis[] = ['xMm', 'zMm', 'yMm']

const LAP_STRAPS: readonly StrapId[] = ['lap-left', 'lap-right']

/** The straps whose anchors a subject's numbers depend on: its own, and, through the buckle, the lap straps. */
const decidingStraps = (quantity: QuantityId, subject: Subject): readonly StrapId[] => {
  const pair = strapsOfPair(subject)
  if (subject === 'head' || subject === 'body') return []
  const own = pair.length > 0 ? pair : [subject as StrapId]
  const [first] = own
  const needsBuckle = first !== undefined && (strapFamily(first) === 'sub' || quantity === 'strap-length')
  return needsBuckle && !quantity.endsWith('-spacing') && !quantity.endsWith('-mirror')
    ? [...new Set([...own, ...LAP_STRAPS])]
    : own
}

/** The anchors whose error matters to a subject, its own first. */
export const decidingAnchors = (place: Place, quantity: QuantityId, subject: Subject): readonly Anchor[] =>
  decidingStraps(quantity, subject).flatMap(
    (strap) => place.anchors.find((anchor) => anchor.strap === strap) ?? [],
  )

/** Everything that may be off and that a subject's number can depend on; what is typed as ± 0 is left out. */
export const errorVariables = (
  place: Place,
  tolerance: WeldTolerance,
  quantity: QuantityId,
  subject: Subject,
): readonly ErrorVariable[] => {
  const anchors = decidingAnchors(place, quantity, subject)
  const placed = anchors.flatMap(({ id }) =>
    AXES.map((axis) => ({ kind: 'anchor', anchorId: id, axis, size: tolerance[axis] }) as const),
  )
  // A shift that all tubes share finds the same nearest tube as one of each: the least gap over tubes is what is asked.
  const tubes =
    subject === 'head' || subject === 'body'
      ? AXES.map((axis) => ({ kind: 'tubes', axis, size: tolerance[axis] }) as const)
      : []
  const own = anchors[0]
  const tab =
    quantity === 'tab-twist' && own?.mount.kind === 'tab'
      ? (['planDeg', 'leanDeg'] as const).map(
          (angle) => ({ kind: 'tab', anchorId: own.id, angle, size: tolerance.tabDeg }) as const,
        )
      : []
  const recline = { kind: 'recline', size: tolerance.reclineDeg } as const
  return [...placed, ...tubes, ...tab, recline].filter(({ size }) => size > 0)
}
