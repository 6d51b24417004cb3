import { ruleApplies } from '../../rules/applies'
import { isWithin } from '../../rules/check'
import type { QuantityRule, RuleLevel, RuleSet } from '../../rules/rule'
import { ruleSubjects, strapsOfPair } from '../../rules/subjects'
import type { Anchor } from '../../straps/anchor'
import type { Subject } from '../../straps/quantity'
import { solvePlace } from '../../straps/solve'
import type { StrapId } from '../../straps/strap'
import { turnedTab } from '../../zones/turnedTab'
import type { Layout, Place } from '../document/layout'
import { partnerMount } from '../edit/mirror'
import { propertyFindings } from '../evaluate/propertyFindings'
import type { PlaceCase } from '../evaluate/quantityFindings'
import { ruleContext, zoneCases } from '../evaluate/ruleContexts'
import { quantityIn, type SolvedSitting, solvedSittings } from '../evaluate/solvedSittings'

type Mounts = ReadonlyMap<string, Anchor['mount']>

/** A place with some of its anchors elsewhere, solved in all sittings. */
export interface Trial {
  readonly place: Place
  readonly sittings: readonly SolvedSitting[]
  /** The mounts that were changed, tabs turned where a rule asks for it. */
  readonly mounts: Mounts
}

/** One rule about one subject, with the sittings in which it speaks. */
export interface Asked {
  readonly rule: QuantityRule
  readonly subject: Subject
  readonly sittingIds: ReadonlySet<string>
  /** About a strap that moves, or its pair. */
  readonly isOwn: boolean
}

/** How many rules of each level are broken or cannot be checked. */
export type BrokenCounts = Readonly<Record<RuleLevel, number>>

/** Everything that stays the same while positions are tried. */
export interface Ground {
  readonly layout: Layout
  readonly place: Place
  readonly ruleSet: RuleSet
  readonly rules: readonly QuantityRule[]
  readonly sittings: readonly SolvedSitting[]
  /** The straps whose anchors are tried elsewhere. */
  readonly moving: ReadonlySet<StrapId>
  readonly asked: readonly Asked[]
  /** The rules about straps that stay which are kept as drawn, and have to stay kept. */
  readonly keptOthers: ReadonlySet<Asked>
  /** Broken rules about belt, tabs and tubes by the tubes that the anchors are on: nothing else of a position matters to them. */
  readonly brokenProperties: (place: Place) => ReadonlySet<string>
}

const strapsOfSubject = (subject: Subject): readonly string[] => [subject, ...strapsOfPair(subject)]

/** How one rule stands about one subject over the sittings in which it speaks. */
const outcomeOf = (
  { rule, subject, sittingIds }: Asked,
  sittings: readonly SolvedSitting[],
): 'kept' | 'broken' | 'unchecked' => {
  let outcome: 'kept' | 'unchecked' = 'kept'
  for (const solved of sittings) {
    if (!sittingIds.has(solved.sitting.id)) continue
    const value = quantityIn(solved, rule.quantity, subject)
    if (value === null) outcome = 'unchecked'
    else if (!isWithin(value, rule)) return 'broken'
  }
  return outcome
}

const askedAt = (
  layout: Layout,
  place: Place,
  rules: readonly QuantityRule[],
  sittings: readonly SolvedSitting[],
  moved: ReadonlySet<StrapId>,
): readonly Asked[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  const isMoved = (subject: Subject): boolean => {
    const straps = strapsOfSubject(subject)
    return [...moved].some((strap) => straps.includes(strap))
  }
  return rules.flatMap((rule) =>
    ruleSubjects(rule, scene).flatMap((subject): readonly Asked[] => {
      const speaking = sittings.filter(({ sitting }) =>
        ruleApplies(rule, ruleContext(layout, place, sitting, subject)),
      )
      if (speaking.length === 0) return []
      const sittingIds = new Set(speaking.map(({ sitting }) => sitting.id))
      return [{ rule, subject, sittingIds, isOwn: isMoved(subject) }]
    }),
  )
}

const brokenPropertiesOf = (layout: Layout, place: Place, ruleSet: RuleSet): ReadonlySet<string> =>
  new Set(
    ruleSet.rules.flatMap((rule) =>
      rule.kind === 'property'
        ? propertyFindings(layout, place, rule).flatMap(({ id, verdict }) =>
            verdict === 'broken' ? [id] : [],
          )
        : [],
    ),
  )

const knownByTubes = (look: (place: Place) => ReadonlySet<string>): Ground['brokenProperties'] => {
  const known = new Map<string, ReadonlySet<string>>()
  return (place) => {
    const key = place.anchors.map(({ mount }) => `${mount.kind} ${mount.tubeId}`).join('/')
    const found = known.get(key) ?? look(place)
    known.set(key, found)
    return found
  }
}

/** What a ground is made of. */
export interface GroundCase {
  readonly layout: Layout
  readonly place: Place
  readonly ruleSet: RuleSet
  /** The straps whose anchors are tried elsewhere. */
  readonly moving: ReadonlySet<StrapId>
  /** Straps that will be moved after these: what happens to them meanwhile does not matter. */
  readonly later: ReadonlySet<StrapId>
  /** The place with mounts of the kinds that are tried, where they differ from the drawn ones: a rule may speak about wraps only. */
  readonly asIf: Place
}

