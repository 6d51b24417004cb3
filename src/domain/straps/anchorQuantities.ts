import { directionDot, type Direction } from '../geometry/point'
import { acosDeg } from '../units/angle'
import { adjusterClearanceMm } from './adjusterClearance'
import { lineOfPull } from './lineOfPull'
import { mountCircle, wrapAxis } from './mount'
import type { QuantitySink } from './quantity'
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

/** How the strap meets its mount: each kind of mount has its own number. */
const addMountQuantity = (
  sink: QuantitySink,
  { tubes }: StrapScene,
  { anchor: { strap, mount }, path }: SolvedStrap,
): void => {
  switch (mount.kind) {
    case 'wrap': {
      const axis = sink.wants('wrap-square') ? wrapAxis(mount, tubes) : null
      if (axis !== null) sink.put('wrap-square', strap, wrapSquareDeg(axis, lineOfPull(path)))
      break
    }
    case 'tab':
      if (sink.wants('tab-twist')) sink.put('tab-twist', strap, tabTwistDeg(mount, lineOfPull(path)))
      break
    case 'eye':
      if (sink.wants('shank-angle'))
        sink.put('shank-angle', strap, acosDeg(directionDot(shankAxis(mount), lineOfPull(path))))
      break
  }
}

/** Adds what every strap has: its slot's bend, how it meets its mount, and the length to order. */
export const addAnchorQuantities = (sink: QuantitySink, scene: StrapScene, strap: SolvedStrap): void => {
  const subject = strap.anchor.strap
  if (sink.wants('slot-bend') && slotOf(scene.seat, subject) !== null)
    sink.put('slot-bend', subject, slotBendDeg(strap))
  addMountQuantity(sink, scene, strap)
  const lengthMm = sink.wants('strap-length') ? orderLengthMm(scene, strap) : null
  if (lengthMm !== null) sink.put('strap-length', subject, lengthMm)
  const adjusterMm = sink.wants('adjuster-clearance') ? adjusterClearanceMm(scene, strap) : null
  if (adjusterMm !== null) sink.put('adjuster-clearance', subject, adjusterMm)
}
