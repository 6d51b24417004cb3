import { type Direction, directionBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import { segmentDistanceMm } from '../../geometry/segmentDistance'
import { leastSquaresPoint, mostDisagreementMm } from '../../geometry/sphereFit'
import { fittedPoints, IN_LINE_MM, offLineMm, pairsOf } from '../../geometry/sphereFits'
import { placesOf, type TapeSphere, threeTapes } from '../../geometry/spheres'
import type { Tube } from '../../geometry/tube'
import { worstMoveMmPerMm } from './dilution'
import type { TapePlace } from './tapePlace'

/** Whether an anchor's position can be told from its distances alone. */
export type Told =
  | { readonly kind: 'determined' }
  /** Two places fit: the anchor's own and this one. The anchor is on the side that its coordinates say. */
  | { readonly kind: 'mirror-only'; readonly mirror: PointMm }
  | {
      readonly kind: 'not-enough-points'
      /**
       * Fewer than three places within reach; all in one line; or so placed that a little error in the tapes moves the position
       * far (`mmPerMm` of the row).
       */
      readonly because: 'fewer-than-three' | 'in-line' | 'badly-placed'
    }

/** The places a tape to one anchor should start from. */
export interface Choice {
  readonly places: readonly TapePlace[]
  readonly told: Told
  /** How far the position worked out from these moves at most when every tape is off by 1 mm; null where it cannot be worked out. */
  readonly mmPerMm: number | null
}

/** As far as a tape is pulled straight by one pair of hands in a workshop, and as near as it is read well. Our judgement. */
const REACH_MM = { least: 50, most: 5_000 } as const

/** One distance more than a position has coordinates: so that a wrong one shows. */
const TAPES = 4

/** 1 mm in the tapes may move the position by this much; three tapes square to each other make 1.7 mm of it. Our judgement. */
const MOST_MM_PER_MM = 4

/** The mirrored place must disagree with some tape by this much, so that a tape read wrong by a few mm cannot hide it. Our judgement. */
const TOLD_APART_MM = 20

/** Two places further apart than this are two. Our judgement. */
const ONE_PLACE_MM = 0.1

/** How much worse a set of places may be, mm for each mm, to save punching a mark or a metre of tape. Our judgement. */
const WORTH = { mark: 0.15, metre: 0.05 } as const

/** How deep a straight line may cut a tube's outside: it touches there. Our judgement. */
const TOUCHES_MM = 1

/** Whether a tape can lie straight between two points as far as the tubes are concerned. */
export const isClear = (from: PointMm, to: PointMm, tubes: readonly Tube[]): boolean =>
  tubes.every(({ points, outsideDiameterMm }) => {
    const leastMm = outsideDiameterMm / 2 - TOUCHES_MM
    return points.every((end, index) => {
      const start = points[index - 1]
      return (
        start === undefined ||
        areBeside(from, to, start, end, leastMm) ||
        segmentDistanceMm(from, to, start, end) >= leastMm
      )
    })
  })

/** Whether two straight pieces are at least so far apart along one of the axes: most tubes are told by this alone. */
const areBeside = (a: PointMm, b: PointMm, c: PointMm, d: PointMm, leastMm: number): boolean =>
  areBesideAlong(a.xMm, b.xMm, c.xMm, d.xMm, leastMm) ||
  areBesideAlong(a.yMm, b.yMm, c.yMm, d.yMm, leastMm) ||
  areBesideAlong(a.zMm, b.zMm, c.zMm, d.zMm, leastMm)

const areBesideAlong = (a: number, b: number, c: number, d: number, leastMm: number): boolean =>
  Math.min(c, d) - Math.max(a, b) >= leastMm || Math.min(a, b) - Math.max(c, d) >= leastMm

/** A set of places with what the position worked out from them is worth. */
interface PlaceSet {
  readonly places: readonly TapePlace[]
  readonly mmPerMm: number
  readonly cost: number
}

/**
 * The places from which four tapes tell an anchor's position best: the worst move for 1 mm in every tape is least, where equally
 * good with fewer marks to punch and less tape, and no mirrored place fits as well. Where no four do, the best that leave the
 * mirror open; where none tell it at all, what there is.
 */
export const chosenPlaces = (held: PointMm, all: readonly TapePlace[], tubes: readonly Tube[]): Choice => {
  const candidates = reachable(held, all, tubes)
  if (candidates.length < 3) return { places: candidates, told: notEnough('fewer-than-three'), mmPerMm: null }
  const sets = setsOf(
    candidates.map((place) => candidateOf(held, place)),
    Math.min(TAPES, candidates.length),
  )
    .map(placeSet)
    .toSorted((a, b) => a.cost - b.cost)
  const good = sets.filter(({ mmPerMm }) => mmPerMm <= MOST_MM_PER_MM)
  const telling = good.find(({ places }) => mirrorOf(held, places) === null)
  if (telling !== undefined) return { ...telling, told: { kind: 'determined' } }
  const best = good[0]
  const mirror = best === undefined ? null : mirrorOf(held, best.places)
  if (best !== undefined && mirror !== null) return { ...best, told: { kind: 'mirror-only', mirror } }
  const [first] = sets
  const inLine = areInLine(candidates)
  return {
    places: first?.places ?? [],
    told: notEnough(inLine ? 'in-line' : 'badly-placed'),
    mmPerMm: inLine || first === undefined || !Number.isFinite(first.mmPerMm) ? null : first.mmPerMm,
  }
}

const notEnough = (because: Extract<Told, { readonly kind: 'not-enough-points' }>['because']): Told => ({
  kind: 'not-enough-points',
  because,
})

/** A place with what every set that it is in is worth by it. */
interface Candidate {
  readonly place: TapePlace
  /** From the place to the anchor, length 1. */
  readonly direction: Direction
  /** What the tape and a mark cost, mm for each mm. */
  readonly cost: number
}

const candidateOf = (held: PointMm, place: TapePlace): Candidate => {
  const { point, source } = place
  const isMark = source.kind === 'tube-end' || source.kind === 'datum-mark'
  return {
    place,
    // No place is nearer than a tape can be read.
    direction: directionBetween(point, held) ?? { x: 0, y: 0, z: 1 },
    cost: (isMark ? WORTH.mark : 0) + (WORTH.metre * pointDistanceMm(point, held)) / 1000,
  }
}

const placeSet = (candidates: readonly Candidate[]): PlaceSet => {
  const mmPerMm = worstMoveMmPerMm(candidates.map(({ direction }) => direction))
  return {
    places: candidates.map(({ place }) => place),
    mmPerMm,
    cost: candidates.reduce((sum, { cost }) => sum + cost, mmPerMm),
  }
}

/** How many places are looked at for one anchor, four at a time. */
const MOST_CANDIDATES = 16

/**
 * Places within reach of a tape that lies straight: the datum and the builder's points, nearest first, and of the marks those
 * whose directions differ most from what there is already, since tapes side by side tell the same.
 */
const reachable = (
  held: PointMm,
  all: readonly TapePlace[],
  tubes: readonly Tube[],
): readonly TapePlace[] => {
  const near = all
    .map((place) => ({ place, lengthMm: pointDistanceMm(place.point, held) }))
    .filter(({ lengthMm }) => lengthMm >= REACH_MM.least && lengthMm <= REACH_MM.most)
    .toSorted((a, b) => a.lengthMm - b.lengthMm)
    .map(({ place }) => place)
    .filter(({ point }) => isClear(point, held, tubes))
  const chosen = near.filter(({ source }) => source.kind !== 'tube-end').slice(0, MOST_CANDIDATES)
  const marks = near.filter(({ source }) => source.kind === 'tube-end')
  while (chosen.length < MOST_CANDIDATES && marks.length > 0) {
    const least = marks.map((mark) => Math.min(2, ...chosen.map((other) => turnBetween(held, mark, other))))
    const [next] = marks.splice(least.indexOf(Math.max(...least)), 1)
    if (next !== undefined) chosen.push(next)
  }
  return chosen
}

/** How far apart two tapes point: 0 for the same way, 2 for opposite ways (1 less the cosine). */
const turnBetween = (held: PointMm, one: TapePlace, other: TapePlace): number => {
  const a = pointDistanceMm(held, one.point)
  const b = pointDistanceMm(held, other.point)
  const c = pointDistanceMm(one.point, other.point)
  return 1 - (a * a + b * b - c * c) / (2 * a * b)
}

/** Every choice of so many of the things, in their order. */
const setsOf = <Thing>(things: readonly Thing[], count: number): readonly (readonly Thing[])[] =>
  count === 0
    ? [[]]
    : things.flatMap((thing, index) =>
        setsOf(things.slice(index + 1), count - 1).map((others) => [thing, ...others]),
      )

const areInLine = (places: readonly TapePlace[]): boolean =>
  triplesOf(places.map(({ point }) => ({ point, lengthMm: 1 }))).every(
    ([a, b, c]) => offLineMm(a, b, c) <= IN_LINE_MM,
  )

const triplesOf = (
  tapes: readonly TapeSphere[],
): readonly (readonly [TapeSphere, TapeSphere, TapeSphere])[] =>
  pairsOf(tapes).flatMap(([first, second]) =>
    tapes.slice(tapes.indexOf(second) + 1).map((third) => [first, second, third] as const),
  )

/** The other place that tapes from these places fit as well as the anchor's own; null when there is none. */
const mirrorOf = (held: PointMm, places: readonly TapePlace[]): PointMm | null => {
  const tapes = places.map(({ point }) => ({ point, lengthMm: pointDistanceMm(point, held) }))
  const observations = { tapes, coordinate: null }
  const isOther = (point: PointMm): boolean =>
    pointDistanceMm(point, held) > ONE_PLACE_MM && mostDisagreementMm(observations, point) <= TOLD_APART_MM
  // Most sets that leave a mirror open lie in one plane: found at the first look, without all the searches.
  const [first] = triplesOf(tapes).filter(([a, b, c]) => offLineMm(a, b, c) > IN_LINE_MM)
  if (first !== undefined) {
    const mirror = leastSquaresPoint(observations, mirroredIn(held, first))
    if (isOther(mirror)) return mirror
  }
  return fittedPoints(observations).find(({ point }) => isOther(point))?.point ?? null
}

/** A point mirrored in the plane of three places. */
const mirroredIn = (held: PointMm, [a, b, c]: readonly [TapeSphere, TapeSphere, TapeSphere]): PointMm => {
  const { normal, opposite } = placesOf(threeTapes(a, b, c))
  return pointDistanceMm(normal, held) > pointDistanceMm(opposite, held) ? normal : opposite
}
