import { ruleApplies } from '../../rules/applies'
import { isWithin } from '../../rules/check'
import type { BrokenLimit, Finding, Remedy } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import { solvePlace } from '../../straps/solve'
import { type Move, movedScene } from '../../zones/move'
import type { Layout, Place } from '../document/layout'
import { ruleContext } from './ruleContexts'
import { quantityIn, type SolvedSitting, solvedSittings } from './solvedSittings'

type MovingRemedy = Extract<Remedy, { kind: 'move-anchors' | 'move-tube' }>

const isMoving = (remedy: Remedy | null): remedy is MovingRemedy =>
  remedy?.kind === 'move-anchors' || remedy?.kind === 'move-tube'

/** What is kept in every sitting in which its rule speaks, with a number in each. */
const keptLimits = (
  layout: Layout,
  place: Place,
  rules: readonly QuantityRule[],
  sittings: readonly SolvedSitting[],
): readonly BrokenLimit[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  return rules.flatMap((rule) =>
    ruleSubjects(rule, scene)
      .filter((subject) => {
        const values = sittings
          .filter(({ sitting }) => ruleApplies(rule, ruleContext(layout, place, sitting, subject)))
          .map((solved) => quantityIn(solved, rule.quantity, subject))
        return values.length > 0 && values.every((value) => value !== null && isWithin(value, rule))
      })
      .map((subject) => ({ placeId: place.id, ruleId: rule.id, quantity: rule.quantity, subject })),
  )
}

const isTouched = (place: Place, { anchorIds, tubeId }: Move): boolean =>
  place.anchors.some(({ id, mount }) => (tubeId === null ? anchorIds.includes(id) : mount.tubeId === tubeId))

const moveOf = (remedy: MovingRemedy): Move =>
  remedy.kind === 'move-tube'
    ? { anchorIds: [], tubeId: remedy.tubeId, direction: remedy.direction, byMm: remedy.byMm }
    : { anchorIds: remedy.anchorIds, tubeId: null, direction: remedy.direction, byMm: remedy.byMm }

const brokenBy = (
  layout: Layout,
  move: Move,
  rules: readonly QuantityRule[],
  sittingsAt: (place: Place) => readonly SolvedSitting[],
): readonly BrokenLimit[] =>
  layout.places
    .filter((place) => isTouched(place, move))
    .flatMap((place) => {
      const before = sittingsAt(place)
      const after = before.map((solved) => {
        const scene = movedScene(solved.scene, move)
        return { ...solved, scene, solved: solvePlace(scene) }
      })
      const stillKept = keptLimits(layout, place, rules, after)
      return keptLimits(layout, place, rules, before).filter(
        (was) => !stillKept.some((is) => is.ruleId === was.ruleId && is.subject === was.subject),
      )
    })

/**
 * The findings of one place, each remedy that moves something with the limits, at any place of the car, that are kept now and no
 * longer would be: a bar that two places share moves the straps of both. `sittings` are those of `place`, solved already.
 */
export const withRemedyBreaks = (
  layout: Layout,
  place: Place,
  sittings: readonly SolvedSitting[],
  rules: readonly QuantityRule[],
  findings: readonly Finding[],
): readonly Finding[] => {
  const solved = new Map([[place.id, sittings]])
  const known = new Map<string, readonly BrokenLimit[]>()
  const sittingsAt = (at: Place): readonly SolvedSitting[] => {
    const there = solved.get(at.id) ?? solvedSittings(layout, at)
    solved.set(at.id, there)
    return there
  }
  return findings.map((finding) => {
    const { remedy } = finding
    if (!isMoving(remedy)) return finding
    const key = JSON.stringify(remedy)
    const breaks = known.get(key) ?? brokenBy(layout, moveOf(remedy), rules, sittingsAt)
    known.set(key, breaks)
    return breaks.length === 0 ? finding : { ...finding, remedy: { ...remedy, breaks } }
  })
}
