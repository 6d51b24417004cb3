import { planeDistanceMm, type PlanePointMm } from '../geometry/plane'
import { oppositeHalfPlane, outsideMm } from '../geometry/halfPlane'
import type { HalfPlane, Region } from '../geometry/polygon'
import { regionClipped } from '../geometry/region'
import { crossingShare } from './crossing'

/** How far a limit is kept at a place; < 0 broken, −Infinity without a number. */
export type MarginAt = (at: PlanePointMm) => number

type Chord = readonly [PlanePointMm, PlanePointMm]

/** The line in which a limit is crossed inside a triangle, as chords from one of its sides to another. */
export interface Frontier {
  readonly points: readonly PlanePointMm[]
  /** Whether the limit is kept on the left of the way from the first point to the last. */
  readonly isKeptLeft: boolean
}

/** Points between the sides of a triangle are found to this, of what a chord may be off. */
const POINT_SHARE = 1e-2

/** A first estimate within this share of what a chord may be off says that it is near enough. */
const SURE_SHARE = 0.7

/** Chords of this many times what they may be off are not halved: at a corner of the limit they cut off less than that. */
const LEAST_CHORDS = 1.5

/** How far beside the middle of a chord the limit may lie, as a share of the chord; beyond it is no line from end to end. */
const WIDEST_SHARE = 0.4

/** The half-plane on the right of a way, less what is on its left when that is kept. */
export const chordLine = (from: PlanePointMm, to: PlanePointMm, isKeptLeft: boolean): HalfPlane => {
  const lengthMm = planeDistanceMm(from, to)
  const out = isKeptLeft ? 1 : -1
  const nu = (out * (to.vMm - from.vMm)) / lengthMm
  const nv = (out * (from.uMm - to.uMm)) / lengthMm
  return { nu, nv, offsetMm: nu * from.uMm + nv * from.vMm }
}

/** A line square to a chord through its middle, and how steeply the margin was last seen to fall along such a line, per mm; 0: not seen. */
interface Beside {
  readonly marginAt: (outMm: number) => number
  readonly atOf: (outMm: number) => PlanePointMm
  readonly widestMm: number
  /** What a chord may be off. */
  readonly chordMm: number
  readonly fallPerMm: number
}

/** A place where the limit crosses such a line, and how steeply. */
interface Crossed {
  readonly outMm: number
  readonly fallPerMm: number
}

const besideOf = (
  marginAt: MarginAt,
  [from, to]: Chord,
  isKeptLeft: boolean,
  chordMm: number,
  fallPerMm: number,
): Beside => {
  const { nu, nv } = chordLine(from, to, isKeptLeft)
  const middle = { uMm: (from.uMm + to.uMm) / 2, vMm: (from.vMm + to.vMm) / 2 }
  const atOf = (mm: number): PlanePointMm => ({ uMm: middle.uMm + mm * nu, vMm: middle.vMm + mm * nv })
  const widestMm = WIDEST_SHARE * planeDistanceMm(from, to)
  return { marginAt: (outMm) => marginAt(atOf(outMm)), atOf, widestMm, chordMm, fallPerMm }
}

/** Between a kept and a broken place. The slope is that of the side that has a measure. */
const crossedBetween = (
  { marginAt, chordMm }: Beside,
  kept: { readonly mm: number; readonly margin: number },
  broken: { readonly mm: number; readonly margin: number },
): Crossed => {
  const at = (share: number): number => kept.mm + share * (broken.mm - kept.mm)
  const toShare = (POINT_SHARE * chordMm) / Math.abs(broken.mm - kept.mm)
  const outMm = at(crossingShare((share) => marginAt(at(share)), kept.margin, broken.margin, toShare))
  const fall = Number.isFinite(kept.margin)
    ? (kept.margin - broken.margin) / (broken.mm - kept.mm)
    : -broken.margin / (broken.mm - outMm)
  return { outMm, fallPerMm: Number.isFinite(fall) && fall > 0 ? fall : 0 }
}

/** By following the slope seen last: two or three looks where the margin is smooth; null where it is not. */
const crossedSmoothly = (beside: Beside, here: number): Crossed | null => {
  const { marginAt, widestMm, chordMm, fallPerMm } = beside
  if (fallPerMm <= 0 || !Number.isFinite(here)) return null
  let [outMm, margin, fall] = [0, here, fallPerMm]
  for (let step = 0; step < 4; step += 1) {
    const moveMm = margin / fall
    if (Math.abs(moveMm) <= POINT_SHARE * chordMm || (step === 0 && Math.abs(moveMm) <= SURE_SHARE * chordMm))
      return { outMm: outMm + moveMm, fallPerMm: fall }
    const nextMm = outMm + moveMm
    if (Math.abs(nextMm) > widestMm) return null
    const next = marginAt(nextMm)
    if (next === Infinity) return crossedBetween(beside, { mm: nextMm, margin: next }, { mm: outMm, margin })
    fall = (margin - next) / moveMm
    if (!(fall > 0) || !Number.isFinite(fall)) return null
    outMm = nextMm
    margin = next
  }
  return null
}

