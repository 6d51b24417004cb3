import type { FlatFigure, FlatLayer, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'

/** One thing in true size with what is said beside it on paper. */
export interface Template {
  readonly kind: 'tab' | 'insert' | 'strip' | 'gauge'
  readonly figure: FlatFigure
  /** Sentences for whoever cuts or tapes it, each a line or more of its own. */
  readonly words: readonly string[]
}

/** Everything that can be made in true size of a layout, and what cannot. */
export interface TemplateSet {
  readonly templates: readonly Template[]
  /** Anchors without a template of their own, and why. */
  readonly without: readonly { readonly name: string; readonly why: string }[]
}

/** Lettering inside figures, mm: as the least on any page. */
export const FIGURE_TEXT_MM = 2.4

export const line = (layer: FlatLayer, points: readonly FlatPoint[]): FlatShape => ({
  kind: 'polyline',
  layer,
  points,
  closed: false,
})

export const loop = (layer: FlatLayer, points: readonly FlatPoint[]): FlatShape => ({
  kind: 'polyline',
  layer,
  points,
  closed: true,
})

export const at = (xMm: number, yMm: number): FlatPoint => ({ xMm, yMm })

interface WritingOptions {
  readonly align?: 'left' | 'centre' | 'right'
  readonly heightMm?: number
  /** Reading upward instead of to the right. */
  readonly upward?: boolean
}

export const writing = (place: FlatPoint, text: string, options: WritingOptions = {}): FlatShape => ({
  kind: 'text',
  layer: 'TEXT',
  at: place,
  text,
  heightMm: options.heightMm ?? FIGURE_TEXT_MM,
  align: options.align ?? 'left',
  turnDeg: options.upward === true ? 90 : 0,
})
