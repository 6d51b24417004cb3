import type { RuleContext } from '../../rules/applies'
import type { Finding } from '../../rules/finding'
import { strapsOf, type StrapId } from '../../straps/strap'
import type { ZoneCase } from '../../zones/zone'
import type { Layout, Place } from '../document/layout'
import type { Sitting } from './evaluation'
import { isSeatAdjustable } from './sittings'
import type { SolvedSitting } from './solvedSittings'

/** The subject as one strap of this place's arrangement; null for pairs, the head, the belt and tubes. */
export const strapOfSubject = (place: Place, subject: Finding['subject']): StrapId | null =>
  strapsOf(place.belt).find((strap) => strap === subject) ?? null

/** The facts that decide whether a rule speaks about a subject in one sitting. */
export const ruleContext = (
  layout: Layout,
  place: Place,
  sitting: Sitting,
  subject: Finding['subject'],
): RuleContext => {
  const strap = strapOfSubject(place, subject)
  const anchor = strap === null ? undefined : place.anchors.find((each) => each.strap === strap)
  const facts = {
    reclineDeg: sitting.reclineDeg,
    reclinesFurther: sitting.reclineDeg < place.seat.reclineRange.reclinedDeg,
    belt: place.belt,
    dusty: layout.dustyOrMuddyUse,
    seatAdjustable: isSeatAdjustable(place.seat),
    mount: anchor?.mount.kind ?? null,
  }
  if (strap === null) return facts
  const tube = layout.tubes.find(({ id }) => id === anchor?.mount.tubeId)
  return tube === undefined ? { ...facts, strap } : { ...facts, strap, tube: tube.role }
}

const isMirrored = (place: Place, strap: StrapId): boolean => {
  switch (strap) {
    case 'shoulder-left':
    case 'shoulder-right':
      return place.mirrored.shoulder
    case 'lap-left':
    case 'lap-right':
      return place.mirrored.lap
    case 'sub-left':
    case 'sub-right':
      return place.mirrored.sub
    case 'sub-centre':
      return false
  }
}

/** Each anchor of the place's arrangement over all sittings, as the zones want it, by strap. */
export const zoneCases = (
  layout: Layout,
  place: Place,
  sittings: readonly SolvedSitting[],
): ReadonlyMap<StrapId, ZoneCase> => {
  const straps = strapsOf(place.belt)
  return new Map(
    place.anchors
      .filter(({ strap }) => straps.includes(strap))
      .map((anchor) => [
        anchor.strap,
        {
          scenes: sittings.map(({ sitting, scene, solved }) => ({
            sittingId: sitting.id,
            scene,
            solved,
            context: ruleContext(layout, place, sitting, anchor.strap),
          })),
          anchor,
          mirrored: isMirrored(place, anchor.strap),
        },
      ]),
  )
}
