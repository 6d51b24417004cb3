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
  /** From the mount to it, mm. */
  readonly backMm: number
  /** From the mount to the body, mm. */
  readonly outsideMm: number
}

/** What strap lies over the line, and where that is in space: y of the shell's side. */
export interface EdgeSearch {
  readonly mount: MountEnd
  readonly end: BodyEnd
  readonly yMm: number
}

/**
 * Spacing of the places looked at along the line, mm: there is no more than one place of rest between two of them. Away from what the
 * strap's two directions turn about it may grow with the distance. Our judgement.
 */
const LOOK_MM = 20
const LOOK_SHARE = 0.4

/** A pull along the line below which the strap stays: rounding. */
const DRAWN = 1e-7

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
  return { at, contact, reach, onward, backMm, outsideMm: backMm + onMm }
}

/** A place on a piece and its share of the piece's length. */
interface Place {
  readonly share: number
  readonly over: OverEdge
}

/** Steps in which a place of rest is found; few are needed where the pull changes smoothly. */
const STEPS = 100

/** A pull below this is none: rounding. */
const BALANCED = 1e-15

/**
 * Between a place from which the strap slides onward and a farther one from which it slides back: where it stays. Null where its aim turns
 * about. Method: regula falsi, Illinois variant (the pull at an end that stays is halved); from memory.
 */
const restBetween = (
  search: EdgeSearch,
  from: PlanePointMm,
  to: PlanePointMm,
  near: Place,
  far: Place,
): OverEdge | null => {
  let [low, high] = [near.share, far.share]
  let [lowPull, highPull] = [near.over.onward, far.over.onward]
  let rest = far.over
  for (let step = 0; step < STEPS && Math.abs(rest.onward) > BALANCED; step += 1) {
    const share = low + ((high - low) * lowPull) / (lowPull - highPull)
    const over = share > low && share < high ? overPlace(search, from, to, share) : null
    if (over === null) break
    const isSameSide = over.onward > 0 === rest.onward > 0
    if (over.onward > 0) {
      ;[low, lowPull] = [share, over.onward]
      if (isSameSide) highPull /= 2
    } else {
      ;[high, highPull] = [share, over.onward]
      if (isSameSide) lowPull /= 2
    }
    rest = over
  }
  return Math.abs(rest.onward) < DRAWN ? rest : null
}

/** A straight piece of the line: the strap over its two ends and where it stays between them. */
interface OverPiece {
  readonly first: OverEdge | null
  readonly last: OverEdge | null
  readonly rests: readonly OverEdge[]
}

/** How far along the next place to look at may be. */
const nextMm = (over: OverEdge | null): number =>
  over === null ? LOOK_MM : Math.max(LOOK_MM, LOOK_SHARE * Math.min(over.backMm, over.reach.pivotMm))

const overPiece = (search: EdgeSearch, from: PlanePointMm, to: PlanePointMm): OverPiece => {
  const rests: OverEdge[] = []
  const lengthMm = planeDistanceMm(from, to)
  const first = overPlace(search, from, to, 0)
  let last = first
  for (let alongMm = 0; alongMm < lengthMm;) {
    const before = { share: alongMm / lengthMm, over: last }
    alongMm = Math.min(lengthMm, alongMm + nextMm(last))
    last = overPlace(search, from, to, alongMm / lengthMm)
    if (before.over === null || last === null || before.over.onward <= 0 || last.onward > 0) continue
    const near = { share: before.share, over: before.over }
    const rest = restBetween(search, from, to, near, { share: alongMm / lengthMm, over: last })
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
