import type { PictureSize } from '../../domain/measure/photo/photo'

/*
 * How large a picture says that it is, read off its first bytes: a file of some kilobytes may unfold to gigabytes, and that must be known
 * before it is unfolded.
 */

/** Of a JPEG the size may stand behind a preview of the camera's. Our judgement. */
export const HEADER_BYTES = 1_000_000

/** The largest that a phone's camera makes, 16 320 × 12 240; unfolded that is some 800 MB. More is something else. Our judgement. */
const MOST_PIXELS = 200_000_000

/** The size of a picture that nobody should unfold, by its first bytes; null for every other file. */
export const tooLargeSize = (bytes: Uint8Array): PictureSize | null => {
  const size = headerSize(bytes)
  return size !== null && size.widthPx * size.heightPx > MOST_PIXELS ? size : null
}

const sizeOf = (widthPx: number, heightPx: number): PictureSize | null =>
  widthPx > 0 && heightPx > 0 ? { widthPx, heightPx } : null

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  String.fromCharCode(...bytes.subarray(at, at + text.length)) === text

/** Source: PNG specification (W3C), section 11.2.1: IHDR comes first, width and height in its first eight bytes. */
const pngSize = (view: DataView): PictureSize | null =>
  view.byteLength < 24 ? null : sizeOf(view.getUint32(16), view.getUint32(20))

/** Markers that begin a frame; C4, C8 and CC mean something else. Source: ITU-T T.81, table B.1. */
const beginsFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc

/** Source: ITU-T T.81, B.1.1.4 and B.2.2: segments say their length; a frame says its height, then its width. */
const jpegSize = (view: DataView): PictureSize | null => {
  for (let at = 2; at + 9 < view.byteLength;) {
    const marker = view.getUint8(at + 1)
    if (view.getUint8(at) !== 0xff) return null
    // Fill bytes, and markers that stand alone.
    if (marker === 0xff) at += 1
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2
    else if (beginsFrame(marker)) return sizeOf(view.getUint16(at + 7), view.getUint16(at + 5))
    else at += 2 + Math.max(2, view.getUint16(at + 2))
  }
  return null
}

const uint24 = (view: DataView, at: number): number =>
  view.getUint16(at, true) + 65_536 * view.getUint8(at + 2)

/** Source: RFC 9649 (WebP), sections 2.5 to 2.7: lossy, lossless and extended files. */
const webpSize = (bytes: Uint8Array, view: DataView): PictureSize | null => {
  if (view.byteLength < 30) return null
  if (startsWith(bytes, 12, 'VP8 '))
    return sizeOf(view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff)
  if (startsWith(bytes, 12, 'VP8X')) return sizeOf(1 + uint24(view, 24), 1 + uint24(view, 27))
  if (!startsWith(bytes, 12, 'VP8L')) return null
  const packed = view.getUint32(21, true)
  return sizeOf(1 + (packed & 0x3fff), 1 + ((packed >>> 14) & 0x3fff))
}

/** Source: GIF89a specification, section 18: the logical screen's width and height come after the signature. */
const gifSize = (view: DataView): PictureSize | null =>
  view.byteLength < 10 ? null : sizeOf(view.getUint16(6, true), view.getUint16(8, true))

/** The size that the first bytes of a PNG, JPEG, WebP or GIF file name; null for any other file, and where they do not say. */
export const headerSize = (bytes: Uint8Array): PictureSize | null => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (startsWith(bytes, 0, '\x89PNG\r\n\x1a\n')) return pngSize(view)
  if (startsWith(bytes, 0, '\xff\xd8')) return jpegSize(view)
  if (startsWith(bytes, 0, 'GIF8')) return gifSize(view)
  return startsWith(bytes, 0, 'RIFF') && startsWith(bytes, 8, 'WEBP') ? webpSize(bytes, view) : null
}
