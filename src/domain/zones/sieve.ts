import { oppositeHalfPlane, outsideMm } from '../geometry/halfPlane'
import type { PlanePointMm } from '../geometry/plane'
import type { HalfPlane, Region } from '../geometry/polygon'
import { regionArea, regionClipped, regionDistanceMm } from '../geometry/region'
import { type Asked, type Look, lookAt } from './asked'
import { type Demand, readIn } from './evenRun'
import { judged, type Matters } from './follow'
import { type Frontier, onKeptSide } from './frontier'
import { judgedAtOnce, keptOnAverage, type Part, PARTLY_MM } from './judge'
import { type Focus, isFineEnough, type Lattice, type Triangle, trianglePolygon } from './lattice'
import { STRAP_PATH } from './limit'

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

/** The corners of what is left. */
const cornersOf =
  ({ pieces, halves }: Left): Part =>
  (visit) => {
    if (halves === null) for (const piece of pieces) for (const corner of piece) visit(corner)
    else for (const half of halves) if (half !== null) cornersOf(half)(visit)
  }

/** What is open in a triangle, and how well it is kept there; null where some place has no number. */
interface Open extends Demand {
  readonly look: Look
  readonly kept: number | null
}

/** In this order open demands are followed: what is cheap to follow comes first, and of that what takes most away. */
const stageOf = ({ limit: { what }, kept }: Open): number => {
  if (kept !== null) return what === 'tubes' ? 1 : 0
  return what === 'path' ? 3 : 2
}

const inOrder = (open: readonly Open[]): readonly Open[] =>
  open.toSorted((a, b) => stageOf(a) - stageOf(b) || (a.kept ?? 0) - (b.kept ?? 0))

const hasOpenPath = (open: readonly Demand[], asked: Asked): boolean =>
  open.some((each) => each.asked === asked && each.limit.what === 'path')

/** What is left of a triangle is clear of the edge of the path when that is this share of its longest side away. */
const INSIDE_SHARE = 0.1

/**
 * Whether a demand is to be judged in the halves: some place of the triangle has no number because the strap has no path there, and
 * where that ends is not yet known well enough, or is none of what is left.
 */
const waits = ({ limit, look, kept }: Open, rest: Left, unclear: readonly Demand[]): boolean => {
  const { triangle } = rest
  if (triangle.acrossMm <= limit.leastMm || kept !== null) return false
  if (limit.what === 'path') return unclear.length > 0 && triangle.acrossMm > PARTLY_MM
  if (limit.of === 'pair' || keptOnAverage(look, STRAP_PATH) === null) return triangle.acrossMm > PARTLY_MM
  const inside = { ...STRAP_PATH, bound: INSIDE_SHARE * triangle.acrossMm }
  return judgedAtOnce(look, inside, triangle, cornersOf(rest)) === 'kept'
}

/** A search for what is left nearest to a place: what lies farther than what was found is not sifted. */
interface Nearest {
  readonly from: PlanePointMm
  bestMm: number
}

const awayMm = ({ pieces, halves }: Left, from: PlanePointMm): number =>
  halves === null
    ? regionDistanceMm(pieces, from)
    : Math.min(...halves.map((half) => (half === null ? Infinity : awayMm(half, from))))

/** Demands take away what breaks them, of one triangle after another. */
class Sifting {
  /** What took a triangle away last is likely to take its neighbour. */
  private taker: Demand | null = null

  private readonly foci: readonly Focus[]
  private readonly nearest: Nearest | null

  constructor(foci: readonly Focus[], nearest: Nearest | null) {
    this.foci = foci
    this.nearest = nearest
  }

  /** What is left of each; in a search near ones come first. */
  restOfEach<Some extends Left | null>(all: readonly Some[], active: readonly Demand[]): (Left | null)[] {
    const { nearest } = this
    if (nearest === null) return all.map((each) => each && this.restOf(each, active))
    const rests: (Left | null)[] = all.map(() => null)
    const order = all
      .map((each, index) => ({ each, index, mm: each === null ? Infinity : awayMm(each, nearest.from) }))
      .toSorted((a, b) => a.mm - b.mm)
    for (const { each, index, mm } of order)
      if (each !== null && mm < nearest.bestMm) rests[index] = this.restOf(each, active)
    return rests
  }

