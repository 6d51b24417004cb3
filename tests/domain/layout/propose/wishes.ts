import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import type { Proposal, Proposals } from '../../../../src/domain/layout/propose/proposal'
import { proposedPositions, withProposal } from '../../../../src/domain/layout/propose/propose'
import type { ProposalWish } from '../../../../src/domain/layout/propose/wish'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Finding } from '../../../../src/domain/rules/finding'
import type { QuantityRule, RuleSet } from '../../../../src/domain/rules/rule'
import type { QuantityId } from '../../../../src/domain/straps/quantity'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

/** A rule of the builder's own. */
export const ownRule = (
  id: string,
  quantity: QuantityId,
  limit: { readonly min?: number; readonly max?: number },
): QuantityRule => ({
  kind: 'quantity',
  id,
  level: 'should',
  quantity,
  family: null,
  min: limit.min ?? null,
  max: limit.max ?? null,
  when: {},
  source: { document: 'House rules', section: '1', edition: '', status: 'own', phrase: null },
  says: 'A limit of the test.',
  why: 'It is tested.',
  caveat: null,
})

/** A layout checked against these rules alone. */
export const under = (layout: Layout, rules: readonly QuantityRule[]): Layout => {
  const set: RuleSet = { id: 'house', name: 'House', edition: '1', group: 'Own', about: 'For tests.', rules }
  return { ...layout, ownRuleSets: [set], ruleSetId: 'house' }
}

/** The proposals of a wish that has some. */
export const proposalsFor = (layout: Layout, wish: ProposalWish): Proposals => {
  const found = proposedPositions(layout, wish)
  if (!found.ok) throw new Error(JSON.stringify(found.error))
  return found.value
}

export const firstPlace = (layout: Layout): Place => {
  const [place] = layout.places
  if (place === undefined) throw new Error('a layout without a place')
  return place
}

/** The findings of a layout with a proposal taken, by id. */
export const findingsAfter = (
  layout: Layout,
  placeId: string,
  proposal: Proposal,
): ReadonlyMap<string, Finding> =>
  new Map(
    evaluateLayout(withProposal(layout, placeId, proposal), { extent: 'what-moves' }).places.flatMap(
      ({ findings }) => findings.map((finding) => [finding.id, finding] as const),
    ),
  )

/** Lap tabs 150 mm behind and 230 mm beside the hip point of somebody whose hip point is the datum. */
export const lapCar = (zMm = -100): Layout =>
  flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: 150, yMm: 230, zMm }) })])

/** The left lap tab, with its mirror image, anywhere. */
export const lapWish = (change: Partial<ProposalWish> = {}): ProposalWish => ({
  placeId: 'driver',
  anchorId: 'lap-left-anchor',
  space: { kind: 'anywhere', box: null },
  symmetric: true,
  apartMm: 40,
  ...change,
})

export const isKept = ({ verdict }: Pick<Finding, 'verdict'>): boolean =>
  verdict === 'clear' || verdict === 'tight'
