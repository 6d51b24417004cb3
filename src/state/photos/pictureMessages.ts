import type { PictureSize } from '../../domain/measure/photo/photo'
import type { PictureMap } from '../../domain/measure/photo/pictureMap'
import type { RectifiedPlan } from '../../domain/measure/photo/rectified'

/** What is done to pictures beside the page. */
export type PictureQuestion =
  | { readonly kind: 'take-in'; readonly file: Blob }
  /** The picture as it is painted, straightened when it was not looked at squarely. */
  | {
      readonly kind: 'lay'
      readonly picture: Blob
      readonly straighten: { readonly map: PictureMap; readonly plan: RectifiedPlan } | null
    }

/** Why a file is not taken in. */
type PictureProblem = 'heic' | 'unreadable' | 'too-small' | 'too-large'

export type PictureAnswer =
  | {
      readonly kind: 'taken'
      /** Coded anew, upright, without what the camera wrote beside it. */
      readonly picture: Blob
      readonly size: PictureSize
      /** Of the file. */
      readonly from: PictureSize
    }
  | { readonly kind: 'refused'; readonly problem: PictureProblem; readonly from: PictureSize | null }
  /** The picture, then its halves: each half as wide and as high as the one before. */
  | { readonly kind: 'laid'; readonly levels: readonly ImageBitmap[] }
