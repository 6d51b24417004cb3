/*
 * SHA-256. Source: NIST, FIPS 180-4, Secure Hash Standard (August 2015): constants §4.2.2, functions §4.1.2, padding §5.1.1, initial
 * value §5.3.3, the computation §6.2.2. Own, because a page of a shop's own network without encryption has no crypto.subtle.
 */

/** The first `count` primes. */
const primes = (count: number): readonly number[] => {
  const found: number[] = []
  for (let candidate = 2; found.length < count; candidate++)
    if (found.every((prime) => candidate % prime !== 0)) found.push(candidate)
  return found
}

/** The first 32 bits of the fractional part. */
const fractionBits = (value: number): number => Math.floor((value - Math.floor(value)) * 2 ** 32) >>> 0

/** §4.2.2: of the cube roots of the first 64 primes. */
const ROUND_WORDS = Uint32Array.from(primes(64), (prime) => fractionBits(Math.cbrt(prime)))
/** §5.3.3: of the square roots of the first eight. */
const FIRST_STATE = Uint32Array.from(primes(8), (prime) => fractionBits(Math.sqrt(prime)))

const BLOCK_BYTES = 64

const rotated = (word: number, by: number): number => (word >>> by) | (word << (32 - by))

/** §5.1.1: a one bit, zeros, and the length in bits as 64 bits, so that whole blocks come of it. */
const padded = (message: Uint8Array): DataView => {
  const blocks = Math.ceil((message.length + 9) / BLOCK_BYTES)
  const bytes = new Uint8Array(blocks * BLOCK_BYTES)
  bytes.set(message)
  bytes[message.length] = 0x80
  const view = new DataView(bytes.buffer)
  view.setUint32(bytes.length - 8, Math.floor(message.length / 2 ** 29))
  view.setUint32(bytes.length - 4, (message.length * 8) >>> 0)
  return view
}

/** §6.2.2, step 1: the sixteen words of the block, then those made of them. */
const scheduled = (view: DataView, start: number): Uint32Array => {
  const words = new Uint32Array(64)
  for (let t = 0; t < 64; t++) {
    if (t < 16) {
      words[t] = view.getUint32(start + 4 * t)
      continue
    }
    const back = (by: number): number => words[t - by] ?? 0
    const small1 = rotated(back(2), 17) ^ rotated(back(2), 19) ^ (back(2) >>> 10)
    const small0 = rotated(back(15), 7) ^ rotated(back(15), 18) ^ (back(15) >>> 3)
    words[t] = small1 + back(7) + small0 + back(16)
  }
  return words
}

/** §6.2.2, steps 2 to 4. */
const withBlock = (state: Uint32Array, words: Uint32Array): Uint32Array => {
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state
  for (let t = 0; t < words.length; t++) {
    const large1 = rotated(e, 6) ^ rotated(e, 11) ^ rotated(e, 25)
    const t1 = (h + large1 + ((e & f) ^ (~e & g)) + (ROUND_WORDS[t] ?? 0) + (words[t] ?? 0)) | 0
    const large0 = rotated(a, 2) ^ rotated(a, 13) ^ rotated(a, 22)
    const t2 = (large0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + t1) | 0
    d = c
    c = b
    b = a
    a = (t1 + t2) | 0
  }
  return Uint32Array.from([a, b, c, d, e, f, g, h], (word, index) => word + (state[index] ?? 0))
}

/** The digest of these bytes as 64 lower-case hexadecimal digits. */
export const sha256Hex = (message: Uint8Array): string => {
  const view = padded(message)
  let state: Uint32Array = FIRST_STATE
  for (let start = 0; start < view.byteLength; start += BLOCK_BYTES)
    state = withBlock(state, scheduled(view, start))
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('')
}
