import { pointToSegmentMm } from '../geometry/segment'
import type { Tube } from '../geometry/tube'
import type { PointMm } from '../geometry/point'
import type { QuantityValue } from './quantity'
import type { StrapScene } from './scene'

/** Smallest distance from a point to a tube's surface, mm; negative inside. Joints are taken as round. */
const surfaceDistanceMm = (point: PointMm, tube: Tube): number => {
  const distances = tube.points
    .slice(1)
    .map((end, index) => pointToSegmentMm(point, tube.points[index] ?? end, end))
  return Math.min(...distances) - tube.outsideDiameterMm / 2
}

/** Smallest gap between the helmet, taken as a ball, and any tube at rest, mm; negative when they overlap. Empty without tubes. */
export const helmetClearance = (scene: StrapScene): readonly QuantityValue[] => {
  const { centre, radiusMm } = scene.body.helmet
  const gaps = scene.tubes
    .filter((tube) => tube.points.length > 1)
    .map((tube) => surfaceDistanceMm(centre, tube) - radiusMm)
  if (gaps.length === 0) return []
  return [{ id: 'helmet-clearance', subject: 'head', value: Math.min(...gaps) }]
}
