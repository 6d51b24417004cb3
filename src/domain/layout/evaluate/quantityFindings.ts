import { bodyMassIndex } from '../../body/lapFlesh'
import { isWithin } from '../../rules/check'
import {
  type Finding,
  type Remedy,
  type ShownFinding,
  leastRoom,
  TIGHT_ROOM_MM,
  type Verdict,
} from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects, strapsOfPair } from '../../rules/subjects'
import type { PathProblem } from '../../straps/path'
import type { Subject } from '../../straps/quantity'
import type { StrapId } from '../../straps/strap'
import { remedyFor } from '../../zones/remedy'
import { roomInPlaneMm, ruleRoomMm } from '../../zones/room'
import { homeElevation, isDecidedIn } from '../../zones/rulePlane'
import type { ZoneCase } from '../../zones/zone'
import type { Layout, Place } from '../document/layout'
import { readingOf } from './reading'
import { strapOfSubject } from './ruleContexts'
import { quantityIn, type SolvedSitting } from './solvedSittings'

/** A place with everything that its findings are made from. */
export interface PlaceCase {
  readonly layout: Layout
  readonly place: Place
  readonly sittings: readonly SolvedSitting[]
  readonly zoneCases: ReadonlyMap<StrapId, ZoneCase>
  /** All quantity rules of the set: a remedy that breaks none of them is preferred. */
  readonly rules: readonly QuantityRule[]
  /** `what-moves`: no remedies are looked for. */
  readonly extent: 'everything' | 'what-moves'
}

/** The anchors whose position can decide about a subject: its own; one of a mirrored pair; both of a split pair. */
export const casesOf = ({ place, zoneCases }: PlaceCase, subject: Subject): readonly ZoneCase[] => {
  const strap = strapOfSubject(place, subject)
  const straps = strap === null ? strapsOfPair(subject) : [strap]
  const found = straps.flatMap((each) => zoneCases.get(each) ?? [])
  const mirrored = found.find((zoneCase) => zoneCase.mirrored)
  return mirrored === undefined ? found : [mirrored]
}

type RoomIn = (zoneCase: ZoneCase) => number | null

/** Room of a subject: the least that any of its anchors has, or, when the rule is broken, the shortest way back in. */
const roomOf = (cases: readonly ZoneCase[], isBroken: boolean, roomIn: RoomIn): number | null => {
  const rooms = cases.flatMap((zoneCase) => roomIn(zoneCase) ?? [])
  if (rooms.length === 0) return null
  return isBroken ? Math.max(...rooms) : Math.min(...rooms)
}

/** The same in the elevation that the rule does not live in. */
const otherRoomOf = (
  rule: QuantityRule,
  cases: readonly ZoneCase[],
  isBroken: boolean,
): Pick<Finding, 'otherRoom'> => {
  const [first] = cases
  if (first === undefined) return {}
  const elevation = homeElevation(rule, first.mirrored) === 'side' ? 'top' : 'side'
  const mm = roomOf(cases, isBroken, (zoneCase) => roomInPlaneMm(rule, zoneCase, elevation))
  return mm === null ? {} : { otherRoom: { elevation, mm } }
}

const moveLengthMm = (remedy: Remedy): number =>
  remedy.kind === 'move-anchors' || remedy.kind === 'move-tube' ? remedy.byMm : 0

/** The smallest remedy over the subject's anchors; one that does something before one that says why nothing does. */
const remedyOf = (rule: QuantityRule, cases: readonly ZoneCase[], rules: readonly QuantityRule[]): Remedy => {
  const remedies = cases.map((zoneCase) => remedyFor({ rule, zoneCase, rules }))
  const able = remedies.filter(({ kind }) => kind !== 'none')
  const smallest = able.toSorted((a, b) => moveLengthMm(a) - moveLengthMm(b))[0]
  return (
    smallest ??
    remedies[0] ?? {
      kind: 'none',
      reason: 'No anchor position decides this; change the seat, the tubes or the belt.',
    }
  )
}

/** That a number which a sitting has says too little of its person (see `readingOf`). */
const fleshProblem = (
  { place }: PlaceCase,
  subject: Subject,
  { sitting }: SolvedSitting,
): PathProblem | null => {
  const strap = strapOfSubject(place, subject)
  const occupant = place.occupants.find(({ id }) => id === sitting.occupantId)
  if (strap === null || occupant === undefined) return null
  return { kind: 'flesh-not-measured', strap, bodyMassIndex: bodyMassIndex(occupant) }
}

const problemOf = (
  placeCase: PlaceCase,
  { quantity }: QuantityRule,
  subject: Subject,
  missing: SolvedSitting | null,
): { readonly problem: PathProblem | null; readonly sittingId: string | null } => {
  if (missing === null) return { problem: null, sittingId: null }
  const straps: readonly string[] = [subject, ...strapsOfPair(subject)]
  const hasNumber = quantityIn(missing, quantity, subject) !== null
  const problem = hasNumber
    ? fleshProblem(placeCase, subject, missing)
    : (missing.solved.problems.find(({ strap }) => straps.includes(strap)) ?? null)
  return { problem, sittingId: missing.sitting.id }
}

