import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planeDistanceMm, planePoint, type PlanePointMm, projected } from '../../../src/domain/geometry/plane'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { type Asked, marginAt } from '../../../src/domain/zones/asked'
import { casePlane } from '../../../src/domain/zones/caseFields'
import { readIn } from '../../../src/domain/zones/evenRun'
import type { Triangle } from '../../../src/domain/zones/lattice'
import { STRAP_CLEAR } from '../../../src/domain/zones/limit'
import { bar, lapTabs, point, scene, slot, tab } from '../straps/scenes'
import { casesOf, randomSittings } from './randomPlaces'
import { evenNumbers } from './zoneTrials'
import { zoneCaseOf } from './zoneCases'

/** Lower edge of a back slot at (150, 540); tabs below the line through it bend there. A bar between the slot and the tab. */
const given = (barAt: { readonly xMm: number; readonly zMm: number }): StrapScene =>
  scene({
    seat: { slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(150, -80, 560) })] },
    anchors: [...lapTabs, tab('shoulder-left', point(450, -80, 380))],
    tubes: [bar(barAt.xMm, barAt.zMm, 30)],
  })

const planeOf = (of: StrapScene) => {
  const zoneCase = zoneCaseOf([of], 'shoulder-left', false)
  const plane = casePlane(zoneCase, 'side')
  const [asked] = [...plane.asked.values()]
  if (asked === undefined) throw new Error('one sitting')
  return { asked, roots: plane.lattice.roots }
}

const isIn = ({ corners }: Triangle, { uMm, vMm }: PlanePointMm): boolean =>
  corners.every(({ at }, index) => {
    const to = corners[(index + 1) % 3]?.at ?? at
    return (to.uMm - at.uMm) * (vMm - at.vMm) - (to.vMm - at.vMm) * (uMm - at.uMm) >= -1e-6
  })

/** The triangle of the lattice that holds a place, no longer than this. */
const triangleAt = (roots: readonly Triangle[], at: PlanePointMm, longestMm: number): Triangle => {
  const holding = roots.find((root) => isIn(root, at))
  if (holding === undefined) throw new Error('within the lattice')
  return holding.acrossMm <= longestMm ? holding : triangleAt(holding.halves(), at, longestMm)
}

/** Places all over a triangle. */
const placesIn = ({ corners: [a, b, c] }: Triangle): readonly PlanePointMm[] => {
  const next = evenNumbers(7)
  return Array.from({ length: 40 }, () => {
    const [p, q] = [next(), next()]
    const [toB, toC] = p + q > 1 ? [1 - p, 1 - q] : [p, q]
    return planePoint(
      a.at.uMm + toB * (b.at.uMm - a.at.uMm) + toC * (c.at.uMm - a.at.uMm),
      a.at.vMm + toB * (b.at.vMm - a.at.vMm) + toC * (c.at.vMm - a.at.vMm),
    )
  })
}

const demandOf = (asked: Asked) => ({ asked, limit: STRAP_CLEAR })

describe('readIn', () => {
  it('reads the shadow of a tube beyond a straight edge of a slot as it is solved, to a tenth of a millimetre', () => {
    // The strap from the slot's edge to the tab turns about that edge: half way to a tab at (450, 380) lies (300, 460).
    const { asked, roots } = planeOf(given({ xMm: 300, zMm: 460 }))
    const triangle = triangleAt(roots, planePoint(450, 380), 60)
    const read = readIn(demandOf(asked), triangle)
    if (read === 'kept') throw new Error('a tube is near')
    expect(read.asked).not.toBe(asked)
    let broken = 0
    for (const at of placesIn(triangle)) {
      const solvedMm = marginAt(asked, STRAP_CLEAR, at)
      expect(Math.abs(marginAt(read.asked, read.limit, at) - solvedMm)).toBeLessThanOrEqual(0.1)
      broken += solvedMm < 0 ? 1 : 0
    }
    expect(broken).toBeGreaterThan(0)
  })

  it('asks nothing where no tube is near', () => {
    const { asked, roots } = planeOf(given({ xMm: 300, zMm: 900 }))
    expect(readIn(demandOf(asked), triangleAt(roots, planePoint(450, 380), 60))).toBe('kept')
  })

  it('has the strap solved where it bends over the edge in a part of the triangle only', () => {
    // The shoulder arc about (0, 490) of radius 100, the edge P (150, 540), 158.11 mm from its middle: a strap that just touches P
    // falls rearward by asin(100/158.11) − atan(50/150) = 20.80°. 300 mm behind P that is 540 − 300·tan 20.80° = 426.04.
    const { asked, roots } = planeOf(given({ xMm: 300, zMm: 480 }))
    const at = planePoint(450, 426.04)
    const triangle = triangleAt(roots, at, 90)
    const nearest = Math.min(...triangle.corners.map((corner) => planeDistanceMm(corner.at, at)))
    expect(nearest).toBeGreaterThan(5)
    const demand = demandOf(asked)
    expect(readIn(demand, triangle)).toBe(demand)
  })

  it('is nowhere off by more than two tenths where it reads, in random places', () => {
    let compared = 0
    const offset = fc.integer({ min: -300, max: 300 })
    fc.assert(
      fc.property(randomSittings('7-point'), offset, offset, ([first], uMm, vMm) => {
        if (first === undefined) throw new Error('there is a sitting')
        for (const zoneCase of casesOf([first], false)) {
          const { asked: all, lattice } = casePlane(zoneCase, 'side')
          const at = projected(zoneCase.anchor.mount.point, 'side')
          const triangle = triangleAt(lattice.roots, planePoint(at.uMm + uMm, at.vMm + vMm), 200)
          for (const asked of all.values()) {
            const read = readIn(demandOf(asked), triangle)
            if (read === 'kept' || read.asked === asked) continue
            for (const place of placesIn(triangle)) {
              const solvedMm = marginAt(asked, STRAP_CLEAR, place)
              // Tubes that come no nearer than the surface anywhere in the triangle are left out of what is read.
              if (solvedMm >= 0) continue
              compared += 1
              expect(Math.abs(marginAt(read.asked, read.limit, place) - solvedMm)).toBeLessThanOrEqual(0.2)
            }
          }
        }
      }),
      { numRuns: 120, endOnFailure: true },
    )
    expect(compared).toBeGreaterThan(100)
  })
})
