import type { PlanePointMm } from './plane'

const turn = (a: PlanePointMm, b: PlanePointMm, c: PlanePointMm): number =>
  (b.uMm - a.uMm) * (c.vMm - a.vMm) - (b.vMm - a.vMm) * (c.uMm - a.uMm)

const chain = (points: readonly PlanePointMm[]): PlanePointMm[] => {
  const kept: PlanePointMm[] = []
  for (const point of points) {
    for (;;) {
      const [before, last] = [kept.at(-2), kept.at(-1)]
      if (before === undefined || last === undefined || turn(before, last, point) > 0) break
      kept.pop()
    }
    kept.push(point)
  }
  return kept.slice(0, -1)
}

/**
 * The least convex outline that holds all points, anticlockwise from the leftmost; points on its edges are left out. Fewer than three
 * points, or points on one line, give the ends of that line. Source: monotone chain (Andrew 1979), from memory.
 */
export const convexHull = (points: readonly PlanePointMm[]): readonly PlanePointMm[] => {
  const sorted = points.toSorted((a, b) => a.uMm - b.uMm || a.vMm - b.vMm)
  const hull = [...chain(sorted), ...chain(sorted.toReversed())]
  return hull.length === 0 ? sorted.slice(0, 1) : hull
}