/** What to do about a person of whom a number says too little. */
const FLESH_REASON =
  'Feel for the front hip bones of the person in the seat, see how the strap lies on them, and type the flesh over them under People.'

const uncheckedRemedy = (problem: PathProblem | null): Remedy =>
  problem?.kind === 'anchor-missing'
    ? { kind: 'add-anchor', strap: problem.strap }
    : problem?.kind === 'flesh-not-measured'
      ? { kind: 'none', reason: FLESH_REASON }
      : {
          kind: 'none',
          reason: 'First mend what keeps the strap from having a path; then it can be checked.',
        }

const baseFinding = ({ place }: PlaceCase, rule: QuantityRule, subject: Subject) => ({
  id: `${place.id}/${rule.id}/${subject}`,
  ruleId: rule.id,
  quantity: rule.quantity,
  placeId: place.id,
  subject,
  limit: { min: rule.min, max: rule.max, wanted: null },
  level: rule.level,
  source: rule.source,
})

/** What the numbers alone say of one subject: unchecked and done with, or kept or broken with the anchors that decide about it. */
type Standing =
  | { readonly kind: 'unchecked'; readonly finding: Finding }
  | {
      readonly kind: 'measured'
      readonly isBroken: boolean
      readonly cases: readonly ZoneCase[]
      readonly base: Omit<Finding, 'verdict' | 'roomMm'>
    }

const standingOf = (placeCase: PlaceCase, rule: QuantityRule, subject: Subject): Standing | null => {
  const reading = readingOf(placeCase, rule, subject)
  if (reading === null) return null
  const { worst, missing } = reading
  const base = baseFinding(placeCase, rule, subject)
  const isBroken = worst !== null && !isWithin(worst.value, rule)
  if (worst === null || (!isBroken && missing !== null)) {
    // A sitting without a number is never clear, however good the others are.
    const { problem, sittingId } = problemOf(placeCase, rule, subject, missing)
    const unknown = { worstSitting: sittingId, value: null, verdict: 'unchecked' as const, roomMm: null }
    return {
      kind: 'unchecked',
      finding: { ...base, ...unknown, problem, remedy: uncheckedRemedy(problem) },
    }
  }
  const measured = { worstSitting: worst.sittingId, value: worst.value, problem: null, remedy: null }
  return { kind: 'measured', isBroken, cases: casesOf(placeCase, subject), base: { ...base, ...measured } }
}

const subjectFinding = (placeCase: PlaceCase, rule: QuantityRule, subject: Subject): Finding | null => {
  const standing = standingOf(placeCase, rule, subject)
  if (standing === null) return null
  if (standing.kind === 'unchecked') return standing.finding
  const { isBroken, cases, base } = standing
  const { rules, extent } = placeCase
  const roomMm = roomOf(cases, isBroken, (zoneCase) => ruleRoomMm(rule, zoneCase))
  const rooms = { roomMm, ...otherRoomOf(rule, cases, isBroken) }
  const isTight = (leastRoom(rooms)?.mm ?? Infinity) < TIGHT_ROOM_MM
  const verdict: Verdict = isBroken ? 'broken' : isTight ? 'tight' : 'clear'
  const remedy = isBroken && extent === 'everything' ? remedyOf(rule, cases, rules) : null
  return { ...base, verdict, ...rooms, remedy }
}

/** Whether some anchor's position decides the rule at all; where none does there is no room to wait for. */
const isOfPosition = (rule: QuantityRule, cases: readonly ZoneCase[]): boolean =>
  cases.some(({ mirrored }) => isDecidedIn(rule, mirrored, homeElevation(rule, mirrored)))

const subjectNumbers = (placeCase: PlaceCase, rule: QuantityRule, subject: Subject): ShownFinding | null => {
  const standing = standingOf(placeCase, rule, subject)
  if (standing === null) return null
  if (standing.kind === 'unchecked') return { ...standing.finding, remedy: null }
  const { isBroken, cases, base } = standing
  return isOfPosition(rule, cases)
    ? { ...base, verdict: isBroken ? 'broken' : 'kept', roomMm: 'pending' }
    : { ...base, verdict: isBroken ? 'broken' : 'clear', roomMm: null }
}

const subjectsOf = ({ layout, place }: PlaceCase, rule: QuantityRule): readonly Subject[] =>
  ruleSubjects(rule, { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat })

/** What one rule says about every subject of a place that it speaks about in at least one sitting. */
export const quantityFindings = (placeCase: PlaceCase, rule: QuantityRule): readonly Finding[] =>
  subjectsOf(placeCase, rule).flatMap((subject) => subjectFinding(placeCase, rule, subject) ?? [])

/** The same without the room, which takes long to work out, and without remedies. */
export const quantityNumbers = (placeCase: PlaceCase, rule: QuantityRule): readonly ShownFinding[] =>
  subjectsOf(placeCase, rule).flatMap((subject) => subjectNumbers(placeCase, rule, subject) ?? [])
