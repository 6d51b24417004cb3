import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import { crossingShare } from './crossing'
import type { Frontier } from './frontier'
import type { Corner, Triangle } from './lattice'
import { type Limit, marginOf } from './limit'
import type { Answer, SittingField } from './sittingField'

/**
 * What a limit says about a triangle: kept or broken all over, crossed in one line, not to be said before it is halved, or that there
 * is no number anywhere because the strap has no path.
 */
export type Judgement = 'kept' | 'broken' | 'unclear' | 'unknown' | Frontier

/** An answer at a corner, and whether the tubes were looked at for it. */
interface Known extends Answer {
  hasTubes: boolean
}

/** One sitting as the triangles ask it, with all that was asked before: zones, rooms and remedies ask for the same. */
export interface Asked {
  readonly field: SittingField
  /** What was answered at corners, by their ids. */
  readonly answers: Record<Limit['of'], Map<number, Known> | null>
  /** Where limits cross the sides of triangles, by limit and by the two corners: neighbours ask for the same. */
  readonly crossings: Map<Limit, Map<number, PlanePointMm>>
  /** What limits said about triangles. */
  readonly judgements: Map<Limit, Map<Triangle, Judgement>>
}

export const askedOf = (field: SittingField): Asked => ({
  field,
  answers: { strap: null, pair: null },
  crossings: new Map(),
  judgements: new Map(),
})

/** What is answered at a corner; asked once. */
const answerAt = ({ field, answers }: Asked, of: Limit['of'], corner: Corner): Known => {
  const all = (answers[of] ??= new Map<number, Known>())
  const before = all.get(corner.id)
  if (before !== undefined) return before
  const { numbers, run } = field.answerAt(of, corner.at)
  const known = { numbers, run, hasTubes: run === null }
  all.set(corner.id, known)
  return known
}

/** How far a limit is kept at a place. */
export const marginAt = ({ field }: Asked, limit: Limit, at: PlanePointMm): number =>
  field.marginAt(limit, at)

/** The answers at the corners of a triangle and at the middle of its longest side. */
export interface Look {
  readonly asked: Asked
  readonly of: Limit['of']
  readonly corner: Known
  readonly from: Known
  readonly to: Known
  readonly middle: Known
}

export const lookAt = (asked: Asked, of: Limit['of'], { corners, middle }: Triangle): Look => ({
  asked,
  of,
  corner: answerAt(asked, of, corners[0]),
  from: answerAt(asked, of, corners[1]),
  to: answerAt(asked, of, corners[2]),
  middle: answerAt(asked, of, middle),
})

const knownMargin = ({ field }: Asked, limit: Limit, known: Known): number => {
  if (limit.what === 'tubes' && !known.hasTubes) {
    field.addTubes(known)
    known.hasTubes = true
  }
  return marginOf(limit, known.numbers)
}

/** How far a limit is kept at the corners of a triangle and at the middle of its longest side; NaN without a number. */
export interface Margins {
  readonly corner: number
  readonly from: number
  readonly to: number
  readonly middle: number
  /** So many of the four have a number. */
  readonly known: number
  /** Of those that have a number. */
  readonly least: number
  readonly most: number
}

export const marginsOf = ({ asked, corner, from, to, middle }: Look, limit: Limit): Margins => {
  const a = knownMargin(asked, limit, corner)
  const b = knownMargin(asked, limit, from)
  const c = knownMargin(asked, limit, to)
  const d = knownMargin(asked, limit, middle)
  const most = Math.max(a, b, c, d)
  if (!Number.isNaN(most))
    return { corner: a, from: b, to: c, middle: d, known: 4, least: Math.min(a, b, c, d), most }
  const known = [a, b, c, d].filter((margin) => !Number.isNaN(margin))
  const [least, greatest] = [Math.min(...known), Math.max(...known)]
  return { corner: a, from: b, to: c, middle: d, known: known.length, least, most: greatest }
}

const between = (from: PlanePointMm, to: PlanePointMm, share: number): PlanePointMm => ({
  uMm: from.uMm + (to.uMm - from.uMm) * share,
  vMm: from.vMm + (to.vMm - from.vMm) * share,
})

/** Number of corners that a lattice can have at most: what tells two corners apart in one number. */
const MOST_CORNERS = 2 ** 26

/** Where a limit crosses a side of a triangle; found once for both triangles that share it. */
export const crossingOn = (asked: Asked, limit: Limit, one: Corner, other: Corner): PlanePointMm => {
  const [from, to] = one.id < other.id ? [one, other] : [other, one]
  const known = asked.crossings.get(limit) ?? new Map<number, PlanePointMm>()
  asked.crossings.set(limit, known)
  const key = from.id * MOST_CORNERS + to.id
  const found = known.get(key)
  if (found !== undefined) return found
  const share = crossingShare(
    (at) => marginAt(asked, limit, between(from.at, to.at, at)),
    knownMargin(asked, limit, answerAt(asked, limit.of, from)),
    knownMargin(asked, limit, answerAt(asked, limit.of, to)),
    limit.crossingMm / planeDistanceMm(from.at, to.at),
  )
  const at = between(from.at, to.at, share)
  known.set(key, at)
  return at
}
