import type { Arrival, BodyEnd } from './bodyEnds'
import { crossing, isInside, openingPoint, shortestChain, type Opening } from './chain'
import type { MountEnd } from './mountEnd'
import { apart, dot, minus, norm, plus, towards, turnDeg, type Vector } from './vector'

/** A strap at rest: straight pieces mount contact → held points → touch, then the body. */
export interface Taut {
  readonly contact: Vector
  /** Where it passes each opening, bent or not, the mount's side first. */
  readonly passes: readonly Vector[]
  readonly arrival: Arrival
  /** From the mount contact to the strap's end. */
  readonly lengthMm: number
}

const STILL_MM = 1e-8
/** A turn that is more than rounding. */
const BENT_DEG = 1e-6
const MOST_ROUNDS = 1500

/** Where the ends answer too strongly they would swing for ever: then they follow part of the way, less and less. */
const followed = (round: number): number => (round < 30 ? 1 : round < 200 ? 0.3 : round < 600 ? 0.1 : 0.03)

/** Contacts at both ends that agree with each other when nothing is between them. */
const straight = (
  mount: MountEnd,
  body: BodyEnd,
  from: Vector,
): { contact: Vector; arrival: Arrival } | null => {
  let contact = from
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const arrival = body(contact)
    const next = arrival && mount(arrival.touch)
    if (arrival === null || next === null) return null
    if (apart(next, contact) < STILL_MM) return arrival.isClear ? null : { contact: next, arrival }
    contact = next
  }
  throw new Error('the straight strap does not come to rest')
}

/**
 * One way through: mount → one opening after another → body. The ends of the straight pieces are held where they touch, the points
 * in the openings take the shortest way between them, the ends follow, until nothing moves: then every piece is straight, every
 * held point is in balance and both ends are tangent. Null where that is inside tube or body, or never.
 */
const through = (mount: MountEnd, openings: readonly Opening[], body: BodyEnd, begin: Taut): Taut | null => {
  let { contact, arrival } = begin
  let x: readonly number[] = openings.flatMap((opening) => {
    const { u, v } = crossing(opening, contact, arrival.touch)
    return [u, v]
  })
  let passes: readonly Vector[] = []
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const chain = shortestChain(contact, openings, arrival.touch, x)
    // On its way the search may look from inside a tube or the body; at rest it must not.
    const foundContact = mount(chain.points[0] ?? contact)
    const foundArrival = body(lastBent(contact, chain.points, arrival.touch))
    const nextContact = foundContact ?? contact
    const nextArrival = foundArrival ?? arrival
    const moved = Math.max(
      apart(nextContact, contact),
      apart(nextArrival.touch, arrival.touch),
      ...chain.points.map((point, i) => apart(point, passes[i] ?? contact)),
    )
    ;({ x, points: passes } = chain)
    if (moved < STILL_MM)
      return foundContact && foundArrival && !foundArrival.isClear
        ? lengthOf(foundContact, passes, foundArrival)
        : null
    const share = followed(round)
    contact = plus(contact, minus(nextContact, contact), share)
    const touch = plus(arrival.touch, minus(nextArrival.touch, arrival.touch), share)
    arrival = { ...nextArrival, touch }
  }
  return null
}

/**
 * What a strap is aimed from: the last place that bends it. Seen from the side a wide body may begin behind a place that it only passes,
 * and then an aim taken there would look back.
 */
const lastBent = (contact: Vector, points: readonly Vector[], touch: Vector): Vector =>
  points.findLast((point, i) => {
    const run = towards(points[i - 1] ?? contact, point)
    return turnDeg(run, towards(point, points[i + 1] ?? touch)) > BENT_DEG
  }) ?? contact

/** From the mount to the body. */
const outsideMm = ({ lengthMm, arrival }: Taut): number => lengthMm - arrival.restMm()

const lengthOf = (contact: Vector, passes: readonly Vector[], arrival: Arrival): Taut => {
  const points = [contact, ...passes, arrival.touch]
  const freeMm = points.slice(1).reduce((sum, point, i) => sum + norm(minus(point, points[i] ?? point)), 0)
  return { contact, passes, arrival, lengthMm: freeMm + arrival.restMm() }
}

/**
 * The taut strap through all the openings in order. Each opening may come as several alternatives (pieces of a chain of edges):
 * `ways` lists the sequences to try, the shortest one whose last point outside the body is sound counts. Null when an end lies
 * inside what it touches.
 */
export const tautStrap = (
  mount: MountEnd,
  ways: readonly (readonly Opening[])[],
  body: BodyEnd,
  from: Vector,
  isSound: (last: Vector) => boolean = () => true,
): Taut | null => {
  const free = straight(mount, body, from)
  const first = ways[0] ?? []
  if (free === null) return first.length === 0 ? null : shortestOf(ways, mount, body, null, isSound)
  const begin = lengthOf(free.contact, [], free.arrival)
  if (first.some((opening) => opening.isOpenAbove && !isBetween(opening, begin))) return begin
  if (ways.length <= 1 && first.every((opening) => isPassedClean(opening, begin))) {
    const passes = first.map((opening) => {
      const { share } = crossing(opening, begin.contact, begin.arrival.touch)
      const run = minus(begin.arrival.touch, begin.contact)
      return [0, 1, 2].map((i) => (begin.contact[i] ?? 0) + (run[i] ?? 0) * share) as unknown as Vector
    })
    return { ...begin, passes }
  }
  return shortestOf(ways, mount, body, begin, isSound)
}

