import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Tube } from '../../../src/domain/geometry/tube'
import { propertyRemedy } from '../../../src/domain/rules/propertyRemedy'
import type { PropertyId, PropertyRule } from '../../../src/domain/rules/rule'

const rule = (
  property: PropertyId,
  min: number | null,
  wanted: readonly string[] | null = null,
): PropertyRule => ({
  kind: 'property',
  id: 'a-rule',
  level: 'should',
  source: { document: 'd', section: 's', edition: 'e', status: 'read', phrase: null },
  when: {},
  says: 'Says.',
  why: 'Why.',
  caveat: null,
  property,
  family: null,
  min,
  max: null,
  wanted,
})
const bar = (outsideDiameterMm: number, wallMm: number): Tube => ({
  id: 'bar',
  name: 'bar',
  role: 'harness-bar',
  points: [
    { xMm: 0, yMm: -500, zMm: 0 },
    { xMm: 0, yMm: 500, zMm: 0 },
  ],
  outsideDiameterMm,
  wallMm,
})

describe('propertyRemedy', () => {
  it('goes to the first wanted word or to the limit', () => {
    expect(propertyRemedy(rule('belt-buckle', null, ['latch-and-link']), 'rotary-cam', null)).toEqual({
      kind: 'change-property',
      property: 'belt-buckle',
      to: 'latch-and-link',
    })
    expect(propertyRemedy(rule('belt-points', 5), 4, null)).toEqual({
      kind: 'change-property',
      property: 'belt-points',
      to: '5',
    })
    expect(propertyRemedy(rule('tab-thickness', 1.6), 1.5, null)).toMatchObject({ to: '1.6' })
  })

  it('asks for the wall that the student car rules name for a 25.4 mm bar', () => {
    // Formula SAE 2026 F.6 (read): size B, ≥ 114 mm² and ≥ 8 509 mm⁴, with 25.4 × 1.6 mm as its example.
    const wall = { kind: 'change-property', property: 'bar-wall', to: '1.6' }
    expect(propertyRemedy(rule('bar-area', 114), 89, bar(25.4, 1.2))).toEqual(wall)
    expect(propertyRemedy(rule('bar-second-moment', 8508.5), 6000, bar(25.4, 1.2))).toEqual(wall)
  })

  it('says that the tube is too thin where even a solid bar is not enough', () => {
    // Solid 12 mm: π·12²/4 = 113.1 mm², just under 114.
    expect(propertyRemedy(rule('bar-area', 114), 50, bar(12, 2))).toMatchObject({ kind: 'none' })
    // Solid 20 mm: π·20⁴/64 = 7 854 mm⁴.
    expect(propertyRemedy(rule('bar-second-moment', 8509), 50, bar(20, 2))).toMatchObject({ kind: 'none' })
    expect(propertyRemedy(rule('bar-area', 114), 50, null)).toMatchObject({ kind: 'none' })
  })

  it('always proposes a wall that clears, and never one more than 0.1 mm thicker than it needs', () => {
    const area = (outsideMm: number, wallMm: number) => Math.PI * wallMm * (outsideMm - wallMm)
    fc.assert(
      fc.property(
        fc.double({ min: 15, max: 80, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        (outsideMm, areaMm2) => {
          const remedy = propertyRemedy(rule('bar-area', areaMm2), 0, bar(outsideMm, 0.5))
          // Where even a wall short of the middle by one step would do, there is a remedy.
          fc.pre(area(outsideMm, outsideMm / 2 - 0.1) >= areaMm2)
          if (remedy.kind !== 'change-property') throw new Error(remedy.kind)
          const wallMm = Number(remedy.to)
          expect(area(outsideMm, wallMm)).toBeGreaterThanOrEqual(areaMm2 - 1e-9)
          expect(area(outsideMm, wallMm - 0.1001)).toBeLessThan(areaMm2)
        },
      ),
    )
  })
})
