import type { Rule, RuleSet } from './rule'
import { STUDENT_CARS_2026_RULES } from './sets/studentCars2026'
import { US_ROAD_210_RULES } from './sets/usRoad210'
import { WORKSHOP_RULES } from './sets/workshop'

/** Every rule set a layout may choose, the default first. */
export const RULE_SETS: readonly RuleSet[] = [WORKSHOP_RULES, STUDENT_CARS_2026_RULES, US_ROAD_210_RULES]

/** The set of a new layout. */
export const DEFAULT_RULE_SET_ID = 'workshop-practice'

/** The rule set with this id, or null when there is none. */
export const ruleSetById = (id: string): RuleSet | null => RULE_SETS.find((set) => set.id === id) ?? null

/** A rule by its id, whichever set it is in; ids are unique over all sets. Null when there is none. */
export const ruleById = (id: string): Rule | null => RULES_BY_ID.get(id) ?? null

const RULES_BY_ID: ReadonlyMap<string, Rule> = new Map(
  RULE_SETS.flatMap((set) => set.rules).map((rule) => [rule.id, rule]),
)
