import type { PointMm } from '../geometry/point'
import type { Result } from '../result'
import { addAnchorQuantities } from './anchorQuantities'
import { lapStrap } from './lapPath'
import { addLapQuantities } from './lapQuantities'
import type { PathProblem } from './path'
import type { StrapFrame } from './placeFrame'
import {
  buckleOf,
  frameOf,
  joinedStrapsAt,
  lapRunAt,
  otherStrapAt,
  placeStraps,
  type PlaceStraps,
  tailMmOf,
} from './placeStraps'
import { type QuantityId, QuantityList, type QuantitySink, type QuantityValue } from './quantity'
import { addOffCentre, addShoulderReferences } from './referenceQuantities'
import type { StrapScene } from './scene'
import { addShoulderQuantities } from './shoulderQuantities'
import { strapFamily, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'
import { addSubQuantities, chestLineDeg } from './subQuantities'
import { strapTubeGap, tubePieces, type TubePiece } from './tubePieces'

/** One sitting made ready for trying one strap in many places: what does not depend on that strap's mount is kept. */
export interface PreparedPlace {
  readonly scene: StrapScene
  readonly place: PlaceStraps
  readonly tubes: readonly TubePiece[]
  /** Angle of the chest-to-groin line; null without a buckle that can be led to. */
  readonly chestDeg: number | null
}

/** Prepares a sitting; worth it from the second strap tried on. */
export const preparedPlace = (scene: StrapScene): PreparedPlace => {
  const place = placeStraps(scene)
  const { buckle } = place.middle
  return {
    scene,
    place,
    tubes: tubePieces(scene.tubes),
    chestDeg: buckle && chestLineDeg(scene, buckle),
  }
}

/**
 * One strap with its mount at `point` and everything else as prepared: the buckle stays where it is for shoulder and
 * anti-submarine straps and follows for lap straps. Null when the belt does not have the strap or nothing is placed for it.
 */
export const strapAt = (
  { place }: PreparedPlace,
  strap: StrapId,
  point: PointMm,
): Result<SolvedStrap, PathProblem> | null => {
  const { frame, middle } = place
  const framed = frameOf(frame, strap)
  if (framed === null) return null
  switch (strapFamily(strap)) {
    case 'lap':
      return lapAt(place, framed, point)
    case 'shoulder':
      return joinedAt(place, strap, point) ?? otherStrapAt(frame, framed, point, middle)
    case 'sub':
      return otherStrapAt(frame, framed, point, middle)
  }
}

/** Both straps of a joined pair at the place where they were tried last: whoever asks for one soon asks for the other. */
interface LastPair {
  readonly point: PointMm
  readonly straps: readonly Result<SolvedStrap, PathProblem>[]
}

const LAST = new WeakMap<PlaceStraps, LastPair>()

const isSamePoint = (a: PointMm, b: PointMm): boolean => a.xMm === b.xMm && a.yMm === b.yMm && a.zMm === b.zMm

/** A shoulder strap of a joined pair: both are tried at the place. Null for separate straps. */
const joinedAt = (
  place: PlaceStraps,
  strap: StrapId,
  point: PointMm,
): Result<SolvedStrap, PathProblem> | null => {
  const last = LAST.get(place)
  const straps = last !== undefined && isSamePoint(last.point, point) ? last.straps : pairAt(place, point)
  if (straps === null) return null
  if (straps !== last?.straps) LAST.set(place, { point, straps })
  return straps[strap === 'shoulder-left' ? 0 : 1] ?? null
}

const pairAt = (
  { frame, middle }: PlaceStraps,
  point: PointMm,
): readonly Result<SolvedStrap, PathProblem>[] | null => {
  const tailMm = tailMmOf(frame.scene)
  const left = frameOf(frame, 'shoulder-left')
  const right = frameOf(frame, 'shoulder-right')
  if (tailMm === null || left === null || right === null) return null
  return joinedStrapsAt(frame, tailMm, { framed: left, point }, { framed: right, point }, middle)
}

const lapAt = (
  { frame, lapLeft, lapRight }: PlaceStraps,
  framed: StrapFrame,
  point: PointMm,
): Result<SolvedStrap, PathProblem> => {
  const run = lapRunAt(frame, framed, point)
  if (!run.ok) return run
  const isLeft = framed.strap === 'lap-left'
  const buckle = buckleOf(frame.scene, isLeft ? run.value : lapLeft, isLeft ? lapRight : run.value)
  // There is a buckle: this strap has a front contact.
  return { ok: true, value: lapStrap(frame, framed, run.value, buckle ?? run.value.reach.front) }
}

/** Adds the quantities of a strap tried somewhere, whatever tube may be in its way. */
export const addOwnQuantities = (sink: QuantitySink, prepared: PreparedPlace, strap: SolvedStrap): void => {
  const { scene, chestDeg } = prepared
  switch (strapFamily(strap.anchor.strap)) {
    case 'shoulder':
      addShoulderQuantities(sink, scene, strap)
      addShoulderReferences(sink, scene, strap)
      break
    case 'lap':
      addLapQuantities(sink, scene, strap)
      break
    case 'sub':
      addSubQuantities(sink, strap, chestDeg)
      break
  }
  addAnchorQuantities(sink, scene, strap)
}

/**
 * The quantities of one strap (not of pairs) with that strap's mount at `point`; only its clearance to the tubes where it would pass
 * through one, and none where it has no path (but where its mount is: `lap-off-centre`).
 */
export const strapQuantitiesAt = (
  prepared: PreparedPlace,
  strap: StrapId,
  point: PointMm,
): readonly QuantityValue[] => {
  const sink = new QuantityList()
  const solved = strapAt(prepared, strap, point)
  if (solved === null) return sink.values
  const gap = solved.ok ? strapTubeGap(prepared.tubes, solved.value) : null
  if (gap !== null) sink.put('tube-clearance', strap, gap.gapMm)
  if (gap !== null && gap.gapMm < 0) return sink.values
  if (strap === 'lap-left' || strap === 'lap-right') addOffCentre(sink, prepared.scene, strap, point)
  if (solved.ok) addOwnQuantities(sink, prepared, solved.value)
  return sink.values
}

/** One of these quantities; null where it cannot be computed. */
export const strapValueAt = (
  prepared: PreparedPlace,
  strap: StrapId,
  point: PointMm,
  id: QuantityId,
): number | null => {
  for (const value of strapQuantitiesAt(prepared, strap, point)) if (value.id === id) return value.value
  return null
}
