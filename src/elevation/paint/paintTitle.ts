import type { Elevation } from '../../domain/geometry/plane'
import type { SizePx } from '../viewTransform'
import { type Brush, letter } from './brush'

const TITLE: Readonly<Record<Elevation, string>> = { side: 'Side elevation', top: 'Top elevation' }

/** The name of the elevation in its corner and which way the car looks. */
export const paintTitle = (brush: Brush, elevation: Elevation, size: SizePx): void => {
  const common = { align: 'left', isStrong: true, turnDeg: 0 } as const
  letter(brush, { ...common, text: TITLE[elevation], at: { xPx: 12, yPx: 16 }, colour: brush.palette.ink })
  letter(brush, {
    ...common,
    text: '← front',
    isStrong: false,
    at: { xPx: 12, yPx: size.heightPx - 14 },
    colour: brush.palette.dimension,
  })
}
