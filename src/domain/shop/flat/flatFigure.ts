/** A place in a flat figure: mm in true size, x to the right, y up. */
export interface FlatPoint {
  readonly xMm: number
  readonly yMm: number
}

/** What a line is for; each is a layer of its own in a file for cutting. */
export type FlatLayer =
  /** Cut along it. */
  | 'CUT'
  /** Edges of holes to drill, with a cross at their centres on MARK. */
  | 'DRILL'
  /** Scribed or punched, not cut: centre lines, where a tube lies, where to line up. */
  | 'MARK'
  /** Lengths and squares that show whether the print or the file kept its size. */
  | 'CHECK'
  | 'TEXT'
  /** Lines of a general drawing: outlines of what is there already. */
  | 'OUTLINE'

export type FlatShape =
  | {
      readonly kind: 'polyline'
      readonly layer: FlatLayer
      readonly points: readonly FlatPoint[]
      readonly closed: boolean
    }
  | {
      readonly kind: 'circle'
      readonly layer: FlatLayer
      readonly centre: FlatPoint
      readonly radiusMm: number
    }
  /** Anticlockwise from `fromDeg` to `toDeg`; 0 is +x, 90 is +y. */
  | {
      readonly kind: 'arc'
      readonly layer: FlatLayer
      readonly centre: FlatPoint
      readonly radiusMm: number
      readonly fromDeg: number
      readonly toDeg: number
    }
  /** `at` is on the base line at the end that `align` names; turned anticlockwise about it. `heightMm` is the font size; capitals are about 0.7 of it. */
  | {
      readonly kind: 'text'
      readonly layer: FlatLayer
      readonly at: FlatPoint
      readonly text: string
      readonly heightMm: number
      readonly align: 'left' | 'centre' | 'right'
      readonly turnDeg: number
    }

/** Something flat in true size, told once: templates on paper, files for cutting and files for drawing programs are all made of it. */
export interface FlatFigure {
  /** Letters, digits and hyphens; unique among the figures of a layout, and part of a file's name. */
  readonly id: string
  readonly title: string
  readonly shapes: readonly FlatShape[]
}
