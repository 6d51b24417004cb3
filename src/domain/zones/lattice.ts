import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import type { ConvexPolygon } from '../geometry/polygon'

/** A corner of the triangles, shared by all that meet there. */
export interface Corner {
  readonly id: number
  readonly at: PlanePointMm
  /** Place in the lattice, in its finest steps. */
  readonly across: number
  readonly up: number
}

/** A right-angled triangle with equal legs, corners anticlockwise from the right angle. */
export interface Triangle {
  readonly corners: readonly [Corner, Corner, Corner]
  /** Middle of its longest side: as far from every corner, and the corner at which it is halved. */
  readonly middle: Corner
  /** Length of its longest side. */
  readonly acrossMm: number
  /** Worked out once. */
  readonly halves: () => readonly [Triangle, Triangle]
}

/** The corners of repeatedly halved right-angled triangles over a square. */
export interface Lattice {
  readonly roots: readonly Triangle[]
}

/** Steps from the middle of the square to its edge: so often can a triangle be halved and its corners stay exact. */
const STEPS = 2 ** 22

/** A square of half a side `halfMm` about `about`, as four triangles with their right angles in the middle. */
export const latticeAbout = (about: PlanePointMm, halfMm: number): Lattice => {
  const corners = new Map<number, Corner>()
  const cornerAt = (across: number, up: number): Corner => {
    const key = (across + STEPS) * 4 * STEPS + (up + STEPS)
    const known = corners.get(key)
    if (known !== undefined) return known
    const at = {
      uMm: about.uMm + (across / STEPS) * halfMm,
      vMm: about.vMm + (up / STEPS) * halfMm,
    }
    const fresh: Corner = { id: corners.size, at, across, up }
    corners.set(key, fresh)
    return fresh
  }
  const triangle = (corner: Corner, from: Corner, to: Corner, acrossMm: number): Triangle => {
    const apex = cornerAt((from.across + to.across) / 2, (from.up + to.up) / 2)
    let halves: readonly [Triangle, Triangle] | null = null
    return {
      corners: [corner, from, to],
      middle: apex,
      acrossMm,
      halves: () =>
        (halves ??= [
          triangle(apex, corner, from, acrossMm * Math.SQRT1_2),
          triangle(apex, to, corner, acrossMm * Math.SQRT1_2),
        ]),
    }
  }
  const middle = cornerAt(0, 0)
  const square = [
    cornerAt(-STEPS, -STEPS),
    cornerAt(STEPS, -STEPS),
    cornerAt(STEPS, STEPS),
    cornerAt(-STEPS, STEPS),
  ]
  return {
    roots: square.map((from, index) => triangle(middle, from, square[(index + 1) % 4] ?? from, 2 * halfMm)),
  }
}

/** A triangle as a polygon. */
export const trianglePolygon = ({ corners }: Triangle): ConvexPolygon => corners.map(({ at }) => at)

/** How finely a part of the plane is looked at before what is seen there is trusted. */
export interface Focus {
  readonly at: PlanePointMm
  /** Longest side of a triangle there and, further away, as a share of the distance. */
  readonly leastMm: number
  readonly share: number
}

/** Whether a triangle is as small as every focus wants it. */
export const isFineEnough = ({ middle, acrossMm }: Triangle, foci: readonly Focus[]): boolean =>
  foci.every(
    ({ at, leastMm, share }) =>
      acrossMm <= Math.max(leastMm, share * (planeDistanceMm(middle.at, at) - acrossMm / 2)),
  )
