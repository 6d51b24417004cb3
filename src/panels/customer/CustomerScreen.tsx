import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'

export const CustomerScreen = (): ReactElement => <ScreenFrame title="Customer">{null}</ScreenFrame>
