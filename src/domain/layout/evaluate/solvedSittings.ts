import { bodyOf } from '../../body/body'
import type { Body, Occupant } from '../../body/occupant'
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

/** A person's body, predicted once for as long as nobody changes the person. */
const bodies = new WeakMap<Occupant, Body>()

const predictedBody = (occupant: Occupant): Body => {
  const body = bodies.get(occupant) ?? bodyOf(occupant)
  bodies.set(occupant, body)
  return body
}

type Seated = Pick<StrapScene, 'pose' | 'body'>

/** Everybody in every position of a seat that was looked at, for as long as seat and person stay the same objects. */
const seatedIn = new WeakMap<Place['seat'], WeakMap<Occupant, Map<string, Seated>>>()

/** A person in one position of a seat: the same object while only anchors and tubes change, with whatever was made of it. */
const seated = (seat: Place['seat'], occupant: Occupant, { slideMm, reclineDeg }: Sitting): Seated => {
  const people = seatedIn.get(seat) ?? new WeakMap<Occupant, Map<string, Seated>>()
  seatedIn.set(seat, people)
  const positions = people.get(occupant) ?? new Map<string, Seated>()
  people.set(occupant, positions)
  const key = `${slideMm}/${reclineDeg}`
  const known = positions.get(key)
  if (known !== undefined) return known
  const pose = seatPose(seat, slideMm, reclineDeg)
  const fresh = { pose, body: posedBody(predictedBody(occupant), pose, seat.hipHeightMm) }
  positions.set(key, fresh)
  return fresh
}

/** All sittings of a place, solved, in the order of `sittingsOf`. */
export const solvedSittings = (layout: Layout, place: Place): readonly SolvedSitting[] => {
  const { seat, belt, anchors } = place
  const occupants = new Map(place.occupants.map((occupant) => [occupant.id, occupant]))
  return sittingsOf(layout, place).map((sitting) => {
    const occupant = occupants.get(sitting.occupantId)
    if (occupant === undefined) throw new Error(`no occupant ${sitting.occupantId} at place ${place.id}`)
    const scene: StrapScene = { ...seated(seat, occupant, sitting), seat, belt, anchors, tubes: layout.tubes }
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
