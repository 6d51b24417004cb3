import type { Occupant } from '../../body/occupant'
import type { BeltRecord } from '../../care/beltRecord'
import type { Tube } from '../../geometry/tube'
import type { AsWeldedRecord } from '../../measure/asWeldedRecord'
import type { Photo } from '../../measure/photo/photo'
import type { RuleSet } from '../../rules/rule'
import type { WeldTolerance } from '../../rules/tolerance'
import type { TapePoint } from '../../shop/tape/tapePoint'
import type { Anchor } from '../../straps/anchor'
import type { Seat } from '../../straps/seat'
import type { Belt } from '../../straps/strap'
import type { ForceUnit } from '../../units/force'
import type { LengthUnit } from '../../units/length'
import type { MassUnit } from '../../units/mass'
import type { ReviewEntry } from './review'

export type { LengthUnit }

/** The only version so far; a file says it first and nothing else is read before it is known. */
export const LAYOUT_VERSION = 1

/** One line of the revision history: what was changed, when and by whom. */
export interface Revision {
  readonly revision: string
  /** ISO 8601 calendar date, YYYY-MM-DD, or empty. */
  readonly date: string
  readonly by: string
  readonly change: string
}

export interface Job {
  readonly name: string
  readonly car: string
  readonly customer: string
  /** ISO 8601 calendar date, YYYY-MM-DD, or empty. */
  readonly date: string
  readonly revision: string
  readonly preparedBy: string
  readonly notes: string
  /** The revision history, oldest first; left out while nobody keeps one. */
  readonly revisions?: readonly Revision[]
}

/** Which pairs move as one. Split pairs move each side alone. */
export interface MirroredPairs {
  readonly shoulder: boolean
  readonly lap: boolean
  readonly sub: boolean
}

/** One seat position in the car with the people who sit there, their belts and the anchors. */
export interface Place {
  readonly id: string
  readonly name: string
  readonly seat: Seat
  /** At least one. */
  readonly occupants: readonly Occupant[]
  readonly belt: Belt
  /** At most one for each strap. */
  readonly anchors: readonly Anchor[]
  readonly mirrored: MirroredPairs
}

/** Another way to build the same car: what differs between variants is the tubes and the places with all that is in them. */
export interface Variant {
  readonly id: string
  readonly name: string
  readonly tubes: readonly Tube[]
  /** At least one. */
  readonly places: readonly Place[]
}

/**
 * Up to four variants of one car. The one that is drawn has its tubes and places in the layout itself, so that everything else
 * works on it as on any layout; the others wait here. The last one left keeps its id and name while a record or a review names it.
 */
export interface Variants {
  /** `index` is where the drawn one stands among all, from 0, so that their order outlasts a change of the drawn one. */
  readonly drawn: { readonly id: string; readonly name: string; readonly index: number }
  /** In their order. */
  readonly others: readonly Variant[]
}

/** The document: everything about one car's restraint mounting. All positions in mm from the datum. */
export interface Layout {
  readonly version: typeof LAYOUT_VERSION
  readonly job: Job
  /** Where the datum is, in words a welder can find it by. */
  readonly datum: string
  readonly units: { readonly length: LengthUnit; readonly force: ForceUnit; readonly mass: MassUnit }
  readonly dustyOrMuddyUse: boolean
  readonly ruleSetId: string
  /** Rule sets of the builder's own, beside those of the program; left out when there are none. */
  readonly ownRuleSets?: readonly RuleSet[]
  /** Documents that the builder has, as "document, edition" (rules/confirmed.ts); left out when there are none. */
  readonly confirmedDocuments?: readonly string[]
  /** What welding and measuring may be off by; left out while nobody has typed it. */
  readonly tolerance?: WeldTolerance
  /** What was really welded, each time it was measured, the oldest first; left out while nothing was. */
  readonly asWelded?: readonly AsWeldedRecord[]
  /** Belts that are or were fitted, those of removed places among them; left out when there are none. */
  readonly belts?: readonly BeltRecord[]
  /** Other ways to build the car, beside the drawn one; left out while there is only one. */
  readonly variants?: Variants
  /** What the customer was shown and said, oldest first; only ever added to, left out while nothing was shown. */
  readonly reviews?: readonly ReviewEntry[]
  readonly tubes: readonly Tube[]
  /** Places on the car that a tape can be held to, beside the datum and marks on tubes; left out when there are none. */
  readonly tapePoints?: readonly TapePoint[]
  /** Photographs under the drawing, without their pictures, which stay on the device; left out when there are none. */
  readonly photos?: readonly Photo[]
  /**
   * Questions of the first layout (firstLayout/question.ts) whose numbers still stand where they started: nobody measured or chose
   * them. Empty once none is left; left out where the layout did not come of questions.
   */
  readonly notMeasured?: readonly string[]
  /** At least one. */
  readonly places: readonly Place[]
}
