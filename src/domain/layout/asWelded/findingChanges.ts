import type { Finding, ShownFinding } from '../../rules/finding'
import type { RuleLevel } from '../../rules/rule'
import { STRAP_IDS, type StrapId, strapFamily, strapSide } from '../../straps/strap'
import type { WeldedAnchor } from './measuredLayout'

/** What became of a finding between the plan and the car; findings that stayed clear or tight are no change. */
export const CHANGE_KINDS = [
  'newly-broken',
  /** It was checked in the plan and cannot be on the car. */
  'newly-unchecked',
  'still-broken',
  'still-unchecked',
  'newly-tight',
  /** It was broken or unchecked in the plan and is neither on the car. */
  'cleared',
  /** It was broken or unchecked in the plan, and its rule does not speak of the car as welded. */
  'silent',
] as const
export type ChangeKind = (typeof CHANGE_KINDS)[number]

/** One finding of the plan beside the same one of the car as welded. */
export interface FindingChange {
  readonly kind: ChangeKind
  /** Null when the rule did not speak of the plan, or of it only. */
  readonly planned: ShownFinding | null
  readonly welded: Finding | null
  /** Anchors that the finding depends on and that were not measured, or not their angles: for those the plan was taken. */
  readonly assumed: readonly WeldedAnchor[]
}

const isSettled = ({ verdict }: ShownFinding): boolean => verdict !== 'broken' && verdict !== 'unchecked'

const changeKind = (planned: ShownFinding | null, welded: Finding | null): ChangeKind | null => {
  if (welded === null) return planned === null || isSettled(planned) ? null : 'silent'
  switch (welded.verdict) {
    case 'broken':
      return planned?.verdict === 'broken' ? 'still-broken' : 'newly-broken'
    case 'unchecked':
      return planned?.verdict === 'unchecked' ? 'still-unchecked' : 'newly-unchecked'
    case 'tight':
      if (planned?.verdict === 'clear') return 'newly-tight'
      return planned === null || isSettled(planned) ? null : 'cleared'
    case 'clear':
      return planned === null || isSettled(planned) ? null : 'cleared'
  }
}

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

/** Worst first: by kind, within it a must before a should before advice; otherwise in the order of the findings. */
const ordered = (changes: readonly FindingChange[]): readonly FindingChange[] => {
  const levelOf = ({ planned, welded }: FindingChange): number =>
    LEVELS.indexOf((welded ?? planned)?.level ?? 'advice')
  return changes.toSorted(
    (a, b) => CHANGE_KINDS.indexOf(a.kind) - CHANGE_KINDS.indexOf(b.kind) || levelOf(a) - levelOf(b),
  )
}

/**
 * What the measured positions change of the findings of the plan, and what is broken or unchecked either way. Rules and subjects
 * are matched by the finding's id. `anchors`: those of the measured layout.
 */
export const findingChanges = (
  planned: readonly ShownFinding[],
  welded: readonly Finding[],
  anchors: readonly WeldedAnchor[],
): readonly FindingChange[] => {
  const plannedOf = new Map(planned.map((finding) => [finding.id, finding]))
  const weldedIds = new Set(welded.map(({ id }) => id))
  const pairs: readonly (readonly [ShownFinding | null, Finding | null])[] = [
    ...welded.map((finding) => [plannedOf.get(finding.id) ?? null, finding] as const),
    ...planned.filter(({ id }) => !weldedIds.has(id)).map((finding) => [finding, null] as const),
  ]
  const changes = pairs.flatMap(([before, after]): readonly FindingChange[] => {
    const kind = changeKind(before, after)
    const finding = after ?? before
    return kind === null || finding === null
      ? []
      : [{ kind, planned: before, welded: after, assumed: assumedAnchors(finding, anchors) }]
  })
  return ordered(changes)
}

/** Quantities that hang on how a tab's plane or an eye's shank is turned, not only on where it is. */
const OF_THE_PLANE: readonly Finding['quantity'][] = ['tab-twist', 'shank-angle']

/** Whether the turn and the lean of what was measured are known; nothing measures an eye's shank, and a wrap has neither. */
const isPlaneMeasured = ({ mount, reading }: WeldedAnchor): boolean =>
  mount.kind === 'wrap' ||
  (mount.kind === 'tab' && reading?.planDeg?.ok === true && reading.leanDeg?.ok === true)

/**
 * Anchors that a finding depends on and that stand where they were planned because nothing better is known; for a finding of a tab's plane
 * or a shank also those whose angles were not measured. Every strap runs to the buckle, and that lies on the lap strap: so the lap anchors
 * count for all of them.
 */
export const assumedAnchors = (
  { placeId, subject, quantity }: Pick<Finding, 'placeId' | 'subject' | 'quantity'>,
  anchors: readonly WeldedAnchor[],
): readonly WeldedAnchor[] => {
  if (subject === 'head' || subject.startsWith('tube:')) return []
  const isWhole = subject === 'belt' || subject === 'body'
  const own = isWhole ? [] : strapsOf(subject)
  const isOfThePlane = OF_THE_PLANE.includes(quantity)
  return anchors.filter((welded) => {
    const { placeId: place, anchor, standing } = welded
    if (place !== placeId) return false
    const isOwn = isWhole || own.includes(anchor.strap)
    return standing === 'measured'
      ? isOwn && isOfThePlane && !isPlaneMeasured(welded)
      : isOwn || strapFamily(anchor.strap) === 'lap'
  })
}

/** The straps of a pair, or the one that the subject is; none for what is no strap. */
const strapsOf = (subject: Finding['subject']): readonly StrapId[] =>
  STRAP_IDS.filter(
    (strap) =>
      strap === subject || (subject === `${strapFamily(strap)}-pair` && strapSide(strap) !== 'centre'),
  )
