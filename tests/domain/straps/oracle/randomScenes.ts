import fc from 'fast-check'
import type { PointMm } from '../../../../src/domain/geometry/point'
import { vehiclePoint } from '../../../../src/domain/body/pose'
import type { Tube } from '../../../../src/domain/geometry/tube'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import type { Slot } from '../../../../src/domain/straps/seat'
import type { Arrangement, StrapId } from '../../../../src/domain/straps/strap'
import { belt, point, scene, slot, tab, wrap } from '../scenes'
import { bodyChoice, lapChoice, shoulderChoice, subChoice, thicknessMm } from './randomChoices'

export const VARIANTS = [
  '3-point',
  '4-point',
  '5-point',
  '6-point',
  '6-point-under-thighs',
  '7-point',
] as const

export type Variant = (typeof VARIANTS)[number]

const sceneChoice = fc.record({
  body: bodyChoice,
  shoulder: fc.tuple(shoulderChoice, shoulderChoice),
  lap: fc.tuple(lapChoice, lapChoice),
  sub: fc.tuple(subChoice, subChoice),
  thicknessMm,
  diagonal: fc.constantFrom('left', 'right'),
})

type Given<A> = A extends fc.Arbitrary<infer T> ? T : never
type SceneChoice = Given<typeof sceneChoice>
type MountChoice = Given<typeof shoulderChoice>['mount']

const SIDES = [
  ['left', -1],
  ['right', 1],
] as const

/** Half the width of all that straps touch about the hips. */
const halfBodyMm = ({ body }: SceneChoice): number => Math.max(body.hipHalfBreadthMm, body.boneHalfMm)

/** A mount of the chosen kind with its own tube where it is wrapped. */
const mounted = (
  strap: StrapId,
  at: PointMm,
  choice: MountChoice,
  tubeId = `tube-${strap}`,
): { anchor: Anchor; tubes: Tube[] } => {
  if (choice.kind === 'tab') return { anchor: tab(strap, at, { planDeg: 10, leanDeg: -15 }), tubes: [] }
  if (choice.kind === 'eye') {
    const eye = { planDeg: 5, riseDeg: 20, threadDiameterMm: 11, eyeDiameterMm: 25, tubeId: null }
    return { anchor: { id: strap, strap, mount: { kind: 'eye', point: at, ...eye } }, tubes: [] }
  }
  const tilt = choice.kind === 'wrap' ? 0 : 1
  const along = (share: number): PointMm =>
    point(at.xMm + tilt * choice.tiltX * share, at.yMm + share, at.zMm + tilt * choice.tiltZ * share)
  const tube: Tube = {
    id: tubeId,
    name: tubeId,
    role: 'harness-bar',
    points: [along(-60), along(60)],
    outsideDiameterMm: choice.diameterMm,
    wallMm: 2,
  }
  return { anchor: wrap(strap, at, choice.over, tubeId), tubes: [tube] }
}

/** Over or under says nothing of a strap that runs straight up from its tube: wraps lie well behind what they pull on. */
const behind = (by: PointMm, { kind }: MountChoice): PointMm =>
  kind.endsWith('wrap') ? { ...by, xMm: Math.max(by.xMm, 100 - by.zMm) } : by

/** Mounts of all seven straps; those that an arrangement lacks are never asked for. */
const mountsOf = (
  choice: SceneChoice,
  isUnderThighs: boolean,
  isJoined: boolean,
): ReturnType<typeof mounted>[] => {
  const { body, thicknessMm: thickMm } = choice
  const pose = { hip: body.hip, reclineDeg: body.reclineDeg }
  const top = vehiclePoint(pose, point(0, 0, body.hipToShoulderMm))
  const from = (origin: PointMm, by: PointMm, sign: number): PointMm =>
    point(origin.xMm + by.xMm, origin.yMm + sign * by.yMm, origin.zMm + by.zMm)
  const both = SIDES.flatMap(([side, sign], i) => {
    const shoulder = choice.shoulder[isJoined ? 0 : i] ?? choice.shoulder[0]
    const lap = choice.lap[i] ?? choice.lap[0]
    const sub = choice.sub[i] ?? choice.sub[0]
    const outMm = halfBodyMm(choice) + lap.wallMm + thickMm + lap.at.yMm - 55
    const under = point(lap.at.xMm, sub.at.yMm * 2, Math.min(lap.at.zMm, -110))
    return [
      mounted(
        `shoulder-${side}`,
        from(top, isJoined ? { ...shoulder.at, yMm: shoulder.at.yMm / 5 } : shoulder.at, isJoined ? 1 : sign),
        shoulder.mount,
        isJoined ? 'tube-joined' : undefined,
      ),
      mounted(`lap-${side}`, from(body.hip, behind({ ...lap.at, yMm: outMm }, lap.mount), sign), lap.mount),
      mounted(
        `sub-${side}`,
        from(body.hip, behind(isUnderThighs ? under : sub.at, sub.mount), sign),
        sub.mount,
      ),
    ]
  })
  return [
    ...both,
    mounted(
      'sub-centre',
      from(body.hip, behind(choice.sub[0].centre, choice.sub[0].mount), 1),
      choice.sub[0].mount,
    ),
  ]
}

