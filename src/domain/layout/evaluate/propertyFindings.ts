import { isWanted, isWithin } from '../../rules/check'
import type { Finding } from '../../rules/finding'
import { propertyValues, type PropertyValue } from '../../rules/properties'
import { propertyRemedy } from '../../rules/propertyRemedy'
import type { PropertyRule } from '../../rules/rule'
import type { Layout, Place } from '../document/layout'
import { sittingsOf } from './sittings'
import { speaksIn } from './speaking'

const isKept = ({ min, max, wanted }: PropertyRule, value: number | string): boolean =>
  typeof value === 'number'
    ? (min === null && max === null) || isWithin(value, { min, max })
    : wanted === null || isWanted(value, wanted)

const propertyFinding = (layout: Layout, place: Place, rule: PropertyRule, found: PropertyValue): Finding => {
  const { subject, value } = found
  const kept = isKept(rule, value)
  const tube = layout.tubes.find(({ id }) => subject === `tube:${id}`) ?? null
  return {
    id: `${place.id}/${rule.id}/${subject}`,
    ruleId: rule.id,
    quantity: rule.property,
    placeId: place.id,
    subject,
    worstSitting: null,
    value,
    limit: { min: rule.min, max: rule.max, wanted: rule.wanted },
    level: rule.level,
    verdict: kept ? 'clear' : 'broken',
    roomMm: null,
    source: rule.source,
    problem: null,
    remedy: kept ? null : propertyRemedy(rule, value, tube),
  }
}

/** What one property rule says about everything at a place that has the property, where the rule speaks in at least one sitting. */
export const propertyFindings = (layout: Layout, place: Place, rule: PropertyRule): readonly Finding[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  // Who sits there decides nothing about whether a rule speaks: the positions of one are those of all.
  const sittings = sittingsOf(layout, { ...place, occupants: place.occupants.slice(0, 1) })
  return propertyValues(rule.property, rule.family, scene)
    .filter(({ subject }) => sittings.some(speaksIn(layout, place, rule, subject)))
    .map((found) => propertyFinding(layout, place, rule, found))
}
