import { flatBounds } from '../../domain/shop/flat/flatBounds'
import type { FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { at, line } from './template'

/** 100 mm and 4 in. Source: 1 in = 25.4 mm exactly. */
const BARS = [
  { lengthMm: 100, words: '100 mm' },
  { lengthMm: 4 * 25.4, words: '4 in' },
] as const

/** Between the figure and its bars, and between the bars, mm. */
const AWAY_MM = 12
const APART_MM = 6

/** Bars below and to the left of a figure: a file that was scaled, or scaled more one way than the other, is found out by them. */
export const checkShapes = (shapes: readonly FlatShape[]): readonly FlatShape[] => {
  const { min } = flatBounds(shapes)
  return BARS.flatMap(({ lengthMm, words }, index) => {
    const offMm = AWAY_MM + index * APART_MM
    const level = (alongMm: number, upMm: number): FlatPoint => at(min.xMm + alongMm, min.yMm - offMm + upMm)
    const upright = (alongMm: number, upMm: number): FlatPoint =>
      at(min.xMm - offMm - upMm, min.yMm + alongMm)
    return [level, upright].flatMap((place, way): readonly FlatShape[] => [
      line('CHECK', [place(0, 0), place(lengthMm, 0)]),
      line('CHECK', [place(0, -1.5), place(0, 1.5)]),
      line('CHECK', [place(lengthMm, -1.5), place(lengthMm, 1.5)]),
      {
        kind: 'text',
        layer: 'CHECK',
        at: place(3, 1),
        text: words,
        heightMm: 2.4,
        align: 'left',
        turnDeg: way === 0 ? 0 : 90,
      },
    ])
  })
}
