import { Inflate } from 'fflate'
import { err, ok, type Result } from '../../domain/result'

/**
 * How much is inflated at once, bytes. One byte of the format makes at most 1032 (RFC 1951: a match of 258 from two bits), so a piece
 * makes at most about a quarter of a megabyte before the cap is looked at again.
 */
const PIECE_BYTES = 256

class TooLarge extends Error {}

/** What deflate with this dictionary was given; `too-large` as soon as it grows beyond `mostBytes`, whatever it would have become. */
export const inflated = (
  bytes: Uint8Array,
  { dictionary, mostBytes }: { readonly dictionary: Uint8Array; readonly mostBytes: number },
): Result<Uint8Array<ArrayBuffer>, 'damaged' | 'too-large'> => {
  const parts: Uint8Array[] = []
  let length = 0
  const inflate = new Inflate({ dictionary }, (part) => {
    length += part.length
    if (length > mostBytes) throw new TooLarge()
    parts.push(part)
  })
  try {
    for (let from = 0; from < bytes.length; from += PIECE_BYTES)
      inflate.push(bytes.subarray(from, from + PIECE_BYTES), from + PIECE_BYTES >= bytes.length)
  } catch (problem) {
    return err(problem instanceof TooLarge ? 'too-large' : 'damaged')
  }
  const whole = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return ok(whole)
}
