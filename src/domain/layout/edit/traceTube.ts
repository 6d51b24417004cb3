import { type Elevation, movedInPlane, type PlanePointMm } from '../../geometry/plane'
import { pointDistanceMm, type PointMm } from '../../geometry/point'
import type { Tube, TubeRole } from '../../geometry/tube'
import type { Layout } from '../document/layout'
import { COUNTS, TUBE_POINT_SPACING_MM } from '../document/limits'
import { freshId } from './change'
import { limitedPoint } from './tubeMove'

/** A tube as it was traced on an elevation, bend by bend. */
export type TracedTube = Pick<Tube, 'role' | 'points' | 'outsideDiameterMm' | 'wallMm'>

const NAMES: Readonly<Record<TubeRole, string>> = {
  'harness-bar': 'Traced harness bar',
  cage: 'Traced cage tube',
  floor: 'Traced floor tube',
}

/** Adding 0 makes 0 of −0, which a file cannot hold. */
const onStep = (valueMm: number, stepMm: number): number => Math.round(valueMm / stepMm) * stepMm + 0

/**
 * The point in space of a place on an elevation and the coordinate that the elevation does not show (`acrossMm`: y in the side, z in
 * the top elevation). The place goes to whole steps from the datum, so that a tape can find it; what was typed stays as it is.
 */
export const tracedPoint = (
  elevation: Elevation,
  at: PlanePointMm,
  acrossMm: number,
  stepMm: number,
): PointMm =>
  limitedPoint(
    movedInPlane(
      { xMm: 0, yMm: acrossMm, zMm: acrossMm },
      { uMm: onStep(at.uMm, stepMm), vMm: onStep(at.vMm, stepMm) },
      elevation,
    ),
  )

/** Traced points with one more; the same list when it would lie on the last one, or when a tube may hold no more. */
export const withTracedPoint = (points: readonly PointMm[], point: PointMm): readonly PointMm[] => {
  const last = points.at(-1)
  const isNear = last !== undefined && pointDistanceMm(last, point) < TUBE_POINT_SPACING_MM
  return isNear || points.length >= COUNTS.tubePoints.max ? points : [...points, point]
}

/**
 * The layout with a traced tube; unchanged while it has fewer than two points, or when the layout holds as many tubes as it may. The wall is held
 * to half of the outside diameter.
 */
export const addTracedTube = (layout: Layout, traced: TracedTube): Layout => {
  const points = traced.points.reduce<readonly PointMm[]>(withTracedPoint, [])
  if (points.length < COUNTS.tubePoints.min || layout.tubes.length >= COUNTS.tubes.max) return layout
  const name = NAMES[traced.role]
  const others = layout.tubes.filter((tube) => tube.name.startsWith(name)).length
  const tube: Tube = {
    id: freshId(traced.role, layout.tubes),
    name: others === 0 ? name : `${name} ${others + 1}`,
    role: traced.role,
    points,
    outsideDiameterMm: traced.outsideDiameterMm,
    wallMm: Math.min(traced.wallMm, traced.outsideDiameterMm / 2),
  }
  return { ...layout, tubes: [...layout.tubes, tube] }
}
