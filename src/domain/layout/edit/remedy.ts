import type { Finding, Remedy } from '../../rules/finding'
import type { PropertyId } from '../../rules/rule'
import { type Anchor, formShear, type TabMount } from '../../straps/anchor'
import {
  ARRANGEMENTS,
  type Belt,
  STRAP_IDS,
  type StrapFamily,
  type StrapId,
  strapFamily,
} from '../../straps/strap'
import { movedPoint, shiftedPoint } from '../../zones/move'
import type { Layout, Place } from '../document/layout'
import { withBelt } from './changeBelt'
import { addAnchor, withoutSizes } from './changeAnchors'
import { withTube } from './changeTubes'
import { withPlaceChanged, withReplaced } from './replace'
import { limitedPoint, withTubePoints, pointOnTube } from './tubeMove'

/** The layout with a finding's remedy carried out; the same layout when there is none to carry out. */
export const appliedRemedy = (layout: Layout, finding: Finding): Layout => {
  const { remedy, placeId } = finding
  const place = layout.places.find((candidate) => candidate.id === placeId)
  if (remedy === null || place === undefined) return layout
  switch (remedy.kind) {
    case 'none':
      return layout
    case 'move-anchors':
      return withAnchorsShifted(layout, place, remedy)
    case 'move-tube':
      return withTubeMoved(layout, place, remedy)
    case 'combined':
      return remedy.steps.reduce(
        (before, step) => appliedRemedy(before, { ...finding, remedy: step }),
        layout,
      )
    case 'turn-tab':
      return withTab(layout, placeId, remedy.anchorId, { planDeg: remedy.planDeg, leanDeg: remedy.leanDeg })
    case 'add-anchor': {
      const strap = STRAP_IDS.find((id) => id === remedy.strap)
      return strap === undefined ? layout : addAnchor(layout, placeId, strap)
    }
    case 'change-property':
      return withProperty(layout, place, finding, remedy)
  }
}

/**
 * Exactly the named anchors move, each by the same amount and on a tube along it: that is what the remedy was checked with. In a layout
 * that has changed since, an anchor that can no longer be moved so stays where it is.
 */
const withAnchorsShifted = (
  layout: Layout,
  place: Place,
  remedy: Extract<Remedy, { kind: 'move-anchors' }>,
): Layout => {
  const { tubes } = layout
  const shifted = (anchor: Anchor): Anchor => {
    const { mount } = anchor
    const { belt, seat } = place
    const moved = movedPoint(anchor, mount.point, remedy, { tubes, belt }, seat.hipPoint.yMm)
    if (moved === null) return anchor
    const point = limitedPoint(moved)
    if (mount.kind !== 'wrap') return { ...anchor, mount: { ...mount, point } }
    const tube = tubes.find(({ id }) => id === mount.tubeId)
    return tube === undefined
      ? anchor
      : { ...anchor, mount: { ...mount, point: pointOnTube(tube.points, point) } }
  }
  return withPlaceChanged(layout, place.id, (old) => ({
    ...old,
    anchors: old.anchors.map((anchor) => (remedy.anchorIds.includes(anchor.id) ? shifted(anchor) : anchor)),
  }))
}

const withTubeMoved = (
  layout: Layout,
  place: Place,
  remedy: Extract<Remedy, { kind: 'move-tube' }>,
): Layout => {
  const tube = layout.tubes.find((candidate) => candidate.id === remedy.tubeId)
  if (tube === undefined) return layout
  const points = tube.points.map((point) =>
    limitedPoint(shiftedPoint(point, remedy, place.seat.hipPoint.yMm)),
  )
  return withTubePoints(layout, tube, points)
}

const withTab = (
  layout: Layout,
  placeId: string,
  anchorId: string,
  patch: Partial<Omit<TabMount, 'kind'>>,
): Layout =>
  withPlaceChanged(layout, placeId, (place) => ({
    ...place,
    anchors: withReplaced(place.anchors, anchorId, (anchor) =>
      anchor.mount.kind === 'tab' ? { ...anchor, mount: { ...anchor.mount, ...patch } } : anchor,
    ),
  }))

