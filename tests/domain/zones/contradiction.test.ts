import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { planePoint } from '../../../src/domain/geometry/plane'
import { boxRegion, regionArea, regionClipped } from '../../../src/domain/geometry/region'
import type { Cells } from '../../../src/domain/zones/cells'
import { contradictingDemands, contradictionOf, type Demand } from '../../../src/domain/zones/contradiction'
import { lapTabs, point, scene as handScene } from '../straps/scenes'
import { quantityRule, zoneCaseOf } from './zoneCases'

const box = boxRegion(planePoint(-100, -100), planePoint(100, 100))

const halfPlane = (angleDeg: number, offsetMm: number): Cells => {
  const angle = (angleDeg * Math.PI) / 180
  return [[{ nu: Math.cos(angle), nv: Math.sin(angle), offsetMm }]]
}

const demand = (index: number, cells: Cells): Demand => ({
  ruleId: `rule-${index}`,
  sittingId: 'one',
  cells: () => cells,
  isKeptAt: (at) =>
    cells.some((cell) => cell.every(({ nu, nv, offsetMm }) => nu * at.uMm + nv * at.vMm <= offsetMm)),
})

/** Whether some demands leave a place: by clipping the box with every choice of one cell of each. */
const leavesPlace = (demands: readonly Demand[]): boolean =>
  regionArea(demands.reduce((rest, { cells }) => cells().flatMap((cell) => regionClipped(rest, cell)), box)) >
  1e-6

/** Every part of some demands with fewer than `size` members. */
const smallerParts = (demands: readonly Demand[], size: number): readonly (readonly Demand[])[] =>
  Array.from({ length: 2 ** demands.length }, (_, mask) =>
    demands.filter((__, index) => (mask >> index) % 2 === 1),
  ).filter((part) => part.length < size)

/** That a group leaves no place and no smaller group of the same demands does; that there is none where all leave one. */
const expectSmallest = (demands: readonly Demand[]): number => {
  const group = contradictingDemands(box, demands)
  expect(group === null).toBe(leavesPlace(demands))
  if (group === null) return 0
  expect(leavesPlace(group)).toBe(false)
  for (const part of smallerParts(demands, group.length)) expect(leavesPlace(part)).toBe(true)
  return group.length
}

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

  it('finds the pair although another, minimal group of three comes first', () => {
    // The three at 120° contradict each other and none of them can be left out; the two last do so by themselves.
    const three = [0, 120, 240].map((angleDeg, index) => demand(index, halfPlane(angleDeg, -5)))
    const demands = [...three, demand(3, halfPlane(90, -30)), demand(4, halfPlane(270, 20))]
    expect(contradictingDemands(box, demands)?.map(({ ruleId }) => ruleId)).toEqual(['rule-3', 'rule-4'])
  })

  it('leaves no place, and no smaller group does, in random groups of half-planes', () => {
    const sizes = new Map<number, number>()
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
          const size = expectSmallest(demands)
          sizes.set(size, (sizes.get(size) ?? 0) + 1)
          // Half-planes and a box are convex sets of the plane: Helly's theorem allows three at most (1923, from memory).
          expect(size).toBeLessThanOrEqual(3)
        },
      ),
      { numRuns: 300 },
    )
    // Each size was met.
    for (const size of [0, 2, 3]) expect(sizes.get(size) ?? 0).toBeGreaterThan(10)
  })

  it('does so where demands allow several places apart', () => {
    // Each demand: everywhere but a strip. Strips together may cover the box with four or more.
    const sizes = new Set<number>()
    const strip = fc.record({
      isUpright: fc.boolean(),
      fromMm: fc.integer({ min: -110, max: 90 }),
      wideMm: fc.integer({ min: 20, max: 120 }),
    })
    fc.assert(
      fc.property(fc.array(strip, { minLength: 2, maxLength: 8 }), (strips) => {
        const demands = strips.map(({ isUpright, fromMm, wideMm }, index) => {
          const [nu, nv] = isUpright ? [1, 0] : [0, 1]
          return demand(index, [
            [{ nu, nv, offsetMm: fromMm }],
            [{ nu: 0 - nu, nv: 0 - nv, offsetMm: 0 - fromMm - wideMm }],
          ])
        })
        sizes.add(expectSmallest(demands))
      }),
      { numRuns: 300 },
    )
    expect(Math.max(...sizes)).toBeGreaterThan(2)
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
