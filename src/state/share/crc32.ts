const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte
  for (let bit = 0; bit < 8; bit += 1) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0)
  return rest
})

/**
 * A check sum of bytes, 0 to 2³² − 1, by which a changed letter in a link is noticed. Source: CRC-32 as in RFC 1952, section 8 (reflected
 * polynomial EDB88320, begun and ended with all bits turned), from memory; the test holds it against another implementation.
 */
export const crc32 = (bytes: Uint8Array): number => {
  let rest = 0xffffffff
  for (const byte of bytes) rest = (rest >>> 8) ^ (TABLE[(rest ^ byte) & 0xff] ?? 0)
  return (rest ^ 0xffffffff) >>> 0
}
