import type { Limit } from '../../rules/finding'
import type { QuantityRule, Rule, RuleSource } from '../../rules/rule'
import type { QuantityId } from '../../straps/quantity'
import { limitText } from './amounts'
import { propertyName } from './propertyNames'
import { quantityName } from './quantities'
import { capitalised } from './words'

type CheckedRule = Exclude<Rule, { kind: 'stated' }>

export const limitOfRule = (rule: CheckedRule): Limit => ({
  min: rule.min,
  max: rule.max,
  wanted: rule.kind === 'property' ? rule.wanted : null,
})

/** What a rule is about, as a lower-case name. */
export const checkedName = (rule: CheckedRule): string =>
  rule.kind === 'quantity' ? quantityName(rule.quantity) : propertyName(rule.property)

/** What a rule with an own limit says; always in mm, as rules are written. */
const ownSays = (rule: CheckedRule): string =>
  `${capitalised(checkedName(rule))}: ${limitText(rule.kind === 'quantity' ? rule.quantity : rule.property, limitOfRule(rule), 'mm')}.`

/** The source of a limit of the builder's own; what it was changed from stays readable. */
const ownSource = (before: RuleSource): RuleSource =>
  before.status === 'own'
    ? before
    : {
        document: 'Own limit',
        section: `changed from ${before.document}, ${before.section}`.slice(0, 200),
        edition: '',
        status: 'own',
        phrase: null,
      }

/**
 * A rule with other limits: from then on it is the builder's own, says so, and no longer quotes the document. It can no longer
 * be confirmed from the document either.
 */
export const withOwnLimits = <Checked extends CheckedRule>(
  rule: Checked,
  limits: Partial<Pick<CheckedRule, 'min' | 'max'>>,
): Checked => {
  const { confirmedLevel: _confirmed, ...plain } = { ...rule, ...limits }
  const changed = { ...plain, source: ownSource(rule.source), caveat: null } as Checked
  return { ...changed, says: ownSays(changed) }
}

/** A rule at another level. From memory it stays what it is: it cannot be made a must without looking the figure up. */
export const canBeMust = ({ source }: Pick<Rule, 'source'>): boolean => source.status !== 'memory'

/** A new rule on a quantity with one limit to start from; the builder types the real one. */
export const newOwnRule = (quantity: QuantityId, sourceText: string): Omit<QuantityRule, 'id'> => {
  const rule: QuantityRule = {
    kind: 'quantity',
    id: 'new',
    level: 'should',
    source: { document: sourceText, section: '', edition: '', status: 'own', phrase: null },
    when: {},
    says: '',
    why: 'A limit of your own.',
    caveat: null,
    quantity,
    family: null,
    min: 0,
    max: null,
  }
  const { id: _id, ...plain } = { ...rule, says: ownSays(rule) }
  return plain
}
