import { movedInPlane, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { addLapPairQuantities } from '../straps/lapQuantities'
import type { PathProblem } from '../straps/path'
import { QUANTITY_IDS, type QuantityId, type QuantitySink, type Subject } from '../straps/quantity'
import type { StrapScene } from '../straps/scene'
import { addShoulderPairQuantities } from '../straps/shoulderQuantities'
import { mirroredStrap, strapFamily } from '../straps/strap'
import { addOffCentre } from '../straps/referenceQuantities'
import { addOwnQuantities, preparedPlace, type PreparedPlace, strapAt } from '../straps/strapAt'
import { addSubPairQuantities } from '../straps/subQuantities'
import { strapTubeGap } from '../straps/tubePieces'
import type { Numbers } from './lattice'
import { type Limit, marginOf, numberIndex, PATH_INDEX, STRAP_PATH, TUBE_INDEX } from './limit'
import { anchorAt, mirroredPoint } from './move'
import { isNotOfPosition } from './rulePlane'
import type { ZoneCase, ZoneScene } from './zone'

/** How far a place is from giving the strap a path, mm > 0; 0 where that has no measure. */
const amissMm = (problem: PathProblem): number => {
  switch (problem.kind) {
    case 'anchor-inside-body':
    case 'slot-blocked':
    case 'through-tube':
      return problem.insideMm
    case 'anchor-ahead-of-shoulder':
    case 'lap-anchor-not-behind':
    case 'sub-anchor-not-behind':
      return problem.aheadMm
    case 'clear-of-shoulder':
      return problem.clearMm
    case 'sub-anchor-not-below':
      return problem.aboveMm
    case 'slot-not-reached':
      return problem.shortMm
    case 'lap-anchor-across':
      return problem.acrossMm
    case 'junction-apart':
      return problem.apartMm
    case 'tail-too-long':
      return problem.overMm
    case 'no-slot':
    case 'anchor-missing':
    case 'buckle-unknown':
      return 0
  }
}

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

const NONE: Numbers = Array.from({ length: QUANTITY_IDS.length + 1 }, () => NaN)

/** A plain list, not a typed array: those keep their numbers outside the heap, which costs more than the strap. */
const freshNumbers = (): Numbers => NONE.slice()

/** Writes numbers where they stand among those of a place: all that a place can decide, or one alone. */
class NumberSink implements QuantitySink {
  private numbers: Numbers = freshNumbers()
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
    this.numbers[numberIndex(id)] = value
  }
}

type Tried = ReturnType<typeof strapAt>

/** The number of the path: Infinity, also where a tube is in the way, or how far the place is from giving one, mm < 0. */
const pathMm = (tried: Tried): number =>
  tried?.ok === true ? Infinity : -Math.max(tried === null ? 0 : amissMm(tried.error), LEAST_AMISS_MM)

/** How far the tubes are, mm, negative where one is in the way; NaN where none is to be measured. */
const tubeMm = ({ tubes }: PreparedPlace, tried: Tried): number =>
  tried?.ok === true ? (strapTubeGap(tubes, tried.value)?.gapMm ?? NaN) : NaN

/** One sitting asked about the anchor. */
interface Question {
  readonly prepared: PreparedPlace
  readonly zoneCase: ZoneCase
  readonly sink: NumberSink
}

/** Writes the numbers of the anchor's own strap, whatever tube is in its way. */
const writeStrap = ({ prepared, zoneCase, sink }: Question, numbers: Numbers, point: PointMm): void => {
  const { strap } = zoneCase.anchor
  const tried = strapAt(prepared, strap, point)
  if (strap === 'lap-left' || strap === 'lap-right') addOffCentre(sink, prepared.scene, strap, point)
  if (tried?.ok === true) addOwnQuantities(sink, prepared, tried.value)
  numbers[PATH_INDEX] = pathMm(tried)
}

const writeTube = ({ prepared, zoneCase }: Question, numbers: Numbers, point: PointMm): void => {
  const tried = strapAt(prepared, zoneCase.anchor.strap, point)
  numbers[PATH_INDEX] = pathMm(tried)
  numbers[TUBE_INDEX] = tubeMm(prepared, tried)
}

/** The numbers of the anchor's pair with the anchor at `point`; the other anchor as drawn or, of a mirrored pair, opposite. */
const writePair = (
  { prepared, zoneCase: { anchor, mirrored }, sink }: Question,
  numbers: Numbers,
  point: PointMm,
): void => {
  const { scene } = prepared
  const { strap } = anchor
  numbers[PATH_INDEX] = -LEAST_AMISS_MM
  const partner = scene.anchors.find((other) => other.strap === mirroredStrap(strap))
  if (partner === undefined) return
  const opposite = mirrored ? mirroredPoint(point, scene.body.hip.yMm) : partner.mount.point
  const moved = { ...scene, anchors: [anchorAt(anchor, point), anchorAt(partner, opposite)] }
  const own = strapAt(prepared, strap, point)
  const other = strapAt(prepared, partner.strap, opposite)
  switch (strapFamily(strap)) {
    case 'shoulder': {
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
  numbers[PATH_INDEX] = Math.min(pathMm(own), pathMm(other))
  const gaps = [own, other].map((tried) => tubeMm(prepared, tried)).filter((mm) => !Number.isNaN(mm))
  if (gaps.length > 0) numbers[TUBE_INDEX] = Math.min(...gaps)
}

const write = (question: Question, of: Limit['of'], numbers: Numbers, point: PointMm): void => {
  switch (of) {
    case 'strap':
      return writeStrap(question, numbers, point)
    case 'tube':
      return writeTube(question, numbers, point)
    case 'pair':
      return writePair(question, numbers, point)
  }
}

/** What a sitting answers about a place of the drawn plane for the anchor. */
export interface SittingField {
  /** All numbers of its own strap, whatever tube is in its way, of the tubes about it, or of its pair and their tubes. */
  readonly numbersAt: (of: Limit['of'], at: PlanePointMm) => Numbers
  /** How far one limit is kept, which is had faster. */
  readonly marginAt: (limit: Limit, at: PlanePointMm) => number
}

export const fieldOf = ({ scene }: ZoneScene, zoneCase: ZoneCase, elevation: Elevation): SittingField => {
  const { strap, mount } = zoneCase.anchor
  const prepared = preparedOf(scene)
  const question: Question = { prepared, zoneCase, sink: new NumberSink() }
  const pointAt = (at: PlanePointMm): PointMm => movedInPlane(mount.point, at, elevation)
  /** One for all places at which a single number is asked for. */
  const single = freshNumbers()
  return {
    numbersAt: (of, at) => {
      const numbers = freshNumbers()
      question.sink.into(numbers, null)
      write(question, of, numbers, pointAt(at))
      return numbers
    },
    marginAt: (limit, at) => {
      if (limit === STRAP_PATH) return pathMm(strapAt(prepared, strap, pointAt(at)))
      single[limit.index] = NaN
      single[PATH_INDEX] = NaN
      question.sink.into(single, limit.index)
      write(question, limit.of, single, pointAt(at))
      return marginOf(limit, single)
    },
  }
}
