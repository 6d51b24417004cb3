import type { PosedBody } from '../../body/posedBody'
import type { SeatPose } from '../../body/pose'
import type { PointMm } from '../../geometry/point'
import type { Region } from '../../geometry/polygon'
import type { Finding, ShownFinding } from '../../rules/finding'
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

/** The zone of an anchor as far as it is known; `pending` where it is not worked out yet, which is not the same as none. */
export interface ShownZone {
  readonly anchorId: string
  readonly side: Region | 'pending'
  readonly top: Region | 'pending'
}

export interface PlaceEvaluation<SomeFinding = Finding, SomeZone = AnchorZone> {
  readonly placeId: string
  /** The drawn position of the first occupant comes first. */
  readonly sittings: readonly SittingEvaluation[]
  readonly findings: readonly SomeFinding[]
  /** One for each anchor that the belt has a strap for. */
  readonly zones: readonly SomeZone[]
}

/** Everything computed from a layout; screen, sheet and command line read this and compute nothing themselves. */
export interface Evaluation<SomeFinding = Finding, SomeZone = AnchorZone> {
  readonly ruleSet: RuleSet
  readonly places: readonly PlaceEvaluation<SomeFinding, SomeZone>[]
}

/** With the room of every finding, but zones only as far as somebody wanted them. */
export type CheckedEvaluation = Evaluation<Finding, ShownZone>

/** As much as is known at a moment: every number, and rooms and zones as far as they are worked out. */
export type ShownEvaluation = Evaluation<ShownFinding, ShownZone>
export type ShownPlace = PlaceEvaluation<ShownFinding, ShownZone>
