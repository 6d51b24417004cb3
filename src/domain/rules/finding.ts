import type { Elevation } from '../geometry/plane'
import type { QuantityId, Subject } from '../straps/quantity'
import type { PathProblem } from '../straps/path'
import type { PropertyId, RuleLevel, RuleSource } from './rule'
import type { ToleranceCase } from './tolerance'

/** `unchecked`: the rule speaks but the number could not be computed, which is never the same as clear. */
export type Verdict = 'broken' | 'tight' | 'unchecked' | 'clear'

export interface Limit {
  readonly min: number | null
  readonly max: number | null
  readonly wanted: readonly string[] | null
}

/** A quantity rule that is kept as drawn and would not be, or could not be checked, after a change. */
export interface BrokenLimit {
  readonly placeId: string
  readonly ruleId: string
  readonly quantity: QuantityId
  readonly subject: Subject
}

/** One part of a combined remedy. */
export type RemedyStep = Extract<Remedy, { kind: 'move-anchors' | 'move-tube' | 'turn-tab' }>

/** One rule in one sitting. */
interface RuleInSitting {
  readonly ruleId: string
  readonly sittingId: string
}

/** Rules and sittings that no position of one anchor keeps all of; with any one of them left out some position would. */
export interface Contradiction {
  readonly anchorId: string
  readonly rules: readonly RuleInSitting[]
}

/** One change that clears a finding, computed and checked, or the reason why there is none. */
export type Remedy =
  | {
      readonly kind: 'move-anchors'
      readonly anchorIds: readonly string[]
      readonly direction: MoveDirection
      readonly byMm: number
      /** What it would break, at this place or at another; left out when nothing. */
      readonly breaks?: readonly BrokenLimit[]
    }
  | {
      readonly kind: 'move-tube'
      readonly tubeId: string
      readonly direction: MoveDirection
      readonly byMm: number
      /** What it would break, at this place or at another; left out when nothing. */
      readonly breaks?: readonly BrokenLimit[]
    }
  | {
      readonly kind: 'turn-tab'
      readonly anchorId: string
      readonly planDeg: number
      readonly leanDeg: number
    }
  | {
      readonly kind: 'change-property'
      readonly property: PropertyId
      readonly to: string
    }
  | { readonly kind: 'add-anchor'; readonly strap: string }
  | {
      /** Several changes at once, offered where no single one clears the finding without breaking another limit; it breaks none. */
      readonly kind: 'combined'
      /** Carried out one after the other. */
      readonly steps: readonly RemedyStep[]
    }
  | {
      readonly kind: 'none'
      readonly reason: string
      /** The smallest group that rules a remedy out; left out where the zones show none. */
      readonly contradiction?: Contradiction
    }

/** `inward` and `outward` are toward and away from the seat's centre line, both sides of a mirrored pair together. */
export type MoveDirection = 'up' | 'down' | 'forward' | 'rearward' | 'inward' | 'outward'

/** One rule checked on one subject over all sittings of a place. */
export interface Finding {
  /** Unique within one evaluation: place/rule/subject. */
  readonly id: string
  readonly ruleId: string
  readonly quantity: QuantityId | PropertyId
  readonly placeId: string
  /** A strap, a pair or the head; `belt`; or `tube:` and the tube's id. */
  readonly subject: Subject | 'belt' | `tube:${string}`
  /** The sitting with the worst value; null for properties. */
  readonly worstSitting: string | null
  /** The worst value, in the quantity's unit; words for word properties; null when unchecked. */
  readonly value: number | string | null
  readonly limit: Limit
  readonly level: RuleLevel
  readonly verdict: Verdict
  /** Signed distance, mm, in the drawn plane to where the finding flips; + inside. Null where no position decides it. */
  readonly roomMm: number | null
  /** The same in the elevation that the rule does not live in; left out where no position there decides it. */
  readonly otherRoom?: ElevationRoom
  readonly source: RuleSource
  readonly problem: PathProblem | null
  /** Null where there is nothing to clear, and where remedies were not asked for. */
  readonly remedy: Remedy | null
  /** What the layout's typed weld and measuring error can make of it; left out where none is typed or there is no number. */
  readonly withinTolerance?: ToleranceCase
}

/** Signed distance in one drawn plane to where a finding flips, mm; + inside. */
export interface ElevationRoom {
  readonly elevation: Elevation
  readonly mm: number
}

/**
 * A finding whose room is still being worked out: `kept` will be clear or tight, and how far the limit is will be said. The verdict
 * `unchecked` never waits, nor does what no position decides.
 */
interface PendingFinding extends Omit<Finding, 'verdict' | 'roomMm'> {
  readonly verdict: 'broken' | 'kept'
  readonly roomMm: 'pending'
}

/** A finding as the screen has it at any moment. */
export type ShownFinding = Finding | PendingFinding

export type ShownVerdict = ShownFinding['verdict']

/** Below this room a clear finding counts as tight: twice a ±5 mm weld and measuring error. Our judgement, no source. */
export const TIGHT_ROOM_MM = 10

/** The smaller room of a finding that is kept, whichever elevation it is in; null where no position decides it. */
export const leastRoom = ({
  roomMm,
  otherRoom,
}: Pick<Finding, 'roomMm' | 'otherRoom'>): {
  readonly mm: number
  readonly elevation: Elevation | null
} | null => {
  if (otherRoom !== undefined && (roomMm === null || otherRoom.mm < roomMm)) return otherRoom
  return roomMm === null ? null : { mm: roomMm, elevation: null }
}