const shortestOf = (
  ways: readonly (readonly Opening[])[],
  mount: MountEnd,
  body: BodyEnd,
  straightOne: Taut | null,
  isSound: (last: Vector) => boolean,
): Taut | null => {
  const found = ways.flatMap((openings) => {
    const isSoundRest = (taut: Taut): boolean =>
      isSound(lastBent(taut.contact, taut.passes, taut.arrival.touch))
    // Of a chain of edges every place of rest is wanted, of a slot one.
    const looked = { isOneEnough: ways.length === 1, isSound: isSoundRest }
    const rests = restsOf(mount, openings, body, straightOne, looked)
    return rests.filter((taut) => isSoundRest(taut) && isHeldByAll(ways, taut))
  })
  return found.reduce<Taut | null>(
    (shortest, one) => (shortest === null || outsideMm(one) < outsideMm(shortest) ? one : shortest),
    null,
  )
}

/**
 * The places of rest in one row of openings. Where the aim of a lap strap turns about close to the hip point there can be more than one, or
 * none: they are looked for from the straight strap, and from straps through the middle and the corners of the last opening.
 */
const restsOf = (
  mount: MountEnd,
  openings: readonly Opening[],
  body: BodyEnd,
  straightOne: Taut | null,
  { isOneEnough, isSound }: { readonly isOneEnough: boolean; readonly isSound: (taut: Taut) => boolean },
): readonly Taut[] => {
  const { low, high } = openings.at(-1) ?? { low: [], high: [] }
  const corners = [low[0] ?? 0, high[0] ?? 0].flatMap((u) =>
    [low[1] ?? 0, high[1] ?? 0].map((v) => [u, v] as const),
  )
  const begins = [
    straightOne ?? beginThrough(mount, openings, body, [0, 0]),
    ...corners.map((corner) => beginThrough(mount, openings, body, corner)),
  ]
  const rests: Taut[] = []
  for (const begin of begins) {
    const taut = begin && through(mount, openings, body, begin)
    if (taut !== null) rests.push(taut)
    if (isOneEnough && taut !== null && isSound(taut)) break
  }
  return rests
}

/** At a corner of a chain of edges: whether neither of the pieces that meet there would draw the strap along. */
const isHeldByAll = (ways: readonly (readonly Opening[])[], { contact, passes, arrival }: Taut): boolean =>
  ways.flat().every((opening) =>
    [opening.low, opening.high].every(([u, v], end) => {
      const corner = openingPoint(opening, u, v)
      if (ways.length === 1 || apart(corner, passes[0] ?? contact) > 1e-6) return true
      const pull = plus(towards(corner, contact), towards(corner, arrival.touch))
      return dot(pull, opening.across) * (end === 0 ? 1 : -1) < 1e-7
    }),
  )

/** Something to start from: straight from the mount to a place in the last opening, and from there to the body. */
const beginThrough = (
  mount: MountEnd,
  openings: readonly Opening[],
  body: BodyEnd,
  [u, v]: readonly [number, number],
): Taut | null => {
  const last = openings.at(-1)
  if (last === undefined || !Number.isFinite(u + v)) return null
  const place = openingPoint(last, u, v)
  const contact = mount(place)
  const arrival = body(place)
  return contact && arrival && lengthOf(contact, [], arrival)
}

/** Whether an opening's plane lies between the two ends; the rim does not act on a strap that bears on the shoulder behind it. */
const isBetween = (opening: Opening, { contact, arrival }: Taut): boolean => {
  const { share } = crossing(opening, contact, arrival.touch)
  return share > 0 && share < 1
}

const isPassedClean = (opening: Opening, { contact, arrival }: Taut): boolean => {
  const { u, v } = crossing(opening, contact, arrival.touch)
  return isInside(opening, u, v)
}

/** Turn in space between the directions before the first and after the last opening. */
export const bendDeg = ({ contact, passes, arrival }: Taut): number => {
  const first = passes[0]
  const last = passes.at(-1)
  if (first === undefined || last === undefined) return 0
  return turnDeg(towards(contact, first), towards(last, arrival.touch))
}

/** The held points where it really bends, by more than `leastDeg`. */
export const bentPasses = ({ contact, passes, arrival }: Taut, leastDeg: number): readonly Vector[] => {
  const points = [contact, ...passes, arrival.touch]
  return passes.filter((pass, i) => {
    const before = points[i] ?? pass
    const after = points[i + 2] ?? pass
    return turnDeg(towards(before, pass), towards(pass, after)) > leastDeg
  })
}
