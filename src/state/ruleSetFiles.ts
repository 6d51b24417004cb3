import { parseRuleSetText } from '../domain/layout/document/ruleSetText'
import { withRuleSetAdded } from '../domain/layout/edit/changeRuleSets'
import { pickedText, readOrSaid } from './pickedFile'
import type { AppStore } from './store'

/** Larger than any rule set by far. Our judgement. */
const LARGEST_FILE_BYTES = 1_000_000

/** Adds the rule set of a file to the layout as one undo step; a damaged or foreign one changes nothing and says why. */
const openRuleSetText = (store: AppStore, text: string, name: string): boolean => {
  const set = readOrSaid(store, parseRuleSetText(text), `${name} cannot be used`)
  if (set === null) return false
  store.actions.edit(`Add the rule set ${set.name}`, (layout) => withRuleSetAdded(layout, set))
  store.actions.notify('info', `The rule set ${set.name} is added and chosen. Undo takes it out again.`)
  return true
}

export const openRuleSetFile = async (store: AppStore, file: File): Promise<boolean> => {
  const text = await pickedText(store, file, { what: 'a rule set', largestBytes: LARGEST_FILE_BYTES })
  return text !== null && openRuleSetText(store, text, file.name)
}