/** By looking further and further to the side where the other answer must be, then between the last two looks. */
const crossedByLooking = (beside: Beside, here: number): Crossed | null => {
  const { marginAt, widestMm, chordMm } = beside
  const towards = here >= 0 ? 1 : -1
  let inner = { mm: 0, margin: here }
  for (let lookMm = chordMm; ; lookMm *= 8) {
    const mm = towards * Math.min(lookMm, widestMm)
    const outer = { mm, margin: marginAt(mm) }
    if (outer.margin >= 0 !== here >= 0) {
      const fall = (inner.margin - outer.margin) / (mm - inner.mm)
      if (Math.abs(mm) <= chordMm)
        return { outMm: 0, fallPerMm: Number.isFinite(fall) && fall > 0 ? fall : 0 }
      return here >= 0 ? crossedBetween(beside, inner, outer) : crossedBetween(beside, outer, inner)
    }
    if (lookMm >= widestMm) return null
    inner = outer
  }
}

/**
 * The limit between two places on it as chords, each halved until it is near enough; null where the limit is no plain line
 * between them.
 */
export const frontierBetween = (
  marginAt: MarginAt,
  [from, to]: Chord,
  isKeptLeft: boolean,
  chordMm: number,
): Frontier | null => {
  const points = [from]
  const goOn = (start: PlanePointMm, end: PlanePointMm, fallPerMm: number): boolean => {
    if (planeDistanceMm(start, end) > LEAST_CHORDS * chordMm) {
      const beside = besideOf(marginAt, [start, end], isKeptLeft, chordMm, fallPerMm)
      const here = beside.marginAt(0)
      const crossed = crossedSmoothly(beside, here) ?? crossedByLooking(beside, here)
      if (crossed === null) return false
      if (Math.abs(crossed.outMm) > chordMm) {
        const middle = beside.atOf(crossed.outMm)
        return goOn(start, middle, crossed.fallPerMm) && goOn(middle, end, crossed.fallPerMm)
      }
    }
    points.push(end)
    return true
  }
  return goOn(from, to, 0) ? { points, isKeptLeft } : null
}

/** Whether a place lies on the kept side of a frontier, or null within `offMm` of it; the frontier goes on straight at its ends. */
export const isOnKeptSide = (
  { points, isKeptLeft }: Frontier,
  at: PlanePointMm,
  offMm: number,
): boolean | null => {
  const first = points[0]
  const last = points.at(-1)
  if (first === undefined || last === undefined) return null
  const lengthSq = planeDistanceMm(first, last) ** 2
  const along = (point: PlanePointMm): number =>
    ((point.uMm - first.uMm) * (last.uMm - first.uMm) + (point.vMm - first.vMm) * (last.vMm - first.vMm)) /
    lengthSq
  const share = along(at)
  const index = Math.max(
    1,
    points.findIndex((point) => along(point) >= share),
  )
  const end = share > 1 ? last : (points[index] ?? last)
  const start = share > 1 ? (points.at(-2) ?? first) : (points[index - 1] ?? first)
  const line = chordLine(start, end, isKeptLeft)
  const outMm = outsideMm(line, at)
  return Math.abs(outMm) <= offMm ? null : outMm < 0
}

/** The line square to a frontier's whole way through one of its points; its kept side is toward the frontier's start. */
const squareThrough = (point: PlanePointMm, first: PlanePointMm, last: PlanePointMm): HalfPlane => {
  const lengthMm = planeDistanceMm(first, last)
  const nu = (last.uMm - first.uMm) / lengthMm
  const nv = (last.vMm - first.vMm) / lengthMm
  return { nu, nv, offsetMm: nu * point.uMm + nv * point.vMm }
}

/** Whether the kept side bulges at every corner of a frontier, so that it is the overlap of the chords' half-planes. */
const isBulging = (points: readonly PlanePointMm[], lines: readonly HalfPlane[]): boolean =>
  lines.every((line, index) => {
    const [before, after] = [points[index - 1], points[index + 2]]
    return (
      (before === undefined || outsideMm(line, before) <= 0) &&
      (after === undefined || outsideMm(line, after) <= 0)
    )
  })

/**
 * The part of some convex pieces on the kept side of a frontier: the same list when nothing is cut away. Where the frontier is
 * hollow the pieces are first cut in strips, one for each chord; it never turns back.
 */
export const onKeptSide = (pieces: Region, { points, isKeptLeft }: Frontier): Region => {
  const [first, last] = [points[0], points.at(-1)]
  if (first === undefined || last === undefined) return pieces
  const lines = points.slice(1).map((point, index) => chordLine(points[index] ?? first, point, isKeptLeft))
  if (pieces.every((piece) => piece.every((corner) => lines.every((line) => outsideMm(line, corner) <= 0))))
    return pieces
  if (isBulging(points, lines)) return regionClipped(pieces, lines)
  return lines.flatMap((line, index) => {
    const [from, to] = [points[index] ?? first, points[index + 1] ?? last]
    return regionClipped(pieces, [
      ...(index === 0 ? [] : [oppositeHalfPlane(squareThrough(from, first, last))]),
      ...(index === lines.length - 1 ? [] : [squareThrough(to, first, last)]),
      line,
    ])
  })
}
