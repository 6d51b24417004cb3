import type { Sex } from '../domain/body/occupant'
import { type SurveyedPerson, surveyedPeople } from '../domain/body/survey/surveyed'
import type { Layout } from '../domain/layout/document/layout'
import { type Fit, type WhoFits, whoFits } from '../domain/layout/fit/whoFits'
import { FIT_CAPTION, FIT_METHOD } from '../domain/layout/wording/fitText'
import { ruleSetOf } from '../domain/layout/document/ruleSetOf'

const countOf = (people: readonly SurveyedPerson[], sex: Sex): number =>
  people.filter((person) => person.sex === sex).length

const reportedFit = ({ tally, limiting, notPassingAt }: Fit, { positions }: WhoFits) => ({
  women: tally.female,
  men: tally.male,
  limiting,
  notPassing: positions.map((position, index) => ({ ...position, people: notPassingAt[index] ?? 0 })),
})

/** What `--fit` adds for each place: how many of the surveyed people pass each rule, the same counts as the page shows. */
export const fitReport = (layout: Layout) => {
  const ruleSet = ruleSetOf(layout)
  if (ruleSet === null) throw new Error(`no rule set "${layout.ruleSetId}"`)
  const people = surveyedPeople()
  return {
    caption: FIT_CAPTION,
    method: FIT_METHOD,
    surveyed: { women: countOf(people, 'female'), men: countOf(people, 'male') },
    places: layout.places.map((place) => {
      const result = whoFits(layout, place, ruleSet, people)
      return {
        place: place.id,
        overall: result.overall.map((fit) => ({
          level: fit.level,
          rules: fit.ruleCount,
          ...reportedFit(fit, result),
        })),
        rules: result.rules.map((fit) => ({
          rule: fit.ruleId,
          quantity: fit.quantity,
          level: fit.level,
          ...reportedFit(fit, result),
        })),
        brokenHardware: result.brokenHardware,
      }
    }),
  }
}
