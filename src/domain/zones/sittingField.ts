import { movedInPlane, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { addLapPairQuantities } from '../straps/lapQuantities'
import { addMirror } from '../straps/mirrorQuantities'
import { pathLackMm, pathRoomMm } from '../straps/pathRoom'
import { frameOf } from '../straps/placeStraps'
import { type QuantityId, type QuantitySink, type Subject } from '../straps/quantity'
import type { StrapScene } from '../straps/scene'
import { addShoulderPairQuantities } from '../straps/shoulderQuantities'
import { mirroredStrap, type StrapFamily, strapFamily, type StrapId } from '../straps/strap'
import { addOffCentre } from '../straps/referenceQuantities'
import { addOwnQuantities, preparedPlace, type PreparedPlace, strapAt } from '../straps/strapAt'
import { addSubPairQuantities } from '../straps/subQuantities'
import { type StraightRun, straightRunOf, tubeRoom } from '../straps/tubePieces'
import {
  CLEAR_INDEX,
  type Limit,
  marginOf,
  type Numbers,
  numberCount,
  numberIndex,
  PATH_INDEX,
  STRAP_PATH,
  TUBE_INDEX,
} from './limit'
import { anchorAt, partnerPoint } from './move'
import { isNotOfPosition } from './rulePlane'
import type { ZoneCase, ZoneScene } from './zone'

/** Stands in where a strap without a path is no measurable distance from having one. */
const LEAST_AMISS_MM = 1e-9

/** Sittings made ready once for all anchors of the place. The scene is the key and is never changed. */
const PREPARED = new WeakMap<StrapScene, PreparedPlace>()

const preparedOf = (scene: StrapScene): PreparedPlace => {
  const known = PREPARED.get(scene)
  if (known !== undefined) return known
  const prepared = preparedPlace(scene)
  PREPARED.set(scene, prepared)
  return prepared
}

const NONE: Readonly<Record<StrapFamily, Numbers>> = {
  shoulder: Array.from({ length: numberCount('shoulder') }, () => NaN),
  lap: Array.from({ length: numberCount('lap') }, () => NaN),
  sub: Array.from({ length: numberCount('sub') }, () => NaN),
}

/** A plain list, not a typed array: those keep their numbers outside the heap, which costs more than the strap. */
const freshNumbers = (strap: StrapId): Numbers => NONE[strapFamily(strap)].slice()

/** Writes numbers where they stand among those of a place: all that a place can decide, or one alone. */
class NumberSink implements QuantitySink {
  private numbers: Numbers = []
  private only: number | null = null

  /** From now on into these. */
  into(numbers: Numbers, only: number | null): this {
    this.numbers = numbers
    this.only = only
    return this
  }

  wants(id: QuantityId): boolean {
    return this.only === null ? !isNotOfPosition(id) : numberIndex(id) === this.only
  }

  put(id: QuantityId, _subject: Subject, value: number): void {
    const index = numberIndex(id)
    if (index !== null) this.numbers[index] = value
  }
}

type Tried = ReturnType<typeof strapAt>

/** A strap tried with its mount at a place. */
interface Trial {
  readonly strap: StrapId
  readonly point: PointMm
  readonly tried: Tried
}

const trialAt = (prepared: PreparedPlace, strap: StrapId, point: PointMm): Trial => ({
  strap,
  point,
  tried: strapAt(prepared, strap, point),
})

/** The number of the path, also where a tube is in the way: how far the place is from having none or, < 0, from having one, mm. */
const pathMm = ({ scene, place }: PreparedPlace, { strap, point, tried }: Trial): number => {
  const framed = frameOf(place.frame, strap)
  if (tried === null || framed === null) return -LEAST_AMISS_MM
  const { portal, anchor } = framed
  return tried.ok
    ? pathRoomMm(scene, portal, tried.value)
    : -Math.max(pathLackMm(portal, anchor, point, tried.error), LEAST_AMISS_MM)
}

/** Writes how far the tubes are from the straight pieces of some straps that have a path. */
const writeTubes = (tubes: PreparedPlace['tubes'], runs: readonly StraightRun[], numbers: Numbers): void => {
  let nearestMm = Infinity
  let clearMm = Infinity
  for (const run of runs) {
    const { othersMm, ownMm } = tubeRoom(tubes, run)
    nearestMm = Math.min(nearestMm, othersMm)
    clearMm = Math.min(clearMm, othersMm, ownMm)
  }
  numbers[TUBE_INDEX] = nearestMm
  numbers[CLEAR_INDEX] = clearMm
}

/** One sitting asked about the anchor. */
interface Question {
  readonly prepared: PreparedPlace
  readonly zoneCase: ZoneCase
  readonly sink: NumberSink
}

/** Writes the numbers of the anchor's own strap, but not of the tubes about it; answers its straight pieces where it has a path. */
const writeStrap = (
  { prepared, zoneCase, sink }: Question,
  numbers: Numbers,
  point: PointMm,
): StraightRun | null => {
  const { strap } = zoneCase.anchor
  const trial = trialAt(prepared, strap, point)
  const { tried } = trial
  numbers[PATH_INDEX] = pathMm(prepared, trial)
  if (strap === 'lap-left' || strap === 'lap-right') addOffCentre(sink, prepared.scene, strap, point)
  if (tried?.ok !== true) return null
  addOwnQuantities(sink, prepared, tried.value)
  return straightRunOf(tried.value)
}

/** Writes the numbers of the anchor's pair and of the tubes about it, with the anchor at `point`; the other anchor as drawn, opposite in a mirrored pair, or at the same point where they are one. */
const writePair = ({ prepared, zoneCase, sink }: Question, numbers: Numbers, point: PointMm): void => {
  const { scene } = prepared
  const { anchor } = zoneCase
  const { strap } = anchor
  numbers[PATH_INDEX] = -LEAST_AMISS_MM
  const partner = scene.anchors.find((other) => other.strap === mirroredStrap(strap))
  if (partner === undefined) return
  const opposite = partnerPoint(scene, zoneCase, point) ?? partner.mount.point
  const moved = { ...scene, anchors: [anchorAt(anchor, point), anchorAt(partner, opposite)] }
  const ownTrial = trialAt(prepared, strap, point)
  const otherTrial = trialAt(prepared, partner.strap, opposite)
  const [own, other] = [ownTrial.tried, otherTrial.tried]
  switch (strapFamily(strap)) {
    case 'shoulder': {
      addMirror(sink, moved, 'shoulder')
      const [left, right] = strap === 'shoulder-left' ? [own, other] : [other, own]
      if (left?.ok && right?.ok) addShoulderPairQuantities(sink, scene, left.value, right.value)
      break
    }
    case 'lap':
      addLapPairQuantities(sink, moved)
      break
    case 'sub':
      addSubPairQuantities(sink, moved)
      break
  }
  numbers[PATH_INDEX] = Math.min(pathMm(prepared, ownTrial), pathMm(prepared, otherTrial))
  if (own?.ok && other?.ok)
    writeTubes(prepared.tubes, [straightRunOf(own.value), straightRunOf(other.value)], numbers)
}

/** What a sitting answers about a place of the drawn plane for the anchor. */
export interface Answer {
  readonly numbers: Numbers
  /** The straight pieces of the anchor's own strap; null where it has no path, and where the pair was asked about. */
  readonly run: StraightRun | null
}

/** How a sitting is asked about places of the drawn plane for the anchor. */
export interface SittingField {
  /** All numbers of its own strap, but not of the tubes about it; or of its pair, with those. Whatever tube is in the way. */
  readonly answerAt: (of: Limit['of'], at: PlanePointMm) => Answer
  /** Adds the numbers of the tubes to an answer for its own strap. */
  readonly addTubes: (answer: Answer) => void
  /** How far one limit is kept, which is had faster. */
  readonly marginAt: (limit: Limit, at: PlanePointMm) => number
  /** The tubes of the car. */
  readonly tubes: PreparedPlace['tubes']
}

export const fieldOf = ({ scene }: ZoneScene, zoneCase: ZoneCase, elevation: Elevation): SittingField => {
  const { strap, mount } = zoneCase.anchor
  const prepared = preparedOf(scene)
  const question: Question = { prepared, zoneCase, sink: new NumberSink() }
  const pointAt = (at: PlanePointMm): PointMm => movedInPlane(mount.point, at, elevation)
  /** One for all places at which a single number is asked for. */
  const single = freshNumbers(strap)
  const addTubes = ({ numbers, run }: Answer): void => {
    if (run !== null) writeTubes(prepared.tubes, [run], numbers)
  }
  return {
    tubes: prepared.tubes,
    addTubes,
    answerAt: (of, at) => {
      const numbers = freshNumbers(strap)
      question.sink.into(numbers, null)
      if (of === 'strap') return { numbers, run: writeStrap(question, numbers, pointAt(at)) }
      writePair(question, numbers, pointAt(at))
      return { numbers, run: null }
    },
    marginAt: (limit, at) => {
      if (limit === STRAP_PATH) return pathMm(prepared, trialAt(prepared, strap, pointAt(at)))
      single[limit.index] = NaN
      single[PATH_INDEX] = NaN
      question.sink.into(single, limit.index)
      if (limit.of === 'pair') writePair(question, single, pointAt(at))
      else {
        const run = writeStrap(question, single, pointAt(at))
        if (limit.what === 'tubes') addTubes({ numbers: single, run })
      }
      return marginOf(limit, single)
    },
  }
}
