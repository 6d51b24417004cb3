import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import {
  addPhoto,
  removePhoto,
  withCalibration,
  withCalibrationKind,
  withCameraDistance,
  withCheckLength,
  withMark,
  withMarksSwapped,
  withoutCheck,
  withoutPhotos,
  withPhotoMirrored,
  withPhotoShown,
  withPictureAgain,
} from '../../../../src/domain/layout/edit/changePhotos'
import { calibrated } from '../../../../src/domain/measure/photo/pictureMap'
import {
  LENGTH_MARKS,
  type MarkId,
  type Photo,
  RECTANGLE_MARKS,
} from '../../../../src/domain/measure/photo/photo'

const PICTURE = { pictureId: 'p1', name: 'left side.jpg', size: { widthPx: 2000, heightPx: 1500 } }
const px = (xPx: number, yPx: number) => ({ xPx, yPx })
const start = (): Layout => addPhoto(emptyLayout(), 'side', PICTURE)
const only = (layout: Layout): Photo => {
  const [photo] = layout.photos ?? []
  if (photo === undefined) throw new Error('no photo')
  return photo
}

describe('addPhoto', () => {
  it('puts a photo without crosses under the elevation, shown, and so without a scale', () => {
    const layout = start()
    expect(only(layout)).toMatchObject({
      id: 'photo-1',
      elevation: 'side',
      ...PICTURE,
      shown: true,
      locked: false,
    })
    expect(calibrated(only(layout))).toEqual({
      ok: false,
      error: { kind: 'mark-missing', marks: [...LENGTH_MARKS] },
    })
  })

  it('holds as many as a file may, and gives each its own id', () => {
    const full = Array.from({ length: 12 }).reduce<Layout>(
      (layout) => addPhoto(layout, 'top', PICTURE),
      start(),
    )
    expect(full.photos).toHaveLength(8)
    expect(new Set(full.photos?.map(({ id }) => id)).size).toBe(8)
    expect(parseLayout(full).ok).toBe(true)
  })
})

describe('crosses and numbers', () => {
  it('make a scale once all are there', () => {
    let layout = start()
    const crosses = [
      ['lengthFrom', px(200, 1000)],
      ['lengthTo', px(1200, 1000)],
      ['levelFrom', px(100, 1200)],
      ['levelTo', px(1900, 1200)],
      ['known', px(300, 1100)],
    ] as const
    for (const [id, at] of crosses) layout = withMark(layout, 'photo-1', id, at)
    expect(calibrated(only(layout))).toMatchObject({ error: { kind: 'number-missing', what: 'length' } })
    layout = withCalibration(layout, 'photo-1', 'known-length', { lengthMm: 500, place: { uMm: 0, vMm: 0 } })
    expect(calibrated(only(layout)).ok).toBe(true)
  })

  it('keep a cross on its picture, and pass over one of the other kind or none at all', () => {
    const layout = withMark(start(), 'photo-1', 'known', px(-5, 9000))
    expect(only(layout).calibration.marks).toEqual({ known: px(0, 1500) })
    expect(withMark(layout, 'photo-1', 'frontLow', px(1, 1))).toBe(layout)
    expect(withMark(layout, 'photo-1', 'known', px(NaN, 1))).toBe(layout)
    expect(withMark(layout, 'photo-2', 'known', px(1, 1))).toBe(layout)
  })

  it('of the other way to a scale start anew; the known place stays', () => {
    let layout = withMark(start(), 'photo-1', 'known', px(10, 10))
    layout = withCalibration(layout, 'photo-1', 'known-length', { place: { uMm: 5, vMm: 6 } })
    layout = withCalibrationKind(layout, 'photo-1', 'rectangle')
    expect(only(layout).calibration).toEqual({
      kind: 'rectangle',
      marks: {},
      corner: 'frontLow',
      place: { uMm: 5, vMm: 6 },
    })
    expect(withCalibration(layout, 'photo-1', 'known-length', { lengthMm: 3 })).toBe(layout)
  })

  it('front and rear corners change places, and ends of the level line; what is not put is not there afterwards', () => {
    const level = withMarksSwapped(withMark(start(), 'photo-1', 'levelFrom', px(7, 8)), 'photo-1')
    expect(only(level).calibration.marks).toEqual({ levelTo: px(7, 8) })
    let corners = withCalibrationKind(start(), 'photo-1', 'rectangle')
    RECTANGLE_MARKS.forEach((id, index) => {
      corners = withMark(corners, 'photo-1', id, px(index, 100 + index))
    })
    expect(only(withMarksSwapped(corners, 'photo-1')).calibration.marks).toEqual({
      frontLow: px(1, 101),
      rearLow: px(0, 100),
      rearHigh: px(3, 103),
      frontHigh: px(2, 102),
    })
  })

  it('a check length comes and goes beside them', () => {
    const typed = withCheckLength(withMark(start(), 'photo-1', 'checkFrom', px(1, 2)), 'photo-1', 400)
    expect(only(typed).check).toEqual({ marks: { checkFrom: px(1, 2) }, lengthMm: 400 })
    expect(only(withCheckLength(typed, 'photo-1', null)).check).toEqual({ marks: { checkFrom: px(1, 2) } })
    expect(only(withoutCheck(typed, 'photo-1')).check).toBeUndefined()
  })
})

