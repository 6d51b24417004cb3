import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { QuantityId, Subject } from '../../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { solvePlace, type SolvedPlace } from '../../../../src/domain/straps/solve'
import type { StrapId } from '../../../../src/domain/straps/strap'
import { randomScene, VARIANTS } from './randomScenes'
import { inMirror, otherSide, shifted } from './transformed'

/** Rounding of coordinates of a few metres, gathered over a solution. */
const ROUNDING = 1e-6
/** How far the datum itself moves in the third test. */
const STEP_MM = 1_000

/** Measured from the datum itself: none of the quantities is. */
const keyOf = (id: QuantityId, subject: string): string => `${id} of ${subject}`
const swapped = (subject: Subject): string =>
  subject === 'head' || subject.endsWith('-pair') ? subject : otherSide(subject as StrapId)

const valuesOf = (solved: SolvedPlace, named: (subject: Subject) => string): Record<string, number> =>
  Object.fromEntries(solved.quantities.map(({ id, subject, value }) => [keyOf(id, named(subject)), value]))

/** The largest difference of two sets of values, and which; a value that only one has counts as infinite. */
const largestDifference = (
  a: Record<string, number>,
  b: Record<string, number>,
): { key: string; by: number } =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])]
    .map((key) => ({ key, by: Math.abs((a[key] ?? Infinity) - (b[key] ?? -Infinity)) }))
    .reduce((most, one) => (one.by > most.by ? one : most), { key: 'none', by: 0 })

const farthest = (solved: SolvedPlace, other: SolvedPlace, moved: (at: PointMm) => PointMm): number =>
  Math.max(
    0,
    ...solved.paths.flatMap((path) => {
      const twin = other.paths.find(({ strap }) => strap === path.strap)
      return path.contacts.map(({ point }, i) => {
        const at = moved(point)
        const found = twin?.contacts[i]?.point
        return found ? Math.hypot(at.xMm - found.xMm, at.yMm - found.yMm, at.zMm - found.zMm) : Infinity
      })
    }),
  )

const renamed = (solved: SolvedPlace): SolvedPlace => ({
  ...solved,
  paths: solved.paths.map((path) => ({ ...path, strap: otherSide(path.strap) })),
})

const anyScene: fc.Arbitrary<StrapScene> = fc.constantFrom(...VARIANTS).chain(randomScene)

describe('solvePlace', () => {
  it('gives the mirror image of a mirrored car', () => {
    let compared = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        const solved = solvePlace(given)
        const image = solvePlace(inMirror(given))
        expect(image.paths.length).toBe(solved.paths.length)
        compared += solved.paths.length
        const flip = (at: PointMm): PointMm => ({ ...at, yMm: -at.yMm })
        expect(farthest(renamed(solved), image, flip)).toBeLessThan(ROUNDING)
        const difference = largestDifference(
          valuesOf(solved, swapped),
          valuesOf(image, (subject) => subject),
        )
        expect(difference.by < ROUNDING ? 'same' : difference).toBe('same')
        expect(image.problems.map(({ kind }) => kind).toSorted()).toEqual(
          solved.problems.map(({ kind }) => kind).toSorted(),
        )
      }),
      { numRuns: 1000, endOnFailure: true },
    )
    expect(compared).toBeGreaterThan(3000)
  })

  it('changes no angle and no length when the whole car is moved', () => {
    const step = fc.integer({ min: -STEP_MM, max: STEP_MM })
    fc.assert(
      fc.property(anyScene, step, step, step, (given, xMm, yMm, zMm) => {
        const solved = solvePlace(given)
        const moved = solvePlace(shifted(given, { xMm, yMm, zMm }))
        const by = (at: PointMm): PointMm => ({ xMm: at.xMm + xMm, yMm: at.yMm + yMm, zMm: at.zMm + zMm })
        expect(farthest(solved, moved, by)).toBeLessThan(ROUNDING)
        const same = (subject: Subject): string => subject
        const difference = largestDifference(valuesOf(solved, same), valuesOf(moved, same))
        expect(difference.by < ROUNDING ? 'same' : difference).toBe('same')
      }),
      { numRuns: 1000, endOnFailure: true },
    )
  })
})
