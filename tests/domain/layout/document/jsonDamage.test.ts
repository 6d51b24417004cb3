import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { jsonDamageOffset } from '../../../../src/domain/layout/document/jsonDamage'

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('jsonDamageOffset', () => {
  it.each([
    { text: '{"a": 1}', offset: null },
    { text: ' [1, 2.5e-3, -0, "x\\u00e9", null, true, {}, []] ', offset: null },
    { text: '{"a": 1', offset: 7 },
    { text: '{"a": oops}', offset: 6 },
    { text: '{"a": 1,}', offset: 8 },
    { text: '[1 2]', offset: 3 },
    { text: '[01]', offset: 2 },
    { text: '{a: 1}', offset: 1 },
    { text: '"cut off', offset: 0 },
    { text: '{"a": 1} tail', offset: 9 },
    { text: '[1}', offset: 2 },
  ])('of $text is $offset', ({ text, offset }) => {
    expect(jsonDamageOffset(text)).toBe(offset)
  })

  // Outside check: the engine's own JSON.parse decides what JSON is.
  it('finds damage exactly where the engine refuses the text', () => {
    const damaged = fc
      .tuple(
        fc.json(),
        fc.nat(),
        fc.nat({ max: 3 }),
        fc.constantFrom('', ',', '"', '}', ']', '1', '\\', '{', '\n'),
      )
      .map(([json, at, cut, put]) => {
        const start = at % (json.length + 1)
        return json.slice(0, start) + put + json.slice(start + cut)
      })
    fc.assert(
      fc.property(damaged, (text) => {
        expect(jsonDamageOffset(text) === null).toBe(isJson(text))
      }),
      { numRuns: 2_000 },
    )
  })
})
