import { LIMIT_TOLERANCE } from '../../rules/check'
import type { QuantityId } from '../../straps/quantity'
import { sinDeg } from '../../units/angle'
import type { Place } from '../document/layout'
import type { Sitting } from './evaluation'
import { type SeatLattice, sittingAt } from './sittings'
import type { SolvedSitting } from './solvedSittings'

/** A way of the seat: how far it slides, mm ≥ 0, and how far its back turns, degrees ≥ 0. */
export interface Step {
  readonly slideMm: number
  readonly reclineDeg: number
}

/** The search ends where steps of this size lead nowhere worse. Our judgement: nobody sets a seat closer. */
const FINEST: Step = { slideMm: 1, reclineDeg: 0.1 }

/** How far from the hip point what turns with the back can be, mm. Our judgement: the helmet and the shoulder of a tall man. */
const TURNING_MM = { helmet: 900, strap: 650 }

/** Distances of something that moves with the seat or the back to what stands still. */
export const isClearance = (quantity: QuantityId): boolean =>
  quantity === 'tube-clearance' ||
  quantity === 'helmet-clearance' ||
  quantity === 'body-clearance' ||
  quantity === 'adjuster-clearance'

const longestGap = (values: readonly number[]): number =>
  values.reduce((longest, value, index) => Math.max(longest, value - (values[index - 1] ?? value)), 0)

/** The longest way from a position midway between others of a lattice to one of them. */
export const stepsOf = ({ slidesMm, reclinesDeg }: SeatLattice): Step => ({
  slideMm: longestGap(slidesMm) / 2,
  reclineDeg: longestGap(reclinesDeg) / 2,
})

/**
 * By how much a number bends over three positions in a row, the second and third so far from the first: 0 where it is straight, more
 * where it is worse in the middle than a straight line would have it. 0 too where one of them has no number.
 */
export const bendOf = (
  [a, b, c]: readonly [number, number, number],
  [middle, end]: readonly [number, number],
): number => {
  const slopes = (c - b) / (end - middle) - (b - a) / middle
  const bend = slopes * Math.max(middle, end - middle)
  return bend > 0 && Number.isFinite(bend) ? bend : 0
}

/**
 * By how much a number may be worse somewhere within a step of a position, by how much it bends over the positions about it: by no more
 * than that where it is straight but for one kink, and by an eighth of it where it is a parabola (derived here). A
 * distance lessens at most by as far as the seat slides and a head moves as the back turns. For the helmet that is so; for straps,
 * whose other end stays, it is our judgement.
 */
export const hiddenAbout = (quantity: QuantityId, bend: number, step: Step): number => {
  if (!isClearance(quantity)) return bend
  const turningMm = quantity === 'helmet-clearance' ? TURNING_MM.helmet : TURNING_MM.strap
  return Math.max(bend, step.slideMm + 2 * turningMm * sinDeg(step.reclineDeg / 2))
}

/** What is searched, and how well it does: how far inside its limits its number lies, NaN without a number. */
export interface SeatSearch {
  readonly place: Place
  readonly positions: SeatLattice
  readonly step: Step
  readonly quantity: QuantityId
  readonly solve: (sitting: Sitting) => SolvedSitting
  readonly marginOf: (at: SolvedSitting) => number
}

interface Found {
  readonly at: SolvedSitting
  readonly margin: number
}

/** A rounded value inside a range of values in order; never −0. */
const held = (value: number, values: readonly number[], digits: number): number =>
  Math.min(values.at(-1) ?? value, Math.max(values[0] ?? value, Number(value.toFixed(digits)))) + 0

/** The four positions a step away that a seat can take. */
const around = ({ place, positions }: SeatSearch, { sitting }: SolvedSitting, step: Step): Sitting[] => {
  const { slideMm, reclineDeg, occupantId } = sitting
  const { slidesMm, reclinesDeg } = positions
  const slides = [slideMm + step.slideMm, slideMm - step.slideMm].map((each) => held(each, slidesMm, 0))
  const reclines = [reclineDeg + step.reclineDeg, reclineDeg - step.reclineDeg].map((each) =>
    held(each, reclinesDeg, 1),
  )
  return [
    ...slides
      .filter((each) => each !== slideMm)
      .map((each) => sittingAt(place, occupantId, each, reclineDeg)),
    ...reclines
      .filter((each) => each !== reclineDeg)
      .map((each) => sittingAt(place, occupantId, slideMm, each)),
  ]
}

/** The worst of a position and those a step away, and by how much better those are all together: as much as the number bends there. */
const worstWithin = (
  search: SeatSearch,
  from: Found,
  step: Step,
): { readonly found: Found; readonly bend: number } => {
  let found = from
  let bend = 0
  for (const sitting of around(search, from.at, step)) {
    const at = search.solve(sitting)
    const margin = search.marginOf(at)
    if (Number.isFinite(margin)) bend += Math.max(0, margin - from.margin)
    if (margin < found.margin - LIMIT_TOLERANCE) found = { at, margin }
  }
  return { found, bend }
}

const half = ({ slideMm, reclineDeg }: Step): Step => ({
  slideMm: Math.max(FINEST.slideMm, Math.ceil(slideMm / 2)),
  reclineDeg: Math.max(FINEST.reclineDeg, reclineDeg / 2),
})

const isFinest = ({ slideMm, reclineDeg }: Step): boolean =>
  slideMm <= FINEST.slideMm && reclineDeg <= FINEST.reclineDeg

/**
 * The worst position about one: steps to all sides as long as that is worse, then half as long ones, down to 1 mm and 0.1°; or the
 * best known so far as soon as nothing within the next step can break the limit.
 */
export const worstAbout = (search: SeatSearch, start: SolvedSitting): Found => {
  let best: Found = { at: start, margin: search.marginOf(start) }
  let step = half({ slideMm: 2 * search.step.slideMm, reclineDeg: 2 * search.step.reclineDeg })
  for (;;) {
    const { found, bend } = worstWithin(search, best, step)
    const isWorse = found !== best
    best = found
    if (isWorse) continue
    if (isFinest(step) || best.margin - hiddenAbout(search.quantity, bend, step) >= 0) return best
    step = half(step)
  }
}
