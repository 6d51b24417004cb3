import type { PictureSize } from '../../domain/measure/photo/photo'
import { rectifiedPixels } from '../../domain/measure/photo/rectified'
import { HEADER_BYTES, tooLargeSize } from './headerSize'
import { heicBrand } from './heicBrand'
import type { PictureAnswer, PictureQuestion } from './pictureMessages'

/** A kept picture has at most this many pixels on its longer side: 1 mm and better on a whole car, and no page stands still for it. Our judgement. */
export const MOST_SIDE_PX = 4096

/** Less than this shows nothing that could be traced. Our judgement. */
const LEAST_SIDE_PX = 200

/** Halving goes on to here: smaller pictures are painted as fast as any. Our judgement. */
const SMALLEST_LEVEL_PX = 512

/** Of the picture as it is coded anew: grain is kept, the file is a few MB. Our judgement. */
const JPEG_QUALITY = 0.92

const sizeOf = ({ width, height }: ImageBitmap): PictureSize => ({ widthPx: width, heightPx: height })

/** The size that a picture is kept at: no longer than it may be, in the same proportion, whole pixels. */
export const keptSize = ({ widthPx, heightPx }: PictureSize): PictureSize => {
  const share = Math.min(1, MOST_SIDE_PX / Math.max(widthPx, heightPx))
  return {
    widthPx: Math.max(1, Math.round(widthPx * share)),
    heightPx: Math.max(1, Math.round(heightPx * share)),
  }
}

const painted = (bitmap: ImageBitmap, { widthPx, heightPx }: PictureSize, ground?: string) => {
  const canvas = new OffscreenCanvas(widthPx, heightPx)
  const context = canvas.getContext('2d')
  if (context === null) throw new Error('this browser gives no canvas to work on pictures')
  if (ground !== undefined) {
    context.fillStyle = ground
    context.fillRect(0, 0, widthPx, heightPx)
  }
  context.imageSmoothingQuality = 'high'
  context.drawImage(bitmap, 0, 0, widthPx, heightPx)
  return { canvas, context }
}

/** Upright, as the camera says it was held. Null when the browser cannot read it. */
const decoded = async (file: Blob): Promise<ImageBitmap | null> => {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch {
    return null
  }
}

const takenIn = async (file: Blob): Promise<PictureAnswer> => {
  const tooLarge = tooLargeSize(new Uint8Array(await file.slice(0, HEADER_BYTES).arrayBuffer()))
  if (tooLarge !== null) return { kind: 'refused', problem: 'too-large', from: tooLarge }
  const bitmap = await decoded(file)
  if (bitmap === null) {
    const start = new Uint8Array(await file.slice(0, 16).arrayBuffer())
    return { kind: 'refused', problem: heicBrand(start) === null ? 'unreadable' : 'heic', from: null }
  }
  const from = sizeOf(bitmap)
  if (Math.min(from.widthPx, from.heightPx) < LEAST_SIDE_PX)
    return { kind: 'refused', problem: 'too-small', from }
  const size = keptSize(from)
  // A photograph has no clear parts; a drawing that has some lies on white.
  const { canvas } = painted(bitmap, size, '#fff')
  bitmap.close()
  const picture = await canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY })
  return { kind: 'taken', picture, size, from }
}

/** Each half as large as the one before, so that a small drawing is painted from a small picture. */
const halves = (first: ImageBitmap): readonly ImageBitmap[] => {
  const levels = [first]
  for (let last = first; Math.max(last.width, last.height) > SMALLEST_LEVEL_PX;) {
    const size = { widthPx: Math.ceil(last.width / 2), heightPx: Math.ceil(last.height / 2) }
    last = painted(last, size).canvas.transferToImageBitmap()
    levels.push(last)
  }
  return levels
}

const laid = async (question: Extract<PictureQuestion, { kind: 'lay' }>): Promise<PictureAnswer> => {
  const bitmap = await decoded(question.picture)
  if (bitmap === null) throw new Error('the kept picture is damaged')
  if (question.straighten === null) return { kind: 'laid', levels: halves(bitmap) }
  const size = sizeOf(bitmap)
  const { context } = painted(bitmap, size)
  const { data } = context.getImageData(0, 0, size.widthPx, size.heightPx)
  bitmap.close()
  const { map, plan } = question.straighten
  const straight = rectifiedPixels({ ...size, data }, map, plan)
  const image = new ImageData(straight.data, straight.widthPx, straight.heightPx)
  return { kind: 'laid', levels: halves(await createImageBitmap(image)) }
}

/** All that is done to pictures; in a worker, for it takes seconds with a large one. */
export const pictureWork = (question: PictureQuestion): Promise<PictureAnswer> =>
  question.kind === 'take-in' ? takenIn(question.file) : laid(question)
