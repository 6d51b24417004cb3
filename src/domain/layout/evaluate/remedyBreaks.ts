import type { BrokenLimit, Finding, Remedy } from '../../rules/finding'
import type { QuantityRule } from '../../rules/rule'
import type { Layout, Place } from '../document/layout'
import { appliedRemedy } from '../edit/remedy'
import { keptLimits, limitKey } from './keptLimits'
import { type SolvedSitting, solvedSittings } from './solvedSittings'

type MovingRemedy = Extract<Remedy, { kind: 'move-anchors' | 'move-tube' }>

const isMoving = (remedy: Remedy | null): remedy is MovingRemedy =>
  remedy?.kind === 'move-anchors' || remedy?.kind === 'move-tube'

/** A moved tube is another tube near every helmet of the car. */
const isTouched = (place: Place, remedy: MovingRemedy): boolean =>
  remedy.kind === 'move-tube' || place.anchors.some(({ id }) => remedy.anchorIds.includes(id))

/** What a remedy makes of a car: whether its own finding is cleared, and what it breaks. */
interface Outcome {
  readonly isCleared: boolean
  readonly breaks: readonly BrokenLimit[]
}

/** Carried out and solved anew, with the positions of the seat that are looked at in the changed car. */
const outcomeOf = (
  layout: Layout,
  finding: Finding,
  remedy: MovingRemedy,
  rules: readonly QuantityRule[],
  sittingsAt: (place: Place) => readonly SolvedSitting[],
): Outcome => {
  const mended = appliedRemedy(layout, finding)
  let isCleared = false
  const breaks = layout.places
    .filter((place) => isTouched(place, remedy))
    .flatMap((place) => {
      const changed = mended.places.find(({ id }) => id === place.id) ?? place
      const stillKept = keptLimits(mended, changed, rules, solvedSittings(mended, changed))
      isCleared ||= stillKept.some((is) => limitKey(is) === limitKey(finding))
      const kept = new Set(stillKept.map(limitKey))
      return keptLimits(layout, place, rules, sittingsAt(place)).filter((was) => !kept.has(limitKey(was)))
    })
  return { isCleared, breaks }
}

/** Where a position of the seat that is only looked at in the changed car breaks the rule again. */
const NOT_CLEARED: Remedy = {
  kind: 'none',
  reason:
    'No single move up, down, forward, rearward, inward or outward clears it for everybody who sits here.',
}

/**
 * The findings of one place, each remedy that moves something carried out and solved anew: left out where it does not clear its finding in
 * every position of the seat that is looked at then, else with the limits, at any place of the car, that are kept now and no
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
  const known = new Map<string, Outcome>()
  const sittingsAt = (at: Place): readonly SolvedSitting[] => {
    const there = solved.get(at.id) ?? solvedSittings(layout, at)
    solved.set(at.id, there)
    return there
  }
  return findings.map((finding) => {
    const { remedy } = finding
    if (!isMoving(remedy)) return finding
    const key = `${limitKey(finding)} ${JSON.stringify(remedy)}`
    const outcome = known.get(key) ?? outcomeOf(layout, finding, remedy, rules, sittingsAt)
    known.set(key, outcome)
    const { isCleared, breaks } = outcome
    if (!isCleared) return { ...finding, remedy: NOT_CLEARED }
    return breaks.length === 0 ? finding : { ...finding, remedy: { ...remedy, breaks } }
  })
}
