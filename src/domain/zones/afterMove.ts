import { isWithin } from '../rules/check'
import type { QuantityRule } from '../rules/rule'
import { strapsOfPair } from '../rules/subjects'
import { addLapPairQuantities } from '../straps/lapQuantities'
import { anchorOf } from '../straps/mount'
import type { QuantityId, QuantitySink, Subject } from '../straps/quantity'
import { addOffCentre } from '../straps/referenceQuantities'
import type { StrapScene } from '../straps/scene'
import { addShoulderPairQuantities } from '../straps/shoulderQuantities'
import { solvePlace } from '../straps/solve'
import { STRAP_IDS, strapFamily, type StrapId } from '../straps/strap'
import { addOwnQuantities, preparedPlace, type PreparedPlace, strapAt } from '../straps/strapAt'
import { addSubPairQuantities } from '../straps/subQuantities'
import { strapTubeGap, tubePieces } from '../straps/tubePieces'
import type { MovedParts } from './move'
import { solvedValue } from './subject'
import type { ZoneScene } from './zone'

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
const withTubes = (prepared: PreparedPlace, scene: StrapScene): PreparedPlace =>
  prepared.scene.tubes === scene.tubes
    ? { ...prepared, scene }
    : {
        ...prepared,
        scene,
        place: { ...prepared.place, frame: { ...prepared.place.frame, scene } },
        tubes: tubePieces(scene.tubes),
      }

/** Whether a tube is in the way of a strap: then nothing else is said about it. */
const isThrough = ({ tubes }: PreparedPlace, tried: Tried): boolean =>
  tried?.ok === true && (strapTubeGap(tubes, tried.value)?.gapMm ?? 0) < 0

const addPair = (
  sink: QuantitySink,
  { scene }: PreparedPlace,
  subject: Subject,
  [left, right]: readonly Tried[],
): void => {
  if (subject === 'lap-pair') addLapPairQuantities(sink, scene)
  else if (subject === 'sub-pair') addSubPairQuantities(sink, scene)
  else if (left?.ok === true && right?.ok === true)
    addShoulderPairQuantities(sink, scene, left.value, right.value)
}

/** Whether the straps of a subject can be asked by themselves: where lap straps move the buckle does, and with it what hangs on it. */
const isByItself = (
  scene: StrapScene,
  moved: MovedParts,
  quantity: QuantityId,
  subject: Subject,
): boolean => {
  if (subject === 'head') return false
  if (subject.startsWith('lap')) return quantity !== 'adjuster-clearance'
  return moved.anchors.every(
    (anchor, index) => strapFamily(anchor.strap) !== 'lap' || anchor === scene.anchors[index],
  )
}

const ownStraps = (subject: Subject): readonly StrapId[] => {
  const own = STRAP_IDS.find((strap) => strap === subject)
  return own === undefined ? strapsOfPair(subject) : [own]
}

/**
 * The value of a subject's quantity in a sitting after a move, as solving the whole place anew would give it; null where it has
 * none. Only the straps concerned are solved wherever that is the same.
 */
export const valueAfter = (
  { scene: drawn }: Pick<ZoneScene, 'scene'>,
  moved: MovedParts,
  quantity: QuantityId,
  subject: Subject,
): number | null => {
  const scene: StrapScene = { ...drawn, ...moved }
  if (!isByItself(drawn, moved, quantity, subject)) return solvedValue(solvePlace(scene), quantity, subject)
  const prepared = withTubes(preparedOf(drawn), scene)
  const straps = ownStraps(subject)
  const tried = straps.map((strap) => {
    const anchor = anchorOf(scene.anchors, strap)
    return anchor && strapAt(prepared, strap, anchor.mount.point)
  })
  const [first] = tried
  if (quantity === 'tube-clearance')
    return first?.ok === true ? (strapTubeGap(prepared.tubes, first.value)?.gapMm ?? null) : null
  if (tried.some((each) => isThrough(prepared, each))) return null
  const sink = new OneNumber(quantity, subject)
  if (straps.length > 1) addPair(sink, prepared, subject, tried)
  else if (quantity === 'lap-off-centre') {
    const point = anchorOf(scene.anchors, straps[0] ?? 'lap-left')?.mount.point
    if (point !== undefined && (subject === 'lap-left' || subject === 'lap-right'))
      addOffCentre(sink, scene, subject, point)
  } else if (first?.ok === true) addOwnQuantities(sink, prepared, first.value)
  return sink.value
}

/** One rule that has to be kept in some sittings. */
export interface Wanted {
  readonly rule: QuantityRule
  readonly subject: Subject
  readonly scenes: readonly ZoneScene[]
}

/**
 * Whether some rules are kept after a move, each in all its sittings. What said no last is asked first: nearby it is likely to say no
 * again.
 */
export const keeperOf = (wanted: readonly Wanted[]): ((moved: MovedParts) => boolean) => {
  const order = wanted.flatMap(({ rule, subject, scenes }) =>
    scenes.map((zoneScene) => ({ rule, subject, zoneScene })),
  )
  return (moved) => {
    for (const [index, one] of order.entries()) {
      const { rule, subject, zoneScene } = one
      const value = valueAfter(zoneScene, moved, rule.quantity, subject)
      if (value !== null && isWithin(value, rule)) continue
      order.splice(index, 1)
      order.unshift(one)
      return false
    }
    return true
  }
}
