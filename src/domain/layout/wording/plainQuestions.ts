import type { Rule } from '../../rules/rule'
import { plainAsked } from './plainFinding'
import { STATED_TOPICS, statedTopic } from './plainStated'
import { grouped } from './plainWords'

/** Something that no drawing can show and that has to be asked about. */
export interface PlainQuestion {
  readonly ask: string
  readonly means: string
  /** The rules behind it in their own words, each with who asks for it. */
  readonly rules: readonly { readonly ruleId: string; readonly says: string; readonly asked: string }[]
}

/** What the rule set asks for beyond the drawing, each question once; rules of the workshop's own in their own words. */
export const plainQuestions = (rules: readonly Rule[]): readonly PlainQuestion[] => {
  const stated = rules.filter((rule) => rule.kind === 'stated')
  return grouped(stated, ({ id }) => statedTopic(id) ?? id).flatMap((group) => {
    const [first] = group
    if (first === undefined) return []
    const topic = statedTopic(first.id)
    const { ask, means } = topic === null ? { ask: first.says, means: first.why } : STATED_TOPICS[topic]
    const own = group.map((rule) => ({ ruleId: rule.id, says: rule.says, asked: plainAsked(rule) }))
    return [{ ask, means, rules: own }]
  })
}