describe('a locked photo', () => {
  it('keeps crosses, numbers and side; how it is shown may change, and it may be unlocked', () => {
    const locked = withPhotoShown(withMark(start(), 'photo-1', 'known', px(1, 1)), 'photo-1', {
      locked: true,
    })
    for (const changed of [
      withMark(locked, 'photo-1', 'known', px(2, 2)),
      withCalibration(locked, 'photo-1', 'known-length', { lengthMm: 1 }),
      withCalibrationKind(locked, 'photo-1', 'rectangle'),
      withPhotoMirrored(locked, 'photo-1', true),
      withCameraDistance(locked, 'photo-1', 3000),
      withCheckLength(locked, 'photo-1', 3),
      withMarksSwapped(locked, 'photo-1'),
    ])
      expect(changed).toBe(locked)
    expect(only(withPhotoShown(locked, 'photo-1', { opacity: 0.2, shown: false }))).toMatchObject({
      opacity: 0.2,
      shown: false,
    })
    const free = withPhotoShown(locked, 'photo-1', { locked: false })
    expect(only(withPhotoMirrored(free, 'photo-1', true)).mirrored).toBe(true)
  })
})

describe('withPictureAgain', () => {
  const marked = withMark(
    withMark(start(), 'photo-1', 'known', px(500, 300)),
    'photo-1',
    'checkTo',
    px(2000, 1500),
  )

  it('leaves the crosses where they are on a picture of the same shape, whatever its size', () => {
    const again = withPictureAgain(marked, 'photo-1', {
      pictureId: 'p2',
      name: 'same.jpg',
      size: { widthPx: 1000, heightPx: 750 },
    })
    expect(only(again)).toMatchObject({ pictureId: 'p2', name: 'same.jpg' })
    expect(only(again).calibration.marks).toEqual({ known: px(250, 150) })
    expect(only(again).check?.marks).toEqual({ checkTo: px(1000, 750) })
  })

  it('takes them away from another', () => {
    const again = withPictureAgain(marked, 'photo-1', { ...PICTURE, size: { widthPx: 1500, heightPx: 2000 } })
    expect(only(again).calibration.marks).toEqual({})
    expect(only(again).check).toBeUndefined()
    expect(parseLayout(again).ok).toBe(true)
  })
})

describe('a layout without photos', () => {
  it('holds no list, as one that never had any', () => {
    expect(removePhoto(start(), 'photo-1')).toEqual(emptyLayout())
    expect(withoutPhotos(addPhoto(start(), 'top', PICTURE))).toEqual(emptyLayout())
    const bare = emptyLayout()
    expect(withoutPhotos(bare)).toBe(bare)
    expect(removePhoto(bare, 'photo-1')).toBe(bare)
  })
})

describe('whatever is done to photos', () => {
  const ids: readonly MarkId[] = [...LENGTH_MARKS, ...RECTANGLE_MARKS, 'checkFrom', 'checkTo']
  const anywhere = fc.double({ min: -1e5, max: 1e5, noNaN: true })
  const step: fc.Arbitrary<(layout: Layout) => Layout> = fc.oneof(
    fc.tuple(fc.constantFrom(...ids), anywhere, anywhere).map(
      ([id, x, y]) =>
        (layout: Layout) =>
          withMark(layout, 'photo-1', id, px(x, y)),
    ),
    fc
      .constantFrom('known-length' as const, 'rectangle' as const)
      .map((kind) => (layout: Layout) => withCalibrationKind(layout, 'photo-1', kind)),
    fc.boolean().map((locked) => (layout: Layout) => withPhotoShown(layout, 'photo-1', { locked })),
    fc.constant((layout: Layout) => withMarksSwapped(layout, 'photo-1')),
    fc.tuple(fc.integer({ min: 16, max: 4096 }), fc.integer({ min: 16, max: 4096 })).map(
      ([widthPx, heightPx]) =>
        (layout: Layout) =>
          withPictureAgain(layout, 'photo-1', { ...PICTURE, size: { widthPx, heightPx } }),
    ),
  )

  it('leaves a layout that is saved and read back the same', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const layout = steps.reduce((before, change) => change(before), start())
        const read = parseLayoutText(layoutText(layout))
        expect(read.ok && read.value).toEqual(layout)
      }),
    )
  })
})
