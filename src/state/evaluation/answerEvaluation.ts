import type { Region } from '../../domain/geometry/polygon'
import { evaluateLayout, placeZones } from '../../domain/layout/evaluate/evaluateLayout'
import type { Evaluation } from '../../domain/layout/evaluate/evaluation'
import type { AnchorZone } from '../../domain/zones/zone'
import type { EvaluationAnswer, EvaluationQuestion, WantedZone } from './evaluationMessages'

type PlaceZones = ReadonlyMap<string, readonly AnchorZone[]>

const findingsAnswer = ({ places }: Evaluation): EvaluationAnswer => ({
  kind: 'findings',
  findings: places.map(({ findings }) => findings),
})

/** Nothing for an anchor that the belt has no strap for. */
const regionIn = (zones: PlaceZones, { placeId, anchorId, elevation }: WantedZone): Region =>
  zones.get(placeId)?.find((zone) => zone.anchorId === anchorId)?.[elevation] ?? []

/** Remembers the last layout: its zones ask the solver for much that its rooms have asked already. */
export const evaluationAnswers = (): ((question: EvaluationQuestion) => EvaluationAnswer) => {
  let known: { readonly layoutNumber: number; readonly zones: PlaceZones } | null = null
  return (question) => {
    const { layout, layoutNumber } = question
    switch (question.kind) {
      case 'complete':
        return findingsAnswer(evaluateLayout(layout))
      case 'rooms': {
        const evaluation = evaluateLayout(layout, { extent: 'what-moves' })
        known = {
          layoutNumber,
          zones: new Map(evaluation.places.map((place) => [place.placeId, place.zones])),
        }
        return findingsAnswer(evaluation)
      }
      case 'zone': {
        if (known?.layoutNumber !== layoutNumber)
          known = {
            layoutNumber,
            zones: new Map(layout.places.map((place) => [place.id, placeZones(layout, place.id)])),
          }
        return { kind: 'zone', region: regionIn(known.zones, question.wanted) }
      }
    }
  }
}
