import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'

export const GuideScreen = (): ReactElement => <ScreenFrame title="Guide">{null}</ScreenFrame>
