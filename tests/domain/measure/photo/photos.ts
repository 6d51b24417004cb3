import type {
  LengthCalibration,
  Photo,
  PicturePoint,
  RectangleCalibration,
} from '../../../../src/domain/measure/photo/photo'

export const px = (xPx: number, yPx: number): PicturePoint => ({ xPx, yPx })

const PLAIN = {
  id: 'photo',
  pictureId: 'picture',
  name: 'car.jpg',
  size: { widthPx: 4000, heightPx: 3000 },
  mirrored: false,
  opacity: 0.6,
  shown: true,
  locked: false,
} as const

export const squarePhoto = (change: Partial<LengthCalibration> = {}, photo: Partial<Photo> = {}): Photo => ({
  ...PLAIN,
  elevation: 'side',
  calibration: {
    kind: 'known-length',
    runs: 'level',
    marks: {
      lengthFrom: px(1000, 2000),
      lengthTo: px(3000, 2000),
      levelFrom: px(500, 2500),
      levelTo: px(3500, 2500),
      known: px(1500, 1800),
    },
    lengthMm: 1000,
    place: { uMm: 200, vMm: -50 },
    ...change,
  },
  ...photo,
})

export const rectanglePhoto = (
  corners: readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint],
  change: Partial<RectangleCalibration> = {},
  photo: Partial<Photo> = {},
): Photo => ({
  ...PLAIN,
  elevation: 'side',
  calibration: {
    kind: 'rectangle',
    marks: { frontLow: corners[0], rearLow: corners[1], rearHigh: corners[2], frontHigh: corners[3] },
    widthMm: 1200,
    heightMm: 800,
    corner: 'frontLow',
    place: { uMm: 100, vMm: 50 },
    ...change,
  },
  ...photo,
})
