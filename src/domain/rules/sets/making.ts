import type {
  PropertyId,
  PropertyRule,
  QuantityRule,
  RuleCondition,
  RuleLevel,
  RuleSource,
  SourceStatus,
  StatedRule,
} from '../rule'
import type { QuantityId } from '../../straps/quantity'
import type { StrapFamily } from '../../straps/strap'

/** What every rule of a set gives; what is left out is empty. */
interface Said {
  readonly id: string
  /** The level in the document itself. */
  readonly orders: RuleLevel
  readonly source: RuleSource
  readonly says: string
  readonly why: string
  readonly caveat?: string
  readonly when?: RuleCondition
}

interface Limits {
  readonly min?: number
  readonly max?: number
}

/**
 * The level at which a figure counts by how it reached us: one from memory is advice, one quoted second-hand at most a `should`,
 * each until the builder confirms having the document. Our judgement: nothing is ordered on hearsay.
 */
const countedLevel = (orders: RuleLevel, status: SourceStatus): RuleLevel => {
  if (status === 'memory') return 'advice'
  return status === 'second-hand' && orders === 'must' ? 'should' : orders
}

const base = ({ id, orders, source, says, why, caveat, when }: Said) => {
  const level = countedLevel(orders, source.status)
  return {
    id,
    level,
    source,
    when: when ?? {},
    says,
    why,
    caveat: caveat ?? null,
    ...(level === orders ? {} : { confirmedLevel: orders }),
  }
}

/** A limit on a computed quantity. */
export const limitRule = (
  rule: Said & Limits & { readonly quantity: QuantityId; readonly family?: StrapFamily },
): QuantityRule => ({
  ...base(rule),
  kind: 'quantity',
  quantity: rule.quantity,
  family: rule.family ?? null,
  min: rule.min ?? null,
  max: rule.max ?? null,
})

/** A limit on something typed. */
export const propertyRule = (
  rule: Said &
    Limits & {
      readonly property: PropertyId
      readonly family?: StrapFamily
      readonly wanted?: readonly string[]
    },
): PropertyRule => ({
  ...base(rule),
  kind: 'property',
  property: rule.property,
  family: rule.family ?? null,
  min: rule.min ?? null,
  max: rule.max ?? null,
  wanted: rule.wanted ?? null,
})

/** A rule that is printed and not checked. */
export const statedRule = (rule: Said): StatedRule => ({ ...base(rule), kind: 'stated' })
