import fc from 'fast-check'
import type { PointMm } from '../../../src/domain/geometry/point'
import type { Tube } from '../../../src/domain/geometry/tube'
import type { QuantityRule } from '../../../src/domain/rules/rule'
import type { Anchor } from '../../../src/domain/straps/anchor'
import type { QuantityId } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { type StrapFamily, strapsOf } from '../../../src/domain/straps/strap'
import type { ZoneCase } from '../../../src/domain/zones/zone'
import { movedAndScaled } from '../straps/arbitraryScenes'
import { randomScene, type Variant } from '../straps/oracle/randomScenes'
import { point } from '../straps/scenes'
import { quantityRule, zoneCaseOf } from './zoneCases'

/** Random places of every arrangement as zones need them: in a cage, with mounts on tubes of their own and in several sittings. */

const mm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000)

const direction = fc.record({ xMm: mm(-1, 1), yMm: mm(-1, 1), zMm: mm(-1, 1) })

const along = (at: PointMm, way: PointMm, byMm: number): PointMm => {
  const length = Math.hypot(way.xMm, way.yMm, way.zMm) || 1
  return point(
    at.xMm + (way.xMm / length) * byMm,
    at.yMm + (way.yMm / length) * byMm,
    at.zMm + (way.zMm / length) * byMm,
  )
}

const tubeOf = (id: string, points: readonly PointMm[], outsideDiameterMm: number): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

/** A tube of the cage: behind, beside or below the seat, straight or bent. */
const cageTube = fc.record({
  middle: fc.record({ xMm: mm(-300, 700), yMm: mm(-500, 500), zMm: mm(-450, 600) }),
  way: direction,
  bend: direction,
  isBent: fc.boolean(),
  diameterMm: mm(20, 60),
})

const cageTubeAt = (
  id: string,
  hip: PointMm,
  given: typeof cageTube extends fc.Arbitrary<infer T> ? T : never,
): Tube => {
  const middle = point(hip.xMm + given.middle.xMm, hip.yMm + given.middle.yMm, hip.zMm + given.middle.zMm)
  const from = along(middle, given.way, -700)
  const to = along(middle, given.isBent ? given.bend : given.way, 700)
  return tubeOf(id, [from, middle, to], given.diameterMm)
}

/** The tube that a tab or eye is welded to: beside it, or so near that the hole is drawn inside it. */
const ownTube = fc.record({
  out: direction,
  way: direction,
  outMm: mm(-5, 40),
  diameterMm: mm(20, 60),
  hasOne: fc.boolean(),
})

type OwnTube = typeof ownTube extends fc.Arbitrary<infer T> ? T : never

/** The anchor on a tube of its own. */
const onOwnTube = (
  anchor: Anchor,
  { out, way, outMm, diameterMm, hasOne }: OwnTube,
): { anchor: Anchor; tubes: readonly Tube[] } => {
  if (!hasOne || anchor.mount.kind === 'wrap') return { anchor, tubes: [] }
  const id = `own-${anchor.id}`
  const middle = along(anchor.mount.point, out, diameterMm / 2 + outMm)
  const across = point(
    way.yMm * out.zMm - way.zMm * out.yMm,
    way.zMm * out.xMm - way.xMm * out.zMm,
    way.xMm * out.yMm - way.yMm * out.xMm,
  )
  return {
    anchor: { ...anchor, mount: { ...anchor.mount, tubeId: id } },
    tubes: [tubeOf(id, [along(middle, across, -400), along(middle, across, 400)], diameterMm)],
  }
}

const shift = fc.record({ xMm: mm(-40, 40), zMm: mm(-15, 15) })

/** A place in 1 to 4 sittings. */
export const randomSittings = (variant: Variant): fc.Arbitrary<readonly StrapScene[]> =>
  fc
    .noBias(
      fc.record({
        scene: randomScene(variant),
        cage: fc.array(cageTube, { minLength: 1, maxLength: 5 }),
        own: fc.array(ownTube, { minLength: 7, maxLength: 7 }),
        shifts: fc.array(shift, { minLength: 0, maxLength: 3 }),
      }),
    )
    .map(({ scene, cage, own, shifts }) => {
      const hosted = scene.anchors.map((anchor, index) => {
        const its = own[index]
        return its === undefined || scene.belt.shoulderTailMm !== undefined
          ? { anchor, tubes: [] }
          : onOwnTube(anchor, its)
      })
      const drawn: StrapScene = {
        ...scene,
        anchors: hosted.map(({ anchor }) => anchor),
        tubes: [
          ...scene.tubes,
          ...hosted.flatMap(({ tubes }) => tubes),
          ...cage.map((each, index) => cageTubeAt(`cage-${index}`, scene.body.hip, each)),
        ],
      }
      return [
        drawn,
        ...shifts.map(({ xMm, zMm }) => {
          const { pose, body } = movedAndScaled(drawn, point(xMm, 0, zMm), 1)
          return { ...drawn, pose, body }
        }),
      ]
    })

/** Limits wide enough to leave zones of some size; the numbers themselves are only inputs here. */
const LIMITS: Readonly<
  Record<StrapFamily, readonly (readonly [QuantityId, number | null, number | null])[]>
> = {
  shoulder: [
    ['shoulder-drop', -25, 60],
    ['shoulder-free-length', 100, 900],
    ['shoulder-plan', -40, 40],
    ['spine-load-share', null, 0.6],
    ['slot-bend', null, 50],
    ['tube-clearance', 6, null],
  ],
  lap: [
    ['lap-angle', 10, 80],
    ['lap-run-angle', 10, 85],
    ['lap-off-centre', 60, null],
    ['lap-spacing', 165, 900],
    ['slot-bend', null, 60],
    ['tube-clearance', 0, null],
  ],
  sub: [
    ['sub-to-vertical', -60, 60],
    ['sub-spacing', 30, 400],
    ['slot-bend', null, 60],
    ['tube-clearance', 3, null],
  ],
}

export const WIDE_RULES: readonly QuantityRule[] = (['shoulder', 'lap', 'sub'] as const).flatMap((family) =>
  LIMITS[family].map(([quantity, min, max]) => quantityRule(quantity, min, max, { family })),
)

/** Every anchor of the arrangement in these sittings. */
export const casesOf = (sittings: readonly StrapScene[], mirrored: boolean): readonly ZoneCase[] => {
  const [first] = sittings
  return first === undefined ? [] : strapsOf(first.belt).map((strap) => zoneCaseOf(sittings, strap, mirrored))
}
