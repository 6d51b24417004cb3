import type { TapePoint } from '../../shop/tape/tapePoint'
import type { Layout } from '../document/layout'
import { COUNTS } from '../document/limits'
import { freshId } from './change'
import { withReplaced } from './replace'

/**
 * One more place for the tape, at the datum until its own position is typed: there it is the datum itself, so that no distance
 * starts from a place that nobody measured. Unchanged when the layout holds as many as it may.
 */
export const addTapePoint = (layout: Layout): Layout => {
  const points = layout.tapePoints ?? []
  if (points.length >= COUNTS.tapePoints.max) return layout
  const point: TapePoint = {
    id: freshId('tape-point', points),
    name: `Tape point ${points.length + 1}`,
    point: { xMm: 0, yMm: 0, zMm: 0 },
  }
  return { ...layout, tapePoints: [...points, point] }
}

export const withTapePoint = (
  layout: Layout,
  tapePointId: string,
  patch: Partial<Omit<TapePoint, 'id'>>,
): Layout => {
  const points = layout.tapePoints ?? []
  const tapePoints = withReplaced(points, tapePointId, (point) => ({ ...point, ...patch }))
  return tapePoints === points ? layout : { ...layout, tapePoints }
}

/** The layout without a place for the tape; without the last one it holds no list either. */
export const removeTapePoint = (layout: Layout, tapePointId: string): Layout => {
  const { tapePoints = [], ...others } = layout
  const left = tapePoints.filter(({ id }) => id !== tapePointId)
  if (left.length === tapePoints.length) return layout
  return left.length === 0 ? others : { ...others, tapePoints: left }
}
