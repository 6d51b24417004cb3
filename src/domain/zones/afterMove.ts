import { movedInPlane, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import type { Tube } from '../geometry/tube'
import { isWithin } from '../rules/check'
import type { QuantityRule } from '../rules/rule'
import { strapsOfPair } from '../rules/subjects'
import { addLapPairQuantities } from '../straps/lapQuantities'
import { addMirror } from '../straps/mirrorQuantities'
import type { QuantityId, QuantitySink, Subject } from '../straps/quantity'
import { addOffCentre } from '../straps/referenceQuantities'
import type { StrapScene } from '../straps/scene'
import { addShoulderPairQuantities } from '../straps/shoulderQuantities'
import { solvePlace } from '../straps/solve'
import { mirroredStrap, strapFamily, type StrapId } from '../straps/strap'
import { addOwnQuantities, preparedPlace, type PreparedPlace, strapAt } from '../straps/strapAt'
import { addSubPairQuantities } from '../straps/subQuantities'
import { strapTubeGap, tubePieces } from '../straps/tubePieces'
import { partnerPoint, sceneOf, type Trial } from './move'
import { solvedValue } from './subject'
import type { ZoneCase, ZoneScene } from './zone'

/** Takes one number alone. */
class OneNumber implements QuantitySink {
  value: number | null = null
  private readonly id: QuantityId
  private readonly subject: Subject

  constructor(id: QuantityId, subject: Subject) {
    this.id = id
    this.subject = subject
  }

  wants(id: QuantityId): boolean {
    return id === this.id
  }

  put(id: QuantityId, subject: Subject, value: number): void {
    if (id === this.id && subject === this.subject) this.value ??= value
  }
}

type Tried = ReturnType<typeof strapAt>

/** Sittings made ready once. The scene is the key and is never changed. */
const PREPARED = new WeakMap<StrapScene, PreparedPlace>()

const preparedOf = (scene: StrapScene): PreparedPlace => {
  const known = PREPARED.get(scene)
  if (known !== undefined) return known
  const fresh = preparedPlace(scene)
  PREPARED.set(scene, fresh)
  return fresh
}

/** The same sitting with tubes elsewhere: what the straps run over but the tubes is the same. */
const withTubes = (prepared: PreparedPlace, tubes: readonly Tube[]): PreparedPlace => {
  if (prepared.scene.tubes === tubes) return prepared
  const scene = { ...prepared.scene, tubes }
  const { place } = prepared
  const frame = { ...place.frame, scene }
  return { ...prepared, scene, place: { ...place, frame }, tubes: tubePieces(tubes) }
}

/** Whether a tube is in the way of a strap: then nothing else is said about it. */
const isThrough = ({ tubes }: PreparedPlace, tried: Tried): boolean =>
  tried?.ok === true && (strapTubeGap(tubes, tried.value)?.gapMm ?? 0) < 0

type Pair = 'shoulder-pair' | 'lap-pair' | 'sub-pair'

const addPair = (
  sink: QuantitySink,
  scene: StrapScene,
  subject: Pair,
  [left, right]: readonly Tried[],
): void => {
  if (subject === 'lap-pair') addLapPairQuantities(sink, scene)
  else if (subject === 'sub-pair') addSubPairQuantities(sink, scene)
  else {
    addMirror(sink, scene, 'shoulder')
    if (left?.ok === true && right?.ok === true)
      addShoulderPairQuantities(sink, scene, left.value, right.value)
  }
}

/** What of a lap strap is measured up to the buckle, which moves with the other lap strap. */
const TO_THE_BUCKLE: ReadonlySet<QuantityId> = new Set<QuantityId>(['adjuster-clearance', 'strap-length'])

/** Whether the straps of a subject can be asked by themselves: where lap straps move the buckle does, and with it what hangs on it. */
const isByItself = (
  { anchors }: StrapScene,
  { points }: Trial,
  quantity: QuantityId,
  subject: Subject,
): boolean => {
  if (subject === 'head' || subject === 'body') return false
  if (subject.startsWith('lap')) return !TO_THE_BUCKLE.has(quantity)
  return anchors.every(
    ({ strap, mount }, index) => strapFamily(strap) !== 'lap' || points[index] === mount.point,
  )
}

const pointOf = ({ anchors }: StrapScene, { points }: Trial, strap: StrapId): PointMm | null =>
  points[anchors.findIndex((anchor) => anchor.strap === strap)] ?? null

const pairAfter = (scene: StrapScene, trial: Trial, sink: OneNumber, subject: Pair): number | null => {
  const prepared = withTubes(preparedOf(scene), trial.tubes)
  const tried = strapsOfPair(subject).map((strap) => {
    const point = pointOf(scene, trial, strap)
    return point && strapAt(prepared, strap, point)
  })
  if (!tried.some((each) => isThrough(prepared, each))) addPair(sink, sceneOf(scene, trial), subject, tried)
  return sink.value
}

const strapAfter = (scene: StrapScene, trial: Trial, sink: OneNumber, strap: StrapId): number | null => {
  const prepared = withTubes(preparedOf(scene), trial.tubes)
  const point = pointOf(scene, trial, strap)
  const tried = point && strapAt(prepared, strap, point)
  const gapMm = tried?.ok === true ? (strapTubeGap(prepared.tubes, tried.value)?.gapMm ?? null) : null
  if (sink.wants('tube-clearance')) return gapMm
  if (gapMm !== null && gapMm < 0) return null
  if (point !== null && (strap === 'lap-left' || strap === 'lap-right'))
    addOffCentre(sink, scene, strap, point)
  if (tried?.ok === true) addOwnQuantities(sink, prepared, tried.value)
  return sink.value
}

/**
 * The value of a subject's quantity in a sitting after a move, as solving the whole place anew would give it; null where it has
 * none. Only the straps concerned are solved wherever that is the same.
 */
export const valueAfter = (
  { scene }: Pick<ZoneScene, 'scene'>,
  trial: Trial,
  quantity: QuantityId,
  subject: Subject,
): number | null => {
  if (subject === 'head' || subject === 'body' || !isByItself(scene, trial, quantity, subject))
    return solvedValue(solvePlace(sceneOf(scene, trial)), quantity, subject)
  const sink = new OneNumber(quantity, subject)
  switch (subject) {
    case 'shoulder-pair':
    case 'lap-pair':
    case 'sub-pair':
      return pairAfter(scene, trial, sink, subject)
    case 'shoulder-left':
    case 'shoulder-right':
    case 'lap-left':
    case 'lap-right':
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return strapAfter(scene, trial, sink, subject)
  }
}

/** Everything as drawn but the anchor of a case, and with it the other side of a pair that moves as one, at a place of a drawn plane. */
export const trialWithAnchorAt = (zoneCase: ZoneCase, at: PlanePointMm, elevation: Elevation): Trial => {
  const { scenes, anchor } = zoneCase
  const scene = scenes[0]?.scene
  const point = movedInPlane(anchor.mount.point, at, elevation)
  const other = scene ? partnerPoint(scene, zoneCase, point) : null
  const partner = mirroredStrap(anchor.strap)
  return {
    tubes: scene?.tubes ?? [],
    points: (scene?.anchors ?? []).map(({ id, strap, mount }) => {
      if (id === anchor.id) return point
      return (strap === partner ? other : null) ?? mount.point
    }),
  }
}

/** One rule that has to be kept in some sittings. */
export interface Wanted {
  readonly rule: QuantityRule
  readonly subject: Subject
  readonly scenes: readonly ZoneScene[]
}

/**
 * Whether some rules are kept in a trial, each in all its sittings. What said no last is asked first: nearby it is likely to say no
 * again.
 */
export const keeperOf = (wanted: readonly Wanted[]): ((trial: Trial) => boolean) => {
  const order = wanted.flatMap(({ rule, subject, scenes }) =>
    scenes.map((zoneScene) => ({ rule, subject, zoneScene })),
  )
  return (trial) => {
    for (const [index, one] of order.entries()) {
      const { rule, subject, zoneScene } = one
      const value = valueAfter(zoneScene, trial, rule.quantity, subject)
      if (value !== null && isWithin(value, rule)) continue
      order.splice(index, 1)
      order.unshift(one)
      return false
    }
    return true
  }
}