const shoulderSlots = (choice: SceneChoice): readonly Slot[] => {
  // The shell lies behind the shoulders.
  const behindMm = Math.max(
    choice.shoulder[0].rim.xMm,
    choice.body.shoulderRadiusMm + choice.thicknessMm / 2 + 5,
  )
  return choice.shoulder[0].way === 'rim'
    ? []
    : SIDES.map(([side, sign], i) => {
        const own = choice.shoulder[i] ?? choice.shoulder[0]
        return slot({
          id: `back-${side}`,
          straps: [`shoulder-${side}`],
          face: 'back',
          centre: point(behindMm, sign * own.slotOutMm, choice.shoulder[0].slotUpMm),
          ...own.opening,
        })
      })
}

const lapSlots = (choice: SceneChoice): readonly Slot[] => {
  const { way } = choice.lap[0]
  if (way === 'free' || way === 'seat-side') return []
  return SIDES.map(([side, sign], i) => {
    const own = choice.lap[i] ?? choice.lap[0]
    // The inner face of the wall clears the hips.
    const wallMm = halfBodyMm(choice) + own.wallMm + choice.thicknessMm / 2
    const straps: readonly StrapId[] = [`lap-${side}`]
    return way === 'side-slot'
      ? slot({
          id: way + side,
          straps,
          face: 'side',
          centre: { ...own.slot, yMm: sign * wallMm },
          ...own.opening,
        })
      : slot({
          id: way + side,
          straps,
          face: 'back',
          centre: point(choice.body.lapRadiusMm + 30, sign * wallMm, own.slot.zMm),
          ...own.opening,
        })
  })
}

const subSlots = (choice: SceneChoice): readonly Slot[] => {
  const { way, slot: first } = choice.sub[0]
  if (way === 'free') return []
  const downMm = choice.body.groinRadiusMm + choice.thicknessMm / 2 + 2
  const made = (strap: StrapId, yMm: number, own: SceneChoice['sub'][0]): Slot =>
    slot({
      id: strap,
      straps: [strap],
      face: 'cushion',
      centre: point(own.slot.xMm, yMm, own.slot.zMm - downMm),
      ...own.opening,
    })
  return [
    made('sub-left', -first.yMm, choice.sub[0]),
    made('sub-right', choice.sub[1].slot.yMm, choice.sub[1]),
    made('sub-centre', first.yMm / 10, choice.sub[1]),
  ]
}

/** The shell's side view: a pan with raised sides that rise into the backrest. */
const outlineOf = (choice: SceneChoice): StrapScene['seat']['sideOutline'] =>
  choice.lap[0].way === 'seat-side'
    ? [
        { xMm: 160, zMm: 640 },
        { xMm: 150, zMm: -190 },
        { xMm: -360, zMm: -180 },
        { xMm: -380, zMm: -60 },
        { xMm: -120, zMm: -40 },
        { xMm: 20, zMm: 10 + choice.lap[0].slot.zMm / 2 },
        { xMm: 80, zMm: 220 },
        { xMm: 110, zMm: 660 },
      ]
    : []

const ARRANGEMENT_OF = {
  '3-point': 3,
  '4-point': 4,
  '5-point': 5,
  '6-point': 6,
  '6-point-under-thighs': 6,
  '7-point': 7,
} as const satisfies Record<Variant, Arrangement>

const sceneOf = (choice: SceneChoice, variant: Variant): StrapScene => {
  const { chest: _, ...body } = choice.body
  const isUnderThighs = variant === '6-point-under-thighs'
  const [shoulder] = choice.shoulder
  const isJoined = shoulder.tailShare > 0 && variant !== '3-point'
  const mounts = mountsOf(choice, isUnderThighs, isJoined)
  const given = scene({
    ...body,
    bone: { aheadMm: 20, aboveMm: 80, halfMm: body.boneHalfMm },
    belt: belt(ARRANGEMENT_OF[variant], {
      diagonal: choice.diagonal,
      ...(isUnderThighs ? { thighStraps: 'under-thighs' } : {}),
      ...(isJoined ? { shoulderTailMm: 60 + shoulder.tailShare * 0.6 * (shoulder.at.xMm - 220) } : {}),
    }),
    seat: {
      backrestRim: shoulder.rim,
      sideOutline: isUnderThighs ? [] : outlineOf(choice),
      topOutline: [-1, 1].map((sign) => ({ xMm: 0, yMm: sign * (halfBodyMm(choice) + 2) })),
      shellThicknessMm: choice.thicknessMm,
      slots: [...shoulderSlots(choice), ...lapSlots(choice), ...(isUnderThighs ? [] : subSlots(choice))],
    },
    anchors: mounts.map(({ anchor }) => anchor),
    tubes: [...new Map(mounts.flatMap(({ tubes }) => tubes.map((tube) => [tube.id, tube]))).values()],
  })
  return withChest(given, choice)
}

const withChest = (given: StrapScene, { body }: SceneChoice): StrapScene => {
  const middle = vehiclePoint(
    given.pose,
    point(-body.chest.aheadMm, 0, body.chest.upShare * body.hipToShoulderMm),
  )
  const { acrossMm } = body.chest
  const alongMm = body.chest.alongShare * body.hipToShoulderMm
  const chest = { centre: { uMm: middle.xMm, vMm: middle.zMm }, acrossMm, alongMm }
  return { ...given, body: { ...given.body, chest } }
}

/** Random places of one arrangement. */
export const randomScene = (variant: Variant): fc.Arbitrary<StrapScene> =>
  fc.noBias(sceneChoice).map((choice) => sceneOf(choice, variant))
