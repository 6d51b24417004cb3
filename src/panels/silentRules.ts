import type { Layout, Place } from '../domain/layout/document/layout'
import type { ShownFinding } from '../domain/rules/finding'
import { propertyValues } from '../domain/rules/properties'
import type { Rule, RuleSet } from '../domain/rules/rule'
import { ruleSubjects, type SubjectScene } from '../domain/rules/subjects'

/** Rules of a set that say nothing about a place, by the reason why. */
export interface SilentRules {
  /** The place has nothing that the rule could be held against: no such strap, slot, tab, eye, tube. */
  readonly withoutPart: readonly Rule[]
  /** The part is there, but the rule is for another case: another belt, mount, recline or use. */
  readonly otherCase: readonly Rule[]
  /** Nothing here can tell whether it is kept, whatever the place has. */
  readonly statedOnly: readonly Rule[]
}

const hasPart = (rule: Rule, scene: SubjectScene): boolean => {
  switch (rule.kind) {
    case 'quantity':
      return ruleSubjects(rule, scene).length > 0
    case 'property':
      return propertyValues(rule.property, rule.family, scene).length > 0
    case 'stated':
      return false
  }
}

/** The rules of a set that no finding of a place is about, in the order of the set. */
export const silentRules = (
  ruleSet: RuleSet,
  findings: readonly Pick<ShownFinding, 'ruleId'>[],
  layout: Layout,
  place: Place,
): SilentRules => {
  const speaking = new Set(findings.map(({ ruleId }) => ruleId))
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  const silent = ruleSet.rules.filter(({ id }) => !speaking.has(id))
  const checked = silent.filter(({ kind }) => kind !== 'stated')
  return {
    withoutPart: checked.filter((rule) => !hasPart(rule, scene)),
    otherCase: checked.filter((rule) => hasPart(rule, scene)),
    statedOnly: silent.filter(({ kind }) => kind === 'stated'),
  }
}
