import type { QuantityRule } from '../../rules/rule'
import type { Subject } from '../../straps/quantity'
import { ruleRoomMm } from '../../zones/room'
import { scenesOfRule } from '../../zones/subject'
import { casesOf, type PlaceCase } from '../evaluate/quantityFindings'
import type { Asked, Ground, Trial } from './ground'
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

const roomsOfAsked = (placeCase: PlaceCase, { rule, subject }: Asked): readonly LimitRoom[] =>
  casesOf(placeCase, subject).flatMap((zoneCase) =>
    scenesOfRule(rule, zoneCase).flatMap((scene) => {
      // One case for all sides of a sitting: what is worked out for it is remembered by the case.
      const alone = { ...zoneCase, scenes: [scene] }
      return sidesOf(rule).flatMap(([side, sideRule]): readonly LimitRoom[] => {
        const roomMm = ruleRoomMm(sideRule, alone)
        if (roomMm === null) return []
        const { sittingId } = scene
        return [{ rule, subject, anchorId: zoneCase.anchor.id, sittingId, side, roomMm }]
      })
    }),
  )

/**
 * The rooms of every limit of every rule asked about, sitting by sitting. While a rule is kept their least is the room of its
 * finding: a region is the overlap of what each limit allows in each sitting, and the nearest way out of an overlap is the nearest
 * way out of one of its parts. Rules without a room have none here.
 */
export const limitRooms = (
  ground: Ground,
  trial: Trial,
  isWanted: (asked: Asked) => boolean,
): readonly LimitRoom[] => {
  const placeCase = trialCase(ground, trial)
  return ground.asked.filter(isWanted).flatMap((asked) => roomsOfAsked(placeCase, asked))
}

/** One limit by name: the same for every position. */
export const limitName = ({ rule, subject, anchorId, sittingId, side }: LimitRoom): string =>
  `${rule.id} ${subject} ${anchorId} ${sittingId} ${side}`
