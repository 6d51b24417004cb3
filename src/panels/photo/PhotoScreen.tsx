import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'

export const PhotoScreen = (): ReactElement => <ScreenFrame title="Photo">{null}</ScreenFrame>
