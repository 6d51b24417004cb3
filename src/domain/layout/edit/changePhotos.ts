import type { Elevation } from '../../geometry/plane'
import {
  type Calibration,
  type CheckLength,
  LENGTH_MARKS,
  type MarkId,
  type Photo,
  type PicturePoint,
  type PictureSize,
  RECTANGLE_MARKS,
} from '../../measure/photo/photo'
import type { Layout } from '../document/layout'
import { COUNTS, limited } from '../document/limits'
import { freshId } from './change'
import { withReplaced } from './replace'

/** A picture as it was taken in: where it is kept, what it was called and how large it is. */
export type TakenPicture = Pick<Photo, 'pictureId' | 'name' | 'size'>

/** How strongly a new photo is seen: the drawing still stands out on it. A starting value, our judgement. */
const STARTING_OPACITY = 0.6

const freshCalibration = (kind: Calibration['kind']): Calibration =>
  kind === 'known-length' ? { kind, marks: {}, runs: 'level' } : { kind, marks: {}, corner: 'frontLow' }

/** One more photo, with no cross on it yet, so that it has no scale; unchanged when the layout holds as many as it may. */
export const addPhoto = (layout: Layout, elevation: Elevation, picture: TakenPicture): Layout => {
  const photos = layout.photos ?? []
  if (photos.length >= COUNTS.photos.max) return layout
  const photo: Photo = {
    id: freshId('photo', photos),
    elevation,
    ...picture,
    mirrored: false,
    calibration: freshCalibration('known-length'),
    opacity: STARTING_OPACITY,
    shown: true,
    locked: false,
  }
  return { ...layout, photos: [...photos, photo] }
}

const withPhotoChanged = (layout: Layout, photoId: string, change: (photo: Photo) => Photo): Layout => {
  const photos = layout.photos ?? []
  const changed = withReplaced(photos, photoId, change)
  return changed === photos ? layout : { ...layout, photos: changed }
}

/** The layout with how a photo is shown, or whether it is locked, changed. */
export const withPhotoShown = (
  layout: Layout,
  photoId: string,
  patch: Partial<Pick<Photo, 'opacity' | 'shown' | 'locked'>>,
): Layout => withPhotoChanged(layout, photoId, (photo) => ({ ...photo, ...patch }))

/** A locked photo keeps its crosses, numbers and side whatever is asked. */
const withUnlocked = (layout: Layout, photoId: string, change: (photo: Photo) => Photo): Layout =>
  withPhotoChanged(layout, photoId, (photo) => (photo.locked ? photo : change(photo)))

/** The layout with typed parts of a photo's calibration changed; fields that its kind does not have are passed over. */
export const withCalibration = <Kind extends Calibration['kind']>(
  layout: Layout,
  photoId: string,
  kind: Kind,
  patch: Partial<Omit<Extract<Calibration, { kind: Kind }>, 'kind' | 'marks'>>,
): Layout =>
  withUnlocked(layout, photoId, (photo) =>
    photo.calibration.kind === kind
      ? { ...photo, calibration: { ...photo.calibration, ...patch } as Calibration }
      : photo,
  )

/** The layout with a photo scaled the other way: its crosses have to be put anew, the known place stays. */
export const withCalibrationKind = (layout: Layout, photoId: string, kind: Calibration['kind']): Layout =>
  withUnlocked(layout, photoId, (photo) => {
    if (photo.calibration.kind === kind) return photo
    const { place } = photo.calibration
    return { ...photo, calibration: { ...freshCalibration(kind), ...(place === undefined ? {} : { place }) } }
  })

/** The layout with a photo taken from this side of the car (not mirrored) or the other. */
export const withPhotoMirrored = (layout: Layout, photoId: string, mirrored: boolean): Layout =>
  withUnlocked(layout, photoId, (photo) => (photo.mirrored === mirrored ? photo : { ...photo, mirrored }))

export const withCameraDistance = (
  layout: Layout,
  photoId: string,
  cameraDistanceMm: number | null,
): Layout =>
  withUnlocked(layout, photoId, (photo) => {
    const { cameraDistanceMm: _, ...others } = photo
    return cameraDistanceMm === null ? others : { ...others, cameraDistanceMm }
  })

/** The layout with the check length of a photo typed anew; null takes it out and leaves its crosses. */
export const withCheckLength = (layout: Layout, photoId: string, lengthMm: number | null): Layout =>
  withUnlocked(layout, photoId, (photo) => {
    const marks = photo.check?.marks ?? {}
    return { ...photo, check: lengthMm === null ? { marks } : { marks, lengthMm } }
  })

/** The layout without a photo's check length and its crosses. */
export const withoutCheck = (layout: Layout, photoId: string): Layout =>
  withUnlocked(layout, photoId, (photo) => {
    const { check, ...others } = photo
    return check === undefined ? photo : others
  })

