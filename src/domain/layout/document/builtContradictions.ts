import { pointDistanceMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import type { Tube } from '../../geometry/tube'
import { formShear, type Mount, tabForm } from '../../straps/anchor'
import type { Seat } from '../../straps/seat'
import { beltContradictions } from './beltContradictions'
import { bodyContradictions } from './bodyContradictions'
import type { Contradiction } from './contradiction'
import type { Layout, Place } from './layout'
import { TUBE_POINT_SPACING_MM, WRAP_OFF_TUBE_MM } from './limits'
import type { FieldPath } from './problem'
import { repeatedIds } from './repeatedIds'

/** What is built of a car: of the layout itself, the drawn variant; of another variant, its own. */
type Built = Pick<Layout, 'tubes' | 'places'>

/** Where the tubes and the places of one variant do not agree with each other; `path` leads to what holds them. */
export const builtContradictions = (built: Built, path: FieldPath): readonly Contradiction[] => [
  ...repeatedIds(built.tubes, [...path, 'tubes']),
  ...built.tubes.flatMap((tube, index) => tubeContradictions(tube, [...path, 'tubes', index])),
  ...repeatedIds(built.places, [...path, 'places']),
  ...built.places.flatMap((place, index) => placeContradictions(built, place, [...path, 'places', index])),
  ...repeatedAnchorIds(built, path),
]

/** Zones and remedies name anchors by id alone, so an id may not come back at another place either. */
const repeatedAnchorIds = ({ places }: Built, at: FieldPath): readonly Contradiction[] => {
  const seen = new Map<string, string>()
  return places.flatMap((place, placeIndex) =>
    place.anchors.flatMap((anchor, index) => {
      const owner = seen.get(anchor.id)
      seen.set(anchor.id, owner ?? `anchor ${index + 1} of place ${placeIndex + 1}`)
      if (owner === undefined) return []
      return [
        {
          path: [...at, 'places', placeIndex, 'anchors', index, 'id'],
          received: anchor.id,
          says: `the id "${anchor.id}" is already used by ${owner}`,
          remedy: 'Give each anchor of the car its own id.',
        },
      ]
    }),
  )
}

const tubeContradictions = (tube: Tube, path: FieldPath): readonly Contradiction[] => {
  const found: Contradiction[] = []
  if (tube.wallMm > tube.outsideDiameterMm / 2) {
    found.push({
      path: [...path, 'wallMm'],
      received: tube.wallMm,
      says: `a wall of ${tube.wallMm} mm is more than half of the outside diameter of ${tube.outsideDiameterMm} mm`,
      remedy: `Measure the wall again; for solid bar it is ${tube.outsideDiameterMm / 2} mm.`,
    })
  }
  for (const [index, point] of tube.points.entries()) {
    const before = tube.points[index - 1]
    if (before === undefined) continue
    const apartMm = pointDistanceMm(before, point)
    if (apartMm >= TUBE_POINT_SPACING_MM) continue
    found.push({
      path: [...path, 'points', index],
      received: point,
      says: `it is ${decimal(apartMm)} mm from the point before it, too close to give the tube a direction`,
      remedy: `Take one of the two points out, or move them ${TUBE_POINT_SPACING_MM} mm or more apart.`,
    })
  }
  return found
}

const placeContradictions = (built: Built, place: Place, path: FieldPath): readonly Contradiction[] => [
  ...seatContradictions(place.seat, [...path, 'seat']),
  ...beltContradictions(place.belt, [...path, 'belt']),
  ...repeatedIds(place.occupants, [...path, 'occupants']),
  ...place.occupants.flatMap((occupant, index) =>
    bodyContradictions(occupant, [...path, 'occupants', index]),
  ),
  ...place.anchors.flatMap((anchor, index) => {
    const at = [...path, 'anchors', index]
    const first = place.anchors.findIndex((other) => other.strap === anchor.strap)
    const twice = {
      path: [...at, 'strap'],
      received: anchor.strap,
      says: `${anchor.strap} is already anchored by anchor ${first + 1}`,
      remedy: 'Keep one anchor for each strap.',
    }
    return [
      ...(first < index ? [twice] : []),
      ...shearContradictions(anchor.mount, [...at, 'mount']),
      ...sizeContradictions(anchor.mount, [...at, 'mount']),
      ...mountContradictions(built, anchor.mount, [...at, 'mount']),
    ]
  }),
]

/** A clevis holds its bolt from both sides, a threaded insert from one. */
const shearContradictions = (mount: Mount, path: FieldPath): readonly Contradiction[] => {
  if (mount.kind !== 'tab') return []
  const shear = formShear(tabForm(mount))
  if (shear === null || mount.shear === shear) return []
  const says =
    shear === 'double'
      ? 'a clevis holds its bolt from both sides, which is double shear'
      : 'a bolt in a welded insert is held from one side, which is single shear'
  const remedy = `Put "${shear}" there, or make the form ${shear === 'double' ? '"plate"' : '"plate" or "clevis"'}.`
  return [{ path: [...path, 'shear'], received: mount.shear, says, remedy }]
}

/** Only a clevis has a gap between plates, and an insert has no end beyond its hole. */
const sizeContradictions = (mount: Mount, path: FieldPath): readonly Contradiction[] => {
  if (mount.kind !== 'tab') return []
  const form = tabForm(mount)
  const gap = {
    path: [...path, 'gapMm'],
    received: mount.gapMm,
    says: 'only a clevis has a gap between two plates',
    remedy: 'Take it out, or make the form "clevis".',
  }
  const edge = {
    path: [...path, 'edgeDistanceMm'],
    received: mount.edgeDistanceMm,
    says: 'a welded insert is round and has no edge distance',
    remedy: 'Take it out, or make the form "plate" or "clevis".',
  }
  return [
    ...(mount.gapMm !== undefined && form !== 'clevis' ? [gap] : []),
    ...(mount.edgeDistanceMm !== undefined && form === 'insert' ? [edge] : []),
  ]
}

const mountContradictions = ({ tubes }: Built, mount: Mount, path: FieldPath): readonly Contradiction[] => {
  if (mount.tubeId === null) return []
  const tube = tubes.find((candidate) => candidate.id === mount.tubeId)
  if (tube === undefined) {
    const ids = tubes.map((candidate) => candidate.id).join(', ')
    const remedy = ids === '' ? 'Add the tube first.' : `Name one of these tubes: ${ids}.`
    return [
      {
        path: [...path, 'tubeId'],
        received: mount.tubeId,
        says: `there is no tube "${mount.tubeId}"`,
        remedy,
      },
    ]
  }
  if (mount.kind !== 'wrap') return []
  const { distanceMm } = nearestOnPolyline(tube.points, mount.point)
  if (distanceMm <= WRAP_OFF_TUBE_MM) return []
  return [
    {
      path: [...path, 'point'],
      received: mount.point,
      says: `it is ${decimal(distanceMm)} mm off the centre line of ${tube.name === '' ? tube.id : tube.name}, but a wrapped strap lies on it`,
      remedy: `Put it within ${WRAP_OFF_TUBE_MM} mm of the centre line, or make it a tab.`,
    },
  ]
}

const seatContradictions = (seat: Seat, path: FieldPath): readonly Contradiction[] => [
  ...reclineContradictions(seat, path),
  ...repeatedIds(seat.slots, [...path, 'slots']),
  ...seat.slots.flatMap((slot, index) =>
    slot.straps.flatMap((strap, strapIndex) => {
      const at = [...path, 'slots', index, 'straps', strapIndex]
      if (slot.straps.indexOf(strap) < strapIndex) {
        return [{ path: at, received: strap, says: 'it is listed twice', remedy: 'List it once.' }]
      }
      const earlier = seat.slots.findIndex((other) => other.straps.includes(strap))
      if (earlier === index) return []
      const says = `${strap} already passes through slot ${earlier + 1}`
      return [{ path: at, received: strap, says, remedy: 'Let each strap pass through one slot only.' }]
    }),
  ),
]

const reclineContradictions = (seat: Seat, path: FieldPath): readonly Contradiction[] => {
  const { uprightDeg, reclinedDeg } = seat.reclineRange
  const range = `from ${decimal(uprightDeg)}° to ${decimal(reclinedDeg)}°`
  if (uprightDeg > reclinedDeg) {
    const says = `it runs backwards, ${range}`
    const remedy = 'Put the smaller angle as most upright and the larger as most reclined.'
    return [{ path: [...path, 'reclineRange'], received: seat.reclineRange, says, remedy }]
  }
  if (seat.reclineDeg >= uprightDeg && seat.reclineDeg <= reclinedDeg) return []
  const says = `${decimal(seat.reclineDeg)}° is outside its range, ${range}`
  const remedy = 'Draw the seat inside its recline range, or widen the range.'
  return [{ path: [...path, 'reclineDeg'], received: seat.reclineDeg, says, remedy }]
}

/** At most three decimals: enough to see by how much a limit was missed. */
const decimal = (value: number): string => String(Math.round(value * 1000) / 1000)
