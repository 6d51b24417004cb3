import { LENGTH_MARKS, markOf, type Photo, RECTANGLE_MARKS } from '../../measure/photo/photo'
import type { Contradiction } from './contradiction'
import type { FieldPath } from './problem'
import { repeatedIds } from './repeatedIds'

const CHECK_MARKS = ['checkFrom', 'checkTo'] as const

/** Crosses that are not on their picture, and photos that share an id. Crosses that give no scale are no fault of a file: they may still be put right. */
export const photoContradictions = (photos: readonly Photo[], path: FieldPath): readonly Contradiction[] => [
  ...repeatedIds(photos, path),
  ...photos.flatMap((photo, index) => outsidePicture(photo, [...path, index])),
]

const outsidePicture = (photo: Photo, path: FieldPath): readonly Contradiction[] =>
  [...LENGTH_MARKS, ...RECTANGLE_MARKS, ...CHECK_MARKS].flatMap((id) => {
    const at = markOf(photo, id)
    const { widthPx, heightPx } = photo.size
    if (at === undefined || (at.xPx <= widthPx && at.yPx <= heightPx)) return []
    const isCheck = id === 'checkFrom' || id === 'checkTo'
    return [
      {
        path: [...path, isCheck ? 'check' : 'calibration', 'marks', id],
        received: at,
        says: `it is not on its picture, which is ${widthPx} by ${heightPx} px`,
        remedy: 'Put the cross on the picture, or leave it out.',
      },
    ]
  })
