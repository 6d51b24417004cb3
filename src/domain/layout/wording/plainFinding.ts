import type { ShownFinding } from '../../rules/finding'
import { PROPERTY_IDS, type PropertyId, type Rule, type RuleLevel, type RuleSource } from '../../rules/rule'
import { leastRoom } from '../../rules/finding'
import type { QuantityId } from '../../straps/quantity'
import type { Layout } from '../document/layout'
import { ruleOf } from '../document/ruleSetOf'
import { limitText, outsideText, roomText } from './amounts'
import { placeName, sittingNameUnder } from './names'
import { plainSubject } from './plainNames'
import { plainProblem } from './plainProblem'
import { plainProperty, plainPropertyFault } from './plainProperties'
import { plainQuantity } from './plainQuantities'
import { grouped, type PlainFault } from './plainWords'
import { capitalised } from './words'

/** What is so, from the heaviest to the lightest. */
export const PLAIN_GROUPS = ['outside', 'unchecked', 'close', 'within'] as const
export type PlainGroup = (typeof PLAIN_GROUPS)[number]

/** One belt, pair or tube that a finding is about. */
export interface PlainCase {
  readonly finding: ShownFinding
  /** "Left lap belt"; with several seats the seat comes before it. */
  readonly who: string
  /** What was found, what is asked for, and for whom it is worst; or why there is no number. */
  readonly measured: string
}

/** Findings of one rule at one place that come to the same, for the person who sits there. */
export interface PlainFinding {
  readonly id: string
  readonly group: PlainGroup
  readonly level: RuleLevel
  readonly ruleId: string
  readonly topic: string
  /** What is so. */
  readonly fact: string
  /** What that can do to the person; what such rules are for where it is as asked. */
  readonly means: string
  /** What the number is. */
  readonly number: string
  /** What it cannot tell. */
  readonly limit: string
  /** Who asks for it, and how that is known. */
  readonly asked: string
  /** At least one, the left side first. */
  readonly cases: readonly PlainCase[]
}

const isProperty = (id: QuantityId | PropertyId): id is PropertyId =>
  (PROPERTY_IDS as readonly string[]).includes(id)

const groupOf = (finding: ShownFinding): PlainGroup => {
  switch (finding.verdict) {
    case 'broken':
      return 'outside'
    case 'unchecked':
      return 'unchecked'
    case 'tight':
      return 'close'
    case 'kept':
    case 'clear':
      return 'within'
  }
}

/** How a figure reached us, in words that need no knowledge of the trade. */
export const plainSource = ({ document, edition, status }: RuleSource): string => {
  const named = [document, edition].filter((part) => part !== '').join(', ')
  switch (status) {
    case 'read':
      return `Read in the rule book itself: ${named}.`
    case 'second-hand':
      return `As somebody else quotes the rule book; it was not read there: ${named}.`
    case 'memory':
      return `From memory of the rule book; it was not looked up: ${named}.`
    case 'common-practice':
      return 'Workshop habit; no rule book is known that says it.'
    case 'judgement':
      return 'A judgement of the makers of this program; nobody else says it.'
    case 'own':
      return 'A limit that the workshop has set itself.'
  }
}

const levelText = (level: RuleLevel): string => {
  switch (level) {
    case 'must':
      return 'Ordered.'
    case 'should':
      return 'Recommended.'
    case 'advice':
      return 'Worth knowing.'
  }
}

/** How strongly a rule asks, and where that comes from. */
export const plainAsked = ({ level, source }: Pick<Rule, 'level' | 'source'>): string =>
  `${levelText(level)} ${plainSource(source)}`

const caseOf = (finding: ShownFinding, layout: Layout): PlainCase => {
  const subject = plainSubject(finding.subject, layout)
  const isOnly = layout.places.length === 1
  return {
    finding,
    who: isOnly ? capitalised(subject) : `${placeName(finding.placeId, layout)}: ${subject}`,
    measured: measuredText(finding, layout),
  }
}

const measuredText = (finding: ShownFinding, layout: Layout): string => {
  const { quantity, value, limit, ruleId, worstSitting, problem } = finding
  const who = worstSitting === null ? '' : ` (${sittingNameUnder(ruleId, worstSitting, layout)})`
  if (value === null) return `${plainProblem(problem)}${who}`
  const unit = layout.units.length
  const asked = `asked for: ${limitText(quantity, limit, unit)}`
  return `${outsideText(quantity, value, limit, unit)}${who}; ${asked}${roomWords(finding, layout)}`
}

const roomWords = (finding: ShownFinding, layout: Layout): string => {
  if (finding.roomMm === 'pending') return '; how close that is to the limit is still being worked out'
  const least = finding.verdict === 'tight' ? leastRoom(finding) : null
  if (least === null) return ''
  return `; fixed ${roomText(Math.max(0, least.mm), layout.units.length)} further over, it would be outside`
}

const faultOf = ({ quantity, value, limit }: ShownFinding): PlainFault => {
  if (isProperty(quantity)) return plainPropertyFault(quantity, value ?? '', limit)
  const isLow = typeof value === 'number' && limit.min !== null && value < limit.min
  return plainQuantity(quantity)[isLow ? 'low' : 'high']
}

/** A purpose, not a promise: how much a limit does for it differs from rule book to rule book. */
const aimText = (aim: string): string => `Such rules are there so that ${aim}.`

const factOf = (finding: ShownFinding, group: PlainGroup): PlainFault => {
  const { aim } = isProperty(finding.quantity)
    ? plainProperty(finding.quantity)
    : plainQuantity(finding.quantity)
  switch (group) {
    case 'outside':
      return faultOf(finding)
    case 'unchecked':
      return {
        fact: 'This could not be checked.',
        means: 'That is not the same as fine: ask the workshop how it will be checked.',
      }
    case 'close':
      return {
        fact: 'Within what this rule asks for, but only just.',
        means: `${aimText(aim)} Welding and measuring are never exact; the workshop has to take care here.`,
      }
    case 'within':
      return { fact: 'Within what this rule asks for.', means: aimText(aim) }
  }
}

/** Findings that come to the same: of one rule at one place, on the same side of the limit. */
const sameKey = (finding: ShownFinding): string => {
  const { fact } = factOf(finding, groupOf(finding))
  return [finding.placeId, finding.ruleId, groupOf(finding), fact].join('/')
}

const merged = (findings: readonly ShownFinding[], layout: Layout): PlainFinding | null => {
  const [first] = findings
  const rule = first === undefined ? null : ruleOf(layout, first.ruleId)
  if (first === undefined || rule === null) return null
  const words = isProperty(first.quantity) ? plainProperty(first.quantity) : plainQuantity(first.quantity)
  const group = groupOf(first)
  return {
    id: first.id,
    group,
    level: first.level,
    ruleId: first.ruleId,
    topic: words.topic,
    ...factOf(first, group),
    number: words.number,
    limit: words.limit,
    asked: plainAsked({ level: first.level, source: first.source }),
    cases: findings.map((finding) => caseOf(finding, layout)),
  }
}

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

/** Smaller is heavier: what is ordered and broken before everything, what is only worth knowing and broken before what is close. */
const weight = ({ group, level }: PlainFinding): number =>
  PLAIN_GROUPS.indexOf(group) * LEVELS.length + LEVELS.indexOf(level)

/** Findings in plain words, the heaviest first. */
export const plainFindings = (findings: readonly ShownFinding[], layout: Layout): readonly PlainFinding[] => {
  return grouped(findings, sameKey)
    .flatMap((group) => merged(group, layout) ?? [])
    .sort((a, b) => weight(a) - weight(b))
}
