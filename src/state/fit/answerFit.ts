import { surveyedPeople } from '../../domain/body/survey/surveyed'
import { fitCase } from '../../domain/layout/fit/fitRules'
import { personVerdicts } from '../../domain/layout/fit/personVerdicts'
import { whoFitsFrom } from '../../domain/layout/fit/whoFits'
import { ruleSetOf } from '../../domain/layout/document/ruleSetOf'
import type { FitAnswer, FitQuestion } from './fitMessages'

/** How many people are tried between two reports of progress. Our judgement: some twenty reports a run. */
const PEOPLE_A_REPORT = 60

/** Tries a place with everybody surveyed and says how far it has got; the last answer is `done` or `failed`. */
export const answerFit = ({ layout, placeId }: FitQuestion, answer: (answer: FitAnswer) => void): void => {
  const place = layout.places.find(({ id }) => id === placeId)
  const ruleSet = ruleSetOf(layout)
  if (place === undefined || ruleSet === null) {
    answer({ kind: 'failed', message: 'This place or its rule set is gone.' })
    return
  }
  const people = surveyedPeople()
  const fit = fitCase(layout, place, ruleSet)
  const verdicts = people.map((person, index) => {
    if (index % PEOPLE_A_REPORT === 0) answer({ kind: 'progress', done: index, total: people.length })
    return personVerdicts(fit, person)
  })
  answer({ kind: 'done', result: whoFitsFrom(fit, ruleSet, people, verdicts) })
}
