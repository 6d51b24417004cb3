import type { ReactElement } from 'react'
import { lengthUnitOf } from '../../state/selectors'
import { useApp } from '../../state/react'
import { ANGLE_FORMAT, lengthFormat } from './formats'
import { NumberField, type NumberFieldProps } from './NumberField'

type Props = Omit<NumberFieldProps, 'format'>

/** A length in the shop's unit; `value` and what is committed are mm. */
export const LengthField = (props: Props): ReactElement => (
  <NumberField {...props} format={lengthFormat(useApp(lengthUnitOf))} />
)

export const AngleField = (props: Props): ReactElement => <NumberField {...props} format={ANGLE_FORMAT} />
