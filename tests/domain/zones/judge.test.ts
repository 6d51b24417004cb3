import { describe, expect, it } from 'vitest'
import { type PlanePointMm, planePoint } from '../../../src/domain/geometry/plane'
import { askedOf, lookAt } from '../../../src/domain/zones/asked'
import { judgedAtOnce, type Part } from '../../../src/domain/zones/judge'
import { latticeAbout, type Triangle } from '../../../src/domain/zones/lattice'
import { type Limit, limitsOf, PATH_INDEX } from '../../../src/domain/zones/limit'
import { quantityRule } from './zoneCases'

/** "At least 0" of a number without creases, whose place in an answer does not matter here. */
const LIMIT: Limit = (() => {
  const found = limitsOf(quantityRule('lap-angle', 0, null), 'strap', null).find(
    ({ what }) => what === 'rule',
  )
  if (found === undefined) throw new Error('a rule has a side')
  return found
})()

/** Right angle in the middle of a square of half a side 100 mm, the other two corners on its left: u from −100 to 0, 200 mm across. */
const leftTriangle = (): Triangle => {
  const found = latticeAbout(planePoint(0, 0), 100).roots.find(({ middle }) => middle.at.uMm < 0)
  if (found === undefined) throw new Error('a square has a left side')
  return found
}

/** What is said of the left triangle where the number is `numberAt` everywhere. */
const said = (
  numberAt: (at: PlanePointMm) => number,
  part: readonly PlanePointMm[] | null = null,
): ReturnType<typeof judgedAtOnce> => {
  const triangle = leftTriangle()
  const asked = askedOf({
    tubes: [],
    addTubes: () => {},
    answerAt: (_of, at) => {
      const numbers: number[] = []
      numbers[LIMIT.index] = numberAt(at)
      numbers[PATH_INDEX] = Infinity
      return { numbers, run: null }
    },
    marginAt: (_limit, at) => numberAt(at),
  })
  const corners: Part | null = part && ((visit) => part.forEach(visit))
  return judgedAtOnce(lookAt(asked, 'strap', triangle), LIMIT, triangle, corners)
}

/** A number of `least` at the corners on the left whose middle sags by `sagMm` below them: parabola over v. */
const sagging =
  (least: number, sag: number) =>
  ({ vMm }: PlanePointMm): number =>
    least - sag + sag * (vMm / 100) ** 2

describe('judgedAtOnce', () => {
  it('keeps or breaks a triangle when no place looked at is nearer to the limit than the number bends twice over', () => {
    // At the middle of the longest side 1 − 0.3 = 0.7, which is more than twice the sag of 0.3, and less than twice 0.4.
    expect(said(sagging(1, 0.3))).toBe('kept')
    expect(said(sagging(1, 0.4))).toBeNull()
    expect(said((at) => -sagging(1, 0.3)(at))).toBe('broken')
    expect(said((at) => -sagging(1, 0.4)(at))).toBeNull()
  })

  it('says of a part what the plane through the corners says there', () => {
    // 0 in the middle of the triangle's width: kept on its right half, broken on its left one.
    const sloping = ({ uMm }: PlanePointMm): number => uMm + 50
    const strip = (fromMm: number, toMm: number): readonly PlanePointMm[] => [
      planePoint(fromMm, -10),
      planePoint(toMm, -10),
      planePoint(toMm, 10),
      planePoint(fromMm, 10),
    ]
    expect(said(sloping)).toBeNull()
    expect(said(sloping, strip(-49, -20))).toBe('kept')
    expect(said(sloping, strip(-90, -51))).toBe('broken')
    expect(said(sloping, strip(-60, -40))).toBeNull()
    // Along the longest side: 0 at v = 20 mm.
    const along = ({ vMm }: PlanePointMm): number => 20 - vMm
    expect(said(along, strip(-90, -20))).toBe('kept')
    expect(said((at) => -along(at), strip(-90, -20))).toBe('broken')
  })

  it('allows a part as much as the number bends', () => {
    // 1 mm of the strip's 1 mm margin is used up by twice a sag of 0.6 mm.
    const bent =
      (sag: number) =>
      ({ uMm, vMm }: PlanePointMm): number =>
        uMm + 50 - sag + sag * (vMm / 100) ** 2
    const strip = [planePoint(-49, -5), planePoint(-40, -5), planePoint(-40, 5), planePoint(-49, 5)]
    expect(said(bent(0), strip)).toBe('kept')
    expect(said(bent(0.6), strip)).toBeNull()
  })
})
