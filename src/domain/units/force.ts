import { NO_VALUE, wholeText } from './numberText'

/** The units a force is shown in. Inside everything is N. */
export type ForceUnit = 'N' | 'daN' | 'lbf'

/** Exact: 0.453 592 37 kg × 9.806 65 m/s². Source: NIST Special Publication 811 (from memory); product checked in the tests. */
export const N_PER_LBF = 4.4482216152605

/** Source: SI prefix deca, SI brochure, 9th ed., table 7. */
const N_PER_DAN = 10

const inUnit = (forceN: number, unit: ForceUnit): number => {
  switch (unit) {
    case 'N':
      return forceN
    case 'daN':
      return forceN / N_PER_DAN
    case 'lbf':
      return forceN / N_PER_LBF
  }
}

/** A force for people, without its unit, at whole units; a dash when there is no force. */
export const forceText = (forceN: number, unit: ForceUnit): string =>
  Number.isFinite(forceN) ? wholeText(inUnit(forceN, unit)) : NO_VALUE

/** As `forceText`, with the unit: `22241 N`, `5000 lbf`. */
export const forceWithUnit = (forceN: number, unit: ForceUnit): string => `${forceText(forceN, unit)} ${unit}`
