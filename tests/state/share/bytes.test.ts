import { gzipSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { base64url, bytesOfBase64url } from '../../../src/state/share/base64url'
import { crc32 } from '../../../src/state/share/crc32'

describe('crc32', () => {
  it('is the check sum that Node’s zlib writes at the end of a gzip file: RFC 1952, section 2.3.1', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 5000 }), (bytes) => {
        const file = gzipSync(bytes)
        expect(crc32(bytes)).toBe(file.readUInt32LE(file.length - 8))
      }),
    )
  })
})

describe('base64url', () => {
  it('is Node’s, and gives the bytes back', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 10_000 }), (bytes) => {
        const letters = base64url(bytes)
        expect(letters).toBe(Buffer.from(bytes).toString('base64url'))
        expect(bytesOfBase64url(letters)).toEqual(bytes)
      }),
    )
  })

  it.each(['A', 'AAAAA', 'AA==', 'A+', 'A/', 'A A', 'Ä', 'A\n'])('refuses "%s"', (letters) => {
    expect(bytesOfBase64url(letters)).toBeNull()
  })
})
