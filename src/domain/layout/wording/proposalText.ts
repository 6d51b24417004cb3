import type { RuleLevel } from '../../rules/rule'
import type { Layout } from '../document/layout'
import { ruleOf } from '../document/ruleSetOf'
import type {
  Limiting,
  Proposal,
  Proposals,
  RuleOfSubject,
  Standing,
  StayingBroken,
} from '../propose/proposal'
import type { WishProblem } from '../propose/wish'
import { lengthWithUnit } from '../../units/length'
import { limitText, roomText, valueText } from './amounts'
import { contradictionText } from './contradictionText'
import { anchorName, sittingNameUnder, subjectName, tubeName } from './names'
import { problemClause } from './problemText'
import { quantityName } from './quantities'
import { capitalised, directionWord, levelWord } from './words'

/** Stands beside every proposal. */
export const PROPOSAL_CAUTION =
  'A proposal is geometry only: the place with the most room to the limits of the chosen rule set, for the people and seat positions of ' +
  'this place. Whether a tab can be welded and reached there, whether its tube carries it, and what else is in the way, nobody has looked at.'

/** How positions are compared. */
export const PROPOSAL_METHOD =
  'Room is how far an anchor may be moved before the first rule is broken for anybody who sits here; the position whose least room is largest ' +
  'comes first. Rules without a room are only watched: they stay kept, but how near their limits are is not counted.'

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

