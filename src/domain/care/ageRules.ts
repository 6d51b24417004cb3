import type { Rule, RuleSet } from '../rules/rule'
import { ruleById } from '../rules/ruleSets'
import type { BeltStandard } from './beltRecord'

/** When a belt has to go. The last day of use is always one on which it may still be used. */
export type AgeLimit =
  /** So many years from manufacture; the day on which it is exactly that old is the last. */
  | { readonly kind: 'years-of-life'; readonly years: number }
  /** 31 December of that calendar year after the year of manufacture: 1 is the year after it. */
  | { readonly kind: 'end-of-year-after'; readonly years: number }
  /** 31 December of the last year of use that the label states. */
  | { readonly kind: 'label-year' }

/** What one rule of a rule set says about the age of a belt, as a limit that can be counted. */
export interface AgeRule {
  /** The rule in rules/sets that it is read from; document, edition and how it is known stand there. */
  readonly ruleId: string
  readonly standards: readonly BeltStandard[] | 'any'
  readonly limit: AgeLimit
  /** What the words of the rule leave open, and how it is read here; null where they leave nothing open. */
  readonly reading: string | null
}

const SFI: readonly BeltStandard[] = ['sfi-16.1', 'sfi-16.2', 'sfi-16.5', 'sfi-16.6']
const FIA: readonly BeltStandard[] = ['fia-8853-98', 'fia-8853-2016']

/** Every age rule known here. Source of each: the rule that it names. */
export const AGE_RULES: readonly AgeRule[] = [
  {
    ruleId: 'sfi-two-years',
    standards: SFI,
    limit: { kind: 'years-of-life', years: 2 },
    reading:
      'The words read do not say from which day; counted here from manufacture, which is never later than fitting or sale.',
  },
  {
    ruleId: 'fia-label-year',
    standards: ['fia-8853-98'],
    limit: { kind: 'label-year' },
    reading:
      'Taken to the end of that year, as the European student rules say it for FIA belts. A British historic club’s page says that belts to 8853/98 are not valid in cars of Appendix J from 31 December 2022 on (quoted second-hand).',
  },
  {
    ruleId: 'student-derivative-age',
    standards: SFI,
    limit: { kind: 'end-of-year-after', years: 2 },
    reading: null,
  },
  {
    ruleId: 'student-derivative-age',
    standards: FIA,
    limit: { kind: 'label-year' },
    reading: null,
  },
  {
    ruleId: 'student-label-year',
    standards: 'any',
    limit: { kind: 'label-year' },
    reading: null,
  },
  {
    ruleId: 'speedway-age',
    standards: 'any',
    limit: { kind: 'years-of-life', years: 5 },
    reading: null,
  },
  {
    ruleId: 'quarter-midget-age',
    standards: 'any',
    limit: { kind: 'years-of-life', years: 4 },
    reading: 'The date stamp is taken as the date of manufacture.',
  },
  {
    ruleId: 'track-day-age',
    standards: 'any',
    limit: { kind: 'years-of-life', years: 5 },
    reading:
      'The words read do not say from which day; counted here from manufacture, which is never later than fitting or sale.',
  },
  {
    ruleId: 'ihra-age',
    standards: ['sfi-16.1'],
    limit: { kind: 'years-of-life', years: 2 },
    reading: 'The words read do not say from which day; counted here from manufacture.',
  },
]

/** The rule that an age rule is read from. Throws when the rule sets no longer hold it. */
export const ruleOfAge = ({ ruleId }: AgeRule): Rule => {
  const rule = ruleById(ruleId)
  if (rule === null) throw new RangeError(`no rule set holds the age rule "${ruleId}"`)
  return rule
}

/** The age rules that a rule set holds, the builder's own copies of sets among them; none where it says nothing of age. */
export const ageRulesOf = (ruleSet: Pick<RuleSet, 'rules'>): readonly AgeRule[] =>
  AGE_RULES.filter(({ ruleId }) => ruleSet.rules.some(({ id }) => id === ruleId))
