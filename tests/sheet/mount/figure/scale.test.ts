import { describe, expect, it } from 'vitest'
import { fittingScale } from '../../../../src/sheet/mount/figure/scale'

describe('fittingScale', () => {
  const room = { widthMm: 100, heightMm: 150 }

  it.each([
    // 1500 mm into 100 mm needs 1:15 exactly; a hair more needs the next, 1:20.
    { widthMm: 1500, heightMm: 100, expected: 15 },
    { widthMm: 1500.1, heightMm: 100, expected: 20 },
    // 1250 / 100 = 12.5 in width, 1800 / 150 = 12 in height: the tighter one decides.
    { widthMm: 1250, heightMm: 1800, expected: 12.5 },
    { widthMm: 100, heightMm: 1201, expected: 10 },
    { widthMm: 10, heightMm: 10, expected: 5 },
    { widthMm: 40_000, heightMm: 10, expected: 400 },
  ])('of $widthMm mm × $heightMm mm in 100 mm × 150 mm is 1:$expected', ({ expected, ...real }) => {
    expect(fittingScale(real, room)).toBe(expected)
  })
})
