import { cosDeg, sinDeg } from '../units/angle'
import type { Anchor } from './anchor'
import type { LapEnd } from './bodyEnd'
import { anchorOf } from './mount'
import { lapFrontAt } from './lapAim'
import { portalOf, type Portal, type SeatFrame } from './portal'
import type { StrapScene } from './scene'
import { seatShell, type SeatShell } from './seatShell'
import { strapFamily, strapsOf, type StrapId } from './strap'

/** A strap of the belt with what of it does not depend on where its mount is. */
export interface StrapFrame {
  readonly strap: StrapId
  readonly anchor: Anchor
  readonly portal: Portal | null
}

/** One sitting made ready: what no strap's mount changes. */
export interface PlaceFrame {
  readonly scene: StrapScene
  /** In the order of `strapsOf`; null for a strap without an anchor. */
  readonly straps: readonly { readonly strap: StrapId; readonly frame: StrapFrame | null }[]
  readonly lapEnds: { readonly left: LapEnd; readonly right: LapEnd }
  readonly shell: SeatShell | null
}

const lapEnd = ({ body }: StrapScene, outward: 1 | -1): LapEnd => {
  const bone = outward < 0 ? body.frontHipBone.left : body.frontHipBone.right
  const cylinderHalfMm = outward * (bone.yMm - body.hip.yMm)
  return {
    family: 'lap',
    hip: body.hip,
    outward,
    radiusMm: body.lapArc.radiusMm,
    cylinderHalfMm,
    endMm: Math.max(0, body.hipHalfBreadthMm - cylinderHalfMm),
    lowestSin: sinDeg(body.lapLowestDeg),
    lowestCos: cosDeg(body.lapLowestDeg),
    held: lapFrontAt(body, body.lapLowestDeg),
  }
}

export const seatFrame = ({ pose }: Pick<StrapScene, 'pose'>): SeatFrame => ({
  origin: pose.hip,
  sin: sinDeg(pose.reclineDeg),
  cos: cosDeg(pose.reclineDeg),
})

/** Whether a lap or anti-submarine strap has no slot, so that the shell itself matters. */
const isShellMet = (straps: PlaceFrame['straps']): boolean =>
  straps.some(
    ({ strap, frame }) => frame !== null && frame.portal === null && strapFamily(strap) !== 'shoulder',
  )

/** Prepares a sitting. */
export const placeFrame = (scene: StrapScene): PlaceFrame => {
  const frame = seatFrame(scene)
  const straps = strapsOf(scene.belt).map((strap) => {
    const anchor = anchorOf(scene.anchors, strap)
    const framed = anchor && { strap, anchor, portal: portalOf(frame, scene, strap) }
    return { strap, frame: framed }
  })
  return {
    scene,
    straps,
    lapEnds: { left: lapEnd(scene, -1), right: lapEnd(scene, 1) },
    shell: isShellMet(straps) ? seatShell(frame, scene.seat) : null,
  }
}
