import type { PlanePointMm } from '../../../geometry/plane'
import type { PointMm } from '../../../geometry/point'
import type { Tube } from '../../../geometry/tube'
import type { QuantityId, Subject } from '../../../straps/quantity'
import type { LengthUnit, Place } from '../../document/layout'
import type { SittingEvaluation } from '../../evaluate/evaluation'
import type { Drawing, Primitive } from '../primitive'

/** One number of one sitting, with everything that it was measured on. */
export interface ExplainScene {
  readonly place: Place
  readonly sitting: SittingEvaluation
  readonly tubes: readonly Tube[]
  readonly id: QuantityId
  readonly subject: Subject
  /** As the evaluation has it; nothing here computes it anew. */
  readonly value: number
  readonly lengthUnit: LengthUnit
}

/**
 * How a figure is looked at. `side` and `top` are the elevations; `behind` looks forward from behind the seat, the occupant's right
 * at the right; `true` is a plane of its own in which the measured length or angle has its true size; `strip` is the strap laid out
 * straight; `forces` a drawing of forces.
 */
export type ExplainView = 'side' | 'top' | 'behind' | 'true' | 'strip' | 'forces'

/** A point that the definition speaks of, under the letter it has in the formula. */
export interface NamedPoint {
  readonly letter: string
  readonly words: string
  readonly point: PointMm
}

/**
 * One drawing of what is measured. Keys of its primitives: `explain/zero` is the line an angle is counted from, `explain/measured`
 * the line it is counted to, both starting at the apex; `explain/value` the arc or dimension with the value; `explain/piece/…`
 * the pieces that a length is added up from; `explain/scale` the length that stands for the tension of one strap.
 */
export interface ExplainFigure {
  readonly view: ExplainView
  readonly primitives: readonly Primitive[]
  /** The part of the plane to show, 4 wide and 3 high. */
  readonly bounds: Drawing['bounds']
  /** Height of a line of text, mm of the car. */
  readonly textHeightMm: number
}

/** What is measured between what, for the strap and the sitting at hand. */
export interface Explanation {
  readonly figures: readonly ExplainFigure[]
  readonly points: readonly NamedPoint[]
}

/** Where the value is drawn: an angle counted from a direction, or a length between two points of the plane. */
export type Measure =
  | {
      readonly kind: 'angle'
      readonly apex: PlanePointMm
      /** Direction that counts as 0, anticlockwise from +u. */
      readonly zeroDeg: number
      /** +1: counted anticlockwise on the drawing, −1: clockwise. */
      readonly turn: 1 | -1
      /** The far end of the line that the angle is counted to. */
      readonly to: PlanePointMm
    }
  | {
      readonly kind: 'length'
      readonly from: PlanePointMm
      readonly to: PlanePointMm
      /** The dimension line runs through the points themselves instead of beside them. */
      readonly isOnPoints?: boolean
    }
