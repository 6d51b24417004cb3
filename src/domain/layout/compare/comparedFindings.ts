import { marginInside } from '../../rules/check'
import { leastRoom, type ShownFinding } from '../../rules/finding'
import type { RuleLevel } from '../../rules/rule'
import type { Layout } from '../document/layout'
import type { ShownEvaluation } from '../evaluate/evaluation'
import { matchedPlaces, matchedTubes } from './comparedParts'
import type { Matched } from './matched'

/** A variant with what is worked out of it so far. */
export interface EvaluatedVariant {
  readonly layout: Layout
  readonly evaluation: ShownEvaluation
}

/** One rule on one subject, as it comes out for each variant; null where the rule does not speak of it there. */
export interface ComparedFinding {
  /** Unique among the compared ones. */
  readonly key: string
  readonly findings: Matched<ShownFinding>
}

/** What becomes of a finding from one variant to another. */
export type FindingTurn =
  /** Kept there, broken here. */
  | 'newly-broken'
  | 'mended'
  /** Broken in both. */
  | 'further-out'
  | 'less-far-out'
  /** Kept in both. */
  | 'less-room'
  | 'more-room'
  | 'unchanged'
  /** The same verdict with another word, which is neither nearer to a limit nor further from it. */
  | 'other-word'
  /** It could be checked there and cannot be here: neither better nor worse. */
  | 'newly-unchecked'
  | 'now-checked'
  /** The rule speaks of one of them only. */
  | 'only-before'
  | 'only-after'
  /** Rooms are still being worked out. */
  | 'pending'

/** Closer than this, in mm or in the value's own unit, two are alike: well below what is shown. Our judgement. */
const ALIKE = 1e-6

/** How a difference turns out, whichever way the numbers are counted. */
const turnOf = (
  by: number,
  worse: 'further-out' | 'less-room',
  better: 'less-far-out' | 'more-room',
): FindingTurn => (Math.abs(by) <= ALIKE ? 'unchanged' : by < 0 ? worse : better)

const marginOf = ({ value, limit }: ShownFinding): number | null =>
  typeof value === 'number' && (limit.min !== null || limit.max !== null) ? marginInside(value, limit) : null

const marginTurn = (
  before: ShownFinding,
  after: ShownFinding,
  worse: 'further-out' | 'less-room',
  better: 'less-far-out' | 'more-room',
): FindingTurn => {
  const [from, to] = [marginOf(before), marginOf(after)]
  if (from !== null && to !== null) return turnOf(to - from, worse, better)
  return before.value === after.value ? 'unchanged' : 'other-word'
}

const keptTurn = (before: ShownFinding, after: ShownFinding): FindingTurn => {
  if (before.roomMm === 'pending' || after.roomMm === 'pending') return 'pending'
  const from = leastRoom({ ...before, roomMm: before.roomMm })
  const to = leastRoom({ ...after, roomMm: after.roomMm })
  return from !== null && to !== null
    ? turnOf(to.mm - from.mm, 'less-room', 'more-room')
    : marginTurn(before, after, 'less-room', 'more-room')
}

/** What becomes of a finding from `before` to `after`; null where neither variant has it. */
export const findingTurn = (before: ShownFinding | null, after: ShownFinding | null): FindingTurn | null => {
  if (before === null) return after === null ? null : 'only-after'
  if (after === null) return 'only-before'
  if (before.verdict === 'unchecked' || after.verdict === 'unchecked') {
    if (before.verdict === after.verdict) return 'unchanged'
    return after.verdict === 'unchecked' ? 'newly-unchecked' : 'now-checked'
  }
  if (before.verdict === 'broken')
    return after.verdict === 'broken' ? marginTurn(before, after, 'further-out', 'less-far-out') : 'mended'
  return after.verdict === 'broken' ? 'newly-broken' : keptTurn(before, after)
}

