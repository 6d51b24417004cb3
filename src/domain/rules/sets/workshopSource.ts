import type { RuleSource } from '../rule'

/** The source of a rule that is ours: nobody else says it, and every output says so. */
export const ownSource = (topic: string): RuleSource => ({
  document: 'Our judgement',
  section: topic,
  edition: 'no source',
  status: 'judgement',
  phrase: null,
})

/** The source of a rule of thumb: there is none, and every output says so. */
export const tradeSource = (topic: string): RuleSource => ({
  document: 'Common practice of the trade',
  section: topic,
  edition: 'no source',
  status: 'common-practice',
  phrase: null,
})
