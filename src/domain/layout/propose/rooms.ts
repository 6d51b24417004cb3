import type { QuantityRule } from '../../rules/rule'
import type { Subject } from '../../straps/quantity'
import { ruleRoomMm } from '../../zones/room'
import { homeElevation, isDecidedIn } from '../../zones/rulePlane'
import { scenesOfRule } from '../../zones/subject'
import type { ZoneCase, ZoneScene } from '../../zones/zone'
import { casesOf, type PlaceCase } from '../evaluate/quantityFindings'
import type { SolvedSitting } from '../evaluate/solvedSittings'
import type { Asked, Ground, Trial } from './ground'
import { followedMm } from './slopes'
import { trialCase } from './ground'

/** The room that one limit of one rule leaves one anchor in one sitting. */
export interface LimitRoom {
  readonly rule: QuantityRule
  readonly subject: Subject
  readonly anchorId: string
  readonly sittingId: string
  /** Which of the rule's limits it is. */
  readonly side: 'min' | 'max'
  /** + inside. */
  readonly roomMm: number
}

/** A rule's limits one by one; the same objects every time, because rooms are remembered by rule. */
const SIDES = new WeakMap<QuantityRule, readonly (readonly ['min' | 'max', QuantityRule])[]>()

const sidesOf = (rule: QuantityRule): readonly (readonly ['min' | 'max', QuantityRule])[] => {
  const known = SIDES.get(rule)
  if (known !== undefined) return known
  const sides = [
    ...(rule.min === null ? [] : [['min', { ...rule, max: null }] as const]),
    ...(rule.max === null ? [] : [['max', { ...rule, min: null }] as const]),
  ]
  SIDES.set(rule, sides)
  return sides
}

/** A case in a single sitting; the same object every time, for what is remembered by it. */
const ALONE = new WeakMap<ZoneCase, Map<ZoneScene, ZoneCase>>()

const aloneCase = (zoneCase: ZoneCase, scene: ZoneScene): ZoneCase => {
  const known = ALONE.get(zoneCase) ?? new Map<ZoneScene, ZoneCase>()
  ALONE.set(zoneCase, known)
  const alone = known.get(scene) ?? { ...zoneCase, scenes: [scene] }
  known.set(scene, alone)
  return alone
}

/** One limit of one rule about one anchor in one sitting, whose room has not been worked out yet. */
export interface OpenLimit extends Omit<LimitRoom, 'roomMm'> {
  readonly asked: Asked
  /** The numbers of its sitting, from which about how far it is can be reckoned. */
  readonly solved: SolvedSitting
  /** Of a rule that is kept no more than `withinMm` is looked for: what has at least so much is given as so much. */
  readonly roomMm: (withinMm: number) => number | null
  /** How far the limit itself is by following slopes; null where they do not lead there. */
  readonly followedMm: () => number | null
}

const limitsOfAsked = (placeCase: PlaceCase, asked: Asked): readonly OpenLimit[] => {
  const { rule, subject } = asked
  const sittings = new Map(placeCase.sittings.map((solved) => [solved.sitting.id, solved]))
  // The others have no room anywhere.
  const isDecided = ({ mirrored }: ZoneCase): boolean =>
    isDecidedIn(rule, mirrored, homeElevation(rule, mirrored))
  return casesOf(placeCase, subject)
    .filter(isDecided)
    .flatMap((zoneCase) =>
      scenesOfRule(rule, zoneCase).flatMap((scene) => {
        const solved = sittings.get(scene.sittingId)
        if (solved === undefined) return []
        // One case for all limits of a sitting: what is worked out for it is remembered by the case.
        const alone = aloneCase(zoneCase, scene)
        return sidesOf(rule).map(([side, sideRule]): OpenLimit => ({
          asked,
          rule,
          subject,
          anchorId: zoneCase.anchor.id,
          sittingId: scene.sittingId,
          side,
          solved,
          roomMm: (withinMm) => ruleRoomMm(sideRule, alone, withinMm),
          followedMm: () => followedMm(sideRule, alone),
        }))
      }),
    )
}

/** The limits of the rules asked about, sitting by sitting, none worked out yet. */
export const openLimits = (
  ground: Ground,
  trial: Trial,
  isWanted: (asked: Asked) => boolean,
): readonly OpenLimit[] => {
  const placeCase = trialCase(ground, trial)
  return ground.asked.filter(isWanted).flatMap((asked) => limitsOfAsked(placeCase, asked))
}

/** A limit with its room. */
export const closedLimit = (
  { rule, subject, anchorId, sittingId, side }: OpenLimit,
  roomMm: number,
): LimitRoom => ({ rule, subject, anchorId, sittingId, side, roomMm })

/**
 * The rooms of every limit of every rule asked about, sitting by sitting. While a rule is kept their least is the room of its
 * finding: a region is the overlap of what each limit allows in each sitting, and the nearest way out of an overlap is the nearest
 * way out of one of its parts. Rules without a room have none here. Of a rule that is kept no more than `withinMm` is looked for.
 */
export const limitRooms = (
  ground: Ground,
  trial: Trial,
  isWanted: (asked: Asked) => boolean,
  withinMm = Infinity,
): readonly LimitRoom[] =>
  openLimits(ground, trial, isWanted).flatMap((limit) => {
    const mm = limit.roomMm(withinMm)
    return mm === null ? [] : [closedLimit(limit, mm)]
  })

/** One limit by name: the same for every position. */
export const limitName = ({ rule, subject, anchorId, sittingId, side }: Omit<LimitRoom, 'roomMm'>): string =>
  `${rule.id} ${subject} ${anchorId} ${sittingId} ${side}`
