import fc from 'fast-check'
import { vehiclePoint } from '../../../src/domain/body/pose'
import type { Anchor } from '../../../src/domain/straps/anchor'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { mirroredStrap, type StrapId } from '../../../src/domain/straps/strap'
import { bar, belt, point, scene, slot, tab, wrap } from './scenes'

const mm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true })

/**
 * Random places with a reclined seat, slots in back, side wall and cushion, shoulder straps on a bar or on tabs, lap and
 * anti-sub tabs. Anchors are drawn in the vehicle, slots in the seat. About the size of a real cockpit; judgement.
 */
export const anyScene: fc.Arbitrary<StrapScene> = fc
  .record({
    hip: fc.record({ xMm: mm(-500, 500), yMm: mm(-400, 400), zMm: mm(-200, 300) }),
    reclineDeg: mm(0, 45),
    shoulder: fc.record({ xMm: mm(250, 700), zMm: mm(-350, 150), yMm: mm(40, 200) }),
    // Beyond the side-wall slots at 200.
    lap: fc.record({ xMm: mm(20, 400), zMm: mm(-350, 40), yMm: mm(205, 320) }),
    sub: fc.record({ xMm: mm(-250, 200), zMm: mm(-450, -180), yMm: mm(20, 90) }),
    slotUpMm: mm(440, 600),
    slotLowMm: mm(-160, -40),
    cushionMm: mm(-140, 0),
    hasSlots: fc.boolean(),
    over: fc.constantFrom('over', 'under', 'tab'),
    lowestDeg: mm(0, 60),
    shoulderRadiusMm: mm(40, 110),
  })
  .map((choice) => {
    const pose = { hip: choice.hip, reclineDeg: choice.reclineDeg }
    const shoulderTop = vehiclePoint(pose, point(0, 0, 590))
    const bars = bar(shoulderTop.xMm + choice.shoulder.xMm, shoulderTop.zMm + choice.shoulder.zMm, 40)
    const sides = [
      ['left', -1],
      ['right', 1],
    ] as const
    const anchors = sides.flatMap(([side, sign]): Anchor[] => {
      const at = point(
        shoulderTop.xMm + choice.shoulder.xMm,
        choice.hip.yMm + sign * choice.shoulder.yMm,
        shoulderTop.zMm + choice.shoulder.zMm,
      )
      const near = (offset: { xMm: number; yMm: number; zMm: number }): ReturnType<typeof point> =>
        point(choice.hip.xMm + offset.xMm, choice.hip.yMm + sign * offset.yMm, choice.hip.zMm + offset.zMm)
      return [
        choice.over === 'tab' ? tab(`shoulder-${side}`, at) : wrap(`shoulder-${side}`, at, choice.over),
        tab(`lap-${side}`, near(choice.lap), { planDeg: sign * 15, leanDeg: sign * 10 }),
        tab(`sub-${side}`, near(choice.sub)),
      ]
    })
    const slots = sides.flatMap(([side, sign]) => [
      slot({
        id: `b${side}`,
        straps: [`shoulder-${side}`],
        face: 'back',
        centre: point(130, sign * 90, choice.slotUpMm),
      }),
      slot({
        id: `l${side}`,
        straps: [`lap-${side}`],
        face: 'side',
        centre: point(60, sign * 200, choice.slotLowMm),
      }),
      slot({
        id: `s${side}`,
        straps: [`sub-${side}`],
        face: 'cushion',
        centre: point(choice.cushionMm, sign * 50, -115),
      }),
    ])
    return scene({
      hip: choice.hip,
      reclineDeg: choice.reclineDeg,
      shoulderRadiusMm: choice.shoulderRadiusMm,
      lapLowestDeg: choice.lowestDeg,
      belt: belt(6),
      seat: { backrestRim: { xMm: 130, zMm: choice.slotUpMm }, slots: choice.hasSlots ? slots : [] },
      anchors,
      tubes: [bars],
    })
  })

