import type { PlanePointMm } from '../geometry/plane'
import { type StraightRun, type TubePiece, tubeRoom } from '../straps/tubePieces'
import { type Asked, askedOf, lookAt } from './asked'
import type { Triangle } from './lattice'
import { type Limit, ONLY_INDEX, TUBE_INDEX } from './limit'

/**
 * Where the straight pieces of a strap are at the middle of a triangle's longest side as near as this to half way between those at its
 * ends, they are read anywhere in the triangle from those at its corners, mm. Our judgement: the edge of a tube's shadow is then
 * as near as the webbing's own place is known.
 */
const EVEN_MM = 0.1

/** Runs at the three corners of a triangle. */
type Runs = readonly [StraightRun, StraightRun, StraightRun]

const isHalfWay = (middle: StraightRun, from: StraightRun, to: StraightRun): boolean =>
  middle.touching === from.touching &&
  middle.touching === to.touching &&
  middle.ends.every(
    (end, index) => Math.abs(end - ((from.ends[index] ?? NaN) + (to.ends[index] ?? NaN)) / 2) <= EVEN_MM,
  )

/** The run read at a place of a triangle. */
const runAt = (
  { corners: [corner, from, to] }: Triangle,
  [a, b, c]: Runs,
  { uMm, vMm }: PlanePointMm,
): StraightRun => {
  const fu = from.at.uMm - corner.at.uMm
  const fv = from.at.vMm - corner.at.vMm
  const tu = to.at.uMm - corner.at.uMm
  const tv = to.at.vMm - corner.at.vMm
  const u = uMm - corner.at.uMm
  const v = vMm - corner.at.vMm
  // The legs are square to each other.
  const toB = (u * fu + v * fv) / (fu * fu + fv * fv)
  const toC = (u * tu + v * tv) / (tu * tu + tv * tv)
  const ends = a.ends.map(
    (end, index) => end + toB * ((b.ends[index] ?? NaN) - end) + toC * ((c.ends[index] ?? NaN) - end),
  )
  return { ...a, ends }
}

/** The tubes that the run can come nearer to than `withinMm` anywhere in a triangle. */
const tubesWithin = (
  tubes: readonly TubePiece[],
  triangle: Triangle,
  runs: Runs,
  withinMm: number,
): readonly TubePiece[] => {
  const middle = runAt(triangle, runs, triangle.middle.at)
  let farthestMm = 0
  for (const { ends } of runs)
    for (let index = 0; index < ends.length; index += 3)
      farthestMm = Math.max(
        farthestMm,
        Math.hypot(
          (ends[index] ?? NaN) - (middle.ends[index] ?? NaN),
          (ends[index + 1] ?? NaN) - (middle.ends[index + 1] ?? NaN),
          (ends[index + 2] ?? NaN) - (middle.ends[index + 2] ?? NaN),
        ),
      )
  // How far the mount of an own tube is from it changes as well.
  const nearMm = 2 * farthestMm + withinMm
  return tubes.filter((tube) => {
    const { othersMm, ownMm } = tubeRoom([tube], middle, nearMm)
    return othersMm <= farthestMm + withinMm || ownMm < nearMm
  })
}

/** A demand whose number is read from the runs at the corners of a triangle. */
const read = (triangle: Triangle, runs: Runs, limit: Limit, tubes: readonly TubePiece[]): Demand => {
  const isOfOthers = limit.index === TUBE_INDEX
  const roomAt = (at: PlanePointMm): number => {
    const { othersMm, ownMm } = tubeRoom(tubes, runAt(triangle, runs, at))
    return isOfOthers ? othersMm : Math.min(othersMm, ownMm)
  }
  return {
    asked: askedOf({
      tubes,
      addTubes: () => {},
      answerAt: (_of, at) => ({ numbers: [roomAt(at)], run: null }),
      marginAt: ({ bound }, at) => roomAt(at) - bound,
    }),
    limit: { ...limit, index: ONLY_INDEX },
  }
}

/** A limit in one sitting. */
export interface Demand {
  readonly asked: Asked
  readonly limit: Limit
}

/** What is asked instead: another demand, or nothing where no tube is near. */
type Read = Demand | 'kept'

/** What was found for each limit of tubes and triangle; null: the runs change unevenly there. */
const EVEN = new WeakMap<Asked, Map<Limit, Map<Triangle, Read | null>>>()

const freshlyRead = ({ asked, limit }: Demand, triangle: Triangle): Read | null => {
  const { corner, from, to, middle } = lookAt(asked, 'strap', triangle)
  const [a, b, c] = [corner.run, from.run, to.run]
  if (!a || !b || !c || !middle.run || a.touching !== b.touching || !isHalfWay(middle.run, b, c)) return null
  const runs: Runs = [a, b, c]
  const near = tubesWithin(asked.field.tubes, triangle, runs, Math.max(0, limit.bound))
  return near.length === 0 ? 'kept' : read(triangle, runs, limit, near)
}

/**
 * What is asked in a triangle instead of a demand: for the shadows of tubes the runs at its corners, where those say enough, so that
 * no strap has to be solved inside. `kept`: no tube is near.
 */
export const readIn = (demand: Demand, triangle: Triangle): Read => {
  const { asked, limit } = demand
  if (limit.what !== 'tubes' || limit.of !== 'strap' || limit.index === ONLY_INDEX) return demand
  const ofAsked = EVEN.get(asked) ?? new Map<Limit, Map<Triangle, Read | null>>()
  EVEN.set(asked, ofAsked)
  const known = ofAsked.get(limit) ?? new Map<Triangle, Read | null>()
  ofAsked.set(limit, known)
  const before = known.get(triangle)
  const found = before === undefined ? freshlyRead(demand, triangle) : before
  known.set(triangle, found)
  return found ?? demand
}
