import type { Layout, Place } from '../document/layout'
import type { Sitting } from './evaluation'
import { type Step, stepsOf } from './seatSearch'
import { latticeSittings, seatLattice, type SeatLattice, sittingAt } from './sittings'
import type { SolvedSitting } from './solvedSittings'

/** Every occupant in positions that lie close together, solved. */
export interface SeatedLattice {
  readonly place: Place
  readonly positions: SeatLattice
  readonly step: Step
  /**
   * The positions of the lattice, those of one occupant by slide, then by recline; after them those on both sides of where a strap
   * starts or stops to touch something on the way from one to the next.
   */
  readonly all: readonly SolvedSitting[]
  /** What lies about each position of the lattice, of the same person. */
  readonly about: readonly Surroundings[]
  /** Where in `all` the sittings are that a place always has. */
  readonly listed: readonly number[]
  readonly solve: (sitting: Sitting) => SolvedSitting
}

/** Three positions in a row along the slide or along the recline, and how far the second and third are from the first. */
interface ThreeInARow {
  readonly indexes: readonly [number, number, number]
  readonly at: readonly [number, number]
}

/** The positions next to one, and the three in a row that hold it along each way: in their middle, or at an end where it is the last. */
interface Surroundings {
  readonly beside: readonly number[]
  readonly rows: readonly ThreeInARow[]
}

/** Along one way: `at` is the position's place among its values, `stride` the distance in the list from one to the next. */
const along = (index: number, at: number, stride: number, values: readonly number[]): Surroundings => {
  const first = index - stride * (at === 0 ? 0 : at === values.length - 1 ? 2 : 1)
  const start = at === 0 ? 0 : at === values.length - 1 ? at - 2 : at - 1
  const [from, middle, to] = values.slice(Math.max(0, start), start + 3)
  const isRow = values.length > 2 && from !== undefined && middle !== undefined && to !== undefined
  return {
    beside: [...(at > 0 ? [index - stride] : []), ...(at < values.length - 1 ? [index + stride] : [])],
    rows: isRow
      ? [{ indexes: [first, first + stride, first + 2 * stride], at: [middle - from, to - from] }]
      : [],
  }
}

const surroundings = (count: number, { slidesMm, reclinesDeg }: SeatLattice): readonly Surroundings[] =>
  Array.from({ length: count }, (_, index) => {
    const columns = reclinesDeg.length
    const bySlide = along(index, Math.floor(index / columns) % slidesMm.length, columns, slidesMm)
    const byRecline = along(index, index % columns, 1, reclinesDeg)
    return {
      beside: [...bySlide.beside, ...byRecline.beside],
      rows: [...bySlide.rows, ...byRecline.rows],
    }
  })

/**
 * What the straps touch before the body in a sitting, and what keeps those without a path from it, as one text to compare. On to the
 * body and off it they run by tangent: nothing jumps there.
 */
const touchingText = ({ solved: { paths, problems } }: SolvedSitting): string => {
  let text = ''
  for (const { strap, contacts } of paths) {
    text += strap
    for (const { on } of contacts) if (on !== 'body' && on !== 'buckle') text += on
  }
  for (const { strap, kind } of problems) text += strap + kind
  return text
}

/** Where straps start or stop to touch something is found to this. Our judgement: hardly anybody sets a seat closer. */
const FOUND = { slideMm: 4, reclineDeg: 0.4 }

const middleOf = (
  place: Place,
  { sitting: a }: SolvedSitting,
  { sitting: b }: SolvedSitting,
): Sitting | null => {
  const isClose =
    Math.abs(a.slideMm - b.slideMm) <= FOUND.slideMm &&
    Math.abs(a.reclineDeg - b.reclineDeg) <= FOUND.reclineDeg
  if (isClose) return null
  const slideMm = a.slideMm === b.slideMm ? a.slideMm : Math.round((a.slideMm + b.slideMm) / 2) + 0
  const reclineDeg =
    a.reclineDeg === b.reclineDeg ? a.reclineDeg : Number(((a.reclineDeg + b.reclineDeg) / 2).toFixed(1))
  return sittingAt(place, a.occupantId, slideMm, reclineDeg)
}

/**
 * The positions between two in which straps touch other things, down to some 4 mm and 0.4° on both sides of where that changes: there
 * numbers have kinks and straps can lose their path.
 */
const changesBetween = (
  place: Place,
  from: SolvedSitting,
  to: SolvedSitting,
  solve: SeatedLattice['solve'],
): readonly SolvedSitting[] => {
  if (touchingText(from) === touchingText(to)) return []
  const middle = middleOf(place, from, to)
  if (middle === null) return []
  const between = solve(middle)
  return [
    ...changesBetween(place, from, between, solve),
    between,
    ...changesBetween(place, between, to, solve),
  ]
}

/** Solves everybody in every position of the lattice; what is solved already is not solved again. */
export const seatedLattice = (
  layout: Layout,
  place: Place,
  listed: readonly SolvedSitting[],
  solve: (sitting: Sitting) => SolvedSitting,
): SeatedLattice => {
  const known = new Map(listed.map((each) => [each.sitting.id, each]))
  const solveOnce = (sitting: Sitting): SolvedSitting => {
    const found = known.get(sitting.id) ?? solve(sitting)
    known.set(sitting.id, found)
    return found
  }
  const positions = seatLattice(layout, place)
  const regular = latticeSittings(layout, place).map(solveOnce)
  const about = surroundings(regular.length, positions)
  const always = new Set(listed)
  const slides = new Set(listed.map(({ sitting }) => sitting.slideMm))
  const reclines = new Set(listed.map(({ sitting }) => sitting.reclineDeg))
  /** Along the ways that pass through positions that a place always has: all of them where only the seat or only its back moves. */
  const isLookedAlong = ({ sitting: a }: SolvedSitting, { sitting: b }: SolvedSitting): boolean =>
    a.slideMm === b.slideMm ? slides.has(a.slideMm) : reclines.has(a.reclineDeg)
  const changes = regular.flatMap((from, index) =>
    (about[index]?.beside ?? []).flatMap((other) => {
      const to = regular[other]
      const isFirst = to !== undefined && other > index
      return isFirst && isLookedAlong(from, to) ? changesBetween(place, from, to, solveOnce) : []
    }),
  )
  return {
    place,
    positions,
    step: stepsOf(positions),
    all: [...regular, ...changes],
    about,
    listed: regular.flatMap((each, index) => (always.has(each) ? [index] : [])),
    solve: solveOnce,
  }
}
