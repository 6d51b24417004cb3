import type { Layout } from '../domain/layout/document/layout'
import { MM_PER_INCH } from '../domain/units/length'

export type NudgeSize = 'small' | 'large'

/** One press of an arrow key, mm: 1 or 10 mm, 1/16 or 1/2 in where the shop works in inches. Our judgement. */
export const nudgeMm = (unit: Layout['units']['length'], size: NudgeSize): number => {
  if (unit === 'in') return size === 'small' ? MM_PER_INCH / 16 : MM_PER_INCH / 2
  return size === 'small' ? 1 : 10
}
