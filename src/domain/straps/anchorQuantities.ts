import { directionDot, type Direction, type PointMm } from '../geometry/point'
import { acosDeg, atan2Deg, wrappedDeg } from '../units/angle'
import { lineOfPull } from './lineOfPull'
import { mountCircle, wrapAxis } from './mount'
import type { QuantityValue } from './quantity'
import type { StrapScene } from './scene'
import { slotOf } from './slotGate'
import type { SolvedStrap } from './strapPath'
import { tabTwistDeg } from './tabPlane'

/** Angle between a strap and the bar it wraps, 0°…90°, 90° is square. */
const wrapSquareDeg = (axis: Direction, pull: Direction): number =>
  acosDeg(Math.abs(directionDot(axis, pull)))

/** Change of direction at a point in the drawn plane given by two coordinates, degrees ≥ 0. */
const turnDeg = (
  [before, at, after]: readonly [PointMm, PointMm, PointMm],
  across: (point: PointMm) => number,
  along: (point: PointMm) => number,
): number =>
  Math.abs(
    wrappedDeg(
      atan2Deg(across(after) - across(at), along(after) - along(at)) -
        atan2Deg(across(at) - across(before), along(at) - along(before)),
    ),
  )

/**
 * The angle by which the slot deflects the taut strap: the larger of the deflection over an edge in side view and that round an
 * end of the slot. The latter is seen in plan or, for a slot in the cushion through which straps run down, from the front.
 * 0 when the strap passes clean or ends before the slot.
 */
const slotBendDeg = ({ path, pass }: SolvedStrap): number => {
  const index = path.contacts.findIndex(({ on }) => on === 'slot')
  const [before, at, after] = path.contacts.slice(index - 1, index + 2)
  if (index < 1 || before === undefined || at === undefined || after === undefined) return 0
  const isHeldAcross = at.point.yMm === pass?.gate.yMinMm || at.point.yMm === pass?.gate.yMaxMm
  if (!isHeldAcross) return at.bendDeg
  const along = (point: PointMm): number => (pass.gate.face === 'cushion' ? point.zMm : point.xMm)
  return Math.max(
    at.bendDeg,
    turnDeg([before.point, at.point, after.point], (point) => point.yMm, along),
  )
}

/**
 * Length of webbing to order, mm: the path to the buckle, once round the tube and the part woven back through the slide for a
 * wrap, and the adjuster's tail. Null while the path does not reach a buckle. Source: common practice, no source.
 */
const orderLengthMm = (scene: StrapScene, { anchor, path }: SolvedStrap): number | null => {
  if (path.contacts.at(-1)?.on !== 'buckle') return null
  const { adjusterTailMm, wrapReturnMm } = scene.belt
  const radiusMm = mountCircle(anchor.mount, scene.tubes)?.radiusMm ?? 0
  const wrapMm = anchor.mount.kind === 'wrap' ? 2 * Math.PI * radiusMm + wrapReturnMm : 0
  return path.lengthMm + wrapMm + adjusterTailMm
}

/** What every strap has: its slot's bend, how it meets its mount, and the length to order. */
export const anchorQuantities = (scene: StrapScene, strap: SolvedStrap): readonly QuantityValue[] => {
  const subject = strap.anchor.strap
  const { mount } = strap.anchor
  const pull = lineOfPull(strap.path)
  const lengthMm = orderLengthMm(scene, strap)
  const axis = mount.kind === 'wrap' ? wrapAxis(mount, scene.tubes) : null
  const values: QuantityValue[] = []
  if (slotOf(scene.seat, subject) !== null)
    values.push({ id: 'slot-bend', subject, value: slotBendDeg(strap) })
  if (axis !== null) values.push({ id: 'wrap-square', subject, value: wrapSquareDeg(axis, pull) })
  if (mount.kind === 'tab') values.push({ id: 'tab-twist', subject, value: tabTwistDeg(mount, pull) })
  if (lengthMm !== null) values.push({ id: 'strap-length', subject, value: lengthMm })
  return values
}
