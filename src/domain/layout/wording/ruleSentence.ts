import type { Rule, RuleSource } from '../../rules/rule'
import { statusWord } from './words'

/** Where a figure comes from, with its edition, the words that carry it and how it reached us. */
export const sourceText = (source: RuleSource): string => {
  const { document, section, edition, status, phrase } = source
  // "Common practice of the trade … (common practice, no source)" would say it three times; what is ours has no document.
  if (status === 'common-practice' || status === 'judgement') return `${statusWord(status)} (${section})`
  const quoted = phrase === null ? '' : `, “${phrase}”`
  const named = [document, edition, section].filter((part) => part !== '').join(', ')
  return `${named}${quoted} (${statusWord(status)})`
}

/** What a rule says, why, where sources disagree, and where it comes from, each as plain text; no numbers of any layout. */
export interface RuleSentence {
  readonly says: string
  readonly why: string
  readonly caveat: string | null
  readonly source: string
}

/** A rule as it is printed, also for rules that are only stated. */
export const ruleSentence = (rule: Rule): RuleSentence => ({
  says: rule.says,
  why: rule.why,
  caveat: rule.caveat,
  source: sourceText(rule.source),
})
