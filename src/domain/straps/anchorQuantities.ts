import { directionDot, type Direction } from '../geometry/point'
import { acosDeg } from '../units/angle'
import { adjusterClearanceMm } from './adjusterClearance'
import { lineOfPull } from './lineOfPull'
import { mountCircle, wrapAxis } from './mount'
import type { QuantityValue } from './quantity'
import type { StrapScene } from './scene'
import { shankAxis } from './eyeShank'
import { slotBendDeg } from './slotBend'
import { slotOf } from './slotGate'
import type { SolvedStrap } from './strapPath'
import { tabTwistDeg } from './tabPlane'

/** Angle between a strap and the bar it wraps, 0°…90°, 90° is square. */
const wrapSquareDeg = (axis: Direction, pull: Direction): number =>
  acosDeg(Math.abs(directionDot(axis, pull)))

/**
 * Length of webbing to order, mm: the path to the buckle, once round the tube and the part woven back through the slide for a
 * wrap, and the adjuster's tail. Null while the path does not reach a buckle. Source: common practice, no source.
 */
const orderLengthMm = (scene: StrapScene, { anchor, path }: SolvedStrap): number | null => {
  if (path.contacts[path.contacts.length - 1]?.on !== 'buckle') return null
  const { adjusterTailMm, wrapReturnMm } = scene.belt
  const radiusMm = mountCircle(anchor.mount, scene.tubes)?.radiusMm ?? 0
  const wrapMm = anchor.mount.kind === 'wrap' ? 2 * Math.PI * radiusMm + wrapReturnMm : 0
  return path.lengthMm + wrapMm + adjusterTailMm
}

/** Adds what every strap has: its slot's bend, how it meets its mount, and the length to order. */
export const addAnchorQuantities = (values: QuantityValue[], scene: StrapScene, strap: SolvedStrap): void => {
  const subject = strap.anchor.strap
  const { mount } = strap.anchor
  const pull = lineOfPull(strap.path)
  const lengthMm = orderLengthMm(scene, strap)
  const adjusterMm = adjusterClearanceMm(scene, strap)
  if (slotOf(scene.seat, subject) !== null)
    values.push({ id: 'slot-bend', subject, value: slotBendDeg(strap) })
  if (mount.kind === 'wrap') {
    const axis = wrapAxis(mount, scene.tubes)
    if (axis !== null) values.push({ id: 'wrap-square', subject, value: wrapSquareDeg(axis, pull) })
  }
  if (mount.kind === 'tab') values.push({ id: 'tab-twist', subject, value: tabTwistDeg(mount, pull) })
  if (mount.kind === 'eye')
    values.push({ id: 'shank-angle', subject, value: acosDeg(directionDot(shankAxis(mount), pull)) })
  if (lengthMm !== null) values.push({ id: 'strap-length', subject, value: lengthMm })
  if (adjusterMm !== null) values.push({ id: 'adjuster-clearance', subject, value: adjusterMm })
}
