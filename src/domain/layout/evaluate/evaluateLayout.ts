import type { Finding, ShownFinding } from '../../rules/finding'
import type { QuantityRule, Rule, RuleLevel, RuleSet } from '../../rules/rule'
import { anchorZone } from '../../zones/ruleRegion'
import type { AnchorZone } from '../../zones/zone'
import type { Layout, Place } from '../document/layout'
import { chosenRuleSet } from '../document/ruleSetOf'
import { withCombinedRemedies } from './combinedRemedy'
import type { Evaluation, PlaceEvaluation, ShownEvaluation, ShownPlace } from './evaluation'
import { propertyFindings } from './propertyFindings'
import { type PlaceCase, quantityFindings, quantityNumbers } from './quantityFindings'
import { withRemedyBreaks } from './remedyBreaks'
import { zoneCases } from './ruleContexts'
import { sittingEvaluation, solvedSittings } from './solvedSittings'
import { withToleranceCases } from './tolerance/toleranceCases'

const isQuantityRule = (rule: Rule): rule is QuantityRule => rule.kind === 'quantity'

const findingsOf = (placeCase: PlaceCase, rule: Rule): readonly Finding[] => {
  switch (rule.kind) {
    case 'quantity':
      return quantityFindings(placeCase, rule)
    case 'property':
      return propertyFindings(placeCase.layout, placeCase.place, rule)
    case 'stated':
      return []
  }
}

const VERDICT_ORDER: Readonly<Record<ShownFinding['verdict'], number>> = {
  broken: 0,
  unchecked: 1,
  tight: 2,
  kept: 3,
  clear: 3,
}
const LEVEL_ORDER: Readonly<Record<RuleLevel, number>> = { must: 0, should: 1, advice: 2 }

/**
 * Findings in the order they are read: broken, unchecked, tight, clear or kept; within each a must before a should before advice;
 * otherwise in the order of the rule set.
 */
export const orderedFindings = <Some extends ShownFinding>(findings: readonly Some[]): readonly Some[] =>
  findings.toSorted(
    (a, b) =>
      VERDICT_ORDER[a.verdict] - VERDICT_ORDER[b.verdict] || LEVEL_ORDER[a.level] - LEVEL_ORDER[b.level],
  )

export interface EvaluateOptions {
  /**
   * `everything`, or only `what-moves`: without remedies and without what weld errors can do, which take by far the longest and
   * are of no use while something is still being dragged. All numbers, verdicts, rooms and zones are the same. Rooms take long too:
   * `layoutNumbers` is without them.
   */
  readonly extent?: 'everything' | 'what-moves'
  /** Only the findings of the rules that it picks, which is quicker; everything else is as under the whole set. */
  readonly only?: (rule: Rule) => boolean
}

/** Everything computed for one place: its sittings, what the rule set says over all of them, and the anchors' zones. */
export const evaluatePlace = (
  layout: Layout,
  place: Place,
  ruleSet: RuleSet,
  { extent = 'everything', only = () => true }: EvaluateOptions = {},
): PlaceEvaluation => {
  const sittings = solvedSittings(layout, place, ruleSet)
  const cases = zoneCases(layout, place, sittings)
  const rules = ruleSet.rules.filter(isQuantityRule)
  const placeCase: PlaceCase = { layout, place, sittings, zoneCases: cases, rules, extent }
  const found = ruleSet.rules.filter(only).flatMap((rule) => findingsOf(placeCase, rule))
  const findings =
    extent === 'what-moves'
      ? found.map((finding) => ({ ...finding, remedy: null }))
      : withToleranceCases(
          placeCase,
          withCombinedRemedies(placeCase, withRemedyBreaks(layout, place, sittings, rules, found)),
        )
  return {
    placeId: place.id,
    sittings: sittings.map(sittingEvaluation),
    findings: orderedFindings(findings),
    zones: [...cases.values()].map((zoneCase) => anchorZone(rules, zoneCase)),
  }
}

/** The zones of a place's anchors, each worked out when it is first asked for; none for a place that does not exist. */
export const placeZones = (layout: Layout, placeId: string): readonly AnchorZone[] => {
  const place = layout.places.find(({ id }) => id === placeId)
  if (place === undefined) return []
  const rules = chosenRuleSet(layout).rules.filter(isQuantityRule)
  const cases = zoneCases(layout, place, solvedSittings(layout, place))
  return [...cases.values()].map((zoneCase) => anchorZone(rules, zoneCase))
}

const numbersOfRule = (placeCase: PlaceCase, rule: Rule): readonly ShownFinding[] =>
  rule.kind === 'quantity' ? quantityNumbers(placeCase, rule) : findingsOf(placeCase, rule)

const placeNumbers = (layout: Layout, place: Place, ruleSet: RuleSet): ShownPlace => {
  const sittings = solvedSittings(layout, place, ruleSet)
  const cases = zoneCases(layout, place, sittings)
  const rules = ruleSet.rules.filter(isQuantityRule)
  const placeCase: PlaceCase = { layout, place, sittings, zoneCases: cases, rules, extent: 'what-moves' }
  const found = ruleSet.rules.flatMap((rule) => numbersOfRule(placeCase, rule))
  return {
    placeId: place.id,
    sittings: sittings.map(sittingEvaluation),
    findings: orderedFindings(found.map((finding) => ({ ...finding, remedy: null }))),
    zones: [...cases.values()].map(({ anchor }) => ({
      anchorId: anchor.id,
      side: 'pending',
      top: 'pending',
    })),
  }
}

/**
 * Paths, numbers and what is broken, kept or unchecked: what takes no longer than a frame. Rooms and zones are `pending`, remedies
 * and tolerance cases left out. Throws like `evaluateLayout`.
 */
export const layoutNumbers = (layout: Layout): ShownEvaluation => {
  const ruleSet = chosenRuleSet(layout)
  return { ruleSet, places: layout.places.map((place) => placeNumbers(layout, place, ruleSet)) }
}

/**
 * Everything computed from a layout, the same for screen, sheet and command line. Throws for a rule set that does not exist:
 * reading a layout file refuses it before.
 */
export const evaluateLayout = (layout: Layout, options: EvaluateOptions = {}): Evaluation => {
  const ruleSet = chosenRuleSet(layout)
  return { ruleSet, places: layout.places.map((place) => evaluatePlace(layout, place, ruleSet, options)) }
}
