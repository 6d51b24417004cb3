import type { Occupant } from '../../body/occupant'
import { startingOccupant } from '../document/empty'
import type { Layout, Place } from '../document/layout'

/** A body to start from, of nobody: what was measured on one person is not another's. */
const asNobody = ({ id, sex, statureMm, massKg }: Occupant, index: number): Occupant => ({
  ...startingOccupant(id, `Occupant ${index + 1}`),
  sex,
  statureMm,
  massKg,
})

const patternPlace = (place: Place): Place => {
  // Bolts and torque are those of one belt's instructions.
  const { hardware: _hardware, ...belt } = place.belt
  return { ...place, belt, occupants: place.occupants.map(asNobody) }
}

/**
 * A layout to start a similar car from: the car as it is drawn, its seats, belts, anchors, rules and tolerance. What belongs to one job,
 * one customer, one person or one belt is left behind: words and dates of the job, names and measurements of people, bolts and torque,
 * belts, measurements after welding, pictures, other variants and what the customer said. Anything that is not named here is left behind.
 */
export const asPattern = (layout: Layout): Layout => {
  const { version, datum, units, dustyOrMuddyUse, ruleSetId, tubes } = layout
  const { ownRuleSets, confirmedDocuments, tolerance, tapePoints } = layout
  return {
    version,
    job: { name: '', car: '', customer: '', date: '', revision: '', preparedBy: '', notes: '' },
    datum,
    units,
    dustyOrMuddyUse,
    ruleSetId,
    ...(ownRuleSets === undefined ? {} : { ownRuleSets }),
    ...(confirmedDocuments === undefined ? {} : { confirmedDocuments }),
    ...(tolerance === undefined ? {} : { tolerance }),
    tubes,
    ...(tapePoints === undefined ? {} : { tapePoints }),
    places: layout.places.map(patternPlace),
  }
}
