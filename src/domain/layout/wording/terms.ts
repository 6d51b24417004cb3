import type { Term } from './term'
import { BELT_TERMS } from './termsBelt'
import { CAR_TERMS } from './termsCar'
import { FIXING_TERMS } from './termsFixing'
import { OUR_TERMS } from './termsOurs'

const TERMS = { ...CAR_TERMS, ...BELT_TERMS, ...FIXING_TERMS, ...OUR_TERMS } as const

/** A word that can be explained in place. */
export type TermId = keyof typeof TERMS

/** Every explained word, in the order of the job. */
export const TERM_IDS: readonly TermId[] = Object.keys(TERMS) as TermId[]

export const termOf = (id: TermId): Term => TERMS[id]

/** Every explained word from A to Z. */
const TERMS_A_TO_Z: readonly TermId[] = TERM_IDS.toSorted((a, b) =>
  termOf(a).word.localeCompare(termOf(b).word, 'en'),
)

/** Where a word's meaning comes from, as one line under it. */
export const termOrigin = ({ from, source }: Term): string =>
  source ??
  (from === 'trade'
    ? 'A word of the trade; the explanation is our own.'
    : 'Has this meaning only in Tabwright.')

const plain = (text: string): string => text.toLocaleLowerCase('en').replaceAll(/[-\s]+/g, ' ')

/** The words in which every part of what was typed occurs, in the word or its explanation; those with it in the word come first. */
export const foundTerms = (search: string): readonly TermId[] => {
  const parts = plain(search)
    .trim()
    .split(' ')
    .filter((part) => part !== '')
  const inWord = (id: TermId): boolean => parts.every((part) => plain(termOf(id).word).includes(part))
  return TERMS_A_TO_Z.filter((id) => {
    const { word, says, watch } = termOf(id)
    const all = plain(`${word} ${says} ${watch}`)
    return parts.every((part) => all.includes(part))
  }).toSorted((a, b) => Number(inWord(b)) - Number(inWord(a)))
}
