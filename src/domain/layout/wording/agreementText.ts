import type { Agreement } from '../agreement/agreement'
import { fingerprintCode } from '../agreement/fingerprint'
import type { Layout } from '../document/layout'
import { listed, plainPartName } from './plainNames'

/** What an agreement is and is not; stands wherever somebody agrees. */
export const AGREED_TO_WHAT =
  'What is agreed to is this drawing: where the belts and the tubes are, for the people named, under the rules named. It is no promise that anything is safe or strong enough, and it does not replace measuring on the car.'

/** Few enough to be read; the rest is counted. */
const MOST_NAMED = 4

const changedWords = (partIds: readonly string[], layout: Layout): string => {
  if (partIds.length === 0) return ''
  const names = [...new Set(partIds.map((partId) => plainPartName(partId, layout)))]
  const shown = names.slice(0, MOST_NAMED)
  const left = names.length - shown.length
  return `: ${listed(left > 0 ? [...shown, `${left} more`] : shown)}`
}

const variantWords = (name: string): string => (name === '' ? '' : ` to “${name}”`)

/** Where the talk with the customer has got to, as one or two sentences. */
export const agreementText = (agreement: Agreement, layout: Layout): string => {
  switch (agreement.kind) {
    case 'not-shown':
      return 'Not agreed yet: not shown to the customer.'
    case 'open': {
      const { shown } = agreement
      const to = shown.to.trim() === '' ? '' : ` to ${shown.to.trim()}`
      return `Not agreed yet: shown${to} on ${shown.date}, no answer taken.`
    }
    case 'change-asked': {
      const { by, date, text } = agreement.decision
      return `Not agreed: ${by} asked for a change on ${date}${text.trim() === '' ? '' : `: “${text.trim()}”`}.`
    }
    case 'agreed': {
      const { decision, variantName, changedParts, to } = agreement
      const who = `by ${decision.by} on ${decision.date}`
      const code = `code ${fingerprintCode(decision.fingerprint)}`
      switch (to) {
        case 'as-drawn':
          return `Agreed ${who}: as drawn, ${code}.`
        case 'other-variant':
          return `Agreed ${who}${variantWords(variantName)}, ${code}, which is not the variant drawn here.`
        case 'changed':
          return `Agreed ${who}${variantWords(variantName)} to an earlier drawing, ${code}. Changed since${changedWords(changedParts, layout)}.`
        case 'not-as-shown':
          return `Agreed ${who}, but to a drawing that was not the one shown, ${code}. Show it again.`
      }
    }
  }
}
