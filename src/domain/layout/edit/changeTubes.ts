import { vehiclePoint } from '../../body/pose'
import type { Tube, TubeRole } from '../../geometry/tube'
import type { Layout } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'
import { drawnPose, shoulderMidPoint } from './handles'
import { withTubeChanged } from './replace'
import { withTubePoints, pointOnTube } from './tubeMove'

const ROLE_NAMES: Readonly<Record<TubeRole, string>> = {
  'harness-bar': 'Harness bar',
  cage: 'Cage tube',
  floor: 'Floor tube',
}

/** 1 1/2 in by 0.095 in tube, common in small chassis. A starting value, not advice; common practice, no source. */
export const STARTING_SECTION = { outsideDiameterMm: 38.1, wallMm: 2.4 }

/** How far behind the backrest rim a new bar starts, and how far it reaches to each side. Starting values, our judgement. */
const BEHIND_RIM_MM = 150
const HALF_BAR_MM = 450

/** How far above the backrest rim a new cage tube starts: clear of a helmet. A starting value, our judgement. */
const ABOVE_RIM_MM = 400

/**
 * One more tube, straight across the car at the first place: a harness bar at shoulder height behind the seat, a cage tube
 * above the backrest, a floor tube below the hip point. Where it starts is only where to take hold of it.
 */
export const addTube = (layout: Layout, role: TubeRole): Layout => {
  const place = layout.places[0]
  if (place === undefined || layout.tubes.length >= COUNTS.tubes.max) return layout
  const { hipPoint, hipHeightMm, backrestRim } = place.seat
  const rim = vehiclePoint(drawnPose(place), { ...backrestRim, yMm: 0 })
  const shoulderZMm = (shoulderMidPoint(place) ?? hipPoint).zMm
  const zMm =
    role === 'harness-bar'
      ? shoulderZMm
      : role === 'cage'
        ? rim.zMm + ABOVE_RIM_MM
        : hipPoint.zMm - 2 * hipHeightMm
  const xMm = role === 'floor' ? hipPoint.xMm : rim.xMm + BEHIND_RIM_MM
  const tube: Tube = {
    id: freshId(role, layout.tubes),
    name: ROLE_NAMES[role],
    role,
    points: [
      { xMm, yMm: hipPoint.yMm - HALF_BAR_MM, zMm },
      { xMm, yMm: hipPoint.yMm + HALF_BAR_MM, zMm },
    ],
    ...STARTING_SECTION,
  }
  return { ...layout, tubes: [...layout.tubes, tube] }
}

/** The layout without a tube: straps wrapped round it lose their anchor, tabs and eye bolts on it stay where they are, on no tube. */
export const removeTube = (layout: Layout, tubeId: string): Layout => ({
  ...layout,
  tubes: layout.tubes.filter((tube) => tube.id !== tubeId),
  places: layout.places.map((place) => ({
    ...place,
    anchors: place.anchors.flatMap((anchor) => {
      if (anchor.mount.tubeId !== tubeId) return [anchor]
      return anchor.mount.kind === 'wrap' ? [] : [{ ...anchor, mount: { ...anchor.mount, tubeId: null } }]
    }),
  })),
})

/**
 * The layout with fields of a tube changed. With as many points as before, what is fixed to the tube is carried along; with
 * another number of points, wraps go to the nearest place on it. The wall is held to half of the outside diameter.
 */
export const withTube = (layout: Layout, tubeId: string, patch: Partial<Omit<Tube, 'id'>>): Layout => {
  const tube = layout.tubes.find((candidate) => candidate.id === tubeId)
  if (tube === undefined) return layout
  const { points, ...plain } = patch
  const resized = withTubeChanged(layout, tubeId, (old) => {
    const changed = { ...old, ...plain }
    return { ...changed, wallMm: Math.min(changed.wallMm, changed.outsideDiameterMm / 2) }
  })
  if (points === undefined) return resized
  return points.length === tube.points.length
    ? withTubePoints(resized, tube, points)
    : rewrapped(resized, tubeId, points)
}

const rewrapped = (layout: Layout, tubeId: string, points: Tube['points']): Layout => ({
  ...withTubeChanged(layout, tubeId, (tube) => ({ ...tube, points })),
  places: layout.places.map((place) => ({
    ...place,
    anchors: place.anchors.map((anchor) =>
      anchor.mount.kind === 'wrap' && anchor.mount.tubeId === tubeId
        ? {
            ...anchor,
            mount: { ...anchor.mount, point: pointOnTube(points, anchor.mount.point) },
          }
        : anchor,
    ),
  })),
})
