import type { Anchor } from '../../domain/straps/anchor'
import type { Layout } from '../../domain/layout/document/layout'
import type { Proposal, Proposals } from '../../domain/layout/propose/proposal'
import { isSameValue } from '../sameValue'

/** A mount without what a proposal sets: all else about it has to stay as it was asked about. */
const unset = (mount: Anchor['mount']): unknown => {
  switch (mount.kind) {
    case 'tab': {
      const { point: _point, tubeId: _tubeId, planDeg: _planDeg, leanDeg: _leanDeg, ...rest } = mount
      return rest
    }
    case 'wrap':
    case 'eye': {
      const { point: _point, tubeId: _tubeId, planDeg: _planDeg, ...rest } = { planDeg: 0, ...mount }
      return rest
    }
  }
}

/** All of a layout that proposed positions depend on: not the job, names, units or other places, nor what they set themselves. */
const lookedAt = (layout: Layout, { placeId, anchorIds }: Proposals): unknown => {
  const { job: _job, datum: _datum, units: _units, tolerance: _tolerance, ...known } = layout
  const { variants: _variants, reviews: _reviews, places, tubes, ...car } = known
  const bare = tubes.map(({ name: _name, ...tube }) => tube)
  const place = places.find(({ id }) => id === placeId)
  if (place === undefined) return { ...car, bare }
  const { name: _placeName, occupants, anchors, ...rest } = place
  return {
    ...car,
    bare,
    ...rest,
    occupants: occupants.map(({ name: _who, ...body }) => body),
    anchors: anchors.map((anchor) =>
      anchorIds.includes(anchor.id) ? { ...anchor, mount: unset(anchor.mount) } : anchor,
    ),
  }
}

const mountOf = (layout: Layout, placeId: string, anchorId: string): Anchor['mount'] | undefined =>
  layout.places.find(({ id }) => id === placeId)?.anchors.find(({ id }) => id === anchorId)?.mount

/** Whether exactly a proposal's mounts are in a layout: it has been taken, or was there all along. */
export const isTaken = (layout: Layout, placeId: string, { mounts }: Pick<Proposal, 'mounts'>): boolean =>
  mounts.every(({ anchorId, mount }) => isSameValue(mountOf(layout, placeId, anchorId), mount))

/**
 * Whether proposals worked out for one layout still hold for another: nothing that they depend on has changed, and their anchors are
 * where they were then or where one of the proposals puts them.
 */
export const areStillGood = (asked: Layout, now: Layout, proposals: Proposals): boolean => {
  if (asked === now) return true
  if (!isSameValue(lookedAt(asked, proposals), lookedAt(now, proposals))) return false
  const { placeId, anchorIds } = proposals
  const areAsAsked = anchorIds.every((id) =>
    isSameValue(mountOf(asked, placeId, id), mountOf(now, placeId, id)),
  )
  return areAsAsked || proposals.proposals.some((proposal) => isTaken(now, placeId, proposal))
}
