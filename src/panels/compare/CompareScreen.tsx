import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'

export const CompareScreen = (): ReactElement => <ScreenFrame title="Compare">{null}</ScreenFrame>
