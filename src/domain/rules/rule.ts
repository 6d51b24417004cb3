import type { Tube } from '../geometry/tube'
import type { Mount } from '../straps/anchor'
import type { QuantityId } from '../straps/quantity'
import type { Arrangement, DiagonalShoulder, StrapFamily, StrapId, ThighStraps } from '../straps/strap'

/** `must`: the document orders it. `should`: it recommends it, or a shop rule. `advice`: worth knowing, never more. */
export type RuleLevel = 'must' | 'should' | 'advice'

/**
 * How the figure reached us; `judgement`: it is ours, nobody else says it; `own`: the builder's own limit. A figure from memory is never
 * a `must`, nor is one of ours.
 */
export type SourceStatus = 'read' | 'second-hand' | 'memory' | 'common-practice' | 'judgement' | 'own'

export interface RuleSource {
  readonly document: string
  readonly section: string
  readonly edition: string
  readonly status: SourceStatus
  /** The words that carry the number where they were read; null where there are none. */
  readonly phrase: string | null
}

/** When a rule speaks; every given condition must hold. */
export interface RuleCondition {
  readonly reclineAtMostDeg?: number
  readonly reclineAboveDeg?: number
  readonly headAndNeckRestraint?: boolean
  readonly arrangements?: readonly Arrangement[]
  /** How the thigh straps of a 6- or 7-point belt run; holds of no other belt. */
  readonly thighStraps?: ThighStraps
  /** Over which shoulder the strap of a 3-point belt runs; holds of no other belt. */
  readonly diagonal?: DiagonalShoulder
  /** The seat slides or reclines. */
  readonly seatAdjustable?: boolean
  readonly mount?: Mount['kind']
  /** The strap's anchor is on a tube of this kind, welded to it or wrapped round it. */
  readonly tube?: Tube['role']
  /** Only these straps of the family, for example the centre strap but not the thigh straps. */
  readonly straps?: readonly StrapId[]
  /** The layout is marked as used in dust or mud. */
  readonly dusty?: boolean
}

interface RuleBase {
  readonly id: string
  readonly level: RuleLevel
  readonly source: RuleSource
  readonly when: RuleCondition
  /** What the rule says, as one plain sentence with its numbers. */
  readonly says: string
  /** Why it matters to the person in the seat, as one plain sentence. */
  readonly why: string
  /** Where sources disagree or where a tolerance is ours and not the source's; null otherwise. */
  readonly caveat: string | null
  /**
   * The level that the document itself gives a figure which reached us from memory or second-hand; it takes this level once the
   * builder confirms having the document. Left out where `level` is the document's own.
   */
  readonly confirmedLevel?: RuleLevel
}

/** A closed interval for a computed quantity, in the quantity's unit; null leaves that side open. Limits themselves pass. */
export interface QuantityRule extends RuleBase {
  readonly kind: 'quantity'
  readonly quantity: QuantityId
  /** Only the straps of this family; null: every strap that has the quantity. */
  readonly family: StrapFamily | null
  readonly min: number | null
  readonly max: number | null
}

/** What can be read straight off the document, without geometry. */
export const PROPERTY_IDS = [
  'belt-points',
  'belt-buckle',
  'belt-material',
  'belt-lap-adjuster',
  'belt-head-and-neck',
  'belt-joined',
  'straps-crossed',
  'webbing-width',
  'wrap-guide-hoops',
  'wrap-bar-diameter',
  'wrap-tube-role',
  'strap-slot',
  'slot-spare',
  'tab-to-tube',
  'sub-to-lap',
  'shoulder-anchorages',
  'anchor-form',
  'eye-thread',
  'tab-thickness',
  'tab-shear',
  'bar-diameter',
  'bar-wall',
  'bar-area',
  'bar-second-moment',
] as const

export type PropertyId = (typeof PROPERTY_IDS)[number]

/** A limit on something typed: an interval for numbers (mm, mm², mm⁴, count) or the wanted words. */
export interface PropertyRule extends RuleBase {
  readonly kind: 'property'
  readonly property: PropertyId
  readonly family: StrapFamily | null
  readonly min: number | null
  readonly max: number | null
  readonly wanted: readonly string[] | null
}

/** A rule that the tool states but cannot check, so that nobody takes silence for approval. */
export interface StatedRule extends RuleBase {
  readonly kind: 'stated'
}

export type Rule = QuantityRule | PropertyRule | StatedRule

/** Kinds of bodies in the order they are listed. */
export const RULE_SET_GROUPS = [
  'Trade',
  'Off-road and dirt',
  'Rally and circuit',
  'Clubs',
  'Student cars',
  'Drag racing',
  'State law',
  'Road vehicles',
  'Aviation and military',
  'Own',
] as const

export type RuleSetGroup = (typeof RULE_SET_GROUPS)[number]

export interface RuleSet {
  readonly id: string
  readonly name: string
  readonly edition: string
  /** The kind of body that the document comes from, for the list to choose from. */
  readonly group: RuleSetGroup
  /** One sentence on what the set is and is not. */
  readonly about: string
  readonly rules: readonly Rule[]
}
