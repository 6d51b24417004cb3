import type { PointMm } from '../geometry/point'
import { addAnchorQuantities } from './anchorQuantities'
import { bodyTubeGap } from './bodyClearance'
import { addLapPairQuantities, addLapQuantities } from './lapQuantities'
import { addMirror } from './mirrorQuantities'
import type { PathProblem, StrapPath } from './path'
import { placeStraps, type PlaceStraps } from './placeStraps'
import { QuantityList, type QuantitySink, type QuantityValue } from './quantity'
import { addLapOffCentre, addShoulderReferences } from './referenceQuantities'
import type { StrapScene } from './scene'
import { addShoulderPairQuantities, addShoulderQuantities } from './shoulderQuantities'
import { strapFamily, type StrapFamily, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'
import { addSubPairQuantities, addSubQuantities, chestLineDeg } from './subQuantities'
import { ballTubeGapMm, strapTubeGap, tubePieces, type TubePiece } from './tubePieces'

/** All straps of one place in one sitting. */
export interface SolvedPlace {
  /** Where the straps meet, between the front contacts of the lap straps; null while no lap strap has a path. */
  readonly buckle: PointMm | null
  /** In the order of `strapsOf`; a strap without a path is missing here and has a problem instead. */
  readonly paths: readonly StrapPath[]
  readonly problems: readonly PathProblem[]
  /** Every value is finite; what could not be computed is missing. */
  readonly quantities: readonly QuantityValue[]
}

/** Straps that would pass through a tube: nothing else is said about them, a taut strap would not lie like that. */
const addTubeGaps = (
  sink: QuantitySink,
  problems: PathProblem[],
  pieces: readonly TubePiece[],
  straps: readonly SolvedStrap[],
): readonly StrapId[] => {
  const through: StrapId[] = []
  for (const strap of straps) {
    const gap = strapTubeGap(pieces, strap)
    if (gap === null) continue
    const subject = strap.anchor.strap
    sink.put('tube-clearance', subject, gap.gapMm)
    if (gap.gapMm >= 0) continue
    through.push(subject)
    problems.push({ kind: 'through-tube', strap: subject, tubeId: gap.tubeId, insideMm: -gap.gapMm })
  }
  return through
}

const ofStrap = (straps: readonly SolvedStrap[], strap: StrapId): SolvedStrap | null => {
  for (const each of straps) if (each.anchor.strap === strap) return each
  return null
}

/** The straps of a place that no tube is in the way of. */
interface ClearStraps {
  readonly straps: readonly SolvedStrap[]
  readonly through: readonly StrapId[]
}

const isClear = ({ through }: ClearStraps, strap: StrapId): boolean => !through.includes(strap)

const isOf = (strap: SolvedStrap, family: StrapFamily): boolean => strapFamily(strap.anchor.strap) === family

const addShoulders = (sink: QuantitySink, scene: StrapScene, clear: ClearStraps): void => {
  for (const strap of clear.straps) if (isOf(strap, 'shoulder')) addShoulderQuantities(sink, scene, strap)
  for (const strap of clear.straps) if (isOf(strap, 'shoulder')) addShoulderReferences(sink, scene, strap)
  const left = ofStrap(clear.straps, 'shoulder-left')
  const right = ofStrap(clear.straps, 'shoulder-right')
  if (left !== null && right !== null) addShoulderPairQuantities(sink, scene, left, right)
  if (isClear(clear, 'shoulder-left') && isClear(clear, 'shoulder-right')) addMirror(sink, scene, 'shoulder')
}

const addLaps = (sink: QuantitySink, scene: StrapScene, clear: ClearStraps): void => {
  for (const strap of clear.straps) if (isOf(strap, 'lap')) addLapQuantities(sink, scene, strap)
  const isLeft = isClear(clear, 'lap-left')
  const isRight = isClear(clear, 'lap-right')
  if (isLeft && isRight) addLapPairQuantities(sink, scene)
  if (isLeft) addLapOffCentre(sink, scene, 'lap-left')
  if (isRight) addLapOffCentre(sink, scene, 'lap-right')
}

/** Adds the quantities of the straps and pairs that no tube is in the way of. */
const addQuantities = (
  sink: QuantitySink,
  { frame, middle, straps }: PlaceStraps,
  through: readonly StrapId[],
): void => {
  const { scene } = frame
  const clear: ClearStraps = {
    straps: through.length === 0 ? straps : straps.filter(({ anchor }) => !through.includes(anchor.strap)),
    through,
  }
  addShoulders(sink, scene, clear)
  addLaps(sink, scene, clear)
  const chestDeg = middle.buckle && chestLineDeg(scene, middle.buckle)
  for (const strap of clear.straps) if (isOf(strap, 'sub')) addSubQuantities(sink, strap, chestDeg)
  if (isClear(clear, 'sub-left') && isClear(clear, 'sub-right')) addSubPairQuantities(sink, scene)
  for (const strap of clear.straps) addAnchorQuantities(sink, scene, strap)
}

/**
 * Taut paths and quantities of one place in one sitting. Straps of the belt only; an anchor of a strap that the belt does not have
 * is left out. Definitions and formulas: straps/README.md.
 */
export const solvePlace = (scene: StrapScene): SolvedPlace => {
  const place = placeStraps(scene)
  const problems = [...place.problems]
  const sink = new QuantityList()
  const pieces = tubePieces(scene.tubes)
  const gaps = new QuantityList()
  const through = addTubeGaps(gaps, problems, pieces, place.straps)
  addQuantities(sink, place, through)
  const { centre, radiusMm } = scene.body.helmet
  const helmetMm = ballTubeGapMm(pieces, centre, radiusMm)
  if (helmetMm !== null) sink.put('helmet-clearance', 'head', helmetMm)
  const bodyMm = bodyTubeGap(pieces, scene.body, place.straps)?.gapMm
  if (bodyMm !== undefined) sink.put('body-clearance', 'body', bodyMm)
  return {
    buckle: place.middle.buckle,
    paths: place.straps.map(({ path }) => path),
    problems,
    quantities: [...sink.values, ...gaps.values],
  }
}
