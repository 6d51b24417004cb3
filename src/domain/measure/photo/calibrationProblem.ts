import type { MarkId } from './photo'

/** Why a picture has no scale yet; the offending numbers are inside. */
export type CalibrationProblem =
  /** Still to be put or typed. */
  | { readonly kind: 'mark-missing'; readonly marks: readonly MarkId[] }
  | { readonly kind: 'number-missing'; readonly what: 'length' | 'width' | 'height' | 'place' }
  | {
      readonly kind: 'points-too-near'
      readonly marks: readonly [MarkId, MarkId]
      readonly apartPx: number
      readonly leastPx: number
    }
  | {
      readonly kind: 'in-line'
      readonly marks: readonly [MarkId, MarkId, MarkId]
      /** How far the middle one is off the line through the others. */
      readonly offPx: number
      readonly leastPx: number
    }
  /** Round the four corners the turn changes its sense: two are swapped, or one lies inside the others. */
  | { readonly kind: 'corners-crossed' }
  /** The corners run the other way round than the side says that the picture was taken from. */
  | { readonly kind: 'wrong-way-round'; readonly mirrored: boolean }
  /** The plane runs away to infinity inside the picture: beyond that line it shows something else. */
  | { readonly kind: 'horizon-in-picture' }
  | {
      readonly kind: 'scale-out-of-reason'
      /** What the longer side of the picture would span at the scale of the crosses. */
      readonly spanMm: number
      readonly leastMm: number
      readonly mostMm: number
    }