/** A point held to the picture. */
const onPicture = ({ widthPx, heightPx }: PictureSize, { xPx, yPx }: PicturePoint): PicturePoint => ({
  xPx: limited(xPx, { min: 0, max: widthPx, unit: '' }),
  yPx: limited(yPx, { min: 0, max: heightPx, unit: '' }),
})

const isCheckMark = (id: MarkId): id is 'checkFrom' | 'checkTo' => id === 'checkFrom' || id === 'checkTo'

const belongs = (id: MarkId, kind: Calibration['kind']): boolean => {
  const ids: readonly MarkId[] = kind === 'known-length' ? LENGTH_MARKS : RECTANGLE_MARKS
  return ids.includes(id)
}

const withMarkAt = (photo: Photo, id: MarkId, at: PicturePoint): Photo => {
  if (isCheckMark(id)) {
    const check: CheckLength = photo.check ?? { marks: {} }
    return { ...photo, check: { ...check, marks: { ...check.marks, [id]: at } } }
  }
  if (!belongs(id, photo.calibration.kind)) return photo
  const marks = { ...photo.calibration.marks, [id]: at }
  return { ...photo, calibration: { ...photo.calibration, marks } as Calibration }
}

/** The layout with a cross put on a photo, held to its picture; crosses of the other kind of calibration are passed over. */
export const withMark = (layout: Layout, photoId: string, id: MarkId, at: PicturePoint): Layout =>
  Number.isFinite(at.xPx) && Number.isFinite(at.yPx)
    ? withUnlocked(layout, photoId, (photo) => withMarkAt(photo, id, onPicture(photo.size, at)))
    : layout

/** Crosses that change places when what was taken for the front of the car is its rear, or one end of a line the other. */
const SWAPS: Readonly<Record<Calibration['kind'], readonly (readonly [MarkId, MarkId])[]>> = {
  'known-length': [['levelFrom', 'levelTo']],
  rectangle: [
    ['frontLow', 'rearLow'],
    ['frontHigh', 'rearHigh'],
  ],
}

/** The layout with the ends of the level line, or the front and rear corners, of a photo swapped. */
export const withMarksSwapped = (layout: Layout, photoId: string): Layout =>
  withUnlocked(layout, photoId, (photo) => {
    const marks: Record<string, PicturePoint | undefined> = { ...photo.calibration.marks }
    for (const [one, other] of SWAPS[photo.calibration.kind])
      [marks[one], marks[other]] = [marks[other], marks[one]]
    const put = Object.fromEntries(Object.entries(marks).filter(([, at]) => at !== undefined))
    return { ...photo, calibration: { ...photo.calibration, marks: put } as Calibration }
  })

/** Proportions that differ by less are those of one picture at two sizes, each rounded to whole pixels. Our judgement. */
const SAME_SHAPE = 0.005

/** Whether crosses put on a picture of one size mean something on one of the other. */
export const isSameShape = (a: PictureSize, b: PictureSize): boolean =>
  Math.abs((a.widthPx / a.heightPx) * (b.heightPx / b.widthPx) - 1) < SAME_SHAPE

const scaledMarks = (marks: object, from: PictureSize, to: PictureSize): object =>
  Object.fromEntries(
    Object.entries(marks as Record<string, PicturePoint>).map(([id, { xPx, yPx }]) => [
      id,
      onPicture(to, { xPx: (xPx * to.widthPx) / from.widthPx, yPx: (yPx * to.heightPx) / from.heightPx }),
    ]),
  )

/**
 * The layout with the picture of a photo chosen again, as on another device. On a picture of the same shape the crosses stay where
 * they are on it; on another they go, and with them the scale.
 */
export const withPictureAgain = (layout: Layout, photoId: string, picture: TakenPicture): Layout =>
  withPhotoChanged(layout, photoId, (photo) => {
    if (!isSameShape(photo.size, picture.size)) {
      const { check: _, ...others } = photo
      return { ...others, ...picture, calibration: { ...photo.calibration, marks: {} } }
    }
    const marks = (of: object) => scaledMarks(of, photo.size, picture.size)
    const calibration = { ...photo.calibration, marks: marks(photo.calibration.marks) } as Calibration
    const check =
      photo.check === undefined ? {} : { check: { ...photo.check, marks: marks(photo.check.marks) } }
    return { ...photo, ...picture, calibration, ...check }
  })

/** The layout without a photo; without the last one it holds no list either. */
export const removePhoto = (layout: Layout, photoId: string): Layout => {
  const { photos = [], ...others } = layout
  const left = photos.filter(({ id }) => id !== photoId)
  if (left.length === photos.length) return layout
  return left.length === 0 ? others : { ...others, photos: left }
}

/** The layout without any photo, for links and proposals: their pictures cannot travel there. The same layout when it has none. */
export const withoutPhotos = (layout: Layout): Layout => {
  if (layout.photos === undefined) return layout
  const { photos: _, ...others } = layout
  return others
}
