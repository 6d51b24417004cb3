import { createHash } from 'node:crypto'

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { sha256Hex } from '../../../../src/domain/layout/agreement/sha256'

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('sha256Hex', () => {
  // The examples that NIST publishes for SHA-256 (Cryptographic Standards and Guidelines, Examples with Intermediate Values), from
  // memory; the digests are checked against OpenSSL below as everything else.
  it.each([
    { text: 'abc', digest: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad' },
    {
      text: 'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      digest: '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    },
  ])('of "$text" is $digest', ({ text, digest }) => {
    expect(sha256Hex(bytesOf(text))).toBe(digest)
  })

  // Reference: SHA-256 of node:crypto, which is OpenSSL's.
  const reference = (message: Uint8Array): string => createHash('sha256').update(message).digest('hex')

  it('agrees with OpenSSL at every length about the ends of a block', () => {
    for (let length = 0; length <= 200; length++) {
      const message = Uint8Array.from({ length }, (_, index) => (index * 7 + length) % 256)
      expect(sha256Hex(message)).toBe(reference(message))
    }
  })

  it('agrees with OpenSSL for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 5_000 }), (message) => {
        expect(sha256Hex(message)).toBe(reference(message))
      }),
    )
  })
})