/** The ground to try positions of some straps' anchors on. */
export const groundOf = ({ layout, place, ruleSet, moving, later, asIf }: GroundCase): Ground => {
  const rules = ruleSet.rules.filter((rule) => rule.kind === 'quantity')
  const sittings = solvedSittings(layout, place)
  const asked = askedAt(layout, asIf, rules, sittings, moving)
  const isLater = (subject: Subject): boolean =>
    [...later].some((strap) => strapsOfSubject(subject).includes(strap))
  const isHeld = (each: Asked): boolean =>
    !each.isOwn && !isLater(each.subject) && outcomeOf(each, sittings) === 'kept'
  return {
    layout,
    place,
    ruleSet,
    rules,
    sittings,
    moving,
    asked,
    keptOthers: new Set(asked.filter(isHeld)),
    brokenProperties: knownByTubes((at) => brokenPropertiesOf(layout, at, ruleSet)),
  }
}

/** The place with other mounts. */
export const placeWith = (place: Place, mounts: Mounts): Place => ({
  ...place,
  anchors: place.anchors.map((anchor) => {
    const mount = mounts.get(anchor.id)
    return mount === undefined ? anchor : { ...anchor, mount }
  }),
})

const solvedWith = (ground: Ground, mounts: Mounts): Trial => {
  const place = placeWith(ground.place, mounts)
  const sittings = ground.sittings.map(({ sitting, scene: drawn }) => {
    const scene = { ...drawn, anchors: place.anchors }
    return { sitting, scene, solved: solvePlace(scene) }
  })
  return { place, sittings, mounts }
}

/** A trial as the findings are made from: the same rooms as those of an evaluation. */
export const trialCase = ({ layout, rules }: Ground, { place, sittings }: Trial): PlaceCase => ({
  layout: { ...layout, places: layout.places.map((each) => (each.id === place.id ? place : each)) },
  place,
  sittings,
  zoneCases: zoneCases(layout, place, sittings),
  rules,
  extent: 'what-moves',
})

/** The mounts with the tabs turned that a rule on the pull out of their plane would not leave as they are. */
const turnedMounts = (
  ground: Ground,
  trial: Trial,
  follower: (anchorId: string) => string | null,
): Mounts => {
  const turned = new Map(trial.mounts)
  const cases = trialCase(ground, trial).zoneCases
  for (const asked of ground.asked) {
    const anchor = trial.place.anchors.find(({ strap }) => strap === asked.subject)
    const mount = anchor && trial.mounts.get(anchor.id)
    if (asked.rule.quantity !== 'tab-twist' || anchor === undefined || mount?.kind !== 'tab') continue
    if (outcomeOf(asked, trial.sittings) !== 'broken') continue
    const zoneCase = cases.get(anchor.strap)
    const turn = zoneCase && turnedTab(asked.rule, zoneCase)
    if (turn?.kind !== 'turn-tab') continue
    const own = { ...mount, planDeg: turn.planDeg, leanDeg: turn.leanDeg }
    turned.set(anchor.id, own)
    const partnerId = follower(anchor.id)
    const image = partnerId === null ? null : partnerMount(ground.layout, ground.place, anchor.strap, own)
    const partner = partnerId === null ? undefined : turned.get(partnerId)
    if (partnerId === null || image?.kind !== 'tab' || partner?.kind !== 'tab') continue
    turned.set(partnerId, { ...partner, planDeg: image.planDeg, leanDeg: image.leanDeg })
  }
  return turned
}

/**
 * The place with mounts elsewhere, solved; a tab that its strap would now pull out of its plane by more than a rule allows is
 * turned along the strap, as it would be welded. `follower` names the anchor that is to stay the mirror image of another.
 */
export const trialAt = (
  ground: Ground,
  mounts: Mounts,
  follower: (anchorId: string) => string | null,
): Trial => {
  const trial = solvedWith(ground, mounts)
  const isTwisted = ground.asked.some(
    (asked) =>
      asked.isOwn && asked.rule.quantity === 'tab-twist' && outcomeOf(asked, trial.sittings) === 'broken',
  )
  return isTwisted ? solvedWith(ground, turnedMounts(ground, trial, follower)) : trial
}

/** What a trial leaves broken among the rules about the straps that move. */
export interface Screened {
  readonly counts: BrokenCounts
  readonly broken: ReadonlySet<Asked>
}

/**
 * How a trial stands, by its numbers alone; null where it is out of the question: it would break a rule about a strap that stays,
 * or about belt, tabs and tubes, that is kept as drawn.
 */
export const screened = (ground: Ground, trial: Trial): Screened | null => {
  const broken = new Set<Asked>()
  const counts = { must: 0, should: 0, advice: 0 }
  for (const asked of ground.asked) {
    if (!asked.isOwn && !ground.keptOthers.has(asked)) continue
    if (outcomeOf(asked, trial.sittings) === 'kept') continue
    if (!asked.isOwn) return null
    broken.add(asked)
    counts[asked.rule.level] += 1
  }
  const drawn = ground.brokenProperties(ground.place)
  const isWorse = [...ground.brokenProperties(trial.place)].some((id) => !drawn.has(id))
  return isWorse ? null : { counts, broken }
}
