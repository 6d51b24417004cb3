import type { SeatPose } from '../../body/pose'
import { ruleApplies } from '../../rules/applies'
import type { QuantityRule, RuleSet } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import { QUANTITY_IDS, type QuantityId, type Subject } from '../../straps/quantity'
import { seatPose } from '../../straps/seatPose'
import type { Layout, Place } from '../document/layout'
import { ruleContext } from '../evaluate/ruleContexts'
import { latticeSittings, sittingsOf } from '../evaluate/sittings'

/** One position of the seat in which everybody is looked at: slide from the drawn position (+ rearward) and recline. */
export interface SeatPosition {
  readonly slideMm: number
  readonly reclineDeg: number
}

/** One quantity rule with what it asks about in each seat position; none of it depends on who sits there. */
interface FitRule {
  readonly rule: QuantityRule
  /** For each pose of the case the keys (see `quantityKey`) of the numbers that the rule wants there. */
  readonly keysAt: readonly (readonly number[])[]
}

/** Everything that is the same for every person who tries a place. */
export interface FitCase {
  readonly layout: Layout
  readonly place: Place
  readonly positions: readonly SeatPosition[]
  /** The seat in each of them, in their order, and then in positions between them, which count for a person but are not told apart. */
  readonly poses: readonly SeatPose[]
  readonly rules: readonly FitRule[]
}

const SUBJECTS: readonly Subject[] = [
  'shoulder-left',
  'shoulder-right',
  'shoulder-pair',
  'lap-left',
  'lap-right',
  'lap-pair',
  'sub-left',
  'sub-right',
  'sub-centre',
  'sub-pair',
  'head',
  'body',
]

const QUANTITY_INDEX = new Map<QuantityId, number>(QUANTITY_IDS.map((id, index) => [id, index]))
const SUBJECT_INDEX = new Map<Subject, number>(SUBJECTS.map((subject, index) => [subject, index]))

/** How many keys there are. */
export const KEY_COUNT = QUANTITY_IDS.length * SUBJECTS.length

/** A quantity of a subject as one whole number, 0 … KEY_COUNT − 1. Throws for what is in neither list. */
export const quantityKey = (quantity: QuantityId, subject: Subject): number => {
  const row = QUANTITY_INDEX.get(quantity)
  const column = SUBJECT_INDEX.get(subject)
  if (row === undefined || column === undefined) throw new Error(`no key for ${quantity} of ${subject}`)
  return row * SUBJECTS.length + column
}

/** A place with somebody to sit there, so that it has sittings; who it is plays no part in them. */
export const placeForOne = (place: Place): Place => ({
  ...place,
  occupants: [{ id: 'anybody', name: '', sex: 'female', statureMm: 1650, massKg: 70, measured: {} }],
})

/**
 * What a rule set asks of anybody at a place. Rules that speak about nothing there are left out; hardware and stated rules too. Between
 * the positions of the lattice nobody is looked at, as the findings of one person are: with 1 200 people that would take too long.
 */
export const fitCase = (layout: Layout, place: Place, ruleSet: RuleSet): FitCase => {
  const told = sittingsOf(layout, placeForOne(place))
  // Without a single position everybody would pass everything.
  if (told.length === 0) throw new Error(`nobody can sit at place ${place.id}`)
  const ids = new Set(told.map(({ id }) => id))
  const between = latticeSittings(layout, placeForOne(place)).filter(({ id }) => !ids.has(id))
  const sittings = [...told, ...between]
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  const asked = (rule: QuantityRule): FitRule => ({
    rule,
    keysAt: sittings.map((sitting) =>
      ruleSubjects(rule, scene)
        .filter((subject) => ruleApplies(rule, ruleContext(layout, place, sitting, subject)))
        .map((subject) => quantityKey(rule.quantity, subject)),
    ),
  })
  return {
    layout,
    place,
    positions: told.map(({ slideMm, reclineDeg }) => ({ slideMm, reclineDeg })),
    poses: sittings.map(({ slideMm, reclineDeg }) => seatPose(place.seat, slideMm, reclineDeg)),
    rules: ruleSet.rules
      .filter((rule) => rule.kind === 'quantity')
      .map(asked)
      .filter(({ keysAt }) => keysAt.some((keys) => keys.length > 0)),
  }
}
