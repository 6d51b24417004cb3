import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { planePoint } from '../../../src/domain/geometry/plane'
import { boxRegion, regionArea, regionClipped } from '../../../src/domain/geometry/region'
import { contradictingDemands, contradictionOf, type Demand } from '../../../src/domain/zones/contradiction'
import { lapTabs, point, scene as handScene } from '../straps/scenes'
import { quantityRule, zoneCaseOf } from './zoneCases'

const box = boxRegion(planePoint(-100, -100), planePoint(100, 100))

const halfPlane = (angleDeg: number, offsetMm: number): Demand['cells'] => {
  const angle = (angleDeg * Math.PI) / 180
  return [[{ nu: Math.cos(angle), nv: Math.sin(angle), offsetMm }]]
}

const demand = (index: number, cells: Demand['cells']): Demand => ({
  ruleId: `rule-${index}`,
  sittingId: 'one',
  cells,
})

/** Whether some demands, each one half-plane here, leave a place: by clipping the box with all of them. */
const leavesPlace = (demands: readonly Demand[]): boolean =>
  regionArea(
    regionClipped(
      box,
      demands.flatMap(({ cells }) => cells[0] ?? []),
    ),
  ) > 1e-6

describe('contradictingDemands', () => {
  it('finds the two that exclude each other among many', () => {
    // u ≤ −10 against u ≥ 10; the rest leave nearly everything.
    const demands = [
      demand(0, halfPlane(90, 80)),
      demand(1, halfPlane(0, -10)),
      demand(2, halfPlane(45, 90)),
      demand(3, halfPlane(180, -10)),
      demand(4, halfPlane(270, 80)),
    ]
    expect(
      contradictingDemands(box, demands)
        ?.map(({ ruleId }) => ruleId)
        .toSorted(),
    ).toEqual(['rule-1', 'rule-3'])
  })

  it('finds three of which any two would do', () => {
    // Three half-planes at 120°, each 5 mm short of the middle: every two overlap, the three do not.
    const demands = [0, 120, 240].map((angleDeg, index) => demand(index, halfPlane(angleDeg, -5)))
    expect(contradictingDemands(box, demands)).toHaveLength(3)
  })

  it('says nothing where a place is left', () => {
    expect(contradictingDemands(box, [demand(0, halfPlane(0, 0)), demand(1, halfPlane(90, 0))])).toBeNull()
  })

  it('leaves no place, and a place with any one left out, in random groups', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            angleDeg: fc.integer({ min: 0, max: 359 }),
            offsetMm: fc.integer({ min: -60, max: 80 }),
          }),
          { minLength: 1, maxLength: 9 },
        ),
        (lines) => {
          const demands = lines.map(({ angleDeg, offsetMm }, index) =>
            demand(index, halfPlane(angleDeg, offsetMm)),
          )
          const group = contradictingDemands(box, demands)
          expect(group === null).toBe(leavesPlace(demands))
          if (group === null) return
          expect(leavesPlace(group)).toBe(false)
          // Half-planes and a box are convex sets of the plane: Helly's theorem allows three at most (1923, from memory).
          expect(group.length).toBeLessThanOrEqual(3)
          for (const left of group) expect(leavesPlace(group.filter((each) => each !== left))).toBe(true)
          // By brute force over every smaller part of the group.
          for (let mask = 0; mask < 2 ** group.length - 1; mask += 1)
            expect(leavesPlace(group.filter((_, index) => (mask >> index) % 2 === 1))).toBe(true)
        },
      ),
      { numRuns: 400 },
    )
  })
})

describe('contradictionOf', () => {
  it('names the sittings of one rule that no tab can please', () => {
    // Wedges of 78° to 80° below each hip point, 900 mm apart: at the depth where the steep one of the front reaches the flat one of
    // the rear they are more than 3 m down, out of reach: 900/(cot 78° − cot 80°) = 24.8 m. Ten millimetres apart they meet at 276 mm.
    const rule = quantityRule('lap-angle', 78, 80)
    const scenes = [0, -900, -10].map((xMm) => handScene({ anchors: lapTabs, hip: point(xMm, 0, 0) }))
    const zoneCase = zoneCaseOf(scenes, 'lap-left', true)
    const found = contradictionOf(rule, [], zoneCase, 'side')
    expect(found?.anchorId).toBe('lap-left')
    expect(found?.rules.map(({ sittingId }) => sittingId)).toContain('sitting-1')
    expect(found?.rules).toHaveLength(2)
  })

  it('names another rule that is kept where the rule alone would leave a place', () => {
    const rule = quantityRule('lap-angle', 60, 70)
    const other = { ...quantityRule('lap-angle', 40, 50), id: 'test-other' }
    const found = contradictionOf(rule, [other], zoneCaseOf([handScene()], 'lap-left', true), 'side')
    expect(found?.rules.map(({ ruleId }) => ruleId).toSorted()).toEqual(['test-lap-angle', 'test-other'])
    expect(contradictionOf(rule, [], zoneCaseOf([handScene()], 'lap-left', true), 'side')).toBeNull()
  })
})
