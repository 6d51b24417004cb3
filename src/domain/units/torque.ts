import { err, ok, type Result } from '../result'
import { N_PER_LBF } from './force'
import { NO_VALUE, tenthsText } from './numberText'
import { numeralProblemText, parsedNumeral, type NumeralProblem } from './numeral'

/** The two units a torque is shown and typed in. Inside everything is N·m. */
export type TorqueUnit = 'N·m' | 'lbf·ft'

/** Exact: 1 lbf × 1 ft. Source: 1 ft = 0.3048 m, NIST Special Publication 811 (from memory). */
export const NM_PER_LBF_FT = N_PER_LBF * 0.3048

/** Why a typed torque cannot be taken; the offending text is inside. */
export type TorqueProblem =
  NumeralProblem | { readonly kind: 'unknown-unit'; readonly received: string; readonly unitText: string }

/** A torque for people, without its unit: at 0.1, a trailing .0 dropped; a dash when there is none. */
export const torqueText = (torqueNm: number, unit: TorqueUnit): string =>
  Number.isFinite(torqueNm) ? tenthsText(unit === 'N·m' ? torqueNm : torqueNm / NM_PER_LBF_FT) : NO_VALUE

/** As `torqueText`, with the unit: `40 N·m`, `29.5 lbf·ft`. */
export const torqueWithUnit = (torqueNm: number, unit: TorqueUnit): string =>
  `${torqueText(torqueNm, unit)} ${unit}`

/** N·m in one of the units that may follow a typed number; null for anything else, inch-pounds included. */
const nmPerUnit = (unitText: string): number | null => {
  switch (unitText.replaceAll(/[\s.·⋅*-]/g, '')) {
    case 'nm':
      return 1
    case 'lbfft':
    case 'lbft':
    case 'ftlb':
    case 'ftlbf':
    case 'ftlbs':
      return NM_PER_LBF_FT
    default:
      return null
  }
}

/** A typed torque in N·m. A unit in the text (N·m, Nm, lbf·ft, ft-lb) wins over `unit`; without one `unit` is meant. */
export const parsedTorque = (text: string, unit: TorqueUnit): Result<number, TorqueProblem> => {
  const numeral = parsedNumeral(text)
  if (!numeral.ok) return numeral
  const { value, unitText } = numeral.value
  const factorNm = nmPerUnit(unitText === '' ? unit.toLowerCase() : unitText)
  return factorNm === null ? err({ kind: 'unknown-unit', received: text, unitText }) : ok(value * factorNm)
}

/** What is wrong with a typed torque and how to mend it, in one or two sentences. */
export const torqueProblemText = (problem: TorqueProblem): string =>
  problem.kind === 'unknown-unit'
    ? `“${problem.unitText}” in “${problem.received}” is not a unit of torque used here. Use N·m or lbf·ft.`
    : numeralProblemText(problem)
