import { type ComponentType, lazy } from 'react'
import type { Screen } from '../state/appState'

/** A screen beside the drawing and the papers; loaded when it is first looked at. */
interface OtherScreen {
  readonly id: Exclude<Screen, 'drawing' | 'papers'>
  readonly words: string
  /** What it is for, in half a sentence. */
  readonly about: string
  readonly Content: ComponentType
}

/** In the order of the job. */
export const SCREENS: readonly OtherScreen[] = [
  {
    id: 'layouts',
    words: 'Layouts',
    about: 'everything kept on this device; open, copy, share',
    Content: lazy(async () => ({ default: (await import('./layouts/LayoutsScreen')).LayoutsScreen })),
  },
  {
    id: 'photo',
    words: 'Photo',
    about: 'a picture of the car under the drawing, to scale',
    Content: lazy(async () => ({ default: (await import('./photo/PhotoScreen')).PhotoScreen })),
  },
  {
    id: 'compare',
    words: 'Compare',
    about: 'variants of this car side by side',
    Content: lazy(async () => ({ default: (await import('./compare/CompareScreen')).CompareScreen })),
  },
  {
    id: 'customer',
    words: 'Customer',
    about: 'in plain words, to talk over and agree',
    Content: lazy(async () => ({ default: (await import('./customer/CustomerScreen')).CustomerScreen })),
  },
  {
    id: 'guide',
    words: 'Guide',
    about: 'the words of the trade and the reasons behind them',
    Content: lazy(async () => ({ default: (await import('./help/GuideScreen')).GuideScreen })),
  },
]
