import type { RuleSource } from '../rule'

/** The source of a rule of thumb: there is none, and every output says so. */
export const tradeSource = (topic: string): RuleSource => ({
  document: 'Common practice of the trade',
  section: topic,
  edition: 'no source',
  status: 'common-practice',
  phrase: null,
})