  private inHalves(left: Left, active: readonly Demand[]): Left | null {
    const [first = null, last = null] = this.restOfEach(left.halves ?? halvesOf(left) ?? [], active)
    return first === null && last === null ? null : { ...left, halves: [first, last] }
  }

  private found(rest: Left): Left {
    const { nearest } = this
    if (nearest !== null) nearest.bestMm = Math.min(nearest.bestMm, awayMm(rest, nearest.from))
    return rest
  }

  private isTaken({ triangle }: Left, part: Part | null): boolean {
    if (this.taker === null) return false
    const { asked, limit } = this.taker
    return judgedAtOnce(lookAt(asked, limit.of, triangle), limit, triangle, part) === 'broken'
  }

  /** What is still open in what is left of a triangle; null: nothing is left of it. */
  private openIn(left: Left, active: readonly Demand[]): readonly Open[] | null {
    const { triangle } = left
    const part = left.isWhole ? null : cornersOf(left)
    if (this.isTaken(left, part)) return null
    const open: Open[] = []
    let look: Look | null = null
    for (const each of active) {
      const demand = readIn(each, triangle)
      if (demand === 'kept') continue
      const { asked, limit } = demand
      if (look === null || look.asked !== asked || look.of !== limit.of)
        look = lookAt(asked, limit.of, triangle)
      const judgement = judgedAtOnce(look, limit, triangle, part)
      if (judgement === 'broken') {
        this.taker = demand
        return null
      }
      if (judgement === null) open.push({ asked, limit, look, kept: keptOnAverage(look, limit) })
    }
    return open
  }

  restOf(left: Left, active: readonly Demand[]): Left | null {
    const { triangle } = left
    if (!isFineEnough(triangle, this.foci)) return this.inHalves(left, active)
    const open = this.openIn(left, active)
    if (open === null) return null
    const unclear: Demand[] = []
    const unknown: Demand[] = []
    let rest: Left = left
    for (const demand of inOrder(open)) {
      const { asked, limit, look } = demand
      // What is cut away already may have been all that was open.
      const now = rest === left ? null : judgedAtOnce(look, limit, triangle, cornersOf(rest))
      if (now === 'broken') return null
      if (now === 'kept') continue
      const judgement = waits(demand, rest, unclear)
        ? 'unclear'
        : judged(asked, limit, triangle, mattersTo(rest))
      if (judgement === 'broken') return null
      if (judgement === 'unclear') unclear.push(demand)
      else if (judgement === 'unknown') unknown.push(demand)
      else if (typeof judgement !== 'string') {
        const inside = cut(rest, judgement)
        if (inside === null) return null
        rest = inside
      }
    }
    // Without a path there is nothing to say, unless it is not yet said where that ends.
    unclear.push(...unknown.filter(({ asked }) => hasOpenPath(unclear, asked)))
    return unclear.length === 0 ? this.found(rest) : this.inHalves(rest, unclear)
  }
}

/** What some demands leave of a sieve. */
export const sifted = (sieve: Sieve, demands: readonly Demand[], foci: readonly Focus[]): Sieve =>
  demands.length === 0
    ? sieve
    : new Sifting(foci, null).restOfEach(sieve, demands).flatMap((rest) => rest ?? [])

/** How far from a place the nearest of what some demands leave of a sieve is, mm; Infinity when nothing is left. */
export const nearestLeftMm = (
  sieve: Sieve,
  demands: readonly Demand[],
  foci: readonly Focus[],
  from: PlanePointMm,
): number => {
  const nearest: Nearest = { from, bestMm: Infinity }
  new Sifting(foci, nearest).restOfEach(sieve, demands)
  return nearest.bestMm
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
