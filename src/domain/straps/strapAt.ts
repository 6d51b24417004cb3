import type { PointMm } from '../geometry/point'
import { anchorOf } from './mount'
import type { QuantityId } from './quantity'
import type { StrapScene } from './scene'
import { solvePlace, type SolvedPlace } from './solve'
import { strapFamily, type StrapId } from './strap'

/** One sitting made ready for trying one strap in many places: what does not depend on that strap's anchor is kept. */
export interface PreparedPlace {
  readonly scene: StrapScene
  readonly solved: SolvedPlace
}

/** Prepares a sitting; worth it from the second strap tried on. */
export const preparedPlace = (scene: StrapScene): PreparedPlace => ({ scene, solved: solvePlace(scene) })

/**
 * A quantity of one strap (not of a pair) with that strap's mount point at `point` and everything else as prepared: the buckle
 * stays where it is for shoulder and anti-submarine straps and follows for lap straps. Null where it cannot be computed.
 */
export const strapValueAt = (
  { scene }: PreparedPlace,
  strap: StrapId,
  point: PointMm,
  id: QuantityId,
): number | null => {
  const moved = anchorOf(scene.anchors, strap)
  if (moved === null) return null
  const anchors = scene.anchors
    .filter((anchor) => anchor.strap === strap || strapFamily(anchor.strap) === 'lap')
    .map((anchor) => (anchor === moved ? { ...anchor, mount: { ...anchor.mount, point } } : anchor))
  const { quantities } = solvePlace({ ...scene, anchors })
  return quantities.find((value) => value.id === id && value.subject === strap)?.value ?? null
}
