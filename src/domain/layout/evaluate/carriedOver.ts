import type { Elevation } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { ShownFinding } from '../../rules/finding'
import { strapsOfPair } from '../../rules/subjects'
import type { Anchor } from '../../straps/anchor'
import { mirroredStrap, STRAP_IDS, strapFamily, type StrapId } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { orderedFindings } from './evaluateLayout'
import type { ShownEvaluation, ShownPlace, ShownZone } from './evaluation'
import { strapOfSubject } from './ruleContexts'

/** Everything but anchors that rooms and zones of a place depend on. The same objects: edits keep what they do not change. */
const isSameBut = (a: Layout, b: Layout, was: Place, is: Place): boolean =>
  a.tubes === b.tubes &&
  a.ruleSetId === b.ruleSetId &&
  a.ownRuleSets === b.ownRuleSets &&
  a.confirmedDocuments === b.confirmedDocuments &&
  a.dustyOrMuddyUse === b.dustyOrMuddyUse &&
  was.seat === is.seat &&
  was.occupants === is.occupants &&
  was.belt === is.belt &&
  was.mirrored.shoulder === is.mirrored.shoulder &&
  was.mirrored.lap === is.mirrored.lap &&
  was.mirrored.sub === is.mirrored.sub

const anchorOf = ({ anchors }: Place, strap: StrapId): Anchor | undefined =>
  anchors.find((anchor) => anchor.strap === strap)

/** The same mount but for where it is. */
const isSameMount = (was: Anchor, is: Anchor): boolean => {
  const { point: _was, ...before } = was.mount
  const { point: _is, ...after } = is.mount
  return was.id === is.id && JSON.stringify(before) === JSON.stringify(after)
}

/** Across the drawn plane nothing moved. */
const isSameAcross = (was: PointMm, is: PointMm, elevation: Elevation): boolean =>
  elevation === 'side' ? was.yMm === is.yMm : was.zMm === is.zMm

/**
 * Whether the other side's place counts for an anchor. A mirrored pair is looked at with both sides moved alike; but the buckle, to
 * which the adjuster of a lap strap is measured, stays where both lap straps as drawn put it.
 */
const doesPartnerCount = (place: Place, anchor: Anchor): boolean => {
  const family = strapFamily(anchor.strap)
  return !place.mirrored[family] || (family === 'lap' && place.belt.adjusters?.lap !== undefined)
}

/** The straps whose anchors decide about a strap's path besides its own: its pair, and the lap straps, between which the buckle lies. */
const strapsBeside = (strap: StrapId): readonly StrapId[] => {
  const partner = mirroredStrap(strap)
  const straps = new Set<StrapId>([...(partner === null ? [] : [partner]), 'lap-left', 'lap-right'])
  straps.delete(strap)
  return [...straps]
}

/** Whether every other anchor that the strap depends on is as it was. */
const areOthersSame = (was: Place, is: Place, anchor: Anchor): boolean => {
  const partner = mirroredStrap(anchor.strap)
  return strapsBeside(anchor.strap).every((strap) => {
    const before = anchorOf(was, strap)
    const after = anchorOf(is, strap)
    if (before === after) return true
    if (before === undefined || after === undefined) return false
    return strap === partner && !doesPartnerCount(is, anchor) && isSameMount(before, after)
  })
}

/** Whether the zone of an anchor in a drawn plane is what it was. Where the anchor itself lies in that plane does not count. */
const isZoneSame = (was: Place, is: Place, after: Anchor, elevation: Elevation): boolean => {
  const before = anchorOf(was, after.strap)
  return (
    before !== undefined &&
    isSameMount(before, after) &&
    isSameAcross(before.mount.point, after.mount.point, elevation) &&
    areOthersSame(was, is, after)
  )
}

const carriedZone = (zone: ShownZone, before: ShownZone, was: Place, is: Place): ShownZone => {
  const anchor = is.anchors.find(({ id }) => id === zone.anchorId)
  if (anchor === undefined) return zone
  const regionIn = (elevation: Elevation): ShownZone['side'] =>
    zone[elevation] === 'pending' && isZoneSame(was, is, anchor, elevation)
      ? before[elevation]
      : zone[elevation]
  return { ...zone, side: regionIn('side'), top: regionIn('top') }
}

/** Whether the room of a finding is what it was: nothing that its straps depend on has changed, nor where they end. */
const isRoomSame = (was: Place, is: Place, { subject }: ShownFinding): boolean => {
  const strap = strapOfSubject(is, subject)
  const isPair = subject === 'shoulder-pair' || subject === 'lap-pair' || subject === 'sub-pair'
  const straps = strap === null ? (isPair ? strapsOfPair(subject) : STRAP_IDS) : [strap]
  return straps.every((own) =>
    [own, ...strapsBeside(own)].every((each) => anchorOf(was, each) === anchorOf(is, each)),
  )
}

/** The same sittings: which positions between the ends of its travel decide something depends on every strap of the place. */
const areSittingsSame = ({ sittings: was }: ShownPlace, { sittings: is }: ShownPlace): boolean =>
  was.length === is.length && was.every(({ sitting: { id } }, index) => id === is[index]?.sitting.id)

const carriedPlace = (shown: ShownPlace, before: ShownPlace, was: Place, is: Place): ShownPlace => {
  const known = new Map(before.findings.map((finding) => [finding.id, finding]))
  const findings = shown.findings.map((finding): ShownFinding => {
    const found = known.get(finding.id)
    const isKnown = finding.roomMm === 'pending' && found !== undefined && isRoomSame(was, is, finding)
    // The numbers are the same, or nothing is known of this one.
    return isKnown && Object.is(found.value, finding.value) ? { ...found, remedy: null } : finding
  })
  const zones = shown.zones.map((zone) => {
    const found = before.zones.find(({ anchorId }) => anchorId === zone.anchorId)
    return found === undefined ? zone : carriedZone(zone, found, was, is)
  })
  return { ...shown, findings: orderedFindings(findings), zones }
}

/**
 * An evaluation with the rooms and zones of another layout wherever nothing they depend on is different. What depends on anything
 * that changed stays `pending`: nothing is shown that was worked out for something else.
 */
export const carriedOver = (
  layout: Layout,
  shown: ShownEvaluation,
  before: { readonly layout: Layout; readonly evaluation: ShownEvaluation },
): ShownEvaluation => ({
  ...shown,
  places: shown.places.map((place) => {
    const is = layout.places.find(({ id }) => id === place.placeId)
    const was = before.layout.places.find(({ id }) => id === place.placeId)
    const found = before.evaluation.places.find(({ placeId }) => placeId === place.placeId)
    if (is === undefined || was === undefined || found === undefined) return place
    return isSameBut(before.layout, layout, was, is) && areSittingsSame(found, place)
      ? carriedPlace(place, found, was, is)
      : place
  }),
})
