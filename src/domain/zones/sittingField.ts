import { movedInPlane, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { addLapPairQuantities } from '../straps/lapQuantities'
import type { PathProblem } from '../straps/path'
import { QUANTITY_IDS, type QuantityValue } from '../straps/quantity'
import type { StrapScene } from '../straps/scene'
import { addShoulderPairQuantities } from '../straps/shoulderQuantities'
import { mirroredStrap, strapFamily } from '../straps/strap'
import { addOffCentre } from '../straps/referenceQuantities'
import { addOwnQuantities, preparedPlace, type PreparedPlace, strapAt } from '../straps/strapAt'
import { addSubPairQuantities } from '../straps/subQuantities'
import { strapTubeGap } from '../straps/tubePieces'
import type { Numbers } from './lattice'
import { numberIndex, PATH_INDEX, TUBE_INDEX } from './limit'
import { anchorAt, mirroredPoint } from './move'
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

const numbersOf = (values: readonly QuantityValue[], pathMm: number): Numbers => {
  const numbers = new Float64Array(QUANTITY_IDS.length + 1).fill(NaN)
  for (const { id, value } of values) numbers[numberIndex(id)] = value
  numbers[PATH_INDEX] = pathMm
  return numbers
}

type Tried = ReturnType<typeof strapAt>

/** The number of the path: Infinity, also where a tube is in the way, or how far the place is from giving one, mm < 0. */
const pathMm = (tried: Tried): number =>
  tried?.ok === true ? Infinity : -Math.max(tried === null ? 0 : amissMm(tried.error), LEAST_AMISS_MM)

/** How far the tubes are, mm, negative where one is in the way; NaN where none is to be measured. */
const tubeMm = ({ tubes }: PreparedPlace, tried: Tried): number =>
  tried?.ok === true ? (strapTubeGap(tubes, tried.value)?.gapMm ?? NaN) : NaN

/** The numbers of the anchor's pair with the anchor at `point`; the other anchor as drawn or, of a mirrored pair, opposite. */
const pairNumbersAt = (prepared: PreparedPlace, { anchor, mirrored }: ZoneCase, point: PointMm): Numbers => {
  const { scene } = prepared
  const { strap } = anchor
  const values: QuantityValue[] = []
  const partner = scene.anchors.find((other) => other.strap === mirroredStrap(strap))
  if (partner === undefined) return numbersOf(values, -LEAST_AMISS_MM)
  const opposite = mirrored ? mirroredPoint(point, scene.body.hip.yMm) : partner.mount.point
  const moved = { ...scene, anchors: [anchorAt(anchor, point), anchorAt(partner, opposite)] }
  const own = strapAt(prepared, strap, point)
  const other = strapAt(prepared, partner.strap, opposite)
  switch (strapFamily(strap)) {
    case 'shoulder': {
      const [left, right] = strap === 'shoulder-left' ? [own, other] : [other, own]
      if (left?.ok && right?.ok) addShoulderPairQuantities(values, scene, left.value, right.value)
      break
    }
    case 'lap':
      addLapPairQuantities(values, moved)
      break
    case 'sub':
      addSubPairQuantities(values, moved)
      break
  }
  const gaps = [own, other].map((tried) => tubeMm(prepared, tried)).filter((mm) => !Number.isNaN(mm))
  const numbers = numbersOf(values, Math.min(pathMm(own), pathMm(other)))
  if (gaps.length > 0) numbers[TUBE_INDEX] = Math.min(...gaps)
  return numbers
}

/** What a sitting answers about a place of the drawn plane for the anchor. */
export interface SittingField {
  /** Of the anchor's own strap, whatever tube is in its way. */
  readonly strapAt: (at: PlanePointMm) => Numbers
  /** How far the tubes are from it. */
  readonly tubeAt: (at: PlanePointMm) => Numbers
  /** Of its pair, and the tubes nearest to the two. */
  readonly pairAt: (at: PlanePointMm) => Numbers
  /** The number of its path alone, which is had faster. */
  readonly pathMmAt: (at: PlanePointMm) => number
}

export const fieldOf = ({ scene }: ZoneScene, zoneCase: ZoneCase, elevation: Elevation): SittingField => {
  const { strap, mount } = zoneCase.anchor
  const prepared = preparedOf(scene)
  const pointAt = (at: PlanePointMm): PointMm => movedInPlane(mount.point, at, elevation)
  return {
    strapAt: (at) => {
      const values: QuantityValue[] = []
      const point = pointAt(at)
      const tried = strapAt(prepared, strap, point)
      if (strap === 'lap-left' || strap === 'lap-right') addOffCentre(values, scene, strap, point)
      if (tried?.ok === true) addOwnQuantities(values, prepared, tried.value)
      return numbersOf(values, pathMm(tried))
    },
    tubeAt: (at) => {
      const tried = strapAt(prepared, strap, pointAt(at))
      const numbers = numbersOf([], pathMm(tried))
      numbers[TUBE_INDEX] = tubeMm(prepared, tried)
      return numbers
    },
    pairAt: (at) => pairNumbersAt(prepared, zoneCase, pointAt(at)),
    pathMmAt: (at) => pathMm(strapAt(prepared, strap, pointAt(at))),
  }
}
