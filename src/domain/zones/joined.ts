import type { PlanePointMm } from '../geometry/plane'
import type { ConvexPolygon, Region } from '../geometry/polygon'

/** Corners this close are one corner: rounding after clipping. Our judgement. */
const SAME_MM = 1e-6

/** How far a corner may turn the wrong way, mm² of the cross product over the edge lengths, and still count as straight. */
const STRAIGHT_SINE = 1e-9

const cornerKey = ({ uMm, vMm }: PlanePointMm): string =>
  `${Math.round(uMm / SAME_MM)},${Math.round(vMm / SAME_MM)}`

/** Sine of the turn from a→b to b→c, + to the left; 0 where an edge has no length. */
const turnSine = (a: PlanePointMm, b: PlanePointMm, c: PlanePointMm): number => {
  const abU = b.uMm - a.uMm
  const abV = b.vMm - a.vMm
  const bcU = c.uMm - b.uMm
  const bcV = c.vMm - b.vMm
  const lengths = Math.hypot(abU, abV) * Math.hypot(bcU, bcV)
  return lengths === 0 ? 0 : (abU * bcV - abV * bcU) / lengths
}

/** Two polygons that share the edge from a's corner `ia` to the next as one, or null when that would not be convex. */
const union = (a: ConvexPolygon, ia: number, b: ConvexPolygon, ib: number): ConvexPolygon | null => {
  const restA = [...a.slice(ia + 1), ...a.slice(0, ia + 1)]
  const restB = [...b.slice(ib + 1), ...b.slice(0, ib + 1)]
  const joined = [...restA, ...restB.slice(1, -1)]
  const count = joined.length
  const at = (index: number): PlanePointMm | undefined => joined[(index + count) % count]
  for (const index of [0, restA.length - 1]) {
    const before = at(index - 1)
    const corner = at(index)
    const after = at(index + 1)
    if (before === undefined || corner === undefined || after === undefined) return null
    if (turnSine(before, corner, after) < -STRAIGHT_SINE) return null
  }
  return joined.filter((corner, index) => {
    const before = at(index - 1)
    const after = at(index + 1)
    return !before || !after || Math.abs(turnSine(before, corner, after)) > STRAIGHT_SINE
  })
}

interface Edge {
  readonly piece: number
  readonly corner: number
}

/** One round: every piece joins at most one neighbour. */
const joinedOnce = (region: Region): Region => {
  const edges = new Map<string, Edge>()
  for (const [piece, polygon] of region.entries())
    for (const [corner, from] of polygon.entries()) {
      const to = polygon[(corner + 1) % polygon.length] ?? from
      edges.set(`${cornerKey(from)};${cornerKey(to)}`, { piece, corner })
    }
  const done = new Set<number>()
  const out: ConvexPolygon[] = []
  for (const [piece, polygon] of region.entries()) {
    if (done.has(piece)) continue
    done.add(piece)
    let result = polygon
    for (const [corner, from] of polygon.entries()) {
      const to = polygon[(corner + 1) % polygon.length] ?? from
      const other = edges.get(`${cornerKey(to)};${cornerKey(from)}`)
      const neighbour = other && region[other.piece]
      if (other === undefined || neighbour === undefined || done.has(other.piece)) continue
      const both = union(polygon, corner, neighbour, other.corner)
      if (both === null) continue
      done.add(other.piece)
      result = both
      break
    }
    out.push(result)
  }
  return out
}

/** The same region in fewer pieces: neighbours along a whole edge become one where that is convex. */
export const joinedRegion = (region: Region): Region => {
  let rest = region
  for (;;) {
    const next = joinedOnce(rest)
    if (next.length === rest.length) return next
    rest = next
  }
}
