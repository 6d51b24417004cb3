import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import { pointDistanceMm, type PointMm } from '../geometry/point'
import { reachOf, type BodyEnd, type Reach } from './bodyEnd'
import { contactOnMount, type MountEnd } from './mountEnd'

/*
 * Where a strap bears on a shell's side: a line of sharp edges, along which it slides without friction until its two pulls have no part
 * along the edge, or hold it at a corner from both sides.
 */

/** A strap bent over one place of the line. */
export interface OverEdge {
  readonly at: PointMm
  readonly contact: PointMm
  readonly reach: Reach
  /** Part of its two unit pulls along the line, + onward: the way it would slide. */
  readonly onward: number
  /** From the mount to the body, mm. */
  readonly outsideMm: number
}

/** What strap lies over the line, and where that is in space: y of the shell's side. */
export interface EdgeSearch {
  readonly mount: MountEnd
  readonly end: BodyEnd
  readonly yMm: number
}

/** Spacing of the places looked at along the line, mm: no more than one place of rest between two of them. Our judgement. */
const LOOK_MM = 20

/** A pull along the line below which the strap stays: rounding. */
const DRAWN = 1e-7

type Pair = readonly [number, number]

/** The strap over one place of the piece from `from` to `to`, at a share of its length; null where tube or body is in the way. */
const overPlace = (
  { mount, end, yMm }: EdgeSearch,
  from: PlanePointMm,
  to: PlanePointMm,
  share: number,
): OverEdge | null => {
  const u = to.uMm - from.uMm
  const v = to.vMm - from.vMm
  const at: PointMm = { xMm: from.uMm + share * u, yMm, zMm: from.vMm + share * v }
  const contact = contactOnMount(mount, at)
  const reach = reachOf(end, at)
  if (contact === null || reach === null) return null
  const backMm = pointDistanceMm(at, contact)
  const onMm = pointDistanceMm(at, reach.point)
  const pull = (toward: PointMm, lengthMm: number): number =>
    ((toward.xMm - at.xMm) * u + (toward.zMm - at.zMm) * v) / lengthMm
  const onward = (pull(contact, backMm) + pull(reach.point, onMm)) / Math.sqrt(u * u + v * v)
  return { at, contact, reach, onward, outsideMm: backMm + onMm }
}

/** Between a share from which the strap slides onward and a farther one from which it slides back: where it stays; null where its aim turns about. */
const restBetween = (
  search: EdgeSearch,
  from: PlanePointMm,
  to: PlanePointMm,
  shares: Pair,
): OverEdge | null => {
  let [low, high] = shares
  let rest = overPlace(search, from, to, high)
  for (;;) {
    const middle = (low + high) / 2
    if (rest === null || rest.onward === 0 || middle <= low || middle >= high) break
    rest = overPlace(search, from, to, middle)
    if (rest !== null && rest.onward > 0) low = middle
    else high = middle
  }
  return rest !== null && Math.abs(rest.onward) < DRAWN ? rest : null
}

/** A straight piece of the line: the strap over its two ends and where it stays between them. */
interface OverPiece {
  readonly first: OverEdge | null
  readonly last: OverEdge | null
  readonly rests: readonly OverEdge[]
}

const overPiece = (search: EdgeSearch, from: PlanePointMm, to: PlanePointMm): OverPiece => {
  const rests: OverEdge[] = []
  const count = Math.max(1, Math.ceil(planeDistanceMm(from, to) / LOOK_MM))
  const first = overPlace(search, from, to, 0)
  let last = first
  for (let index = 1; index <= count; index += 1) {
    const before = last
    last = overPlace(search, from, to, index / count)
    if (before === null || last === null || before.onward <= 0 || last.onward > 0) continue
    const rest = restBetween(search, from, to, [(index - 1) / count, index / count])
    if (rest !== null) rests.push(rest)
  }
  return { first, last, rests }
}

/** All places along a line of edges where the strap stays, its two ends and its corners included. */
export const restsOver = (line: readonly PlanePointMm[], search: EdgeSearch): readonly OverEdge[] => {
  const rests: OverEdge[] = []
  let from: PlanePointMm | undefined
  let corner: OverEdge | null = null
  for (const to of line) {
    if (from !== undefined && planeDistanceMm(from, to) > 0) {
      const piece = overPiece(search, from, to)
      // Not drawn back along the piece before, nor onward along this one.
      const isHeld = (corner?.onward ?? 0) > -DRAWN
      if (isHeld && piece.first !== null && piece.first.onward < DRAWN) rests.push(piece.first)
      rests.push(...piece.rests)
      corner = piece.last
    }
    from = to
  }
  if (corner !== null && corner.onward > -DRAWN) rests.push(corner)
  return rests
}
