import { bodyOf } from '../../body/body'
import { posedBody } from '../../body/posed'
import type { QuantityId, Subject } from '../../straps/quantity'
import type { StrapScene } from '../../straps/scene'
import { seatPose } from '../../straps/seatPose'
import { solvePlace, type SolvedPlace } from '../../straps/solve'
import type { Layout, Place } from '../document/layout'
import type { Sitting, SittingEvaluation } from './evaluation'
import { sittingsOf } from './sittings'

/** One sitting with its geometry, its taut straps and its numbers. */
export interface SolvedSitting {
  readonly sitting: Sitting
  readonly scene: StrapScene
  readonly solved: SolvedPlace
}

/** All sittings of a place, solved, in the order of `sittingsOf`. A body is predicted once for each occupant, not once a sitting. */
export const solvedSittings = (layout: Layout, place: Place): readonly SolvedSitting[] => {
  const bodies = new Map(place.occupants.map((occupant) => [occupant.id, bodyOf(occupant)]))
  return sittingsOf(layout, place).map((sitting) => {
    const body = bodies.get(sitting.occupantId)
    if (body === undefined) throw new Error(`no occupant ${sitting.occupantId} at place ${place.id}`)
    const pose = seatPose(place.seat, sitting.slideMm, sitting.reclineDeg)
    const scene: StrapScene = {
      seat: place.seat,
      pose,
      body: posedBody(body, pose, place.seat.hipHeightMm),
      belt: place.belt,
      anchors: place.anchors,
      tubes: layout.tubes,
    }
    return { sitting, scene, solved: solvePlace(scene) }
  })
}

/** One sitting as others read it. */
export const sittingEvaluation = ({ sitting, scene, solved }: SolvedSitting): SittingEvaluation => ({
  sitting,
  pose: scene.pose,
  body: scene.body,
  buckle: solved.buckle,
  paths: solved.paths,
  problems: solved.problems,
  quantities: solved.quantities,
})

/** The value of a quantity of a subject in one sitting; null where it could not be computed. */
export const quantityIn = (
  { solved }: Pick<SolvedSitting, 'solved'>,
  quantity: QuantityId,
  subject: Subject,
): number | null =>
  solved.quantities.find((each) => each.id === quantity && each.subject === subject)?.value ?? null
