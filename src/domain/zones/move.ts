import type { Direction, PointMm } from '../geometry/point'
import type { Tube } from '../geometry/tube'
import type { MoveDirection, RemedyStep } from '../rules/finding'
import type { Anchor } from '../straps/anchor'
import { tubeAt } from '../straps/mount'
import type { StrapScene } from '../straps/scene'
import { areShoulderStrapsJoined, mirroredStrap, strapFamily } from '../straps/strap'
import { runsAlong, slidPoint } from './slide'
import type { ZoneCase } from './zone'

/** A trial shift of some anchors, of whole tubes with everything on them, or of both. */
export interface Move {
  /** Anchors that move by themselves; one on a tube slides along it. */
  readonly anchorIds: readonly string[]
  /** Tubes that move with every anchor on them. */
  readonly tubeIds: readonly string[]
  readonly direction: MoveDirection
  /** > 0. */
  readonly byMm: number
}

/** Whether a point counts as on the occupant's right: +1, else −1. On the centre line itself outward is taken as to the right. */
const outwardSign = (point: PointMm, centreYMm: number): 1 | -1 => (point.yMm >= centreYMm ? 1 : -1)

/** A welder's direction from a point, length 1; inward and outward are seen from the seat's centre line at `centreYMm`. */
const wayOf = (direction: MoveDirection, point: PointMm, centreYMm: number): Direction => {
  switch (direction) {
    case 'up':
      return { x: 0, y: 0, z: 1 }
    case 'down':
      return { x: 0, y: 0, z: -1 }
    case 'forward':
      return { x: -1, y: 0, z: 0 }
    case 'rearward':
      return { x: 1, y: 0, z: 0 }
    case 'outward':
      return { x: 0, y: outwardSign(point, centreYMm), z: 0 }
    case 'inward':
      return { x: 0, y: -outwardSign(point, centreYMm), z: 0 }
  }
}

type Shift = Pick<Move, 'direction' | 'byMm'>

/** A point moved in a welder's direction. */
export const shiftedPoint = (point: PointMm, { direction, byMm }: Shift, centreYMm: number): PointMm => {
  switch (direction) {
    case 'up':
      return { ...point, zMm: point.zMm + byMm }
    case 'down':
      return { ...point, zMm: point.zMm - byMm }
    case 'forward':
      return { ...point, xMm: point.xMm - byMm }
    case 'rearward':
      return { ...point, xMm: point.xMm + byMm }
    case 'outward':
      return { ...point, yMm: point.yMm + outwardSign(point, centreYMm) * byMm }
    case 'inward':
      return { ...point, yMm: point.yMm - outwardSign(point, centreYMm) * byMm }
  }
}

/** Whether two straps end on one anchor: shoulder straps joined into one tail. */
const isShared = ({ belt }: Pick<StrapScene, 'belt'>, { strap }: Anchor): boolean =>
  strapFamily(strap) === 'shoulder' && areShoulderStrapsJoined(belt)

/**
 * The other anchor's place when this one of a case lies at `point`: at the same point where they are one, mirrored about the seat's
 * centre line in a mirrored pair. Null where it stays.
 */
export const partnerPoint = (
  scene: Pick<StrapScene, 'belt' | 'body'>,
  { anchor, mirrored }: Pick<ZoneCase, 'anchor' | 'mirrored'>,
  point: PointMm,
): PointMm | null => {
  if (isShared(scene, anchor)) return point
  return mirrored ? { ...point, yMm: 2 * scene.body.hip.yMm - point.yMm } : null
}

export const anchorAt = (anchor: Anchor, point: PointMm): Anchor => ({
  ...anchor,
  mount: { ...anchor.mount, point },
})

/** The tube an anchor hangs on; null for one on another structure. */
const tubeOf = ({ mount }: Anchor, tubes: readonly Tube[]): Tube | null =>
  mount.tubeId === null ? null : tubeAt(tubes, mount.tubeId)

/** What carries anchors. */
type Carried = Pick<StrapScene, 'tubes' | 'belt'>

/**
 * Where an anchor now at `point` is after a move of its own: shifted, or slid along the tube that carries it until it has gone as far
 * in that direction. Null where it would leave its tube: then the tube has to move.
 */
export const movedPoint = (
  anchor: Anchor,
  point: PointMm,
  shift: Shift,
  { tubes, belt }: Carried,
  centreYMm: number,
): PointMm | null => {
  const tube = tubeOf(anchor, tubes)
  if (tube === null) return shiftedPoint(point, shift, centreYMm)
  return slidPoint({ anchor, point, tube, belt }, wayOf(shift.direction, point, centreYMm), shift.byMm)
}

/** Where everything that can be moved is. */
export interface Trial {
  /** Of the mounts, in the order of the scene's anchors. */
  readonly points: readonly PointMm[]
  /** The scene's own list where no tube has moved. */
  readonly tubes: readonly Tube[]
}

type TrialScene = Pick<StrapScene, 'anchors' | 'tubes' | 'belt' | 'body'>

