import type { PersonMeasure } from '../../body/survey/surveyed'
import type { RuleLevel } from '../../rules/rule'
import { lengthWithUnit } from '../../units/length'
import { massWithUnit } from '../../units/mass'
import type { Layout } from '../document/layout'
import type { BeyondReason } from '../fit/beyondSurvey'
import type { Fit, Tally } from '../fit/whoFits'
import type { Separation } from '../fit/separation'

/** Stands beside every count. Source: body/survey/README.md. */
export const FIT_CAPTION =
  'The survey is of soldiers, not of your customers: 600 women and 600 men of the U.S. Army, 17 to 58 years old, under service ' +
  'weight standards (1988 and 2012). A count of them is not a share of anybody else, and very heavy people are hardly among them.'

/** How the people are tried and what of them is not their own. Source: body/survey/README.md. */
export const FIT_METHOD =
  'Each sits here with their own measured body, in every seat position, and passes a rule when every strap it speaks about does. ' +
  'Hip height, pelvis tilt and the flesh under the lap strap were not surveyed and are the predicted ones; shoulder heights of 2012 are ' +
  'derived and may be off by some 10 mm for one person.'

/** Below this strength no single measure is said to decide. Our judgement. */
const TELLS_WELL = 0.5

/** A surveyed measure as a lower-case name. */
export const personMeasureName = (measure: PersonMeasure): string => {
  switch (measure) {
    case 'midShoulderHeightMm':
      return 'middle of the shoulder above the seat'
    case 'sittingHeightMm':
      return 'sitting height'
    case 'shoulderStrapSpacingMm':
      return 'distance of the straps on the shoulders'
    case 'bideltoidBreadthMm':
      return 'breadth over the upper arms'
    case 'chestDepthMm':
      return 'chest depth'
    case 'abdominalDepthMm':
      return 'belly depth, seated'
    case 'hipBreadthMm':
      return 'hip breadth, seated'
    case 'frontHipBoneBreadthMm':
      return 'distance of the front hip bones (predicted for the people of 2012)'
    case 'thighClearanceMm':
      return 'thigh height above the seat'
    case 'buttockKneeMm':
      return 'buttock to front of knee'
    case 'kneeHeightMm':
      return 'knee height, seated'
    case 'helmetRadiusMm':
      return 'size of the head'
    case 'statureMm':
      return 'stature'
    case 'massKg':
      return 'mass'
  }
}

type Units = Layout['units']

const measureText = (measure: PersonMeasure, value: number, units: Units): string =>
  measure === 'massKg'
    ? massWithUnit(value, units.mass)
    : lengthWithUnit(units.length === 'mm' ? Math.round(value) : value, units.length)

const stretchText = ({ measure, from, to }: Separation<PersonMeasure>, units: Units): string => {
  if (from === null && to === null) return 'any'
  if (from === null) return `up to ${measureText(measure, to ?? 0, units)}`
  if (to === null) return `${measureText(measure, from, units)} or more`
  return `${measureText(measure, from, units)} to ${measureText(measure, to, units)}`
}

/** How many people a tally holds. */
const tallyTotal = ({ passing, broken, unchecked }: Tally): number => passing + broken + unchecked

/** Which body measure tells best who passes, and how well; or why none is named. */
export const limitingText = ({ limiting, tally }: Pick<Fit, 'limiting' | 'tally'>, units: Units): string => {
  const all = tallyTotal(tally.female) + tallyTotal(tally.male)
  const passing = tally.female.passing + tally.male.passing
  if (passing === all) return 'Everybody passes.'
  if (passing === 0) return 'Nobody passes: whose body it is makes no difference here.'
  if (limiting === null) return 'Too few people are on one side to name a limiting body measure.'
  const { measure, passingInside, notPassingInside, notPassing, strength } = limiting
  const inside = `${passingInside} of the ${passing} who pass lie there, and ${notPassingInside} of the ${notPassing} who do not`
  const name = personMeasureName(measure)
  return strength < TELLS_WELL
    ? `No single body measure tells well who passes. Nearest is ${name}, ${stretchText(limiting, units)}: ${inside}.`
    : `Limiting body measure: ${name}, ${stretchText(limiting, units)}: ${inside}.`
}

/** The rules that a level takes in, as words for a choice. */
export const fitLevelWords = (level: RuleLevel): string => {
  switch (level) {
    case 'must':
      return 'Must'
    case 'should':
      return 'Must and should'
    case 'advice':
      return 'All, advice too'
  }
}

const reasonWord = (reason: BeyondReason): string => {
  switch (reason) {
    case 'shorter':
    case 'taller':
    case 'lighter':
    case 'heavier':
    case 'leaner':
      return reason
    case 'stouter':
      return 'stouter for the stature'
  }
}

/** "shorter and lighter than any of the 600 women surveyed"; null for somebody inside the survey. */
export const beyondText = (
  reasons: readonly BeyondReason[],
  sex: 'female' | 'male',
  count: number,
): string | null =>
  reasons.length === 0
    ? null
    : `${reasons.map(reasonWord).join(' and ')} than any of the ${count} ${sex === 'female' ? 'women' : 'men'} surveyed`
