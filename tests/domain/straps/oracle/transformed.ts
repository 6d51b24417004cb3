import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Anchor, Mount } from '../../../../src/domain/straps/anchor'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { mirroredStrap, type StrapId } from '../../../../src/domain/straps/strap'

const flipped = <P extends { readonly yMm: number }>(at: P): P => ({ ...at, yMm: -at.yMm })

export const otherSide = (strap: StrapId): StrapId => mirroredStrap(strap) ?? strap

const flippedMount = (mount: Mount): Mount => {
  const point = flipped(mount.point)
  switch (mount.kind) {
    case 'tab':
      return { ...mount, point, planDeg: -mount.planDeg, leanDeg: -mount.leanDeg }
    case 'wrap':
      return { ...mount, point }
    case 'eye':
      return { ...mount, point, planDeg: -mount.planDeg }
  }
}

/** The whole car in a mirror along it (y → −y): left and right change places. */
export const inMirror = (given: StrapScene): StrapScene => {
  const { body, seat, belt } = given
  return {
    ...given,
    pose: { ...given.pose, hip: flipped(given.pose.hip) },
    belt: { ...belt, diagonal: (belt.diagonal ?? 'left') === 'left' ? 'right' : 'left' },
    seat: {
      ...seat,
      topOutline: seat.topOutline.map(flipped),
      slots: seat.slots.map((slot) => ({
        ...slot,
        centre: flipped(slot.centre),
        straps: slot.straps.map(otherSide),
        turnDeg: slot.face === 'side' ? slot.turnDeg : -slot.turnDeg,
      })),
    },
    body: {
      ...body,
      hip: flipped(body.hip),
      shoulderPoint: {
        left: flipped(body.shoulderPoint.right),
        right: flipped(body.shoulderPoint.left),
      },
      frontHipBone: { left: flipped(body.frontHipBone.right), right: flipped(body.frontHipBone.left) },
      helmet: { ...body.helmet, centre: flipped(body.helmet.centre) },
    },
    anchors: given.anchors.map(({ id, strap, mount }): Anchor => ({
      id,
      strap: otherSide(strap),
      mount: flippedMount(mount),
    })),
    tubes: given.tubes.map((tube) => ({ ...tube, points: tube.points.map(flipped) })),
  }
}

/** The whole car moved by the same amount. */
export const shifted = (given: StrapScene, by: PointMm): StrapScene => {
  const at = <P extends PointMm>(p: P): P => ({
    ...p,
    xMm: p.xMm + by.xMm,
    yMm: p.yMm + by.yMm,
    zMm: p.zMm + by.zMm,
  })
  const inSide = <S extends { readonly centre: { readonly uMm: number; readonly vMm: number } }>(
    shape: S,
  ): S => ({
    ...shape,
    centre: { uMm: shape.centre.uMm + by.xMm, vMm: shape.centre.vMm + by.zMm },
  })
  const { body } = given
  return {
    ...given,
    pose: { ...given.pose, hip: at(given.pose.hip) },
    body: {
      ...body,
      hip: at(body.hip),
      shoulderPoint: { left: at(body.shoulderPoint.left), right: at(body.shoulderPoint.right) },
      frontHipBone: { left: at(body.frontHipBone.left), right: at(body.frontHipBone.right) },
      shoulderArc: inSide(body.shoulderArc),
      lapArc: inSide(body.lapArc),
      groinArc: inSide(body.groinArc),
      chest: inSide(body.chest),
      core: body.core.map((each) => ({ ...each, from: at(each.from), to: at(each.to) })),
      helmet: { ...body.helmet, centre: at(body.helmet.centre) },
    },
    anchors: given.anchors.map((anchor) => ({
      ...anchor,
      mount: { ...anchor.mount, point: at(anchor.mount.point) },
    })),
    tubes: given.tubes.map((tube) => ({ ...tube, points: tube.points.map(at) })),
  }
}