const anchorNameById = (anchorId: string, layout: Layout): string => {
  const anchor = layout.places.flatMap(({ anchors }) => anchors).find(({ id }) => id === anchorId)
  return anchor === undefined ? `anchor ${anchorId}` : anchorName(anchor)
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** Why nothing can be looked for, and how to mend it. */
export const wishProblemText = (problem: WishProblem, layout: Layout): string => {
  switch (problem.kind) {
    case 'place-unknown':
      return 'This place or its rule set is gone. Pick another place or rule set.'
    case 'anchor-unknown':
      return `There is no ${anchorNameById(problem.anchorId, layout)} in this belt. Pick another anchor.`
    case 'no-anchors':
      return 'This place has no anchors to move yet. Add some under Anchors.'
    case 'no-tubes':
      return 'No tube is chosen. Tick at least one, or look anywhere.'
    case 'box-turned-round':
      return `The box is turned round in ${problem.axis}: its first corner has the larger number. Exchange the two numbers.`
    case 'no-spot':
      return `None of the places allowed can hold the ${anchorNameById(problem.anchorId, layout)}: they are on the other side of the seat, have no counterpart for the other strap, or would break a rule that another strap keeps. Allow more tubes or a larger box.`
  }
}

const brokenText = (broken: Standing['broken']): string | null => {
  const parts = LEVELS.flatMap((level) =>
    broken[level] === 0 ? [] : [`${broken[level]} ${levelWord(level)}`],
  )
  return parts.length === 0 ? null : `not kept: ${parts.join(', ')}`
}

/** How a position stands, short: "31.2 mm of room"; "12 mm of room, not kept: 1 should". */
export const standingText = ({ roomMm, broken }: Standing, layout: Layout): string => {
  const room = roomMm === null ? 'no room known' : `${roomText(roomMm, layout.units.length)} of room`
  const bad = brokenText(broken)
  return bad === null ? room : `${room}, ${bad}`
}

/** What keeps a position from having more room, and which way that limit is. */
export const limitingRuleText = ({ limiting }: Pick<Standing, 'limiting'>, layout: Layout): string => {
  if (limiting === null) return 'No rule with a room limits it.'
  const { ruleId, quantity, subject, sittingId, towards } = limiting
  const way = towards.length === 0 ? '' : `; the limit is nearest ${towards.map(directionWord).join(' and ')}`
  return `Limited by ${quantityName(quantity)} of the ${subjectName(subject, layout)}, ${limitOf(limiting, layout)} (${sittingNameUnder(ruleId, sittingId, layout)})${way}.`
}

const limitOf = ({ ruleId, quantity, side }: Limiting, layout: Layout): string => {
  const rule = ruleOf(layout, ruleId)
  if (rule?.kind !== 'quantity') return ''
  const limit = { min: side === 'min' ? rule.min : null, max: side === 'max' ? rule.max : null, wanted: null }
  return limitText(quantity, limit, layout.units.length)
}

const total = (broken: Standing['broken']): number => broken.must + broken.should + broken.advice

/** What is gained against the position that was drawn when it was asked. */
export const gainText = (proposal: Proposal, present: Standing, layout: Layout): string => {
  const unit = layout.units.length
  const fewer = total(present.broken) - total(proposal.broken)
  const rules = fewer > 0 ? `${fewer} fewer ${fewer === 1 ? 'rule' : 'rules'} not kept than as drawn` : null
  if (proposal.roomMm === null || present.roomMm === null)
    return rules === null ? 'No room to compare with.' : `${capitalised(rules)}.`
  const gainMm = proposal.roomMm - present.roomMm
  const room =
    gainMm >= 0.05
      ? `${roomText(gainMm, unit)} more room than as drawn (${roomText(present.roomMm, unit)})`
      : gainMm <= -0.05
        ? `less room than as drawn (${roomText(present.roomMm, unit)})`
        : `the same room as drawn`
  return `${capitalised(rules === null ? room : `${rules}, ${room}`)}.`
}

const stayingReason = ({ why }: StayingBroken, layout: Layout): string => {
  switch (why.kind) {
    case 'no-path':
      return why.problem === null
        ? 'it cannot be checked'
        : `it cannot be checked, because ${problemClause(why.problem, layout)}`
    case 'not-of-position':
      return 'no position decides it; seat, belt or tubes have to change'
    case 'contradiction':
      return contradictionText(why.contradiction, layout)
    case 'not-among-allowed':
      return 'no place among those allowed was found that keeps it together with the others'
  }
}

/** A rule that is not kept at a proposal, and why. */
export const stayingText = (staying: StayingBroken, layout: Layout): string => {
  const { finding } = staying
  const value =
    finding.value === null ? '' : ` ${valueText(finding.quantity, finding.value, layout.units.length)}`
  const state = finding.verdict === 'unchecked' ? 'Not checked' : 'Stays broken'
  return `${state} (${levelWord(finding.level)}): ${quantityName(finding.quantity)} of the ${subjectName(finding.subject, layout)}${value}: ${stayingReason(staying, layout).replace(/\.$/, '')}.`
}

/** The rules that were only watched; null when there are none. */
export const unmeasuredText = (unmeasured: readonly RuleOfSubject[]): string | null => {
  const names = [...new Set(unmeasured.map(({ quantity }) => quantityName(quantity)))]
  return names.length === 0 ? null : `Kept, but without a room in mm, so only watched: ${listed(names)}.`
}

/** Where each anchor comes to lie, one line each. */
export const positionTexts = (proposal: Proposal, layout: Layout): readonly string[] => {
  const unit = layout.units.length
  return proposal.mounts.map(({ anchorId, mount }) => {
    const { xMm, yMm, zMm } = mount.point
    const at = `x ${lengthWithUnit(xMm, unit)}, y ${lengthWithUnit(yMm, unit)}, z ${lengthWithUnit(zMm, unit)}`
    const on = mount.tubeId === null ? 'on no tube' : `on ${tubeName(mount.tubeId, layout)}`
    const turned = proposal.turnedTabs.includes(anchorId) ? ', turned along its strap' : ''
    return `${capitalised(anchorNameById(anchorId, layout))}: ${at}, ${on}${turned}.`
  })
}

/** What the whole answer comes to, in one sentence. */
export const answerText = ({ proposals, present }: Proposals): string => {
  const [best] = proposals
  if (best === undefined) return 'No position was found.'
  const count = `${proposals.length} ${proposals.length === 1 ? 'position' : 'positions'}, most room first.`
  if (total(best.broken) > 0)
    return `No place among those allowed keeps every rule about these straps; these break least. ${count}`
  return proposals.length === 1 && best.movedMm === 0 && total(present.broken) === 0
    ? 'Nothing better was found than the position as drawn.'
    : count
}