const shiftedTubes = (tubes: readonly Tube[], move: Move, centreYMm: number): readonly Tube[] =>
  tubes.map((tube) =>
    move.tubeIds.includes(tube.id)
      ? { ...tube, points: tube.points.map((point) => shiftedPoint(point, move, centreYMm)) }
      : tube,
  )

/** Where everything is after some moves, one after the other; null where one of them cannot be made. */
export const trialAfter = (
  { anchors, tubes: drawn, belt, body }: TrialScene,
  moves: readonly Move[],
): Trial | null => {
  const centreYMm = body.hip.yMm
  const points = anchors.map(({ mount }) => mount.point)
  let tubes = drawn
  for (const move of moves) {
    const { anchorIds, tubeIds } = move
    for (const [index, anchor] of anchors.entries()) {
      const { tubeId } = anchor.mount
      const point = points[index] ?? anchor.mount.point
      if (tubeId !== null && tubeIds.includes(tubeId)) points[index] = shiftedPoint(point, move, centreYMm)
      else if (anchorIds.includes(anchor.id)) {
        const moved = movedPoint(anchor, point, move, { tubes, belt }, centreYMm)
        if (moved === null) return null
        points[index] = moved
      }
    }
    if (tubeIds.length > 0) tubes = shiftedTubes(tubes, move, centreYMm)
  }
  return { points, tubes }
}

/** A scene as it is in a trial; anchors that did not move stay the same objects. */
export const sceneOf = (scene: StrapScene, { points, tubes }: Trial): StrapScene => ({
  ...scene,
  tubes,
  anchors: scene.anchors.map((anchor, index) => {
    const point = points[index] ?? anchor.mount.point
    return point === anchor.mount.point ? anchor : anchorAt(anchor, point)
  }),
})

/** The scene after some moves, one after the other; null where one of them cannot be made. */
export const movedScene = (scene: StrapScene, moves: readonly Move[]): StrapScene | null => {
  const trial = trialAfter(scene, moves)
  return trial && sceneOf(scene, trial)
}

/** The anchors that move with the one of a case: its mirror image in a mirrored pair, and the other of two straps on one anchor. */
const movingAnchors = ({ anchor, mirrored, scenes }: ZoneCase): readonly Anchor[] => {
  const scene = scenes[0]?.scene
  const moves = mirrored || (scene !== undefined && isShared(scene, anchor))
  const partner = moves ? mirroredStrap(anchor.strap) : null
  const other = scene?.anchors.find(({ strap }) => strap === partner)
  return other === undefined ? [anchor] : [anchor, other]
}

const isAcross = (direction: MoveDirection): boolean => direction === 'inward' || direction === 'outward'

/** How the anchor of a case moves in a direction, however far. */
type Way = Omit<Move, 'byMm'>

/** By the case, which is never changed. */
const WAYS = new WeakMap<ZoneCase, Map<MoveDirection, Way | null>>()

const freshWay = (direction: MoveDirection, zoneCase: ZoneCase): Way | null => {
  const { scene } = zoneCase.scenes[0] ?? {}
  if (scene === undefined) return null
  const anchorIds: string[] = []
  const tubeIds: string[] = []
  for (const anchor of movingAnchors(zoneCase)) {
    const tube = tubeOf(anchor, scene.tubes)
    const { point } = anchor.mount
    if (tube === null || runsAlong(tube, point, wayOf(direction, point, scene.body.hip.yMm)))
      anchorIds.push(anchor.id)
    else if (!tubeIds.includes(tube.id)) tubeIds.push(tube.id)
  }
  return tubeIds.length > 0 && isAcross(direction) ? null : { anchorIds, tubeIds, direction }
}

/**
 * How the anchor of a case moves in a direction, with its pair: by itself where it hangs on no tube; along its tube where that runs in
 * this direction; else the tube moves with every anchor on it. Null where none of it can be made: across the seat a tube that
 * does not run there is not moved, since its two ends would have to part.
 */
export const moveOf = (direction: MoveDirection, byMm: number, zoneCase: ZoneCase): Move | null => {
  const ways = WAYS.get(zoneCase) ?? new Map<MoveDirection, Way | null>()
  WAYS.set(zoneCase, ways)
  const known = ways.get(direction)
  const way = known === undefined ? freshWay(direction, zoneCase) : known
  ways.set(direction, way)
  return way && { ...way, byMm }
}

/** A move as the steps of a remedy: one for the anchors that move by themselves and one for each tube. */
export const moveSteps = ({ anchorIds, tubeIds, direction, byMm }: Move): readonly RemedyStep[] => [
  ...(anchorIds.length === 0 ? [] : [{ kind: 'move-anchors', anchorIds, direction, byMm } as const]),
  ...tubeIds.map((tubeId) => ({ kind: 'move-tube', tubeId, direction, byMm }) as const),
]

/** A step that moves something, as a move. */
export const stepMove = (step: Exclude<RemedyStep, { kind: 'turn-tab' }>): Move =>
  step.kind === 'move-tube'
    ? { anchorIds: [], tubeIds: [step.tubeId], direction: step.direction, byMm: step.byMm }
    : { anchorIds: step.anchorIds, tubeIds: [], direction: step.direction, byMm: step.byMm }