/** A typed value set to what the rule wants, on exactly the belt, straps or tube that the finding is about. */
const withProperty = (
  layout: Layout,
  place: Place,
  finding: Finding,
  { property, to }: Extract<Remedy, { kind: 'change-property' }>,
): Layout => {
  switch (property) {
    case 'belt-points':
    case 'belt-buckle':
    case 'belt-material':
    case 'belt-lap-adjuster':
    case 'belt-head-and-neck':
    case 'webbing-width':
      return withBelt(layout, place.id, beltPatch(place.belt, finding.subject, property, to))
    case 'wrap-guide-hoops':
    case 'eye-thread':
    case 'tab-thickness':
    case 'tab-shear':
      return withMounts(layout, place, finding, (mount) => changedMount(mount, property, to))
    case 'wrap-bar-diameter': {
      const anchor = place.anchors.find((candidate) => candidate.strap === finding.subject)
      return withTube(layout, anchor?.mount.tubeId ?? '', { outsideDiameterMm: Number(to) })
    }
    case 'bar-diameter':
      return withTube(layout, subjectTubeId(finding.subject), { outsideDiameterMm: Number(to) })
    case 'bar-wall':
      return withTube(layout, subjectTubeId(finding.subject), { wallMm: Number(to) })
    case 'bar-area':
    case 'bar-second-moment':
    case 'wrap-tube-role':
    case 'strap-slot':
    case 'slot-spare':
    case 'tab-to-tube':
    case 'sub-to-lap':
    case 'shoulder-anchorages':
    case 'belt-joined':
    case 'straps-crossed':
    case 'anchor-form':
      // These follow from diameter and wall; their remedies are given as a wall. For tubes, slots, joined straps and how and where anchors are none is given.
      return layout
  }
}

const beltPatch = (
  belt: Belt,
  subject: Finding['subject'],
  property: PropertyId,
  to: string,
): Partial<Belt> => {
  const family = subjectFamily(subject)
  const arrangement = ARRANGEMENTS.find((points) => points === Number(to))
  if (property === 'belt-points' && arrangement !== undefined) return { arrangement }
  if (property === 'belt-buckle' && (to === 'latch-and-link' || to === 'rotary-cam')) return { buckle: to }
  if (property === 'belt-material' && (to === 'polyester' || to === 'nylon')) return { material: to }
  if (property === 'belt-lap-adjuster' && (to === 'pull-up' || to === 'pull-down')) return { lapAdjuster: to }
  if (property === 'belt-head-and-neck') return { headAndNeckRestraint: to === 'yes' }
  if (property === 'webbing-width' && family !== null) {
    return { webbingMm: { ...belt.webbingMm, [family]: Number(to) } }
  }
  return {}
}

/** The tab with its bolt held so; where its form holds it otherwise, as a clevis or a plate, of which only the plate keeps its sizes. */
const heldIn = (mount: TabMount, shear: TabMount['shear']): TabMount => {
  const { form, ...plain } = mount
  if (form === undefined) return { ...plain, shear }
  const held = formShear(form)
  if (held === null || held === shear) return { ...mount, shear }
  const { form: _old, ...bare } = withoutSizes(mount)
  return { ...bare, shear, ...(shear === 'single' ? {} : { form: 'clevis' as const }) }
}

const changedMount = (mount: Anchor['mount'], property: PropertyId, to: string): Anchor['mount'] => {
  if (mount.kind === 'wrap') {
    return property === 'wrap-guide-hoops' ? { ...mount, guideHoops: to === 'yes' } : mount
  }
  if (mount.kind === 'eye')
    return property === 'eye-thread' ? { ...mount, threadDiameterMm: Number(to) } : mount
  if (property === 'tab-thickness') return { ...mount, thicknessMm: Number(to) }
  return property === 'tab-shear' && (to === 'single' || to === 'double') ? heldIn(mount, to) : mount
}

const withMounts = (
  layout: Layout,
  place: Place,
  finding: Finding,
  change: (mount: Anchor['mount']) => Anchor['mount'],
): Layout =>
  withPlaceChanged(layout, place.id, (old) => ({
    ...old,
    anchors: old.anchors.map((anchor) =>
      anchor.strap === finding.subject ? { ...anchor, mount: change(anchor.mount) } : anchor,
    ),
  }))

const subjectTubeId = (subject: Finding['subject']): string =>
  subject.startsWith('tube:') ? subject.slice('tube:'.length) : ''

const subjectFamily = (subject: Finding['subject']): StrapFamily | null => {
  if (subject === 'shoulder-pair') return 'shoulder'
  if (subject === 'lap-pair') return 'lap'
  if (subject === 'sub-pair') return 'sub'
  const strap: StrapId | undefined = STRAP_IDS.find((id) => id === subject)
  return strap === undefined ? null : strapFamily(strap)
}
