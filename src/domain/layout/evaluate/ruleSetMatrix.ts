import { isWithin } from '../../rules/check'
import type { Finding, Limit } from '../../rules/finding'
import type { PropertyId, QuantityRule, Rule, RuleSet } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import type { QuantityId } from '../../straps/quantity'
import type { Layout, Place } from '../document/layout'
import { ruleSetsOf } from '../document/ruleSetOf'
import { propertyFindings } from './propertyFindings'
import { readingOf } from './reading'
import { type SolvedSitting, sittingsUnder } from './solvedSittings'

type Measured = QuantityId | PropertyId

/** What one rule says about one subject over all sittings; without room, so nothing here is `tight`. */
export interface MatrixEntry {
  readonly setId: string
  readonly rule: Exclude<Rule, { kind: 'stated' }>
  readonly limit: Limit
  /** The worst value over the sittings in which the rule speaks; null when one of them has none and no other breaks it. */
  readonly value: number | string | null
  readonly verdict: 'broken' | 'clear' | 'unchecked'
}

/**
 * How the sets stand to each other on one row. `no-value`: whatever the value, some limit is broken; `split`: as drawn some are
 * kept and others broken; otherwise all say the same.
 */
export type Agreement = 'no-value' | 'split' | 'kept' | 'broken' | 'unchecked'

/** One thing measured on one part, with everything that any set says about it. */
export interface MatrixRow {
  readonly measured: Measured
  readonly subject: Finding['subject']
  /** In the order of the sets; a set may say several things. */
  readonly entries: readonly MatrixEntry[]
  readonly agreement: Agreement
}

export interface RuleSetMatrix {
  /** The sets that say something about this place, in the order they are listed. */
  readonly sets: readonly RuleSet[]
  readonly rows: readonly MatrixRow[]
}

interface Found {
  readonly subject: Finding['subject']
  readonly value: number | string | null
  readonly verdict: MatrixEntry['verdict']
}

const foundOnStraps = (
  layout: Layout,
  place: Place,
  sittings: readonly SolvedSitting[],
  rule: QuantityRule,
): readonly Found[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  return ruleSubjects(rule, scene).flatMap((subject): readonly Found[] => {
    const reading = readingOf({ layout, place, sittings }, rule, subject)
    if (reading === null) return []
    const { worst, missing } = reading
    if (worst !== null && !isWithin(worst.value, rule))
      return [{ subject, value: worst.value, verdict: 'broken' }]
    // A sitting without a number is never clear, however good the others are.
    if (worst === null || missing !== null) return [{ subject, value: null, verdict: 'unchecked' }]
    return [{ subject, value: worst.value, verdict: 'clear' }]
  })
}

const foundBy = (
  layout: Layout,
  place: Place,
  sittings: readonly SolvedSitting[],
  rule: MatrixEntry['rule'],
): readonly Found[] =>
  rule.kind === 'quantity'
    ? foundOnStraps(layout, place, sittings, rule)
    : propertyFindings(layout, place, rule).map(({ subject, value, verdict }) => ({
        subject,
        value,
        verdict: verdict === 'broken' ? 'broken' : 'clear',
      }))

/** Whether some value keeps every limit: closed intervals that have a point in common, or a word that all want. */
const isKeepable = (limits: readonly Limit[]): boolean => {
  const lowest = Math.max(...limits.map(({ min }) => min ?? Number.NEGATIVE_INFINITY))
  const highest = Math.min(...limits.map(({ max }) => max ?? Number.POSITIVE_INFINITY))
  const wanted = limits.flatMap((limit) => (limit.wanted === null ? [] : [limit.wanted]))
  const [first] = wanted
  const hasWord = first === undefined || first.some((word) => wanted.every((words) => words.includes(word)))
  return lowest <= highest && hasWord
}

const agreementOf = (entries: readonly MatrixEntry[]): Agreement => {
  if (!isKeepable(entries.map(({ limit }) => limit))) return 'no-value'
  const verdicts = new Set(entries.map(({ verdict }) => verdict))
  if (verdicts.has('broken')) return verdicts.has('clear') ? 'split' : 'broken'
  return verdicts.has('unchecked') ? 'unchecked' : 'kept'
}

/**
 * One place held against every rule set that the layout could choose, all at once. Rules that are only stated say nothing here.
 * Values and verdicts are those that each set's findings would have, except that what is near a limit is not told apart.
 */
export const ruleSetMatrix = (layout: Layout, place: Place): RuleSetMatrix => {
  const sittingsOfSet = sittingsUnder(layout, place)
  const sets = ruleSetsOf(layout)
  const rows = new Map<string, Omit<MatrixRow, 'agreement'>>()
  for (const set of sets) {
    const sittings = sittingsOfSet(set)
    for (const rule of set.rules) {
      if (rule.kind === 'stated') continue
      const measured = rule.kind === 'quantity' ? rule.quantity : rule.property
      const limit = { min: rule.min, max: rule.max, wanted: rule.kind === 'property' ? rule.wanted : null }
      for (const { subject, value, verdict } of foundBy(layout, place, sittings, rule)) {
        const entry: MatrixEntry = { setId: set.id, rule, limit, value, verdict }
        const key = `${measured}/${subject}`
        rows.set(key, { measured, subject, entries: [...(rows.get(key)?.entries ?? []), entry] })
      }
    }
  }
  const speaking = new Set([...rows.values()].flatMap(({ entries }) => entries.map(({ setId }) => setId)))
  return {
    sets: sets.filter(({ id }) => speaking.has(id)),
    rows: [...rows.values()].map((row) => ({ ...row, agreement: agreementOf(row.entries) })),
  }
}

/** The part of a matrix that some sets say; rows that none of them speaks about are left out and agreement is theirs alone. */
export const matrixOfSets = (matrix: RuleSetMatrix, setIds: ReadonlySet<string>): RuleSetMatrix => ({
  sets: matrix.sets.filter(({ id }) => setIds.has(id)),
  rows: matrix.rows.flatMap((row) => {
    const entries = row.entries.filter(({ setId }) => setIds.has(setId))
    return entries.length === 0 ? [] : [{ ...row, entries, agreement: agreementOf(entries) }]
  }),
})
