import type { Tube } from '../../../../src/domain/geometry/tube'
import type { Mount } from '../../../../src/domain/straps/anchor'
import { cross, dot, minus, norm, plus, times, unit, vectorOf, type Vector } from './vector'

/**
 * Where a strap leaves its mount when its next contact is `next`; null when that is inside the tube. `seen`: what over and under are
 * said of where that is not the next contact, as for a tail, of which they are said as of the straps at its end.
 */
export type MountEnd = (next: Vector, seen?: Vector) => Vector | null

/** Direction of the tube's centre line where it is nearest to `at`. */
const tubeAxis = (tube: Tube, at: Vector): Vector => {
  const points = tube.points.map(vectorOf)
  const pieces = points.slice(1).map((end, i) => {
    const start = points[i] ?? end
    const run = minus(end, start)
    const share = Math.min(1, Math.max(0, dot(minus(at, start), run) / dot(run, run)))
    return { axis: unit(run), away: norm(minus(at, plus(start, run, share))) }
  })
  return pieces.reduce((best, piece) => (piece.away < best.away ? piece : best)).axis
}

/**
 * A point mount is its point. A wrap lies on the circle round the tube in the plane square to its axis; seen along the axis the
 * strap leaves it along the tangent to the next contact. Of the two tangents, `over` is the one that touches higher.
 */
export const mountEnd = (mount: Mount, tubes: readonly Tube[]): MountEnd => {
  const centre = vectorOf(mount.point)
  if (mount.kind !== 'wrap') return () => centre
  const tube = tubes.find(({ id }) => id === mount.tubeId)
  if (tube === undefined) throw new Error(`no tube ${mount.tubeId}`)
  const axis = tubeAxis(tube, centre)
  const radius = tube.outsideDiameterMm / 2
  const tangents = (next: Vector): readonly [Vector, Vector] | null => {
    const away = minus(next, centre)
    const flat = minus(away, times(axis, dot(away, axis)))
    const distance = norm(flat)
    if (distance <= radius) return null
    const first = times(flat, 1 / distance)
    const second = cross(axis, first)
    const cosine = radius / distance
    const sine = Math.sqrt(1 - cosine * cosine)
    return [1, -1].map((sign) =>
      plus(centre, plus(times(first, cosine), second, sign * sine), radius),
    ) as unknown as [Vector, Vector]
  }
  return (next, seen = next) => {
    const [own, judged] = [tangents(next), tangents(seen)]
    if (own === null || judged === null) return null
    return judged[0][2] > judged[1][2] === (mount.over === 'over') ? own[0] : own[1]
  }
}
