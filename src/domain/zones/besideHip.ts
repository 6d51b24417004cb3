import type { CircleMm } from '../geometry/circle'
import type { Elevation } from '../geometry/plane'
import { cosDeg, sinDeg } from '../units/angle'
import { bandCell, type Cells, cellsOverlap, levelCut, NOTHING } from './cells'
import { turnedBeyond, turnedShortOf } from './fan'
import type { StrapModel } from './strapModel'

/** Wedges about the hip point; each is closed by the tangent at its middle, at most 0.5 % of the radius outside the arc. */
const WEDGES = 32

/** What lies outside a circle, as cells on the safe side of it. */
const outsideCircle = ({ centre, radiusMm }: CircleMm): Cells => {
  const fan = { centre, offsetMm: 0 }
  const stepDeg = 360 / WEDGES
  return Array.from({ length: WEDGES }, (_, index) => {
    const fromDeg = index * stepDeg
    const nu = -cosDeg(fromDeg + stepDeg / 2)
    const nv = -sinDeg(fromDeg + stepDeg / 2)
    return [
      turnedBeyond(fan, fromDeg),
      turnedShortOf(fan, fromDeg + stepDeg),
      { nu, nv, offsetMm: nu * centre.uMm + nv * centre.vMm - radiusMm },
    ]
  })
}

/**
 * A lap anchor within the hip's breadth has to stay out of the pelvis: the lap arc. Beside the hip it may lie anywhere, on the
 * strap's own side of the seat's middle.
 */
export const outOfPelvis = (cells: Cells, model: StrapModel, elevation: Elevation): Cells => {
  const { scene, anchor } = model
  const outward = anchor.strap === 'lap-left' ? -1 : 1
  const centreYMm = scene.body.hip.yMm
  if (elevation === 'side')
    return outward * (anchor.mount.point.yMm - centreYMm) < 0
      ? NOTHING
      : outsideOfArc(cells, model, elevation)
  const ownSide = outward < 0 ? bandCell('v', null, centreYMm) : bandCell('v', centreYMm, null)
  return cellsOverlap(outsideOfArc(cells, model, elevation), [ownSide])
}

const outsideOfArc = (cells: Cells, { scene, anchor }: StrapModel, elevation: Elevation): Cells => {
  const { body } = scene
  const { yMm, zMm } = anchor.mount.point
  const centreYMm = body.hip.yMm
  const outside = (): Cells => cellsOverlap(cells, outsideCircle(body.lapArc))
  if (elevation === 'side') return Math.abs(yMm - centreYMm) >= body.hipHalfBreadthMm ? cells : outside()
  const besideMm = body.hipHalfBreadthMm
  const cut = levelCut(cells, zMm)
  return [
    ...cellsOverlap(cut, [
      bandCell('v', null, centreYMm - besideMm),
      bandCell('v', centreYMm + besideMm, null),
    ]),
    ...cellsOverlap(levelCut(outside(), zMm), [bandCell('v', centreYMm - besideMm, centreYMm + besideMm)]),
  ]
}