/** Whether a turn is for the better or for the worse of whoever sits there; null where it is neither, or not known. */
export const turnSide = (turn: FindingTurn): 'better' | 'worse' | null => {
  switch (turn) {
    case 'mended':
    case 'less-far-out':
    case 'more-room':
      return 'better'
    case 'newly-broken':
    case 'further-out':
    case 'less-room':
      return 'worse'
    case 'unchanged':
    case 'other-word':
    case 'newly-unchecked':
    case 'now-checked':
    case 'only-before':
    case 'only-after':
    case 'pending':
      return null
  }
}

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']
const TURNS: readonly FindingTurn[] = [
  'newly-broken',
  'mended',
  'newly-unchecked',
  'now-checked',
  'only-after',
  'only-before',
  'further-out',
  'less-far-out',
  'less-room',
  'more-room',
  'other-word',
  'pending',
  'unchanged',
]

const levelRank = ({ findings }: ComparedFinding): number =>
  Math.min(...findings.flatMap((finding) => (finding === null ? [] : [LEVELS.indexOf(finding.level)])))

/**
 * Every finding of several variants beside the same one of the others: the same rule, the same place, the same subject. What changes most
 * against the one at `base` comes first (broken in one and not in another, then what only one of them is asked, then distances);
 * within it a must before a should before advice.
 */
export const comparedFindings = (
  variants: readonly EvaluatedVariant[],
  base: number,
): readonly ComparedFinding[] => {
  const rows = new Map<string, (ShownFinding | null)[]>()
  const keyOf = findingKeys(variants.map(({ layout }) => layout))
  for (const [index, { evaluation }] of variants.entries()) {
    for (const finding of evaluation.places.flatMap(({ findings }) => findings)) {
      const key = keyOf(index, finding)
      const row = rows.get(key) ?? variants.map(() => null)
      row[index] = finding
      rows.set(key, row)
    }
  }
  const turnRank = ({ findings }: ComparedFinding): number =>
    Math.min(
      ...findings.map((finding) => {
        const turn = findingTurn(findings[base] ?? null, finding)
        return turn === null ? TURNS.length : TURNS.indexOf(turn)
      }),
    )
  return [...rows]
    .map(([key, findings]): ComparedFinding => ({ key, findings }))
    .toSorted((a, b) => turnRank(a) - turnRank(b) || levelRank(a) - levelRank(b))
}

/** What a finding is called in every variant: places and tubes may have other ids there. */
const findingKeys = (layouts: readonly Layout[]): ((variant: number, finding: ShownFinding) => string) => {
  const places = matchedPlaces(layouts)
  const tubes = matchedTubes(layouts)
  return (variant, { placeId, ruleId, subject }) => {
    const place = places.findIndex((row) => row[variant]?.id === placeId)
    const tubeId = subject.startsWith('tube:') ? subject.slice('tube:'.length) : null
    const about = tubeId === null ? subject : `tube:${tubes.findIndex((row) => row[variant]?.id === tubeId)}`
    return `${place}/${ruleId}/${about}`
  }
}

/** How the findings of one variant add up. Counts, and never one number for all: a broken must is not two broken shoulds. */
export interface FindingTally {
  readonly broken: Readonly<Record<RuleLevel, number>>
  readonly unchecked: number
  readonly tight: number
  /** Kept, clear or not yet known by how much. */
  readonly kept: number
  /** The kept finding nearest to its limit, by the room that is known; null while none is. */
  readonly nearest: { readonly finding: ShownFinding; readonly mm: number } | null
  /** Rooms of some are still being worked out. */
  readonly isPending: boolean
}

export const findingTally = (findings: readonly ShownFinding[]): FindingTally => {
  const count = (isSo: (finding: ShownFinding) => boolean): number => findings.filter(isSo).length
  const broken = (level: RuleLevel): number =>
    count((finding) => finding.verdict === 'broken' && finding.level === level)
  let nearest: FindingTally['nearest'] = null
  for (const finding of findings) {
    if (finding.verdict !== 'tight' && finding.verdict !== 'clear') continue
    const room = leastRoom(finding)
    if (room !== null && (nearest === null || room.mm < nearest.mm)) nearest = { finding, mm: room.mm }
  }
  return {
    broken: { must: broken('must'), should: broken('should'), advice: broken('advice') },
    unchecked: count(({ verdict }) => verdict === 'unchecked'),
    tight: count(({ verdict }) => verdict === 'tight'),
    kept: count(({ verdict }) => verdict === 'kept' || verdict === 'clear'),
    nearest,
    isPending: findings.some(({ roomMm }) => roomMm === 'pending'),
  }
}
