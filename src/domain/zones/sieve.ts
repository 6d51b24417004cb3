import { oppositeHalfPlane, outsideMm } from '../geometry/halfPlane'
import type { HalfPlane, Region } from '../geometry/polygon'
import { regionArea, regionClipped } from '../geometry/region'
import { type Frontier, onKeptSide } from './frontier'
import { type Asked, judged, judgedAtOnce, type Matters } from './judge'
import { type Focus, isFineEnough, type Lattice, type Triangle, trianglePolygon } from './lattice'
import { isPathLimit, type Limit } from './limit'

/** What is left of a triangle: convex pieces, or what is left of its halves. */
interface Left {
  readonly triangle: Triangle
  readonly pieces: Region
  /** Nothing of it is cut away. */
  readonly isWhole: boolean
  readonly halves: readonly [Left | null, Left | null] | null
}

/** A part of the drawn plane from which one sitting after another takes away what breaks its limits. */
export type Sieve = readonly Left[]

const leftOf = (triangle: Triangle, pieces: Region): Left | null => {
  if (pieces.length === 0) return null
  // Half of the product of the two legs.
  const wholeMm2 = triangle.acrossMm ** 2 / 4
  const isWhole = regionArea(pieces) >= wholeMm2 * (1 - 1e-12)
  return { triangle, pieces: isWhole ? [trianglePolygon(triangle)] : pieces, isWhole, halves: null }
}

/** The whole of a lattice inside a convex box. */
export const sieveOf = ({ roots }: Lattice, box: readonly HalfPlane[]): Sieve =>
  roots.flatMap((triangle) => leftOf(triangle, regionClipped([trianglePolygon(triangle)], box)) ?? [])

/** The line that halves a triangle; the first half is on its kept side. */
const halvingLine = ({ corners: [corner], middle }: Triangle): HalfPlane => {
  const lengthMm = Math.hypot(middle.at.uMm - corner.at.uMm, middle.at.vMm - corner.at.vMm)
  const nu = (corner.at.vMm - middle.at.vMm) / lengthMm
  const nv = (middle.at.uMm - corner.at.uMm) / lengthMm
  return { nu, nv, offsetMm: nu * corner.at.uMm + nv * corner.at.vMm }
}

const halvesOf = ({ triangle, pieces, isWhole }: Left): Left['halves'] => {
  const [first, last] = triangle.halves()
  if (isWhole) return [leftOf(first, [trianglePolygon(first)]), leftOf(last, [trianglePolygon(last)])]
  const line = halvingLine(triangle)
  return [
    leftOf(first, regionClipped(pieces, [line])),
    leftOf(last, regionClipped(pieces, [oppositeHalfPlane(line)])),
  ]
}

/** What is left on the kept side of a frontier. */
const cut = (left: Left, frontier: Frontier): Left | null => {
  if (left.halves !== null) {
    const [first, last] = left.halves
    const halves = [first && cut(first, frontier), last && cut(last, frontier)] as const
    return halves[0] === null && halves[1] === null ? null : { ...left, halves }
  }
  const pieces = onKeptSide(left.pieces, frontier)
  if (pieces === left.pieces) return left
  return pieces.length === 0 ? null : { ...left, pieces, isWhole: false }
}

const isBeyond = ({ pieces, halves }: Left, inside: HalfPlane, asideMm: number): boolean =>
  halves === null
    ? pieces.every((piece) => piece.every((corner) => outsideMm(inside, corner) <= -asideMm))
    : halves.every((half) => half === null || isBeyond(half, inside, asideMm))

/** A limit matters unless everything that is left lies on its kept side. */
const mattersTo =
  (left: Left): Matters =>
  (inside, asideMm) =>
    !isBeyond(left, inside, asideMm)

/** What one sitting leaves of a sieve. */
export const sifted = (
  sieve: Sieve,
  limits: readonly Limit[],
  asked: Asked,
  foci: readonly Focus[],
): Sieve => {
  const inHalves = (left: Left, active: readonly Limit[]): Left | null => {
    const [first, last] = left.halves ?? halvesOf(left) ?? [null, null]
    const halves = [first && restOf(first, active), last && restOf(last, active)] as const
    return halves[0] === null && halves[1] === null ? null : { ...left, halves }
  }
  const restOf = (left: Left, active: readonly Limit[]): Left | null => {
    const { triangle } = left
    if (!isFineEnough(triangle, foci)) return inHalves(left, active)
    const open: Limit[] = []
    for (const limit of active) {
      const judgement = judgedAtOnce(asked, limit, triangle)
      if (judgement === 'broken') return null
      if (judgement === null) open.push(limit)
    }
    const unclear: Limit[] = []
    let rest: Left = left
    for (const limit of open) {
      const judgement = judged(asked, limit, triangle, mattersTo(rest))
      if (judgement === 'broken') return null
      // Without a path there is nothing to say, unless it is not yet said where that ends.
      if (judgement === 'unclear' || (judgement === 'unknown' && unclear.some(isPathLimit)))
        unclear.push(limit)
      else if (typeof judgement !== 'string') {
        const inside = cut(rest, judgement)
        if (inside === null) return null
        rest = inside
      }
    }
    return unclear.length === 0 ? rest : inHalves(rest, unclear)
  }
  return limits.length === 0 ? sieve : sieve.flatMap((left) => restOf(left, limits) ?? [])
}

interface Gathered {
  readonly isWhole: boolean
  readonly pieces: Region
}

const gathered = ({ triangle, pieces, isWhole, halves }: Left): Gathered => {
  if (halves === null) return { isWhole, pieces }
  const [first, last] = halves.map((half) => half && gathered(half))
  if (first?.isWhole && last?.isWhole) return { isWhole: true, pieces: [trianglePolygon(triangle)] }
  return { isWhole: false, pieces: [...(first?.pieces ?? []), ...(last?.pieces ?? [])] }
}

/** What is left as convex pieces; halves of which nothing is cut away are one piece again. */
export const regionOfSieve = (sieve: Sieve): Region => sieve.flatMap((left) => gathered(left).pieces)
