import { err, ok, type Result } from '../result'

/** A number as somebody typed it, and whatever followed it. */
export interface Numeral {
  readonly value: number
  readonly isFraction: boolean
  /** The rest of the text, trimmed and in lower case: a unit or nothing. */
  readonly unitText: string
}

/** Why a typed number cannot be taken. `received` is the text as typed. */
export type NumeralProblem =
  | { readonly kind: 'empty' }
  | { readonly kind: 'not-a-number'; readonly received: string }
  | { readonly kind: 'ambiguous-comma'; readonly received: string }
  | { readonly kind: 'zero-denominator'; readonly received: string }
  | { readonly kind: 'improper-fraction'; readonly received: string }

/** `12`, `12.5`, `.5`, `12,5`, with an optional sign; the rest is looked at by whoever knows the units. */
const DECIMAL = /^([-+]?)(\d+(?:[.,]\d*)?|[.,]\d+)\s*([^\d.,/+\s-][^\d/]*)?$/
/** `3/8`, `12 3/8`, `12-3/8`, with an optional sign. */
const FRACTION = /^([-+]?)(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*\/\s*(\d+)\s*([^\d.,/+\s-][^\d/]*)?$/
/** A comma before exactly three digits may part thousands or decimals; only after a lone 0 it is sure to be decimal. */
const AMBIGUOUS_COMMA = /^[-+]?(?!0,)\d+,\d{3}(?!\d)/

/** One-character fractions (½ ⅜ …) spelled out, with a space so that 12½ does not become 121/2; other dashes made plain. */
const spelledOut = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replaceAll('⁄', '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .trim()

const decimalOf = (text: string): number => Number(text.replace(',', '.'))

/** The number at the start of a typed text; a decimal comma counts as a point, and fractions as they are written on a tape. */
export const parsedNumeral = (received: string): Result<Numeral, NumeralProblem> => {
  const text = spelledOut(received)
  if (text === '') return err({ kind: 'empty' })
  if (AMBIGUOUS_COMMA.test(text)) return err({ kind: 'ambiguous-comma', received })

  const fraction = FRACTION.exec(text)
  if (fraction !== null) {
    const [, sign = '', whole = '0', numerator = '', denominator = '', unitText = ''] = fraction
    if (Number(denominator) === 0) return err({ kind: 'zero-denominator', received })
    // 12 9/8 is more likely a slip than 13 1/8; 9/8 alone can be nothing else.
    const isImproper = fraction[2] !== undefined && Number(numerator) >= Number(denominator)
    if (isImproper) return err({ kind: 'improper-fraction', received })
    const size = Number(whole) + Number(numerator) / Number(denominator)
    return ok({ value: signed(sign, size), isFraction: true, unitText: unitText.trim().toLowerCase() })
  }

  const decimal = DECIMAL.exec(text)
  if (decimal === null) return err({ kind: 'not-a-number', received })
  const [, sign = '', digits = '', unitText = ''] = decimal
  return ok({
    value: signed(sign, decimalOf(digits)),
    isFraction: false,
    unitText: unitText.trim().toLowerCase(),
  })
}

/** Never −0: it would print as 0 but compare as something else. */
const signed = (sign: string, size: number): number => (sign === '-' && size > 0 ? -size : size)

/** What is wrong and how to mend it, in one or two sentences. */
export const numeralProblemText = (problem: NumeralProblem): string => {
  switch (problem.kind) {
    case 'empty':
      return 'Nothing was typed. Type a number.'
    case 'not-a-number':
      return `“${problem.received}” is not a number. Type digits, with a point or a comma for decimals, for example 12.5.`
    case 'ambiguous-comma':
      return `In “${problem.received}” the comma may mean thousands or decimals. Leave out thousands separators and write decimals with a point.`
    case 'zero-denominator':
      return `In “${problem.received}” the number below the stroke is 0. Write the fraction as on the tape, for example 3/8.`
    case 'improper-fraction':
      return `In “${problem.received}” the fraction is 1 or more beside a whole number. Write it as on the tape, for example 12 3/8.`
  }
}
