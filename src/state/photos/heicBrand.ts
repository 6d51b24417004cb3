/** Kinds of pictures in this container that phones write. Source: ISO/IEC 23008-12, brands of HEIF (from memory). */
const BRANDS = ['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'mif1', 'msf1'] as const

/**
 * Which of the phones' newer kinds of pictures a file is, by its first 12 bytes: the box "ftyp" and the brand after it. Null for any other
 * file. Source: ISO/IEC 14496-12, 4.3 (from memory).
 */
export const heicBrand = (start: Uint8Array): string | null => {
  const text = String.fromCharCode(...start.subarray(4, 12))
  const brand = BRANDS.find((candidate) => text === `ftyp${candidate}`)
  return brand ?? null
}
