import {
  type Direction,
  directionLength,
  pointDistanceMm,
  type PointMm,
  pointSum,
} from '../../geometry/point'
import type { Finding, MoveDirection } from '../../rules/finding'
import type { QuantityRule, RuleLevel, RuleSet } from '../../rules/rule'
import type { Anchor } from '../../straps/anchor'
import { mirroredStrap, type StrapId } from '../../straps/strap'
import type { QuantityId, Subject } from '../../straps/quantity'
import { strapsOfPair } from '../../rules/subjects'
import { contradictionOf } from '../../zones/contradiction'
import { isDecidedIn } from '../../zones/rulePlane'
import { ruleSubject } from '../../zones/subject'
import type { Layout, Place } from '../document/layout'
import { partnerPoint } from '../edit/mirror'
import { evaluatePlace } from '../evaluate/evaluateLayout'
import { casesOf, type PlaceCase } from '../evaluate/quantityFindings'
import { type Asked, type Ground, groundOf, trialAt, trialCase } from './ground'
import type { Limiting, PromisedFinding, Standing, StayingBroken, StayingWhy } from './proposal'
import { limitName, limitRooms, type LimitRoom } from './rooms'

/** A layout with the straps in question where they are asked about. */
export interface Position {
  readonly layout: Layout
  readonly place: Place
  readonly ruleSet: RuleSet
  readonly moving: ReadonlySet<StrapId>
}

/** Everything that is said about a position. */
export interface Explained extends Standing {
  readonly findings: readonly PromisedFinding[]
  /** The rooms of all other findings of the place that have one. */
  readonly others: ReadonlyMap<string, number>
  /** Worked out when it is asked for. */
  readonly staying: () => readonly StayingBroken[]
  readonly unmeasured: readonly PromisedFinding[]
}

const isAbout = (moving: ReadonlySet<StrapId>, subject: Finding['subject']): boolean => {
  const straps: readonly string[] = [subject, ...strapsOfPair(subject as Subject)]
  return [...moving].some((strap) => straps.includes(strap))
}

const promised = (finding: Finding): PromisedFinding => ({
  findingId: finding.id,
  ruleId: finding.ruleId,
  // Only findings of quantity rules come here.
  quantity: finding.quantity as QuantityId,
  subject: finding.subject as Subject,
  level: finding.level,
  verdict: finding.verdict,
  value: typeof finding.value === 'number' ? finding.value : null,
  roomMm: finding.roomMm,
})

const isKept = ({ verdict }: Pick<Finding, 'verdict'>): boolean => verdict === 'clear' || verdict === 'tight'

/** A step to see which way a room falls: small against bends, large against rounding. Our judgement. */
const PROBE_MM = 0.05

/** No room changes by more after such a step: what is farther need not be looked for. */
const FARTHEST_CHANGE_MM = 1

/** A part of a direction smaller than this (sine of 22.5°) is not named. Our judgement: eight directions are told apart. */
const NAMED_PART = 0.382_683

/** A direction in a welder's words, the larger part first; `isRight`: seen from an anchor on the occupant's right. */
const wordsOf = (way: Direction, isRight: boolean): readonly MoveDirection[] => {
  const size = directionLength(way)
  if (size === 0) return []
  const parts: readonly { readonly word: MoveDirection; readonly part: number }[] = [
    { word: way.x > 0 ? 'rearward' : 'forward', part: Math.abs(way.x) / size },
    { word: way.y > 0 === isRight ? 'outward' : 'inward', part: Math.abs(way.y) / size },
    { word: way.z > 0 ? 'up' : 'down', part: Math.abs(way.z) / size },
  ]
  return parts
    .filter(({ part }) => part >= NAMED_PART)
    .toSorted((a, b) => b.part - a.part)
    .map(({ word }) => word)
}

const NO_FOLLOWER = (): null => null

/** The room of the same limit with its anchor a little elsewhere; the other side of a pair that moves as one goes along. */
const roomWith = (ground: Ground, limit: LimitRoom, anchor: Anchor, point: PointMm): number | null => {
  const { place } = ground
  const mounts = new Map<string, Anchor['mount']>([[anchor.id, { ...anchor.mount, point }]])
  const isOne = casesOf(trialCase(ground, { place, sittings: ground.sittings, mounts }), limit.subject).some(
    (zoneCase) => zoneCase.anchor.id === anchor.id && zoneCase.mirrored,
  )
  const partner = place.anchors.find(({ strap }) => strap === mirroredStrap(anchor.strap))
  if (isOne && partner !== undefined)
    mounts.set(partner.id, { ...partner.mount, point: partnerPoint(place, anchor.strap, point) })
  const trial = trialAt({ ...ground, asked: [] }, mounts, NO_FOLLOWER)
  const isAsked = (asked: Asked): boolean => asked.rule === limit.rule && asked.subject === limit.subject
  const rooms = limitRooms(ground, trial, isAsked, limit.roomMm + FARTHEST_CHANGE_MM)
  return rooms.find((room) => limitName(room) === limitName(limit))?.roomMm ?? null
}

/** The way in which a limit is nearest: where its room falls fastest. */
const towardsOf = (ground: Ground, limit: LimitRoom): readonly MoveDirection[] => {
  const anchor = ground.place.anchors.find(({ id }) => id === limit.anchorId)
  if (anchor === undefined) return []
  const { point } = anchor.mount
  const fallAlong = (along: Direction): number => {
    const roomAt = (mm: number): number =>
      roomWith(ground, limit, anchor, pointSum(point, along, mm)) ?? limit.roomMm
    return roomAt(-PROBE_MM) - roomAt(PROBE_MM)
  }
  const way = {
    x: fallAlong({ x: 1, y: 0, z: 0 }),
    y: fallAlong({ x: 0, y: 1, z: 0 }),
    z: fallAlong({ x: 0, y: 0, z: 1 }),
  }
  return wordsOf(way, point.yMm >= ground.place.seat.hipPoint.yMm)
}

