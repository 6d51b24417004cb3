import { projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { tangentPoint } from '../geometry/tangent'
import { atan2Deg, wrappedDeg } from '../units/angle'
import { addMirror } from './mirrorQuantities'
import { anchorOf } from './mount'
import type { QuantitySink } from './quantity'
import type { StrapScene } from './scene'
import type { SolvedStrap } from './strapPath'

/** Angle of the line from `from` down to `to` from vertical in side view, + when it runs rearward, (−180°, 180°]. */
const fromVerticalDeg = (from: PlanePointMm, to: PlanePointMm): number =>
  atan2Deg(to.uMm - from.uMm, from.vMm - to.vMm)

/**
 * Angle of the chest-to-groin line from vertical, + when it runs rearward going down: the straight line along the shoulder straps
 * from where they leave the shoulder arc to the buckle. Null when the buckle is in the arc. It does not depend on any anchor
 * but through the buckle. Source of the line: Formula SAE Rules 2026 V1, T.2.1 f.
 */
export const chestLineDeg = ({ body }: Pick<StrapScene, 'body'>, buckle: PointMm): number | null => {
  const end = projected(buckle, 'side')
  const chest = tangentPoint(body.shoulderArc, end, 'right')
  return chest && fromVerticalDeg(chest, end)
}

/** Adds the quantities of one anti-submarine strap; formulas in straps/README.md. */
export const addSubQuantities = (sink: QuantitySink, strap: SolvedStrap, chestDeg: number | null): void => {
  const subject = strap.anchor.strap
  const { bodyContact, effectiveAnchor } = strap.path
  const runDeg = fromVerticalDeg(projected(bodyContact, 'side'), projected(effectiveAnchor, 'side'))
  if (chestDeg !== null) sink.put('sub-to-chest', subject, wrappedDeg(runDeg - chestDeg))
  sink.put('sub-to-vertical', subject, runDeg)
}

/**
 * Adds the lateral distance of the two anchors, minus when left and right are exchanged, whether or not the straps have a path. The
 * student rules say “approximately 100 mm apart” and no direction; across the seat is our reading, because it is what
 * parts the two thighs.
 */
export const addSubPairQuantities = (sink: QuantitySink, scene: StrapScene): void => {
  if (scene.belt.arrangement < 6) return
  const left = anchorOf(scene.anchors, 'sub-left')?.mount.point
  const right = anchorOf(scene.anchors, 'sub-right')?.mount.point
  if (left === undefined || right === undefined) return
  sink.put('sub-spacing', 'sub-pair', right.yMm - left.yMm)
  addMirror(sink, scene, 'sub')
}
