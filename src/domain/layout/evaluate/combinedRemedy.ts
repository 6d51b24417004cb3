import type { Finding, Remedy, RemedyStep } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import type { Subject } from '../../straps/quantity'
import { contradictionOf } from '../../zones/contradiction'
import { type Move, moveSteps } from '../../zones/move'
import { nearestMoves } from '../../zones/nearestMove'
import { movesInto, movesIntoAll } from '../../zones/remedy'
import { homeElevation } from '../../zones/rulePlane'
import { ruleSubject } from '../../zones/subject'
import { turnedTab } from '../../zones/turnedTab'
import type { ZoneCase } from '../../zones/zone'
import type { Layout, Place } from '../document/layout'
import { appliedRemedy } from '../edit/remedy'
import { keptLimits, limitKey } from './keptLimits'
import { casesOf, type PlaceCase } from './quantityFindings'
import { strapOfSubject, zoneCases } from './ruleContexts'
import { solvedSittings } from './solvedSittings'

type Steps = readonly RemedyStep[]

/** A layout and the limits that are kept in it, over all places. */
interface Tried {
  readonly layout: Layout
  readonly kept: ReadonlySet<string>
}

/** What is tried for one place: the layout as drawn and everything tried so far, since both straps of a pair ask for the same. */
interface Trials {
  readonly placeCase: PlaceCase
  readonly before: Tried
  readonly known: Map<string, Tried>
}

const keptIn = (layout: Layout, rules: readonly QuantityRule[]): ReadonlySet<string> =>
  new Set(
    layout.places.flatMap((place) =>
      keptLimits(layout, place, rules, solvedSittings(layout, place)).map(limitKey),
    ),
  )

const tried = ({ placeCase, before, known }: Trials, finding: Finding, steps: Steps): Tried => {
  const key = JSON.stringify(steps)
  const found = known.get(key)
  if (found !== undefined) return found
  const layout = appliedRemedy(before.layout, { ...finding, remedy: { kind: 'combined', steps } })
  const fresh = { layout, kept: keptIn(layout, placeCase.rules) }
  known.set(key, fresh)
  return fresh
}

/** How far everything moves, mm: moves along two axes count as the straight way between. */
const sizeMm = (moves: readonly Move[]): number => Math.hypot(...moves.map(({ byMm }) => byMm))

/** More than this is no longer one change that somebody would make. Our judgement. */
const MOST_STEPS = 5

/** What would mend one more limit: the tab turned into its new line of pull, or tabs moved along their bar. */
const mendingStep = (placeCase: PlaceCase, now: Tried, key: string): RemedyStep | null => {
  const place = now.layout.places.find(({ id }) => id === placeCase.place.id)
  if (place === undefined) return null
  const scene = { belt: place.belt, anchors: place.anchors, tubes: now.layout.tubes, seat: place.seat }
  for (const rule of placeCase.rules) {
    const subject = ruleSubjects(rule, scene).find(
      (each) => limitKey({ placeId: place.id, ruleId: rule.id, subject: each }) === key,
    )
    if (subject === undefined) continue
    const cases = zoneCases(now.layout, place, solvedSittings(now.layout, place))
    const [zoneCase] = casesOf({ ...placeCase, layout: now.layout, place, zoneCases: cases }, subject)
    return zoneCase === undefined ? null : mendOf(rule, zoneCase, cases, place, subject)
  }
  return null
}

const mendOf = (
  rule: QuantityRule,
  zoneCase: ZoneCase,
  cases: PlaceCase['zoneCases'],
  place: Place,
  subject: Subject,
): RemedyStep | null => {
  if (rule.quantity === 'tab-twist') {
    const strap = strapOfSubject(place, subject)
    const own = strap === null ? undefined : cases.get(strap)
    const turn = own && turnedTab(rule, own)
    return turn?.kind === 'turn-tab' ? turn : null
  }
  const across = movesInto(rule, zoneCase).find(
    ({ direction }) => direction === 'inward' || direction === 'outward',
  )
  const steps = across === undefined ? [] : moveSteps(across)
  return steps.length === 1 ? (steps[0] ?? null) : null
}

/** The steps with whatever else it takes so that nothing that is kept as drawn is broken; null when that does not succeed. */
const completed = (trials: Trials, finding: Finding, first: Steps): Steps | null => {
  const wanted = limitKey(finding)
  let steps = first
  while (steps.length <= MOST_STEPS) {
    const now = tried(trials, finding, steps)
    if (!now.kept.has(wanted)) return null
    const broken = [...trials.before.kept].find((key) => !now.kept.has(key))
    if (broken === undefined) return steps
    const mend = mendingStep(trials.placeCase, now, broken)
    if (mend === null) return null
    steps = [...steps, mend]
  }
  return null
}

