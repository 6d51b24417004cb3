import type { PosedBody } from '../../body/posedBody'
import type { SeatPose } from '../../body/pose'
import type { PointMm } from '../../geometry/point'
import type { Finding } from '../../rules/finding'
import type { RuleSet } from '../../rules/rule'
import type { PathProblem, StrapPath } from '../../straps/path'
import type { QuantityValue } from '../../straps/quantity'
import type { AnchorZone } from '../../zones/zone'

/** One occupant in one seat position at one place. */
export interface Sitting {
  /** Unique within the layout: place/occupant/slide/recline. */
  readonly id: string
  readonly placeId: string
  readonly occupantId: string
  /** Slide from the drawn position, + rearward. */
  readonly slideMm: number
  readonly reclineDeg: number
}

export interface SittingEvaluation {
  readonly sitting: Sitting
  readonly pose: SeatPose
  readonly body: PosedBody
  /** Where the straps meet; null while no lap strap has a path. */
  readonly buckle: PointMm | null
  readonly paths: readonly StrapPath[]
  readonly problems: readonly PathProblem[]
  readonly quantities: readonly QuantityValue[]
}

export interface PlaceEvaluation {
  readonly placeId: string
  /** The drawn position of the first occupant comes first. */
  readonly sittings: readonly SittingEvaluation[]
  readonly findings: readonly Finding[]
  /** None for an anchor whose zone would take seconds to work out under this rule set; nothing is promised there. */
  readonly zones: readonly AnchorZone[]
}

/** Everything computed from a layout; screen, sheet and command line read this and compute nothing themselves. */
export interface Evaluation {
  readonly ruleSet: RuleSet
  readonly places: readonly PlaceEvaluation[]
}
