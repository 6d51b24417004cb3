import type { Rule, RuleSet } from './rule'
import { AVIATION_RULES, MILITARY_SEAT_RULES } from './sets/aviation'
import {
  AUSTRALIA_RULES,
  CLUB_RACING_RULES,
  GENERAL_COMPETITION_RULES,
  TRACK_DAY_RULES,
  UK_SCRUTINEERS_RULES,
} from './sets/clubs'
import { DESERT_RULES, QUARTER_MIDGET_2009_RULES, SPEEDWAY_2010_RULES } from './sets/dirt'
import { DRAG_IHRA_2019_RULES, DRAG_NHRA_RULES, NEW_JERSEY_RULES } from './sets/dragAndState'
import {
  EU_BUS_RULES,
  EU_LIGHT_GOODS_RULES,
  EU_LIGHT_VEHICLE_RULES,
  EU_REAR_SEATS_RULES,
} from './sets/euRoad'
import { RALLY_CIRCUIT_RULES } from './sets/rallyCircuit'
import { ARA_RALLY_RULES, PRO_RALLY_1998_RULES, RALLY_AMERICA_RULES } from './sets/rallyClubs'
import { BELT_STANDARDS, SEAT_MOUNT_RULES, WORK_MACHINE_RULES } from './sets/standards'
import { STUDENT_CARS_2026_RULES } from './sets/studentCars2026'
import {
  STUDENT_CARS_2014_RULES,
  STUDENT_DERIVATIVE_2025_RULES,
  STUDENT_OFF_ROAD_RULES,
} from './sets/studentCarsOther'
import { UK_IVA_RULES, UN_R14_RULES } from './sets/unAndUkRoad'
import { US_ROAD_210_RULES } from './sets/usRoad210'
import { US_ROAD_1991_RULES, US_SCHOOL_BUS_RULES } from './sets/usRoadOther'
import { WORKSHOP_RULES } from './sets/workshop'

/** Every rule set that comes with the program, by group, the default first. */
export const RULE_SETS: readonly RuleSet[] = [
  WORKSHOP_RULES,
  SPEEDWAY_2010_RULES,
  QUARTER_MIDGET_2009_RULES,
  DESERT_RULES,
  RALLY_CIRCUIT_RULES,
  RALLY_AMERICA_RULES,
  PRO_RALLY_1998_RULES,
  ARA_RALLY_RULES,
  BELT_STANDARDS,
  CLUB_RACING_RULES,
  GENERAL_COMPETITION_RULES,
  TRACK_DAY_RULES,
  AUSTRALIA_RULES,
  UK_SCRUTINEERS_RULES,
  STUDENT_CARS_2026_RULES,
  STUDENT_CARS_2014_RULES,
  STUDENT_DERIVATIVE_2025_RULES,
  STUDENT_OFF_ROAD_RULES,
  DRAG_NHRA_RULES,
  DRAG_IHRA_2019_RULES,
  NEW_JERSEY_RULES,
  US_ROAD_210_RULES,
  US_ROAD_1991_RULES,
  US_SCHOOL_BUS_RULES,
  EU_LIGHT_GOODS_RULES,
  EU_REAR_SEATS_RULES,
  EU_BUS_RULES,
  EU_LIGHT_VEHICLE_RULES,
  UN_R14_RULES,
  UK_IVA_RULES,
  SEAT_MOUNT_RULES,
  WORK_MACHINE_RULES,
  AVIATION_RULES,
  MILITARY_SEAT_RULES,
]

/** The set of a new layout. */
export const DEFAULT_RULE_SET_ID = 'workshop-practice'

/** The rule set with this id, or null when there is none. */
export const ruleSetById = (id: string): RuleSet | null => RULE_SETS.find((set) => set.id === id) ?? null

/** A rule by its id, whichever set it is in; ids are unique over all sets. Null when there is none. */
export const ruleById = (id: string): Rule | null => RULES_BY_ID.get(id) ?? null

const RULES_BY_ID: ReadonlyMap<string, Rule> = new Map(
  RULE_SETS.flatMap((set) => set.rules).map((rule) => [rule.id, rule]),
)
