import { bodyOf } from '../../../body/body'
import { ruleApplies } from '../../../rules/applies'
import { isWithin, marginInside } from '../../../rules/check'
import type { Finding } from '../../../rules/finding'
import type { QuantityRule } from '../../../rules/rule'
import { strapsOfPair } from '../../../rules/subjects'
import type { ToleranceCase, WeldTolerance } from '../../../rules/tolerance'
import type { Subject } from '../../../straps/quantity'
import type { StrapId } from '../../../straps/strap'
import type { ZoneCase } from '../../../zones/zone'
import type { PlaceCase } from '../quantityFindings'
import { ruleContext, strapOfSubject } from '../ruleContexts'
import { quantityIn } from '../solvedSittings'
import { decidingAnchors, type ErrorVariable, errorVariables } from './errorVariables'
import { offSolved, type Shares, type UncertainSitting, uncertainSitting } from './offSitting'
import { twistChance } from './twistChance'
import { extremeWithin } from './worstCase'
import { zoneChance } from './zoneChance'
import { zoneStarts } from './zoneStarts'

interface Question {
  readonly placeCase: PlaceCase
  readonly rule: QuantityRule
  readonly subject: Subject
  readonly tolerance: WeldTolerance
  /** Every sitting of the place. */
  readonly sittings: readonly UncertainSitting[]
  readonly variables: readonly ErrorVariable[]
  readonly straps: readonly string[]
  /** The subject's own anchor; of a pair the first, which then moves alone. Null for the head. */
  readonly zoneCase: ZoneCase | null
}

interface WorstWithin {
  readonly value: number | null
  readonly sittingId: string
}

/** The case of the subject's own anchor. A pair's tabs are each off by themselves, so that its case is never mirrored. */
const ownCase = ({ place, zoneCases }: PlaceCase, subject: Subject): ZoneCase | null => {
  const strap = strapOfSubject(place, subject)
  if (strap !== null) return zoneCases.get(strap) ?? null
  const [first] = strapsOfPair(subject)
  const zoneCase = first === undefined ? undefined : zoneCases.get(first)
  return zoneCase === undefined ? null : { ...zoneCase, mirrored: false }
}

const speaksIn = ({ placeCase, rule, subject }: Question, { solved }: UncertainSitting): boolean =>
  ruleApplies(rule, ruleContext(placeCase.layout, placeCase.place, solved.sitting, subject))

/** The worst value of one sitting in which the rule speaks: its smallest against a least value, its largest against a most. */
const worstIn = (question: Question, sitting: UncertainSitting, starts: readonly Shares[]): number | null => {
  const { rule, subject, straps, variables } = question
  const valueWith = (shares: Shares): number | null =>
    quantityIn({ solved: offSolved(sitting, straps, variables, shares) }, rule.quantity, subject)
  const extremes = [
    ...(rule.min === null ? [] : [-1 as const]),
    ...(rule.max === null ? [] : [1 as const]),
  ].map((sign) => extremeWithin({ valueWith, count: variables.length, sign, starts }).value)
  let worst: number | null = null
  for (const value of extremes) {
    if (value === null) return null
    if (worst === null || marginInside(value, rule) < marginInside(worst, rule)) worst = value
  }
  return worst
}

/** The region of one wrap of a pair is looked for with the strap solver itself, a thousand times slower than any other. */
const isSlowToTrace = (rule: QuantityRule, { anchor }: ZoneCase): boolean =>
  rule.quantity === 'shoulder-spacing' && anchor.mount.kind === 'wrap'

const worstWithin = (question: Question): WorstWithin | null => {
  const { rule, zoneCase, tolerance, variables } = question
  const starts =
    zoneCase === null || isSlowToTrace(rule, zoneCase) ? [] : zoneStarts(rule, zoneCase, tolerance, variables)
  let worst: WorstWithin | null = null
  for (const sitting of question.sittings) {
    if (!speaksIn(question, sitting)) continue
    const value = worstIn(question, sitting, starts)
    const sittingId = sitting.solved.sitting.id
    if (value === null) return { value, sittingId }
    if (worst?.value == null || marginInside(value, rule) < marginInside(worst.value, rule))
      worst = { value, sittingId }
  }
  return worst
}

/** Below this a chance comes from errors that the method leaves out, not from those it counts. */
const NO_CHANCE = 1e-9

const chanceOf = (question: Question, finding: Finding, canLeave: boolean): number | null => {
  const { rule, tolerance, zoneCase, sittings, straps, variables, subject, placeCase } = question
  const { spread } = tolerance
  if (spread === 'worst-case') return null
  if (!canLeave) return 0
  // What is broken as drawn has to be moved first; its chance would be of no use.
  if (zoneCase === null || finding.verdict === 'broken' || isSlowToTrace(rule, zoneCase)) return null
  const speaking = sittings.filter((sitting) => speaksIn(question, sitting))
  const isPair =
    strapsOfPair(subject).length > 0 && decidingAnchors(placeCase.place, rule.quantity, subject).length === 2
  const chance =
    rule.quantity === 'tab-twist'
      ? twistChance({ rule, anchor: zoneCase.anchor, sittings: speaking, straps, variables, spread })
      : zoneChance({ rule, zoneCase, tolerance, spread, isPair, sittings })
  return chance !== null && chance < NO_CHANCE ? null : chance
}

const LAPS: readonly StrapId[] = ['lap-left', 'lap-right']

const toleranceCase = (
  placeCase: PlaceCase,
  finding: Finding,
  tolerance: WeldTolerance,
  sittings: readonly UncertainSitting[],
): ToleranceCase | null => {
  const rule = placeCase.rules.find(({ id }) => id === finding.ruleId)
  if (rule === undefined || typeof finding.value !== 'number') return null
  // A quantity rule's subject is never the belt or a tube.
  const subject = finding.subject as Subject
  const deciding = decidingAnchors(placeCase.place, rule.quantity, subject)
  const question: Question = {
    placeCase,
    rule,
    subject,
    tolerance,
    sittings,
    variables: errorVariables(placeCase.place, tolerance, rule.quantity, subject),
    // The lap straps always: without them there is no buckle to lead anything to.
    straps: [...new Set([...deciding.map(({ strap }) => strap), ...LAPS])],
    zoneCase: ownCase(placeCase, subject),
  }
  const worst = worstWithin(question)
  if (worst === null) return null
  const canLeave = worst.value === null || !isWithin(worst.value, rule)
  return {
    worstValue: worst.value,
    worstSitting: worst.sittingId,
    canLeave,
    chance: chanceOf(question, finding, canLeave),
  }
}

/** The findings of a place, each that has a number with what the layout's weld and measuring error can make of it. */
export const withToleranceCases = (
  placeCase: PlaceCase,
  findings: readonly Finding[],
): readonly Finding[] => {
  const { tolerance } = placeCase.layout
  if (tolerance === undefined) return findings
  const bodies = new Map(
    placeCase.place.occupants.map((occupant) => [occupant.id, bodyOf(occupant)] as const),
  )
  const sittings = placeCase.sittings.flatMap((solved) => {
    const body = bodies.get(solved.sitting.occupantId)
    return body === undefined ? [] : [uncertainSitting(solved, body)]
  })
  return findings.map((finding) => {
    const withinTolerance = toleranceCase(placeCase, finding, tolerance, sittings)
    return withinTolerance === null ? finding : { ...finding, withinTolerance }
  })
}
