import type { PlanePointMm } from '../../geometry/plane'
import { mappedPair } from './homography'
import {
  type Calibrated,
  middleOfMarks,
  type PictureMap,
  pictureCorners,
  pixelMm,
  planePointAt,
} from './pictureMap'
import type { PicturePoint, PictureSize } from './photo'

/** A picture's pixels, four bytes each (red, green, blue, opacity), row by row from the top. */
export interface PixelGrid extends PictureSize {
  readonly data: Uint8ClampedArray<ArrayBuffer>
}

/** How a picture is to be straightened: where its left upper corner comes to lie on the drawing and how large a pixel is there. */
export interface RectifiedPlan extends PictureSize {
  readonly leftUpper: PlanePointMm
  readonly pixelMm: number
}

/** A straightened picture has at most this many pixels on its longer side, as the kept picture has. Our judgement. */
export const MOST_RECTIFIED_PX = 4096

/** Where a pixel of the picture has become more than this much coarser than at the crosses, nothing can be traced: it is left out. Our judgement. */
const MOST_COARSER = 6

/** Points along an edge of the picture that are looked at to find out how far it reaches. Our judgement. */
const EDGE_STEPS = 32

/** The edge of the picture, and a net over it, as far as the picture is fine enough. */
const usefulPoints = (
  map: PictureMap,
  { widthPx, heightPx }: PictureSize,
  coarsestMm: number,
): readonly PlanePointMm[] => {
  const steps = Array.from({ length: EDGE_STEPS + 1 }, (_, index) => index / EDGE_STEPS)
  const net: readonly PicturePoint[] = steps.flatMap((x) =>
    steps.map((y) => ({ xPx: x * widthPx, yPx: y * heightPx })),
  )
  return [...pictureCorners({ widthPx, heightPx }), ...net].flatMap((at) => {
    const size = pixelMm(map, at)
    const place = planePointAt(map, at)
    return size === null || place === null || size > coarsestMm ? [] : [place]
  })
}

/**
 * The part of the plane that a picture shows well enough, at the fineness that the picture has at its crosses; coarser where that would
 * make more than MOST_RECTIFIED_PX pixels of a side.
 */
export const rectifiedPlan = (photo: Calibrated, map: PictureMap): RectifiedPlan | null => {
  const finestMm = pixelMm(map, middleOfMarks(photo))
  if (finestMm === null || !(finestMm > 0)) return null
  const places = usefulPoints(map, photo.size, finestMm * MOST_COARSER)
  if (places.length < 2) return null
  const [us, vs] = [places.map(({ uMm }) => uMm), places.map(({ vMm }) => vMm)]
  const [left, right] = [Math.min(...us), Math.max(...us)]
  const [low, high] = [Math.min(...vs), Math.max(...vs)]
  const sideMm = Math.max(right - left, high - low)
  const size = Math.max(finestMm, sideMm / MOST_RECTIFIED_PX)
  return {
    leftUpper: { uMm: left, vMm: high },
    pixelMm: size,
    widthPx: Math.max(1, Math.min(MOST_RECTIFIED_PX, Math.ceil((right - left) / size))),
    heightPx: Math.max(1, Math.min(MOST_RECTIFIED_PX, Math.ceil((high - low) / size))),
  }
}

/** The straightened picture: for the middle of each of its pixels the picture is looked up between its four nearest; clear beyond its edges. */
export const rectifiedPixels = (picture: PixelGrid, map: PictureMap, plan: RectifiedPlan): PixelGrid => {
  const { widthPx, heightPx, leftUpper } = plan
  const data = new Uint8ClampedArray(4 * widthPx * heightPx)
  const [a, b, c, d, e, f, g, h, i] = map.toPicture
  for (let row = 0; row < heightPx; row += 1) {
    const v = leftUpper.vMm - (row + 0.5) * plan.pixelMm
    for (let column = 0; column < widthPx; column += 1) {
      const u = leftUpper.uMm + (column + 0.5) * plan.pixelMm
      const w = g * u + h * v + i
      if (w <= 0) continue
      blend(picture, (a * u + b * v + c) / w, (d * u + e * v + f) / w, data, 4 * (row * widthPx + column))
    }
  }
  return { widthPx, heightPx, data }
}

/** Writes the colour of the picture at a point, weighted between the four pixels whose middles surround it (bilinear). */
const blend = (
  { data, widthPx, heightPx }: PixelGrid,
  xPx: number,
  yPx: number,
  into: Uint8ClampedArray,
  at: number,
): void => {
  if (!(xPx >= 0 && xPx <= widthPx && yPx >= 0 && yPx <= heightPx)) return
  const x = Math.min(widthPx - 1, Math.max(0, xPx - 0.5))
  const y = Math.min(heightPx - 1, Math.max(0, yPx - 0.5))
  const left = Math.floor(x)
  const top = Math.floor(y)
  const shareX = x - left
  const shareY = y - top
  const toRight = left + 1 < widthPx ? 4 : 0
  const toDown = top + 1 < heightPx ? 4 * widthPx : 0
  const leftTop = 4 * (top * widthPx + left)
  for (let channel = 0; channel < 4; channel += 1) {
    const from = leftTop + channel
    const upper = (data[from] ?? 0) * (1 - shareX) + (data[from + toRight] ?? 0) * shareX
    const lower = (data[from + toDown] ?? 0) * (1 - shareX) + (data[from + toDown + toRight] ?? 0) * shareX
    into[at + channel] = upper * (1 - shareY) + lower * shareY
  }
}

/**
 * How a picture lies on the drawing when it is only scaled, turned and shifted: u = a·x + c·y + e, v = b·x + d·y + f with x, y in its pixels.
 * For a picture that was looked at squarely it is read off its map, for a straightened one off its plan.
 */
export interface Laid {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

export const laidPlan = ({ leftUpper, pixelMm: size }: RectifiedPlan): Laid => ({
  a: size,
  b: 0,
  c: 0,
  d: -size,
  e: leftUpper.uMm,
  f: leftUpper.vMm,
})

/** Throws for a map with perspective: that has to be straightened first. */
export const laidSquarely = (map: PictureMap): Laid => {
  const at = (x: number, y: number): readonly [number, number] => {
    const place = map.isSquare ? mappedPair(map.toPlane, [x, y]) : null
    if (place === null) throw new Error('a picture with perspective is laid after it was straightened')
    return place
  }
  const [e, f] = at(0, 0)
  const [au, av] = at(1, 0)
  const [cu, cv] = at(0, 1)
  return { a: au - e, b: av - f, c: cu - e, d: cv - f, e, f }
}
