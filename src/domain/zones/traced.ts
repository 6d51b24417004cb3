import type { PlanePointMm } from '../geometry/plane'
import { cosDeg, sinDeg } from '../units/angle'
import { type Cells, REACH_MM } from './cells'
import { ruledCells, type Span } from './ruled'

/** Where the ring of a tracing starts and how much each next look is further out. Our judgement: nothing narrower is drawn. */
const FIRST_LOOK_MM = 10
const NEXT_LOOK = 1.06

/** From any point of the reach box beyond its far corner. */
const LAST_LOOK_MM = 2 * Math.SQRT2 * REACH_MM

const LOOKS: readonly number[] = (() => {
  const looks: number[] = []
  for (let mm = FIRST_LOOK_MM; mm < LAST_LOOK_MM; mm *= NEXT_LOOK) looks.push(mm)
  return [...looks, LAST_LOOK_MM]
})()

/** Stands for a region that could be traced but is not, because the case withholds it. Told by identity; never a region. */
export const WITHHELD: Cells = []

/** Rays of the first look round; boundaries between them are found by halving. */
const RAYS = 120

/** The place between two looks where the answer changes, mm, to 1e-6 mm. */
const change = (isKept: (alongMm: number) => boolean, keptMm: number, brokenMm: number): number => {
  let inMm = keptMm
  let outMm = brokenMm
  while (Math.abs(outMm - inMm) > 1e-6) {
    const middleMm = (inMm + outMm) / 2
    if (isKept(middleMm)) inMm = middleMm
    else outMm = middleMm
  }
  return inMm
}

const spansAlong = (isKept: (alongMm: number) => boolean): readonly Span[] => {
  const spans: Span[] = []
  let fromMm: number | null = null
  let beforeMm: number | null = null
  for (const lookMm of LOOKS) {
    const kept = isKept(lookMm)
    if (kept && fromMm === null) fromMm = beforeMm === null ? lookMm : change(isKept, lookMm, beforeMm)
    if (!kept && fromMm !== null) {
      spans.push({ fromMm, toMm: change(isKept, beforeMm ?? lookMm, lookMm) })
      fromMm = null
    }
    beforeMm = lookMm
  }
  if (fromMm !== null) spans.push({ fromMm, toMm: Infinity })
  return spans
}

/**
 * The region where `isKept` holds, found by looking along rays from `from` and halving to each boundary. The way out for
 * quantities and positions without a straight-line description: slower, corners exact to 1e-6 mm, and nothing nearer than
 * FIRST_LOOK_MM or narrower than 6 % of its distance is promised to be seen.
 */
export const tracedCells = (isKept: (at: PlanePointMm) => boolean, from: PlanePointMm): Cells => {
  const pointAt = (angleDeg: number, alongMm: number): PlanePointMm => ({
    uMm: from.uMm + alongMm * cosDeg(angleDeg),
    vMm: from.vMm + alongMm * sinDeg(angleDeg),
  })
  return ruledCells(
    { pointAt, spansAt: (angleDeg) => spansAlong((alongMm) => isKept(pointAt(angleDeg, alongMm))) },
    0,
    360,
    RAYS,
  )
}
