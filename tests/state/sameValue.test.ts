import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isSameValue } from '../../src/state/sameValue'

describe('isSameValue', () => {
  it('agrees with the deep comparison of Node on any two JSON values', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), fc.jsonValue({ maxDepth: 3 }), (a, b) => {
        expect(isSameValue(a, b)).toBe(isDeepStrictEqual(a, b))
      }),
    )
  })

  it('calls a copy of anything the same', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(isSameValue(value, structuredClone(value))).toBe(true)
      }),
    )
  })

  it('does not take a missing field for one that is undefined', () => {
    expect(isSameValue({ a: undefined, b: 1 }, { b: 1, c: undefined })).toBe(false)
  })
})