const limitingOf = (ground: Ground, found: PromisedFinding | null): Limiting | null => {
  if (found === null) return null
  const isFound = ({ rule, subject }: Asked): boolean => rule.id === found.ruleId && subject === found.subject
  const drawn = { place: ground.place, sittings: ground.sittings, mounts: new Map() }
  const rooms = limitRooms(ground, drawn, isFound)
  const least = rooms.reduce<LimitRoom | null>(
    (best, room) => (best === null || room.roomMm < best.roomMm ? room : best),
    null,
  )
  if (least === null) return null
  return {
    ruleId: found.ruleId,
    quantity: found.quantity,
    subject: found.subject,
    sittingId: least.sittingId,
    side: least.side,
    anchorId: least.anchorId,
    towards: towardsOf(ground, least),
  }
}

const ELEVATIONS = ['side', 'top'] as const

const whyStaying = (
  placeCase: PlaceCase,
  rule: QuantityRule,
  finding: Finding,
  keptRules: readonly QuantityRule[],
): StayingWhy => {
  if (finding.verdict === 'unchecked') return { kind: 'no-path', problem: finding.problem }
  const cases = casesOf(placeCase, finding.subject as Subject)
  const isDecided = cases.some(({ mirrored }) =>
    ELEVATIONS.some((elevation) => isDecidedIn(rule, mirrored, elevation)),
  )
  if (!isDecided) return { kind: 'not-of-position' }
  for (const zoneCase of cases) {
    const about = keptRules.filter((kept) => ruleSubject(kept, zoneCase) !== null)
    for (const elevation of ELEVATIONS) {
      const contradiction = contradictionOf(rule, about, zoneCase, elevation)
      if (contradiction !== null) return { kind: 'contradiction', contradiction }
    }
  }
  return { kind: 'not-among-allowed' }
}

const countsOf = (findings: readonly PromisedFinding[]): Readonly<Record<RuleLevel, number>> => {
  const counts = { must: 0, should: 0, advice: 0 }
  for (const finding of findings) if (!isKept(finding)) counts[finding.level] += 1
  return counts
}

const leastRoom = (findings: readonly PromisedFinding[]): PromisedFinding | null =>
  findings.reduce<PromisedFinding | null>((best, each) => {
    if (each.roomMm === null || !isKept(each)) return best
    return best?.roomMm === null || best === null || each.roomMm < best.roomMm ? each : best
  }, null)

const groundAt = ({ layout, place, ruleSet, moving }: Position): Ground =>
  groundOf({ layout, place, ruleSet, moving, later: new Set(), asIf: place })

/**
 * How some straps stand in a layout, with reasons; everything read off the same evaluation that findings are made from. `before`
 * are the rooms of the straps that stay before the change: where one has become less, it counts with those that move.
 */
export const explainedPosition = (
  position: Position,
  before: ReadonlyMap<string, number> | null,
): Explained => {
  const { layout, place, ruleSet, moving } = position
  const all = evaluatePlace(layout, place, ruleSet, { extent: 'what-moves' }).findings
  const ofQuantities = all.filter(({ ruleId }) =>
    ruleSet.rules.some((rule) => rule.id === ruleId && rule.kind === 'quantity'),
  )
  const own = ofQuantities.filter(({ subject }) => isAbout(moving, subject))
  const others = ofQuantities.filter(({ subject }) => !isAbout(moving, subject))
  const lessened = others.filter(
    ({ id, roomMm }) => before !== null && roomMm !== null && roomMm < (before.get(id) ?? roomMm),
  )
  const findings = own.map(promised)
  const least = leastRoom([...findings, ...lessened.map(promised)])
  const ground = groundAt(position)
  const placeCase = trialCase(ground, { place, sittings: ground.sittings, mounts: new Map() })
  const kept = new Set(own.filter(isKept).map(({ ruleId }) => ruleId))
  const keptRules = ground.rules.filter(({ id }) => kept.has(id))
  return {
    roomMm: least?.roomMm ?? null,
    limiting: limitingOf(ground, least),
    broken: countsOf(findings),
    findings,
    others: new Map(others.flatMap(({ id, roomMm }) => (roomMm === null ? [] : [[id, roomMm] as const]))),
    staying: () =>
      own.flatMap((finding): readonly StayingBroken[] => {
        const rule = ground.rules.find(({ id }) => id === finding.ruleId)
        if (rule === undefined || isKept(finding)) return []
        return [
          {
            finding: promised(finding),
            why: whyStaying(
              placeCase,
              rule,
              finding,
              keptRules.filter((each) => each !== rule),
            ),
          },
        ]
      }),
    unmeasured: findings.filter((finding) => isKept(finding) && finding.roomMm === null),
  }
}

/** How far the anchor that goes furthest is moved between two places, mm. */
export const furthestMoveMm = (from: Place, to: Place): number =>
  Math.max(
    0,
    ...from.anchors.map(({ id, mount }) => {
      const there = to.anchors.find((anchor) => anchor.id === id)
      return there === undefined ? 0 : pointDistanceMm(mount.point, there.mount.point)
    }),
  )
