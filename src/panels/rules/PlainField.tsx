import type { ReactElement } from 'react'
import { err, ok } from '../../domain/result'
import { numeralProblemText, parsedNumeral } from '../../domain/units/numeral'
import { NumberField, type NumberFieldProps, type NumberFormat } from '../fields/NumberField'

const PLAIN: NumberFormat = {
  text: String,
  parse: (text) => {
    const parsed = parsedNumeral(text)
    if (!parsed.ok) return err(numeralProblemText(parsed.error))
    return parsed.value.unitText === ''
      ? ok(parsed.value.value)
      : err('Type a plain number without a unit here.')
  },
  unit: '',
  step: { small: 1, large: 10 },
  inputMode: 'decimal',
}

/** A count, a share or a section value: a number shown without a unit. */
export const PlainField = (props: Omit<NumberFieldProps, 'format'>): ReactElement => (
  <NumberField {...props} format={PLAIN} />
)
