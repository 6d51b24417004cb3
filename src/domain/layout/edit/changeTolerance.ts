import type { WeldTolerance } from '../../rules/tolerance'
import type { Layout } from '../document/layout'

/** The layout with some of its weld and measuring error changed; unchanged where none is given yet. */
export const withTolerance = (layout: Layout, patch: Partial<WeldTolerance>): Layout =>
  layout.tolerance === undefined ? layout : { ...layout, tolerance: { ...layout.tolerance, ...patch } }

/** The layout with a weld and measuring error given for the first time, or with none. */
export const withToleranceGiven = (layout: Layout, tolerance: WeldTolerance | null): Layout => {
  const { tolerance: _before, ...rest } = layout
  return tolerance === null ? rest : { ...rest, tolerance }
}
