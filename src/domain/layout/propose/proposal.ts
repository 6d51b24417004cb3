import type { Contradiction, MoveDirection, Verdict } from '../../rules/finding'
import type { RuleLevel } from '../../rules/rule'
import type { Anchor } from '../../straps/anchor'
import type { PathProblem } from '../../straps/path'
import type { QuantityId, Subject } from '../../straps/quantity'

/** One rule about one subject by name. */
export interface RuleOfSubject {
  readonly ruleId: string
  readonly quantity: QuantityId
  readonly subject: Subject
}

/** What one finding will be once a proposal is taken. */
export interface PromisedFinding extends RuleOfSubject {
  readonly findingId: string
  readonly level: RuleLevel
  readonly verdict: Verdict
  readonly value: number | null
  readonly roomMm: number | null
}

/** What keeps a position from having more room. */
export interface Limiting extends RuleOfSubject {
  /** The sitting in which the least room is left. */
  readonly sittingId: string
  /** The rule's lower or upper limit. */
  readonly side: 'min' | 'max'
  readonly anchorId: string
  /** The way in which the limit is nearest, the larger part first; empty where no single way leads there. */
  readonly towards: readonly MoveDirection[]
}

/** Why a rule stays broken at a proposal. */
export type StayingWhy =
  /** A strap has no path in some sitting. */
  | { readonly kind: 'no-path'; readonly problem: PathProblem | null }
  /** No position decides it; something else has to be changed. */
  | { readonly kind: 'not-of-position' }
  /** No position of this anchor, allowed or not, keeps it and what is kept. */
  | { readonly kind: 'contradiction'; readonly contradiction: Contradiction }
  /** Positions that keep it may exist, but none was found among those allowed. */
  | { readonly kind: 'not-among-allowed' }

export interface StayingBroken {
  readonly finding: PromisedFinding
  readonly why: StayingWhy
}

/** How the straps that are to be moved stand at one position of their anchors. */
export interface Standing {
  /** The least room of the rules about them that are kept, over all sittings; null where none of them has a room. */
  readonly roomMm: number | null
  readonly limiting: Limiting | null
  /** How many rules about them are broken or cannot be checked, by level. */
  readonly broken: Readonly<Record<RuleLevel, number>>
}

/** One position for one or all anchors, worked out to the end. */
export interface Proposal extends Standing {
  /** `proposal-1` … in the order of rank. */
  readonly id: string
  /** What is set when it is taken; every anchor that moves. */
  readonly mounts: readonly { readonly anchorId: string; readonly mount: Anchor['mount'] }[]
  /** How far the anchor that goes furthest is moved, mm. */
  readonly movedMm: number
  /** Tabs that are turned along their straps as well, because a rule asks for it. */
  readonly turnedTabs: readonly string[]
  /** Every rule about the straps that move. */
  readonly findings: readonly PromisedFinding[]
  readonly staying: readonly StayingBroken[]
  /** Rules that are kept but have no room: they were only watched. */
  readonly unmeasured: readonly RuleOfSubject[]
}

/** The answer to a wish. */
export interface Proposals {
  readonly placeId: string
  readonly ruleSetId: string
  /** The anchors that were moved. */
  readonly anchorIds: readonly string[]
  /** The present position in the same measure. */
  readonly present: Standing
  /** Best first; at least one. */
  readonly proposals: readonly Proposal[]
}