/** The scene seen in a mirror along the car's length: left and right change places. */
export const mirrored = (given: StrapScene): StrapScene => {
  const flip = <P extends { readonly yMm: number }>(at: P): P => ({ ...at, yMm: -at.yMm })
  const swap = (strap: StrapId): StrapId => mirroredStrap(strap) ?? strap
  return {
    ...given,
    pose: { ...given.pose, hip: flip(given.pose.hip) },
    seat: {
      ...given.seat,
      slots: given.seat.slots.map((each) => ({
        ...each,
        centre: flip(each.centre),
        straps: each.straps.map(swap),
        turnDeg: each.face === 'side' ? each.turnDeg : -each.turnDeg,
      })),
    },
    body: {
      ...given.body,
      hip: flip(given.body.hip),
      shoulderPoint: {
        left: flip(given.body.shoulderPoint.right),
        right: flip(given.body.shoulderPoint.left),
      },
      frontHipBone: { left: flip(given.body.frontHipBone.right), right: flip(given.body.frontHipBone.left) },
      helmet: { ...given.body.helmet, centre: flip(given.body.helmet.centre) },
    },
    anchors: given.anchors.map(({ id, strap, mount }) => ({
      id,
      strap: swap(strap),
      mount:
        mount.kind === 'tab'
          ? { ...mount, point: flip(mount.point), planDeg: -mount.planDeg, leanDeg: -mount.leanDeg }
          : { ...mount, point: flip(mount.point) },
    })),
    tubes: given.tubes.map((tube) => ({ ...tube, points: tube.points.map(flip) })),
  }
}

/** Everything moved by the same amount and then multiplied about the datum by the same factor. */
export const movedAndScaled = (
  given: StrapScene,
  by: ReturnType<typeof point>,
  factor: number,
): StrapScene => {
  const at = (p: ReturnType<typeof point>): ReturnType<typeof point> =>
    point((p.xMm + by.xMm) * factor, (p.yMm + by.yMm) * factor, (p.zMm + by.zMm) * factor)
  const inSeat = (p: ReturnType<typeof point>): ReturnType<typeof point> =>
    point(p.xMm * factor, p.yMm * factor, p.zMm * factor)
  const circle = (c: StrapScene['body']['lapArc']): StrapScene['body']['lapArc'] => ({
    centre: { uMm: (c.centre.uMm + by.xMm) * factor, vMm: (c.centre.vMm + by.zMm) * factor },
    radiusMm: c.radiusMm * factor,
  })
  const { body } = given
  return {
    ...given,
    pose: { ...given.pose, hip: at(given.pose.hip) },
    seat: {
      ...given.seat,
      backrestRim: { xMm: given.seat.backrestRim.xMm * factor, zMm: given.seat.backrestRim.zMm * factor },
      slots: given.seat.slots.map((each) => ({
        ...each,
        centre: inSeat(each.centre),
        lengthMm: each.lengthMm * factor,
        heightMm: each.heightMm * factor,
      })),
    },
    belt: {
      ...given.belt,
      webbingMm: {
        shoulder: given.belt.webbingMm.shoulder * factor,
        lap: given.belt.webbingMm.lap * factor,
        sub: given.belt.webbingMm.sub * factor,
      },
      adjusterTailMm: given.belt.adjusterTailMm * factor,
      wrapReturnMm: given.belt.wrapReturnMm * factor,
    },
    body: {
      ...body,
      hip: at(body.hip),
      shoulderPoint: { left: at(body.shoulderPoint.left), right: at(body.shoulderPoint.right) },
      shoulderArc: circle(body.shoulderArc),
      frontHipBone: { left: at(body.frontHipBone.left), right: at(body.frontHipBone.right) },
      lapArc: circle(body.lapArc),
      groinArc: circle(body.groinArc),
      chest: {
        centre: circle({ centre: body.chest.centre, radiusMm: 0 }).centre,
        acrossMm: body.chest.acrossMm * factor,
        alongMm: body.chest.alongMm * factor,
      },
      hipHalfBreadthMm: body.hipHalfBreadthMm * factor,
      core: body.core.map(({ part, from, to, radiusMm }) => ({
        part,
        from: at(from),
        to: at(to),
        radiusMm: radiusMm * factor,
      })),
      helmet: { centre: at(body.helmet.centre), radiusMm: body.helmet.radiusMm * factor },
    },
    anchors: given.anchors.map((anchor) => ({
      ...anchor,
      mount: { ...anchor.mount, point: at(anchor.mount.point) },
    })),
    tubes: given.tubes.map((tube) => ({
      ...tube,
      points: tube.points.map(at),
      outsideDiameterMm: tube.outsideDiameterMm * factor,
    })),
  }
}
