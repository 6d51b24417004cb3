import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'

export const LayoutsScreen = (): ReactElement => <ScreenFrame title="Layouts">{null}</ScreenFrame>
