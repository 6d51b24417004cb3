import { bodyOf } from '../../body/body'
import { posedBody } from '../../body/posed'
import { type SeatPose, vehiclePoint } from '../../body/pose'
import type { Elevation } from '../../geometry/plane'
import { pointBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { type Anchor, type AnchorForm, anchorForm } from '../../straps/anchor'
import type { Slot } from '../../straps/seat'
import { seatPose } from '../../straps/seatPose'
import { strapFamily, strapSide } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import type { Handle, HandleRef } from './handle'
import { drawnShellPoints } from './shellPoints'

/** Stable text for a reference, for example `anchor:driver:lap-left`. Ids hold no colon, so no two references share one. */
export const handleId = (ref: HandleRef): string => {
  switch (ref.kind) {
    case 'hip':
    case 'recline':
    case 'shoulder-point':
      return `${ref.kind}:${ref.placeId}`
    case 'anchor':
      return `anchor:${ref.placeId}:${ref.anchorId}`
    case 'slot':
      return `slot:${ref.placeId}:${ref.slotId}`
    case 'tube-point':
      return `tube-point:${ref.tubeId}:${ref.index}`
    case 'tube-height':
      return `tube-height:${ref.tubeId}`
    case 'shell-point':
      return `shell-point:${ref.placeId}:${ref.elevation}:${ref.index}`
  }
}

/**
 * Everything that can be taken hold of but the points of the shells (see `shellHandlesOf`), places first, each at the drawn seat
 * position (slide 0).
 */
export const handlesOf = (layout: Layout): readonly Handle[] => [
  ...layout.places.flatMap((place) => placeHandles(layout, place)),
  ...layout.tubes.flatMap(tubeHandles),
]

/** What the drawing of one place offers to take hold of: the handles of that place and of the chassis. */
export const handlesOfPlace = (layout: Layout, placeId: string | undefined): readonly Handle[] =>
  handlesOf(layout).filter(({ ref }) => !('placeId' in ref) || ref.placeId === placeId)

/** The handle with this id, or null. */
export const handleById = (layout: Layout, id: string): Handle | null =>
  handlesOf(layout).find((handle) => handle.id === id) ?? shellHandleById(layout, id)

const shellHandleById = (layout: Layout, id: string): Handle | null =>
  id.startsWith('shell-point:')
    ? (layout.places.flatMap(shellHandlesOf).find((handle) => handle.id === id) ?? null)
    : null

/** The points of a seat's outlines, side first, apart from the other handles: they are shown only while the shell is shaped. */
export const shellHandlesOf = (place: Place): readonly Handle[] =>
  (['side', 'top'] as const).flatMap((elevation) =>
    drawnShellPoints(place, elevation).map((point, index) =>
      made(
        { kind: 'shell-point', placeId: place.id, elevation, index },
        point,
        SHELL_MOVES[elevation],
        `${placeName(place)}, shell ${elevation} point ${index + 1}`,
      ),
    ),
  )

/** Where the seat frame is with the slide at 0 and the recline as drawn. */
export const drawnPose = (place: Place): SeatPose => seatPose(place.seat, 0, place.seat.reclineDeg)

/** The top of the torso line, level with the backrest rim; at least this far up, so that a low back still turns finely. Our judgement. */
const RECLINE_HANDLE_MIN_MM = 300

/** Where the recline is taken hold of: on the torso line at the height of the backrest rim. */
export const reclinePoint = (place: Place): PointMm =>
  vehiclePoint(drawnPose(place), {
    xMm: 0,
    yMm: 0,
    zMm: Math.max(RECLINE_HANDLE_MIN_MM, place.seat.backrestRim.zMm),
  })

/** The first occupant's shoulder point in the seat's mid-plane, or null for a place without occupants. */
export const shoulderMidPoint = (place: Place): PointMm | null => {
  const occupant = place.occupants[0]
  if (occupant === undefined) return null
  const posed = posedBody(bodyOf(occupant), drawnPose(place), place.seat.hipHeightMm)
  return pointBetween(posed.shoulderPoint.left, posed.shoulderPoint.right, 0.5)
}

/** The middle of a tube's length along its centre line. */
export const tubeMiddle = (tube: Tube): PointMm => {
  const pieces = tube.points.slice(1).map((end, index) => {
    const start = tube.points[index] ?? end
    return { start, end, lengthMm: pointDistanceMm(start, end) }
  })
  let leftMm = pieces.reduce((sum, piece) => sum + piece.lengthMm, 0) / 2
  for (const piece of pieces) {
    if (leftMm <= piece.lengthMm && piece.lengthMm > 0) {
      return pointBetween(piece.start, piece.end, leftMm / piece.lengthMm)
    }
    leftMm -= piece.lengthMm
  }
  return tube.points[0] ?? { xMm: 0, yMm: 0, zMm: 0 }
}

const EVERYWHERE = { x: true, y: true, z: true }
const IN_SIDE_PLANE = { x: true, y: false, z: true }
const SHELL_MOVES: Readonly<Record<Elevation, Handle['moves']>> = {
  side: IN_SIDE_PLANE,
  top: { x: true, y: true, z: false },
}

const placeName = (place: Place): string => (place.name === '' ? place.id : place.name)

const made = (ref: HandleRef, point: PointMm, moves: Handle['moves'], name: string): Handle => ({
  id: handleId(ref),
  ref,
  point,
  moves,
  name,
})

const placeHandles = (layout: Layout, place: Place): readonly Handle[] => {
  const placeId = place.id
  const name = placeName(place)
  const shoulder = shoulderMidPoint(place)
  return [
    made({ kind: 'hip', placeId }, place.seat.hipPoint, EVERYWHERE, `${name}, hip point`),
    made({ kind: 'recline', placeId }, reclinePoint(place), IN_SIDE_PLANE, `${name}, recline`),
    ...(shoulder === null
      ? []
      : [made({ kind: 'shoulder-point', placeId }, shoulder, IN_SIDE_PLANE, `${name}, shoulder point`)]),
    ...place.anchors.map((anchor) =>
      made(
        { kind: 'anchor', placeId, anchorId: anchor.id },
        anchor.mount.point,
        anchorMoves(layout, anchor),
        `${name}, ${anchorWords(anchor)}`,
      ),
    ),
    ...place.seat.slots.map((slot) =>
      made(
        { kind: 'slot', placeId, slotId: slot.id },
        vehiclePoint(drawnPose(place), slot.centre),
        EVERYWHERE,
        `${name}, ${slotWords(slot)}`,
      ),
    ),
  ]
}

const tubeHandles = (tube: Tube): readonly Handle[] => {
  const tubeId = tube.id
  const name = tube.name === '' ? tube.id : tube.name
  const whole = made(
    { kind: 'tube-height', tubeId },
    tubeMiddle(tube),
    { x: false, y: false, z: true },
    `${name}, height`,
  )
  return [
    ...(tube.role === 'harness-bar' ? [whole] : []),
    ...tube.points.map((point, index) =>
      made({ kind: 'tube-point', tubeId, index }, point, EVERYWHERE, `${name}, ${pointWords(tube, index)}`),
    ),
  ]
}

const pointWords = (tube: Tube, index: number): string => {
  if (index > 0 && index < tube.points.length - 1) return `bend ${index}`
  const point = tube.points[index]
  const other = tube.points[index === 0 ? tube.points.length - 1 : 0]
  if (point === undefined || other === undefined || Math.abs(point.yMm - other.yMm) < 1) {
    return index === 0 ? 'first end' : 'last end'
  }
  return point.yMm < other.yMm ? 'left end' : 'right end'
}

/** Below this share of a tube's direction a wrap counts as unable to move that way: about half a degree. Our judgement. */
const STILL_SHARE = 0.01

/** A tab or an eye bolt moves anywhere; a wrap only the ways its tube runs where it lies. */
const anchorMoves = (layout: Layout, anchor: Anchor): Handle['moves'] => {
  const { mount } = anchor
  if (mount.kind !== 'wrap') return EVERYWHERE
  const tube = layout.tubes.find((candidate) => candidate.id === mount.tubeId)
  if (tube === undefined) return { x: false, y: false, z: false }
  const { axis } = nearestOnPolyline(tube.points, mount.point)
  return {
    x: Math.abs(axis.x) > STILL_SHARE,
    y: Math.abs(axis.y) > STILL_SHARE,
    z: Math.abs(axis.z) > STILL_SHARE,
  }
}

const FAMILY_WORDS = { shoulder: 'shoulder', lap: 'lap', sub: 'anti-submarine' } as const

/** How a strap is fixed, as one noun: "tab", "clevis", "eye bolt". */
export const formWord = (form: AnchorForm): string => {
  switch (form) {
    case 'plate':
      return 'tab'
    case 'clevis':
      return 'clevis'
    case 'insert':
      return 'insert'
    case 'eye':
      return 'eye bolt'
    case 'wrap':
      return 'wrap'
  }
}

/** "left lap tab", "right shoulder wrap", "centre anti-submarine eye bolt" */
const anchorWords = (anchor: Anchor): string =>
  `${strapSide(anchor.strap)} ${FAMILY_WORDS[strapFamily(anchor.strap)]} ${formWord(anchorForm(anchor.mount))}`

/** "slot for left lap", "slot for left and right anti-submarine" */
const slotWords = (slot: Slot): string => {
  const families = [...new Set(slot.straps.map(strapFamily))]
  const words = families.map((family) => {
    const sides = slot.straps.filter((strap) => strapFamily(strap) === family).map(strapSide)
    return `${sides.join(' and ')} ${FAMILY_WORDS[family]}`
  })
  return `slot for ${words.join(' and ')} strap${slot.straps.length > 1 ? 's' : ''}`
}
