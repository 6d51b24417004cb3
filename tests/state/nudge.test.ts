import { expect, it } from 'vitest'
import { nudgeMm } from '../../src/state/nudge'

it.each([
  { unit: 'mm', size: 'small', expectedMm: 1 },
  { unit: 'mm', size: 'large', expectedMm: 10 },
  // 1/16 in and 1/2 in at exactly 25.4 mm to the inch (international inch of 1959).
  { unit: 'in', size: 'small', expectedMm: 1.5875 },
  { unit: 'in', size: 'large', expectedMm: 12.7 },
] as const)('a $size nudge in $unit is $expectedMm mm', ({ unit, size, expectedMm }) => {
  expect(nudgeMm(unit, size)).toBeCloseTo(expectedMm, 10)
})
