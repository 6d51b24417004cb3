import { type Elevation, type PlanePointMm, projected } from '../../domain/geometry/plane'
import type { PointMm } from '../../domain/geometry/point'
import type { Handle } from '../../domain/layout/edit/handle'

type Coordinate = keyof PointMm

/** The two coordinates that an elevation shows: along u and along v. */
const COORDINATES: Readonly<Record<Elevation, readonly [Coordinate, Coordinate]>> = {
  side: ['xMm', 'zMm'],
  top: ['xMm', 'yMm'],
}

const MOVES = { xMm: 'x', yMm: 'y', zMm: 'z' } as const

const canMove = (handle: Handle, coordinate: Coordinate): boolean => handle.moves[MOVES[coordinate]]

export const isMovableIn = (handle: Handle, elevation: Elevation): boolean =>
  COORDINATES[elevation].some((coordinate) => canMove(handle, coordinate))

/**
 * A coordinate dragged by `byMm`: on whole steps from the datum, so that a drag leaves numbers a tape can find; but left exactly
 * where it was while the pointer has moved less than half a step that way, so that a drag straight up changes no x.
 */
const snapped = (startMm: number, byMm: number, stepMm: number): number =>
  Math.abs(byMm) < stepMm / 2 ? startMm : Math.round((startMm + byMm) / stepMm) * stepMm

/** Where a drag by `byMm` in the drawn plane asks the handle to go; coordinates it cannot move in are left out. */
export const dragTarget = (
  handle: Handle,
  elevation: Elevation,
  byMm: PlanePointMm,
  stepMm: number,
): Partial<PointMm> => {
  const [along, up] = COORDINATES[elevation]
  const start = projected(handle.point, elevation)
  return {
    ...(canMove(handle, along) ? { [along]: snapped(start.uMm, byMm.uMm, stepMm) } : {}),
    ...(canMove(handle, up) ? { [up]: snapped(start.vMm, byMm.vMm, stepMm) } : {}),
  }
}

/** Where arrow keys ask the handle to go: exactly by the given amount, one coordinate or both; null when it cannot move that way. */
export const nudgeTarget = (
  handle: Handle,
  elevation: Elevation,
  byMm: PlanePointMm,
): Partial<PointMm> | null => {
  const [along, up] = COORDINATES[elevation]
  const target = {
    ...(byMm.uMm !== 0 && canMove(handle, along) ? { [along]: handle.point[along] + byMm.uMm } : {}),
    ...(byMm.vMm !== 0 && canMove(handle, up) ? { [up]: handle.point[up] + byMm.vMm } : {}),
  }
  return Object.keys(target).length === 0 ? null : target
}

/** Why a handle stays where it is in this elevation, and where it can be moved. */
export const refusalText = (handle: Handle, elevation: Elevation): string => {
  const other = elevation === 'side' ? 'top' : 'side'
  return isMovableIn(handle, other)
    ? `${handle.name}: does not move in the ${elevation} elevation. Drag it in the ${other} elevation.`
    : `${handle.name}: cannot be moved here.`
}
