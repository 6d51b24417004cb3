import type { BeltFact, BeltStandard, InspectionResult, Releaser } from '../../care/beltRecord'
import { INSPECTION_ITEMS, type InspectionItemId } from '../../care/inspection'
import { type LabelProblem, LONGEST_LABEL_YEARS } from '../../care/labelProblems'
import { manufactureSpan } from '../../care/manufacture'

/** A standard as its label writes it. */
export const standardName = (standard: BeltStandard): string => {
  switch (standard) {
    case 'sfi-16.1':
      return 'SFI 16.1'
    case 'sfi-16.2':
      return 'SFI 16.2'
    case 'sfi-16.5':
      return 'SFI 16.5'
    case 'sfi-16.6':
      return 'SFI 16.6'
    case 'fia-8853-98':
      return 'FIA 8853/98'
    case 'fia-8853-2016':
      return 'FIA 8853-2016'
    case 'fmvss-209':
      return 'FMVSS 209'
    case 'other':
      return 'another standard'
    case 'unreadable':
      return 'label not readable'
  }
}

/** A fact of a belt as a lower-case name. */
export const factName = (fact: BeltFact): string => {
  switch (fact) {
    case 'name':
      return 'name'
    case 'standard':
      return 'standard'
    case 'serial':
      return 'serial number'
    case 'manufactured':
      return 'date of manufacture'
    case 'labelYear':
      return 'last year on the label'
    case 'fitted':
      return 'date of fitting'
  }
}

/** Where on a belt the fact is found, as one sentence. */
export const factHelp = (fact: BeltFact): string => {
  switch (fact) {
    case 'name':
      return 'What the shop calls it.'
    case 'standard':
      return 'On the sewn or printed label, most often near the buckle end of a shoulder or lap strap. Every strap of a set carries one.'
    case 'serial':
      return 'Serial, batch or approval number on the label; empty where there is none.'
    case 'manufactured':
      return 'As far as the label gives it: 2026-03-15, 2026-03 or 2026. Some labels have the month and year punched at their edge.'
    case 'labelYear':
      return 'Only where the label itself says how long the belt is valid, as in “not valid after 2031”.'
    case 'fitted':
      return 'When it was fitted in the car, 2026-03-15; empty where nobody knows.'
  }
}

/** A kept fact as it is shown: the standard by its name, nothing as a word of its own. */
export const factValue = (fact: BeltFact, text: string): string => {
  if (text === '') return 'not known'
  return fact === 'standard' ? standardName(text as BeltStandard) : text
}

/** "2026-03, month only" where the label gives less than a day. */
export const manufacturedText = (manufactured: string): string => {
  const known = manufactureSpan(manufactured)?.known
  if (known === undefined) return 'not known'
  return known === 'day' ? manufactured : `${manufactured}, ${known} only`
}

export const itemName = (id: InspectionItemId): string =>
  INSPECTION_ITEMS.find((item) => item.id === id)?.name ?? id

export const resultWord = (result: InspectionResult): string => {
  switch (result) {
    case 'sound':
      return 'sound'
    case 'fault':
      return 'fault'
    case 'not-looked-at':
      return 'not looked at'
  }
}

export const releaserWord = (releaser: Releaser): string =>
  releaser === 'maker' ? 'the belt’s maker' : 'a licensed person'

/** What is wrong with a label and how to go on, as sentences. */
export const labelProblemText = (problem: LabelProblem): string => {
  switch (problem.kind) {
    case 'unreadable':
      return 'The label cannot be read: nobody can be shown what the belt is or how old. Ask its maker, or replace it.'
    case 'made-in-future':
      return `The date of manufacture, ${problem.manufactured}, is still to come. Read the label again and correct it.`
    case 'fitted-in-future':
      return `The date of fitting, ${problem.fitted}, is still to come. Correct it.`
    case 'fitted-before-made':
      return `Fitted on ${problem.fitted} but made ${problem.manufactured}: one of the two is wrong. Read the label again and correct it.`
    case 'label-year-before-made':
      return `Valid to ${problem.labelYear} but made ${problem.manufactured}: one of the two is wrong. Read the label again and correct it.`
    case 'label-year-too-late':
      return `Valid to ${problem.labelYear}, more than ${LONGEST_LABEL_YEARS} years after ${problem.manufactured === '' ? 'today' : `it was made (${problem.manufactured})`}: no belt is believed to last so long here. Read the label again and correct it.`
  }
}
