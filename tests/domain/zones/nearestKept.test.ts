import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planePoint, projected } from '../../../src/domain/geometry/plane'
import { regionDistanceMm } from '../../../src/domain/geometry/region'
import { nearestKeptMm, ruleRegion } from '../../../src/domain/zones/ruleRegion'
import { anyScene } from '../straps/arbitraryScenes'
import { scene } from '../straps/scenes'
import { quantityRule, zoneCaseOf } from './zoneCases'

const RULES = [
  ['shoulder-left', quantityRule('shoulder-drop', -10, 20)],
  ['lap-left', quantityRule('lap-angle', 45, 60)],
  ['lap-right', quantityRule('slot-bend', null, 12)],
  ['sub-left', quantityRule('sub-to-vertical', 0, 20)],
  ['sub-right', quantityRule('tube-clearance', 30, null)],
] as const

describe('nearestKeptMm', () => {
  it('is the distance to the wedge of a lap strap', () => {
    // Hip point (0, 0): from a place on the 30° line, 300 mm away, to the 45° line it is 300·sin 15° = 77.646 mm.
    const from = planePoint(300 * Math.cos(Math.PI / 6), -150)
    const zoneCase = zoneCaseOf([scene()], 'lap-left', false)
    expect(nearestKeptMm(quantityRule('lap-angle', 45, 60), zoneCase, 'side', from)).toBeCloseTo(77.646, 2)
  })

  it('is Infinity where nothing keeps the rule', () => {
    const zoneCase = zoneCaseOf([scene()], 'lap-left', false)
    const from = planePoint(200, -200)
    expect(nearestKeptMm(quantityRule('lap-angle', 100, null), zoneCase, 'side', from)).toBe(Infinity)
  })

  it('is the distance to the whole region, which is found without looking for the nearest', () => {
    let outside = 0
    const offset = fc.record({
      uMm: fc.integer({ min: -500, max: 500 }),
      vMm: fc.integer({ min: -500, max: 500 }),
    })
    fc.assert(
      fc.property(anyScene, offset, fc.constantFrom('side', 'top'), (given, by, elevation) => {
        for (const [strap, rule] of RULES) {
          // Each its own case: nothing is remembered from the other.
          const [one, other] = [zoneCaseOf([given], strap, false), zoneCaseOf([given], strap, false)]
          const at = projected(one.anchor.mount.point, elevation)
          const from = planePoint(at.uMm + by.uMm, at.vMm + by.vMm)
          const region = ruleRegion(rule, one, elevation) ?? []
          const wantedMm = regionDistanceMm(region, from)
          const nearestMm = nearestKeptMm(rule, other, elevation, from)
          const isBothNowhere = wantedMm === Infinity && nearestMm === Infinity
          // Both are made of chords at most half a millimetre beside an edge.
          expect(isBothNowhere ? 0 : Math.abs(nearestMm - wantedMm)).toBeLessThanOrEqual(0.5)
          outside += wantedMm > 1 && Number.isFinite(wantedMm) ? 1 : 0
        }
      }),
      { numRuns: Math.max(10, Number(process.env['FC_RUNS'] ?? 0) / 20) },
    )
    expect(outside).toBeGreaterThan(10)
  }, 200_000)
})
