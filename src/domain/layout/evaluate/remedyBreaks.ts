import type { BrokenLimit, Finding, Remedy } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import { solvePlace } from '../../straps/solve'
import { movedScene, stepMove } from '../../zones/move'
import type { Layout, Place } from '../document/layout'
import { keptLimits } from './keptLimits'
import { type SolvedSitting, solvedSittings } from './solvedSittings'

type MovingRemedy = Extract<Remedy, { kind: 'move-anchors' | 'move-tube' }>

const isMoving = (remedy: Remedy | null): remedy is MovingRemedy =>
  remedy?.kind === 'move-anchors' || remedy?.kind === 'move-tube'

/** A moved tube is another tube near every helmet of the car. */
const isTouched = (place: Place, remedy: MovingRemedy): boolean =>
  remedy.kind === 'move-tube' || place.anchors.some(({ id }) => remedy.anchorIds.includes(id))

const brokenBy = (
  layout: Layout,
  remedy: MovingRemedy,
  rules: readonly QuantityRule[],
  sittingsAt: (place: Place) => readonly SolvedSitting[],
): readonly BrokenLimit[] =>
  layout.places
    .filter((place) => isTouched(place, remedy))
    .flatMap((place) => {
      const before = sittingsAt(place)
      const after = before.map((solved) => {
        // A remedy has been tried before it is given: it can be carried out.
        const scene = movedScene(solved.scene, [stepMove(remedy)]) ?? solved.scene
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
    const breaks = known.get(key) ?? brokenBy(layout, remedy, rules, sittingsAt)
    known.set(key, breaks)
    return breaks.length === 0 ? finding : { ...finding, remedy: { ...remedy, breaks } }
  })
}
