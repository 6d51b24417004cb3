import { err, ok, type Result } from '../result'
import { NO_VALUE, tenthsText } from './numberText'
import { numeralProblemText, parsedNumeral, type NumeralProblem } from './numeral'

/** The two units a mass is shown and typed in. Inside everything is kg. */
export type MassUnit = 'kg' | 'lb'

/** Exact. Source: international yard and pound agreement of 1959, 1 lb = 0.453 592 37 kg (NIST Special Publication 811, from memory). */
export const KG_PER_LB = 0.45359237

/** No part or person in a car is heavier: beyond it a unit or a digit has slipped. Our judgement. */
const LARGEST_MASS_KG = 10_000

/** Why a typed mass cannot be taken; the offending text is inside. */
export type MassProblem =
  | NumeralProblem
  | { readonly kind: 'unknown-unit'; readonly received: string; readonly unitText: string }
  | { readonly kind: 'negative'; readonly received: string }
  | { readonly kind: 'too-large'; readonly received: string; readonly limitKg: number }

/** A mass for people, without its unit: at 0.1 kg or 0.1 lb, a trailing .0 dropped; a dash when there is no mass. */
export const massText = (massKg: number, unit: MassUnit): string => {
  if (!Number.isFinite(massKg)) return NO_VALUE
  return tenthsText(unit === 'kg' ? massKg : massKg / KG_PER_LB)
}

/** As `massText`, with the unit: `84.6 kg`, `186.5 lb`. */
export const massWithUnit = (massKg: number, unit: MassUnit): string => `${massText(massKg, unit)} ${unit}`

/** kg in one of the units that may follow a typed number; null for anything else. */
const kgPerUnit = (unitText: string): number | null => {
  switch (unitText) {
    case 'kg':
      return 1
    case 'lb':
    case 'lb.':
    case 'lbs':
      return KG_PER_LB
    default:
      return null
  }
}

/** A typed mass in kg, 0 or more. A unit in the text (kg, lb, lbs) wins over `unit`; without one `unit` is meant. */
export const parsedMass = (text: string, unit: MassUnit): Result<number, MassProblem> => {
  const numeral = parsedNumeral(text)
  if (!numeral.ok) return numeral
  const { value, unitText } = numeral.value
  const factorKg = kgPerUnit(unitText === '' ? unit : unitText)
  if (factorKg === null) return err({ kind: 'unknown-unit', received: text, unitText })
  if (value < 0) return err({ kind: 'negative', received: text })
  const massKg = value * factorKg
  if (!(massKg <= LARGEST_MASS_KG))
    return err({ kind: 'too-large', received: text, limitKg: LARGEST_MASS_KG })
  return ok(massKg)
}

/** What is wrong with a typed mass and how to mend it, in one or two sentences. */
export const massProblemText = (problem: MassProblem): string => {
  switch (problem.kind) {
    case 'unknown-unit':
      return `“${problem.unitText}” in “${problem.received}” is not a unit of mass used here. Use kg or lb.`
    case 'negative':
      return `“${problem.received}” is below zero. Type the mass without a sign.`
    case 'too-large':
      return `“${problem.received}” is more than ${problem.limitKg} kg. Check the unit and the digits.`
    case 'empty':
    case 'not-a-number':
    case 'ambiguous-comma':
    case 'zero-denominator':
    case 'improper-fraction':
      return numeralProblemText(problem)
  }
}
