import { bodyOf } from '../../body/body'
import type { Body, Occupant } from '../../body/occupant'
import { posedBody } from '../../body/posed'
import type { RuleSet } from '../../rules/rule'
import type { QuantityId, Subject } from '../../straps/quantity'
import type { StrapScene } from '../../straps/scene'
import { seatPose } from '../../straps/seatPose'
import { solvePlace, type SolvedPlace } from '../../straps/solve'
import type { Layout, Place } from '../document/layout'
import { chosenRuleSet } from '../document/ruleSetOf'
import { betweenSittings } from './betweenSittings'
import { seatedLattice } from './seatedLattice'
import type { Sitting, SittingEvaluation } from './evaluation'
import { isSeatAdjustable, sittingsOf } from './sittings'

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

/** Of so many positions it is known at a time how somebody sits there: more than a lattice has, and few enough to keep. */
const MOST_POSITIONS = 400

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
  if (positions.size >= MOST_POSITIONS) positions.clear()
  positions.set(key, fresh)
  return fresh
}

/** Solves any sitting of a place. */
const solverOf = (layout: Layout, place: Place): ((sitting: Sitting) => SolvedSitting) => {
  const { seat, belt, anchors } = place
  const occupants = new Map(place.occupants.map((occupant) => [occupant.id, occupant]))
  return (sitting) => {
    const occupant = occupants.get(sitting.occupantId)
    if (occupant === undefined) throw new Error(`no occupant ${sitting.occupantId} at place ${place.id}`)
    const scene: StrapScene = { ...seated(seat, occupant, sitting), seat, belt, anchors, tubes: layout.tubes }
    return { sitting, scene, solved: solvePlace(scene) }
  }
}

/**
 * The sittings of a place, solved, for any rule set that is asked for: those of `sittingsOf` in their order, then those between them
 * that decide something under the set.
 */
export const sittingsUnder = (
  layout: Layout,
  place: Place,
): ((ruleSet: RuleSet) => readonly SolvedSitting[]) => {
  const solve = solverOf(layout, place)
  const listed = sittingsOf(layout, place).map(solve)
  if (!isSeatAdjustable(place.seat)) return () => listed
  const lattice = seatedLattice(layout, place, listed, solve)
  return ({ rules }) => {
    const between = betweenSittings(
      layout,
      lattice,
      rules.filter((rule) => rule.kind === 'quantity'),
    )
    return between.length === 0 ? listed : [...listed, ...between]
  }
}

/** The same under one rule set, if nothing else is said the one that the layout has chosen. Throws when there is none. */
export const solvedSittings = (
  layout: Layout,
  place: Place,
  ruleSet: RuleSet = chosenRuleSet(layout),
): readonly SolvedSitting[] => sittingsUnder(layout, place)(ruleSet)

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
