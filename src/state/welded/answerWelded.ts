import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { evaluatePlace } from '../../domain/layout/evaluate/evaluateLayout'
import { ok } from '../../domain/result'
import type { WeldedAnswer, WeldedQuestion } from './weldedMessages'

/** Evaluates the car as it was welded, place by place, as any layout is evaluated, and says how far it has got. */
export const answerWelded = (
  { layout }: WeldedQuestion,
  report: (done: number, total: number) => void = () => undefined,
): WeldedAnswer => {
  const ruleSet = chosenRuleSet(layout)
  return ok(
    layout.places.map((place, index) => {
      report(index, layout.places.length)
      return evaluatePlace(layout, place, ruleSet, { extent: 'what-moves' }).findings
    }),
  )
}
