import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { evaluateLayout, evaluatePlace, placeZones } from '../../domain/layout/evaluate/evaluateLayout'
import type { PlaceEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { AnchorZone } from '../../domain/zones/zone'
import type { EvaluationAnswer, EvaluationQuestion, WantedZone } from './evaluationMessages'
import { isInPart, type RoomsPart } from './roomsPart'

/** The zones of one place of a layout, each worked out when it is first asked for. */
interface KnownZones {
  readonly layoutNumber: number
  readonly placeId: string
  readonly zones: readonly AnchorZone[]
}

/** Nothing for an anchor that the belt has no strap for. */
const regionIn = (zones: readonly AnchorZone[], { anchorId, elevation }: WantedZone): Region =>
  zones.find((zone) => zone.anchorId === anchorId)?.[elevation] ?? []

/** Rooms, of a part of the rules, and zones of one place, without remedies. Throws for a place that does not exist. */
const roomsOfPlace = (layout: Layout, placeId: string, part: RoomsPart): PlaceEvaluation => {
  const place = layout.places.find(({ id }) => id === placeId)
  if (place === undefined) throw new Error(`no place "${placeId}"`)
  return evaluatePlace(layout, place, chosenRuleSet(layout), { extent: 'what-moves', only: isInPart(part) })
}

/** Remembers the last place: its zones ask the solver for much that its rooms have asked already. */
export const evaluationAnswers = (): ((question: EvaluationQuestion) => EvaluationAnswer) => {
  let known: KnownZones | null = null
  return (question) => {
    const { layout, layoutNumber } = question
    switch (question.kind) {
      case 'complete':
        return { kind: 'findings', findings: evaluateLayout(layout).places.map(({ findings }) => findings) }
      case 'rooms': {
        const { placeId, part } = question
        const { findings, zones } = roomsOfPlace(layout, placeId, part)
        known = { layoutNumber, placeId, zones }
        return { kind: 'findings', findings: [findings] }
      }
      case 'zone': {
        const { placeId } = question.wanted
        if (known?.layoutNumber !== layoutNumber || known.placeId !== placeId)
          known = { layoutNumber, placeId, zones: placeZones(layout, placeId) }
        return { kind: 'zone', region: regionIn(known.zones, question.wanted) }
      }
    }
  }
}
