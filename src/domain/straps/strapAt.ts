import type { PointMm } from '../geometry/point'
import type { Result } from '../result'
import { addAnchorQuantities } from './anchorQuantities'
import { lapStrap } from './lapPath'
import { addLapQuantities } from './lapQuantities'
import type { PathProblem } from './path'
import type { StrapFrame } from './placeFrame'
import { frameOf, lapRunAt, otherStrapAt, placeMiddle, placeStraps, type PlaceStraps } from './placeStraps'
import type { QuantityId, QuantityValue } from './quantity'
import { addLapOffCentre, addShoulderReferences } from './referenceQuantities'
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
  if (strapFamily(strap) !== 'lap') return otherStrapAt(frame, framed, point, middle)
  return lapAt(place, framed, point)
}

const lapAt = (
  { frame, lapLeft, lapRight }: PlaceStraps,
  framed: StrapFrame,
  point: PointMm,
): Result<SolvedStrap, PathProblem> => {
  const run = lapRunAt(frame, framed, point)
  if (!run.ok) return run
  const isLeft = framed.strap === 'lap-left'
  const { buckle } = placeMiddle(frame, isLeft ? run.value : lapLeft, isLeft ? lapRight : run.value)
  // There is a buckle: this strap has a front contact.
  return { ok: true, value: lapStrap(frame, framed, run.value, buckle ?? run.value.reach.front) }
}

const addOwnQuantities = (values: QuantityValue[], prepared: PreparedPlace, strap: SolvedStrap): void => {
  const { scene, chestDeg } = prepared
  switch (strapFamily(strap.anchor.strap)) {
    case 'shoulder':
      addShoulderQuantities(values, scene, strap)
      addShoulderReferences(values, scene, strap)
      break
    case 'lap':
      addLapQuantities(values, scene, strap)
      break
    case 'sub':
      addSubQuantities(values, strap, chestDeg)
      break
  }
  addAnchorQuantities(values, scene, strap)
}

/**
 * A quantity of one strap (not of a pair) with that strap's mount at `point`; null where it cannot be computed. `strap-length` and
 * the like count from there, `lap-off-centre` of the place it is tried at.
 */
export const strapValueAt = (
  prepared: PreparedPlace,
  strap: StrapId,
  point: PointMm,
  id: QuantityId,
): number | null => {
  const solved = strapAt(prepared, strap, point)
  if (solved === null) return null
  if (id === 'lap-off-centre') return offCentreAt(prepared, strap, point)
  if (!solved.ok) return null
  const gap = strapTubeGap(prepared.tubes, solved.value)
  if (id === 'tube-clearance') return gap && gap.gapMm
  if (gap !== null && gap.gapMm < 0) return null
  const values: QuantityValue[] = []
  addOwnQuantities(values, prepared, solved.value)
  for (const value of values) if (value.id === id) return value.value
  return null
}

const offCentreAt = ({ scene }: PreparedPlace, strap: StrapId, point: PointMm): number | null => {
  if (strap !== 'lap-left' && strap !== 'lap-right') return null
  const values: QuantityValue[] = []
  const anchors = scene.anchors.map((anchor) =>
    anchor.strap === strap ? { ...anchor, mount: { ...anchor.mount, point } } : anchor,
  )
  addLapOffCentre(values, { ...scene, anchors }, strap)
  return values[0]?.value ?? null
}
