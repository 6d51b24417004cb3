import { directionDot, pointDifference, type Direction, type PointMm } from '../../geometry/point'
import { squareTo } from '../../geometry/vector'
import type { TabOnTube } from './tabOnTube'

/**
 * How far along a line, from a point and in a direction of length 1, the surface of a straight tube is met, mm > 0; null where the line
 * passes beside the tube, leads away from it or starts inside it. Formula: the nearer root of |w + τb|² = r² square to the
 * tube's axis. Source: a line and a cylinder, any handbook of analytic geometry.
 */
export const lengthToTubeMm = (
  { foot, axis, tube }: Pick<TabOnTube, 'foot' | 'axis' | 'tube'>,
  from: PointMm,
  direction: Direction,
): number | null => {
  const start = squareTo(axis, pointDifference(from, foot))
  const along = squareTo(axis, direction)
  const square = directionDot(along, along)
  const half = directionDot(start, along)
  const rest = directionDot(start, start) - (tube.outsideDiameterMm / 2) ** 2
  const root = half * half - square * rest
  if (root < 0 || square < ALONG_TUBE) return null
  const lengthMm = (-half - Math.sqrt(root)) / square
  return lengthMm > 0 ? lengthMm : null
}

/** A line within about 0.06° of the tube's direction never meets it within reach: sine squared. Our judgement. */
const ALONG_TUBE = 1e-6
