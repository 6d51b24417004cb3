import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PosedBody } from '../../../src/domain/body/posedBody'
import type { PointMm } from '../../../src/domain/geometry/point'
import type { Tube } from '../../../src/domain/geometry/tube'
import { bodyTubeGap } from '../../../src/domain/straps/bodyClearance'
import { placeStraps } from '../../../src/domain/straps/placeStraps'
import { solvePlace } from '../../../src/domain/straps/solve'
import { tubePieces } from '../../../src/domain/straps/tubePieces'
import { bar, hasValue, lapTabs, pathOf, point, scene, tab, valueOf } from './scenes'

/** A pelvis 220 mm thick and 300 wide about the hip point at (0, 0, 0), and one thigh. */
const core: PosedBody['core'] = [
  { part: 'pelvis', from: point(0, -40, 0), to: point(0, 40, 0), radiusMm: 110 },
  { part: 'thigh', from: point(0, 95, 20), to: point(-400, 95, 90), radiusMm: 60 },
]

const clearance = (...tubes: readonly Tube[]): number =>
  valueOf(solvePlace(scene({ core, tubes, anchors: [] })), 'body-clearance', 'body')

describe('body-clearance', () => {
  it('is from the body to the surface of the nearest tube, negative inside it, and missing without tubes or a body', () => {
    // 300 mm behind the hip point less 110 and half of 40.
    expect(clearance(bar(300, 0, 40))).toBe(170)
    expect(clearance(bar(300, 0, 40), bar(0, -200, 50, 'under'))).toBe(65)
    // Across the lap, its middle on the skin: half of it is in the body.
    expect(clearance(bar(0, 110, 40))).toBe(-20)
    expect(hasValue(solvePlace(scene({ core })), 'body-clearance', 'body')).toBe(false)
    const nobody = scene({ tubes: [bar(300, 0, 40)], anchors: [] })
    expect(hasValue(solvePlace(nobody), 'body-clearance', 'body')).toBe(false)
  })

  it('leaves the room between the thighs free', () => {
    // A steering column along the middle, 55 mm above the hip point and 300 ahead of it: 95 mm beside the thigh’s middle line.
    const column: Tube = {
      ...bar(0, 0, 30),
      points: [point(-300, 0, 72.5), point(-900, 0, 72.5)],
    }
    const gap = clearance(column)
    expect(gap).toBeGreaterThan(0)
    expect(gap).toBeLessThan(95 - 60 - 15 + 1)
  })

  it('counts the strap between chest and buckle, which lies in the air before the belly', () => {
    const anchors = [
      ...lapTabs,
      tab('shoulder-left', point(300, -80, 560)),
      tab('shoulder-right', point(300, 80, 560)),
    ]
    const still = solvePlace(scene({ anchors }))
    const contacts = pathOf(still, 'shoulder-left').contacts
    const [from, to] = contacts.slice(-2).map((contact) => contact.point)
    if (from === undefined || to === undefined) throw new Error('no front')
    const middle = bar((from.xMm + to.xMm) / 2, (from.zMm + to.zMm) / 2, 20)
    // A bar across the car through the middle of the last piece: half its diameter inside.
    const solved = solvePlace(scene({ anchors, tubes: [middle] }))
    expect(valueOf(solved, 'body-clearance', 'body')).toBeCloseTo(-10, 9)
    expect(solved.problems).toEqual([])
    const gap = bodyTubeGap(
      tubePieces([middle]),
      scene({ anchors }).body,
      placeStraps(scene({ anchors })).straps,
    )
    expect(gap?.part).toBe('strap')
  })

  it('does not count the strap that runs to its anchor: that is for its own clearance', () => {
    const anchors = [...lapTabs, tab('shoulder-left', point(300, -80, 560))]
    const behind = bar(200, 580, 20)
    const solved = solvePlace(scene({ anchors, tubes: [behind] }))
    expect(valueOf(solved, 'tube-clearance', 'shoulder-left')).toBeLessThan(0)
    expect(valueOf(solved, 'body-clearance', 'body')).toBeGreaterThan(20)
  })

  it('is the least of all distances between points of both, less their radii', () => {
    const at = fc.record({
      xMm: fc.integer({ min: -600, max: 600 }),
      yMm: fc.integer({ min: -400, max: 400 }),
      zMm: fc.integer({ min: -600, max: 600 }),
    })
    const along = (from: PointMm, to: PointMm, share: number): PointMm => ({
      xMm: from.xMm + share * (to.xMm - from.xMm),
      yMm: from.yMm + share * (to.yMm - from.yMm),
      zMm: from.zMm + share * (to.zMm - from.zMm),
    })
    const shares = Array.from({ length: 81 }, (_, index) => index / 80)
    fc.assert(
      fc.property(fc.array(fc.tuple(at, at), { minLength: 1, maxLength: 3 }), (ends) => {
        const tubes = ends.map(([from, to], index): Tube => ({
          ...bar(0, 0, 30),
          id: `tube-${index}`,
          points: [from, to],
        }))
        const sampled = Math.min(
          ...tubes.flatMap(({ points: [a = point(0, 0, 0), b = a] }) =>
            core.flatMap(({ from, to, radiusMm }) =>
              shares.flatMap((s) => {
                const p = along(from, to, s)
                return shares.map((t) => {
                  const q = along(a, b, t)
                  return Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm, p.zMm - q.zMm) - radiusMm - 15
                })
              }),
            ),
          ),
        )
        const value = clearance(...tubes)
        expect(value).toBeLessThanOrEqual(sampled + 1e-9)
        // Samples lie at most 2000/80 mm apart: half of that to the nearest on each line.
        expect(value).toBeGreaterThan(sampled - 16)
      }),
      { numRuns: 60 },
    )
  })
})

describe('shoulder-mirror and sub-mirror', () => {
  it('compare the two anchors along with height, and not across', () => {
    const anchors = [
      ...lapTabs,
      tab('shoulder-left', point(300, -80, 560)),
      tab('shoulder-right', point(303, 200, 556)),
    ]
    expect(valueOf(solvePlace(scene({ anchors })), 'shoulder-mirror', 'shoulder-pair')).toBe(5) // 3-4-5
  })

  it('are of pairs that the belt has', () => {
    const shoulders = [tab('shoulder-left', point(300, -80, 560)), tab('shoulder-right', point(312, 80, 555))]
    const subs = [tab('sub-left', point(0, -60, -300)), tab('sub-right', point(6, 60, -308))]
    const anchors = [...lapTabs, ...shoulders, ...subs]
    const under = (arrangement: 3 | 5 | 6) => {
      const given = scene({ anchors })
      return solvePlace({ ...given, belt: { ...given.belt, arrangement } })
    }
    expect(valueOf(under(6), 'sub-mirror', 'sub-pair')).toBe(10) // 6-8-10
    expect(valueOf(under(6), 'shoulder-mirror', 'shoulder-pair')).toBe(13) // 5-12-13
    expect(hasValue(under(5), 'sub-mirror', 'sub-pair')).toBe(false)
    expect(hasValue(under(3), 'shoulder-mirror', 'shoulder-pair')).toBe(false)
  })
})
