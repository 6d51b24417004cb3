import { surveyedPeople } from '../../domain/body/survey/surveyed'
import { ruleSetOf } from '../../domain/layout/document/ruleSetOf'
import { fitCase } from '../../domain/layout/fit/fitRules'
import { personVerdicts } from '../../domain/layout/fit/personVerdicts'
import { whoFitsFrom } from '../../domain/layout/fit/whoFits'
import { err, ok } from '../../domain/result'
import type { FitAnswer, FitQuestion } from './fitMessages'

/** How many people are tried between two reports of progress. Our judgement: some twenty reports a run. */
const PEOPLE_A_REPORT = 60

/** Tries a place with everybody surveyed and says how far it has got. */
export const answerFit = (
  { layout, placeId }: FitQuestion,
  report: (done: number, total: number) => void,
): FitAnswer => {
  const place = layout.places.find(({ id }) => id === placeId)
  const ruleSet = ruleSetOf(layout)
  if (place === undefined || ruleSet === null) return err({ kind: 'nothing-to-count', placeId })
  const people = surveyedPeople()
  const fit = fitCase(layout, place, ruleSet)
  const verdicts = people.map((person, index) => {
    if (index % PEOPLE_A_REPORT === 0) report(index, people.length)
    return personVerdicts(fit, person)
  })
  return ok(whoFitsFrom(fit, ruleSet, people, verdicts))
}
