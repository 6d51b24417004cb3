import { pointDifference, pointDistanceMm, pointSum } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import type { AsWeldedRecord, MeasuredAnchor } from '../../measure/asWeldedRecord'
import { heldPoint } from '../../shop/tape/heldPoint'
import type { Anchor, Mount } from '../../straps/anchor'
import { mirroredStrap } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { isSharedAnchor } from '../edit/mirror'
import { type AnchorReading, anchorReading } from './anchorReading'
import { measuredPlane } from './measuredPlane'
import { plannedHeldPoint } from './plannedHeld'

/** How the position of an anchor of the measured layout is known. */
export type Standing =
  | 'measured'
  /** It is in the record, but nothing was measured: the planned position counts. */
  | 'not-measured'
  /** Its readings give no position: the planned one counts. */
  | 'bad-measurement'
  /** It was planned after the record was begun: the planned position counts. */
  | 'not-in-record'

/** One anchor of the layout and what a record says of it. */
export interface WeldedAnchor {
  readonly placeId: string
  /** As the layout plans it now. */
  readonly anchor: Anchor
  readonly standing: Standing
  /** Null when the record has no entry for it. Joined shoulder straps share one. */
  readonly reading: AnchorReading | null
  /** The mount that the findings are worked out with. */
  readonly mount: Mount
  /** The plan of this anchor was changed after it was taken into the record. */
  readonly isReplanned: boolean
  /** How far a wrap was measured from the planned centre line of its bar, mm; null for other mounts, and where nothing was measured. */
  readonly offBarMm: number | null
}

/** A layout with its anchors where they really are. */
export interface MeasuredLayout {
  /** The planned layout with measured anchors in place of the planned ones, and without records. Never kept anywhere. */
  readonly layout: Layout
  /** Every anchor of the layout, in its order. */
  readonly anchors: readonly WeldedAnchor[]
  /** What was measured of anchors that the layout does not have any more. */
  readonly gone: readonly MeasuredAnchor[]
}

/**
 * The planned layout with the anchors of a record where they were measured, and tab planes turned as they were measured; everything
 * that was not measured stays as planned and is said to be. A wrap lies where it was measured even off the planned centre line of its
 * bar, because that is where the strap is; the bar itself stays as planned. The planned layout is not changed.
 */
export const measuredLayout = (planned: Layout, record: AsWeldedRecord): MeasuredLayout => {
  const { asWelded: _records, ...plan } = planned
  const readings = record.anchors.map(anchorReading)
  const anchors = plan.places.flatMap((place) =>
    place.anchors.map((anchor) => weldedAnchor(plan, place, anchor, readings)),
  )
  const mountOf = (placeId: string, anchor: Anchor): Mount =>
    anchors.find((welded) => welded.placeId === placeId && welded.anchor === anchor)?.mount ?? anchor.mount
  const places = plan.places.map((place) => ({
    ...place,
    anchors: place.anchors.map((anchor) => ({ ...anchor, mount: mountOf(place.id, anchor) })),
  }))
  const isGone = (entry: MeasuredAnchor): boolean =>
    plan.places.every((place) => place.anchors.every((anchor) => !isEntryOf(entry, place, anchor)))
  return { layout: { ...plan, places }, anchors, gone: record.anchors.filter(isGone) }
}

/** An id may come back after its anchor was deleted, for another strap: then it is not the same anchor. */
const isEntryOf = (entry: MeasuredAnchor, place: Place, { id, strap }: Anchor): boolean =>
  entry.placeId === place.id && entry.anchorId === id && entry.strap === strap

/** The anchor's own entry; for joined shoulder straps the other one's where only that was measured. */
const readingOf = (
  place: Place,
  anchor: Anchor,
  readings: readonly AnchorReading[],
): AnchorReading | null => {
  const own = readings.find(({ entry }) => isEntryOf(entry, place, anchor)) ?? null
  if ((own !== null && own.position !== null) || !isSharedAnchor(place, anchor.strap)) return own
  const partner = place.anchors.find(({ strap }) => strap === mirroredStrap(anchor.strap))
  const shared =
    partner === undefined ? undefined : readings.find(({ entry }) => isEntryOf(entry, place, partner))
  return shared ?? own
}

const standingOf = (reading: AnchorReading | null): Standing => {
  if (reading === null) return 'not-in-record'
  if (reading.position === null) return 'not-measured'
  return reading.position.ok ? 'measured' : 'bad-measurement'
}

const weldedAnchor = (
  layout: Layout,
  place: Place,
  anchor: Anchor,
  readings: readonly AnchorReading[],
): WeldedAnchor => {
  const reading = readingOf(place, anchor, readings)
  const mount = reading === null ? anchor.mount : weldedMount(layout, anchor.mount, reading)
  return {
    placeId: place.id,
    anchor,
    standing: standingOf(reading),
    reading,
    mount,
    isReplanned: reading !== null && !isSamePlan(anchor.mount, reading.entry, layout.tubes),
    offBarMm: reading?.position?.ok === true ? offBarMm(layout, mount) : null,
  }
}

/** A tape is held to the outside of a wrapped bar: its centre line is off the plan by as much as the mark that was measured. */
const weldedMount = (
  { tubes }: Layout,
  planned: Mount,
  { position, planDeg, leanDeg }: AnchorReading,
): Mount => {
  const point =
    position?.ok === true
      ? pointSum(planned.point, pointDifference(position.value.point, heldPoint(planned, tubes)))
      : planned.point
  if (planned.kind !== 'tab') return { ...planned, point }
  const plane = measuredPlane(planned, {
    planDeg: planDeg?.ok === true ? planDeg.value.mean : null,
    leanDeg: leanDeg?.ok === true ? leanDeg.value.mean : null,
  })
  return { ...planned, point, ...plane }
}

const offBarMm = ({ tubes }: Layout, mount: Mount): number | null => {
  if (mount.kind !== 'wrap') return null
  const tube = tubes.find(({ id }) => id === mount.tubeId)
  return tube === undefined ? null : nearestOnPolyline(tube.points, mount.point).distanceMm
}

/** Further than this from where its record was begun an anchor counts as planned anew: what a sheet can show. Our judgement. */
const REPLANNED_MM = 0.05

/** Whether a mount is planned as an entry was begun with, and its bar too, as far as a tape tells. */
const isSamePlan = (mount: Mount, entry: MeasuredAnchor, tubes: readonly Tube[]): boolean =>
  isSameMount(mount, entry.planned) &&
  pointDistanceMm(heldPoint(mount, tubes), plannedHeldPoint(entry, tubes)) <= REPLANNED_MM

/** Whether two mounts are planned alike, as far as the welder is told. */
const isSameMount = (a: Mount, b: Mount): boolean => {
  if (a.kind !== b.kind || a.tubeId !== b.tubeId) return false
  if (pointDistanceMm(a.point, b.point) > REPLANNED_MM) return false
  const { point: _a, ...restA } = a
  const { point: _b, ...restB } = b
  const fields = new Set([...Object.keys(restA), ...Object.keys(restB)])
  const valueIn = (mount: object, field: string): unknown => (mount as Record<string, unknown>)[field]
  return [...fields].every((field) => valueIn(restA, field) === valueIn(restB, field))
}
