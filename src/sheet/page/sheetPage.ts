import type { SheetItem } from './item'

/** One page of any paper that leaves the shop; nothing on it lies outside the paper. */
export interface SheetPage {
  readonly number: number
  readonly of: number
  readonly widthMm: number
  readonly heightMm: number
  /** Read out in place of the drawing. */
  readonly title: string
  readonly items: readonly SheetItem[]
}