/** The rules about an anchor that are kept as drawn, besides one. */
const keptRulesOf = ({ placeCase, before }: Trials, rule: QuantityRule, zoneCase: ZoneCase) =>
  placeCase.rules.filter((other) => {
    const subject = ruleSubject(other, zoneCase)
    const key = subject && limitKey({ placeId: placeCase.place.id, ruleId: other.id, subject })
    return other !== rule && key !== null && before.kept.has(key)
  })

/** At most this many beginnings are looked into; each costs a few solutions of every sitting. */
const MOST_BEGINNINGS = 12

const beginnings = (trials: Trials, rule: QuantityRule, zoneCase: ZoneCase): readonly Steps[] => {
  const others = keptRulesOf(trials, rule, zoneCase)
  const singles = movesInto(rule, zoneCase)
  const further = movesIntoAll(singles, [rule, ...others], zoneCase)
  const inZone = (['side', 'top'] as const).flatMap((elevation) => {
    const { alone, together } = nearestMoves(rule, others, zoneCase, elevation)
    return [...together.slice(0, 4), ...alone.slice(0, 1)]
  })
  const all = [...[...singles, ...further].map((move) => [move]), ...inZone]
  const found = new Map(all.map((moves) => [JSON.stringify(moves), moves]))
  return [...found.values()]
    .toSorted((a, b) => sizeMm(a) - sizeMm(b))
    .slice(0, MOST_BEGINNINGS)
    .map((moves) => moves.flatMap(moveSteps))
}

const combinedRemedy = (trials: Trials, finding: Finding, rule: QuantityRule): Remedy | null => {
  for (const zoneCase of casesOf(trials.placeCase, finding.subject as Subject)) {
    for (const first of beginnings(trials, rule, zoneCase)) {
      const steps = completed(trials, finding, first)
      const [only] = steps ?? []
      if (steps === null || only === undefined) continue
      return steps.length === 1 ? only : { kind: 'combined', steps }
    }
  }
  return null
}

/** Whether a remedy already clears its finding and breaks nothing. */
const isEnough = (remedy: Remedy): boolean => {
  switch (remedy.kind) {
    case 'move-anchors':
    case 'move-tube':
      return remedy.breaks === undefined
    case 'none':
      return false
    case 'turn-tab':
    case 'combined':
    case 'change-property':
    case 'add-anchor':
      return true
  }
}

const hasNoNumber = (
  { sittings }: PlaceCase,
  finding: Finding,
  ruleId: string,
  sittingId: string,
): boolean => {
  const solved = sittings.find(({ sitting }) => sitting.id === sittingId)
  if (ruleId !== finding.ruleId || solved === undefined) return false
  return !solved.solved.quantities.some(
    ({ id, subject }) => id === finding.quantity && subject === finding.subject,
  )
}

const withContradiction = (
  trials: Trials,
  finding: Finding,
  rule: QuantityRule,
  remedy: Extract<Remedy, { kind: 'none' }>,
): Remedy => {
  for (const zoneCase of casesOf(trials.placeCase, finding.subject as Subject)) {
    const contradiction = contradictionOf(
      rule,
      keptRulesOf(trials, rule, zoneCase),
      zoneCase,
      homeElevation(rule, zoneCase.mirrored),
    )
    // A strap without a path in a sitting has no place there for another reason than this rule.
    const isPathless = contradiction?.rules.some(({ ruleId, sittingId }) =>
      hasNoNumber(trials.placeCase, finding, ruleId, sittingId),
    )
    if (contradiction !== null && isPathless !== true) return { ...remedy, contradiction }
  }
  return remedy
}

/**
 * The findings of one place; where no single move clears one without breaking another limit, the smallest combined change found that
 * does, carried out and solved anew before it is offered; where none does, which rules and sittings contradict each other.
 */
export const withCombinedRemedies = (
  placeCase: PlaceCase,
  findings: readonly Finding[],
): readonly Finding[] => {
  const { layout, rules } = placeCase
  let trials: Trials | null = null
  return findings.map((finding) => {
    const rule = rules.find(({ id }) => id === finding.ruleId)
    const { remedy } = finding
    if (rule === undefined || finding.verdict !== 'broken' || remedy === null || isEnough(remedy))
      return finding
    trials ??= { placeCase, before: { layout, kept: keptIn(layout, rules) }, known: new Map() }
    const combined = combinedRemedy(trials, finding, rule)
    if (combined !== null) return { ...finding, remedy: combined }
    return remedy.kind === 'none'
      ? { ...finding, remedy: withContradiction(trials, finding, rule, remedy) }
      : finding
  })
}
