import { err, ok, type Result } from '../result'
import { MINUS, NO_VALUE, tenthsText } from './numberText'
import { numeralProblemText, parsedNumeral, type NumeralProblem } from './numeral'

/** The two units a length is shown and typed in. Inside everything is mm. */
export type LengthUnit = 'mm' | 'in'

/** Exact. Source: international yard and pound agreement of 1959, 1 in = 25.4 mm (NIST Special Publication 811, from memory). */
export const MM_PER_INCH = 25.4

/** Inches are shown to the nearest of these, as on a shop tape. Source: common practice, no source. */
const SIXTEENTHS = 16

/** No car is longer: what is typed beyond it is a slip of a unit or of a digit. Our judgement. */
export const LARGEST_LENGTH_MM = 100_000

/** Why a typed length cannot be taken; the offending text is inside. */
export type LengthProblem =
  | NumeralProblem
  | { readonly kind: 'unknown-unit'; readonly received: string; readonly unitText: string }
  | { readonly kind: 'fraction-without-unit'; readonly received: string }
  | { readonly kind: 'too-large'; readonly received: string; readonly limitMm: number }

const inchesText = (lengthMm: number): string => {
  const sixteenths = Math.round((Math.abs(lengthMm) / MM_PER_INCH) * SIXTEENTHS * (1 + Number.EPSILON))
  if (sixteenths === 0) return '0'
  const sign = lengthMm < 0 ? MINUS : ''
  const whole = Math.floor(sixteenths / SIXTEENTHS)
  let numerator = sixteenths % SIXTEENTHS
  if (numerator === 0) return `${sign}${whole}`
  let denominator = SIXTEENTHS
  while (numerator % 2 === 0) {
    numerator /= 2
    denominator /= 2
  }
  return whole === 0 ? `${sign}${numerator}/${denominator}` : `${sign}${whole} ${numerator}/${denominator}`
}

/**
 * A length for people, without its unit: mm at 0.1 with a trailing .0 dropped (`312.5`), inches to the nearest sixteenth as a
 * fraction in lowest terms (`12 5/16`). Halves round away from zero; a true minus sign; a dash when there is no length.
 */
export const lengthText = (lengthMm: number, unit: LengthUnit): string => {
  if (!Number.isFinite(lengthMm)) return NO_VALUE
  return unit === 'mm' ? tenthsText(lengthMm) : inchesText(lengthMm)
}

/** As `lengthText`, with the unit: `312.5 mm`, `12 5/16 in`. */
export const lengthWithUnit = (lengthMm: number, unit: LengthUnit): string =>
  `${lengthText(lengthMm, unit)} ${unit}`

/** Quotients this close to a whole step are that step: rounding of double precision. Our judgement. */
const STEP_TOLERANCE = 1e-9

/**
 * A length brought up or down to the next value that `lengthText` can show (0.1 mm, 1/16 in), mm: for what must not be less than
 * shown, or not more. A length that can be shown as it is stays.
 */
export const lengthOnScaleMm = (lengthMm: number, unit: LengthUnit, way: 'up' | 'down'): number => {
  const perMm = unit === 'mm' ? 10 : SIXTEENTHS / MM_PER_INCH
  const steps = lengthMm * perMm
  return (way === 'up' ? Math.ceil(steps - STEP_TOLERANCE) : Math.floor(steps + STEP_TOLERANCE)) / perMm
}

/** mm in one of the units that may follow a typed number; null for anything else. */
const mmPerUnit = (unitText: string): number | null => {
  switch (unitText) {
    case 'mm':
      return 1
    case 'cm':
      return 10
    case 'in':
    case 'in.':
    case 'inch':
    case 'inches':
    case '"':
    case '”':
    case '″':
    case "''":
      return MM_PER_INCH
    default:
      return null
  }
}

/**
 * A typed length in mm. A unit in the text (mm, cm, in, ") wins over `unit`; without one `unit` is meant. Accepts `12 3/8`,
 * `12-3/8`, `3/8`, `12.5`, `12,5`, `12 3/8"`, `300 mm`, `12 in`, `-4 1/2`. A fraction without a unit is refused when `unit` is
 * mm: on a tape fractions are inches, and to guess either way could put a hole 25 times off.
 */
export const parsedLength = (text: string, unit: LengthUnit): Result<number, LengthProblem> => {
  const numeral = parsedNumeral(text)
  if (!numeral.ok) return numeral
  const { value, isFraction, unitText } = numeral.value
  if (isFraction && unitText === '' && unit === 'mm')
    return err({ kind: 'fraction-without-unit', received: text })
  const factorMm = mmPerUnit(unitText === '' ? unit : unitText)
  if (factorMm === null) return err({ kind: 'unknown-unit', received: text, unitText })
  const lengthMm = value * factorMm
  if (!(Math.abs(lengthMm) <= LARGEST_LENGTH_MM))
    return err({ kind: 'too-large', received: text, limitMm: LARGEST_LENGTH_MM })
  return ok(lengthMm)
}

/** What is wrong with a typed length and how to mend it, in one or two sentences. */
export const lengthProblemText = (problem: LengthProblem): string => {
  switch (problem.kind) {
    case 'unknown-unit':
      return `“${problem.unitText}” in “${problem.received}” is not a unit of length used here. Use mm, cm or in.`
    case 'fraction-without-unit':
      return `“${problem.received}” is a fraction, but lengths are in mm here. Add in for inches, for example 12 3/8 in, or type mm with decimals.`
    case 'too-large':
      return `“${problem.received}” is more than ${problem.limitMm / 1000} m. Check the unit and the digits.`
    case 'empty':
    case 'not-a-number':
    case 'ambiguous-comma':
    case 'zero-denominator':
    case 'improper-fraction':
      return numeralProblemText(problem)
  }
}
