import type { Layout } from '../../domain/layout/document/layout'
import { lengthProblemText, lengthText, parsedLength } from '../../domain/units/length'
import { massProblemText, massText, parsedMass } from '../../domain/units/mass'
import { err, ok } from '../../domain/result'
import { tenthsText } from '../../domain/units/numberText'
import { numeralProblemText, parsedNumeral } from '../../domain/units/numeral'
import { parsedTorque, torqueProblemText, torqueText, type TorqueUnit } from '../../domain/units/torque'
import { nudgeMm } from '../../state/nudge'
import type { NumberFormat } from './NumberField'

type Units = Layout['units']

const lengthFormatIn = (unit: Units['length']): NumberFormat => ({
  text: (mm) => lengthText(mm, unit),
  parse: (text) => {
    const parsed = parsedLength(text, unit)
    return parsed.ok ? parsed : err(lengthProblemText(parsed.error))
  },
  unit,
  step: { small: nudgeMm(unit, 'small'), large: nudgeMm(unit, 'large') },
  // A phone's decimal keypad has no space and no slash, which fractions need.
  inputMode: unit === 'in' ? 'text' : 'decimal',
})

const LENGTH_FORMATS: Readonly<Record<Units['length'], NumberFormat>> = {
  mm: lengthFormatIn('mm'),
  in: lengthFormatIn('in'),
}

export const lengthFormat = (unit: Units['length']): NumberFormat => LENGTH_FORMATS[unit]

export const ANGLE_FORMAT: NumberFormat = {
  text: tenthsText,
  parse: (text) => {
    const parsed = parsedNumeral(text)
    if (!parsed.ok) return err(numeralProblemText(parsed.error))
    const { value, unitText } = parsed.value
    return ['', '°', 'deg'].includes(unitText)
      ? ok(value)
      : err(`“${unitText}” is not a unit of angle used here. Type degrees, for example 12.5.`)
  },
  unit: '°',
  step: { small: 1, large: 5 },
  inputMode: 'decimal',
}

export const massFormat = (unit: Units['mass']): NumberFormat => ({
  text: (kg) => massText(kg, unit),
  parse: (text) => {
    const parsed = parsedMass(text, unit)
    return parsed.ok ? parsed : err(massProblemText(parsed.error))
  },
  unit,
  step: { small: 1, large: 5 },
  inputMode: 'decimal',
})

/** In the unit that goes with the shop's lengths. */
export const torqueFormat = (lengthUnit: Units['length']): NumberFormat => {
  const unit: TorqueUnit = lengthUnit === 'mm' ? 'N·m' : 'lbf·ft'
  return {
    text: (nm) => torqueText(nm, unit),
    parse: (text) => {
      const parsed = parsedTorque(text, unit)
      return parsed.ok ? parsed : err(torqueProblemText(parsed.error))
    },
    unit,
    step: { small: 1, large: 5 },
    inputMode: 'decimal',
  }
}
