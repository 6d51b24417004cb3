import { err, ok, type Result } from '../../result'
import type { RuleSet } from '../../rules/rule'
import { emptyLayout } from './empty'
import { jsonDamageOffset } from './jsonDamage'
import { parseLayout } from './parseLayout'
import type { LayoutProblem } from './problem'

/** The only version so far of a file with one rule set. */
const RULE_SET_FILE_VERSION = 1

/** The text of a file that holds one rule set, to be read back by `parseRuleSetText`. */
export const ruleSetText = (set: RuleSet): string =>
  `${JSON.stringify({ ruleSetFile: RULE_SET_FILE_VERSION, ruleSet: set }, null, 2)}\n`

const fileProblem = (received: string, message: string): LayoutProblem => ({
  path: '',
  received,
  message,
  remedy: 'Choose a rule set file (*.rules.json) that was saved from here.',
})

const readJson = (text: string): Result<unknown, LayoutProblem> => {
  if (text.trim() === '') return err(fileProblem('nothing', 'The file is empty.'))
  try {
    return ok(JSON.parse(text) as unknown)
  } catch {
    const before = text.slice(0, jsonDamageOffset(text) ?? text.length)
    const line = before.split('\n').length
    return err(
      fileProblem(`${text.length} characters`, `The file is not readable as JSON from line ${line} on.`),
    )
  }
}

/**
 * A rule set from the text of a file, checked as one in a layout file is: every field, then whether they agree. The set's id is
 * made new when it is added to a layout, so one that is taken does no harm. Fails with every problem found.
 */
export const parseRuleSetText = (text: string): Result<RuleSet, readonly LayoutProblem[]> => {
  const json = readJson(text.startsWith('\uFEFF') ? text.slice(1) : text)
  if (!json.ok) return err([json.error])
  const file = json.value
  if (typeof file !== 'object' || file === null || !('ruleSetFile' in file) || !('ruleSet' in file))
    return err([fileProblem('something else', 'This is not a rule set file.')])
  if (file.ruleSetFile !== RULE_SET_FILE_VERSION)
    return err([
      fileProblem(
        JSON.stringify(file.ruleSetFile) ?? 'nothing',
        `The rule set file says version ${JSON.stringify(file.ruleSetFile)}; this program reads version ${RULE_SET_FILE_VERSION}.`,
      ),
    ])
  const { ruleSet } = file
  const named = typeof ruleSet === 'object' && ruleSet !== null ? { ...ruleSet, id: 'imported' } : ruleSet
  const parsed = parseLayout({ ...emptyLayout(), ownRuleSets: [named] })
  if (!parsed.ok) return parsed
  const [set] = parsed.value.ownRuleSets ?? []
  return set === undefined ? err([fileProblem('nothing', 'The file holds no rule set.')]) : ok(set)
}
