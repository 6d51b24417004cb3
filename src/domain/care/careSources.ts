import type { RuleSource } from '../rules/rule'

/*
 * Where inspection and care of webbing is written down, as far as it was read. None of these documents is about belts of
 * off-road cars: the belt maker's instructions come before all of them.
 */

/** Belts and harnesses of gliders: the nearest to a car's harness that was read. */
export const GLIDER_LEAFLET: RuleSource = {
  document: 'British Gliding Association, airworthiness leaflet 4-8, maintenance of seat harnesses and belts',
  section: 'inspection, cleaning, lubrication',
  edition: 'date not recorded',
  status: 'read',
  phrase: null,
}

/** Lifting slings of the same webbing. */
export const WEB_SLINGS: RuleSource = {
  document: '29 CFR 1926.251 (synthetic web slings)',
  section: '(e), removal from service',
  edition: 'as a code site reproduces it',
  status: 'read',
  phrase: null,
}

export const SLING_TABLE: RuleSource = {
  document: 'Washington Administrative Code 296-155-55820 (synthetic webbing slings)',
  section: 'Table 25',
  edition: 'date not recorded',
  status: 'read',
  phrase: null,
}

export const SLING_STANDARD: RuleSource = {
  document: 'ASME B30.9 (slings)',
  section: 'removal from service',
  edition: 'as a dealer quotes it',
  status: 'second-hand',
  phrase: null,
}

/** Of a helicopter's shoulder harness that broke in a crash. */
export const AIRCRAFT_BELTS: RuleSource = {
  document: 'CASA Airworthiness Bulletin 25-2 (seat belts and harnesses)',
  section: 'background',
  edition: 'issue 1, 4 April 2003',
  status: 'read',
  phrase: 'less than 20 percent of its original strength',
}

/** Harnesses for work at height. */
export const IMPACT_LOADED: RuleSource = {
  document: '29 CFR 1910.140 (personal fall protection systems)',
  section: '(c)(17), after an impact load',
  edition: 'as safety pages repeat it',
  status: 'second-hand',
  phrase: null,
}

export const LABEL_PAGE: RuleSource = {
  document: 'A New Zealand motor sport safety page on belt labels',
  section: 'missing or illegible labels',
  edition: 'date not recorded',
  status: 'read',
  phrase: null,
}

export const COMMON_PRACTICE: RuleSource = {
  document: 'Common practice of the trade',
  section: 'care of belts',
  edition: '',
  status: 'common-practice',
  phrase: null,
}
