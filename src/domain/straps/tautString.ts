import { pointDistanceMm, type PointMm } from '../geometry/point'
import { reachOf, type BodyEnd, type Reach } from './bodyEnd'
import { contactOnMount, type MountEnd } from './mountEnd'
import { innerPortal, portalPoint, type Portal } from './portal'

/*
 * The taut strap from its mount through one or two openings to the body, found by Newton's method on the places where it crosses them,
 * held within their limits. At a sharp edge without friction the pulls on both sides are equal and have no part along the edge; in
 * the opening they are in line. Both follow from the shortest length between the contact on the mount and that on the body. Those two
 * contacts move as the crossing moves, which is why they are found anew in every step.
 */

/** A strap in equilibrium, by its places in the openings from the mount on. */
export interface TautString {
  readonly contact: PointMm
  readonly crossings: readonly PointMm[]
  /** Which crossings bear on an edge. */
  readonly bears: readonly boolean[]
  readonly reach: Reach
}

/** What gets in the way: the strap would have to bear on a place inside the body or inside the wrapped tube, or finds no rest at the body. */
export interface InTheWay {
  readonly by: 'body' | 'tube'
  readonly at: PointMm
}

/** Steps are small enough to stop below this, mm; the next would be shorter by far. */
const STILL_MM = 1e-9

const STEPS = 600

/** What may be left of the pulls, as a share of the tension, where a strap has come to rest: rounding. */
const IN_BALANCE = 1e-6

/**
 * Where the thigh begins to hold a lap strap its contact turns aside sharply, and whole steps can jump to and fro over that place. After
 * so many steps they are shortened, more and more, to this share at the least.
 */
const WHOLE_STEPS = 12
const LEAST_SHARE = 0.05

const stepShare = (step: number): number =>
  step < WHOLE_STEPS ? 1 : Math.max(LEAST_SHARE, 0.9 ** (step - WHOLE_STEPS))

/** A symmetric matrix over an opening's long and short axis. */
interface Stiffness {
  readonly longLong: number
  readonly longShort: number
  readonly shortShort: number
}

/** Direction of a straight piece as an opening's axes feel it, and how much less of it is left per mm along them. */
interface Pull extends Stiffness {
  readonly long: number
  readonly short: number
}

interface Pair {
  readonly long: number
  readonly short: number
}

/** Least length of a piece, mm: two places at one point have no direction. */
const LEAST_MM = 1e-9

const distanceMm = (a: PointMm, b: PointMm): number => Math.max(LEAST_MM, pointDistanceMm(a, b))

const pullToward = ({ long, short }: Portal, from: PointMm, to: PointMm): Pull => {
  const lengthMm = distanceMm(from, to)
  const ux = (to.xMm - from.xMm) / lengthMm
  const uy = (to.yMm - from.yMm) / lengthMm
  const uz = (to.zMm - from.zMm) / lengthMm
  const l = ux * long.x + uy * long.y + uz * long.z
  const s = ux * short.x + uy * short.y + uz * short.z
  return {
    long: l,
    short: s,
    longLong: (1 - l * l) / lengthMm,
    longShort: (-l * s) / lengthMm,
    shortShort: (1 - s * s) / lengthMm,
  }
}

/** The pull toward the body: square to the side-view run its direction turns about the reach's pivot, otherwise along its own length. */
const pullTowardBody = (portal: Portal, from: PointMm, { point, pivotMm, straightMm }: Reach): Pull => {
  const { long, short } = portal
  const dx = point.xMm - from.xMm
  const dy = point.yMm - from.yMm
  const dz = point.zMm - from.zMm
  const sideMm = Math.sqrt(dx * dx + dz * dz)
  if (sideMm < LEAST_MM) return pullToward(portal, from, point)
  const lengthMm = Math.sqrt(sideMm * sideMm + dy * dy)
  const l = (dx * long.x + dy * long.y + dz * long.z) / lengthMm
  const s = (dx * short.x + dy * short.y + dz * short.z) / lengthMm
  const nl = (dz * long.x - dx * long.z) / sideMm
  const ns = (dz * short.x - dx * short.z) / sideMm
  const turning = sideMm / (lengthMm * pivotMm)
  return {
    long: l,
    short: s,
    longLong: (1 - l * l - nl * nl) / straightMm + turning * nl * nl,
    longShort: (-l * s - nl * ns) / straightMm + turning * nl * ns,
    shortShort: (1 - s * s - ns * ns) / straightMm + turning * ns * ns,
  }
}

/** What is added so that a strap that lies in the opening's own plane leaves no division by 0. */
const SOFTEST = 1e-15

const plus = (a: Stiffness, b: Stiffness): Stiffness => ({
  longLong: a.longLong + b.longLong,
  longShort: a.longShort + b.longShort,
  shortShort: a.shortShort + b.shortShort,
})

/** The inverse on the axes that are free; nothing moves along the others. */
const yielding = (k: Stiffness, isLongFree: boolean, isShortFree: boolean): Stiffness => {
  if (isLongFree && isShortFree) {
    const size = k.longLong * k.shortShort - k.longShort * k.longShort + SOFTEST
    return { longLong: k.shortShort / size, longShort: -k.longShort / size, shortShort: k.longLong / size }
  }
  if (isLongFree) return { longLong: 1 / (k.longLong + SOFTEST), longShort: 0, shortShort: 0 }
  if (isShortFree) return { longLong: 0, longShort: 0, shortShort: 1 / (k.shortShort + SOFTEST) }
  return { longLong: 0, longShort: 0, shortShort: 0 }
}

const times = (k: Stiffness, { long, short }: Pair): Pair => ({
  long: k.longLong * long + k.longShort * short,
  short: k.longShort * long + k.shortShort * short,
})

/** k·y·k for symmetric k and y. */
const sandwiched = (k: Stiffness, y: Stiffness): Stiffness => {
  const first = times(y, { long: k.longLong, short: k.longShort })
  const second = times(y, { long: k.longShort, short: k.shortShort })
  return {
    longLong: k.longLong * first.long + k.longShort * first.short,
    longShort: k.longShort * first.long + k.shortShort * first.short,
    shortShort: k.longShort * second.long + k.shortShort * second.short,
  }
}

const held = (value: number, least: number, most: number): number =>
  value < least ? least : value > most ? most : value

/** Whether a coordinate can move: it is not pressed against its limit. `pull` is the sum of the pulls along it. */
const isFree = (at: number, pull: number, least: number, most: number): boolean =>
  least < most && !(at <= least && pull <= 0) && !(at >= most && pull >= 0)

const isLongFree = (portal: Portal, at: Pair, pull: Pair): boolean =>
  isFree(at.long, pull.long, portal.longMinMm, portal.longMaxMm)

const isShortFree = (portal: Portal, at: Pair, pull: Pair): boolean =>
  isFree(at.short, pull.short, portal.shortMinMm, portal.shortMaxMm)

const yieldingAt = (portal: Portal, at: Pair, pull: Pair, k: Stiffness): Stiffness =>
  yielding(k, isLongFree(portal, at, pull), isShortFree(portal, at, pull))

const moved = (portal: Portal, at: Pair, by: Pair, share: number): Pair => ({
  long: held(at.long + share * by.long, portal.longMinMm, portal.longMaxMm),
  short: held(at.short + share * by.short, portal.shortMinMm, portal.shortMaxMm),
})

const pointAt = (portal: Portal, { long, short }: Pair): PointMm => portalPoint(portal, long, short)

/** Where the straight line between two points passes an opening's plane, held within its limits. */
const heldCrossing = (portal: Portal, contact: PointMm, body: PointMm): Pair => {
  const { centre, long, short, normal } = portal
  const dx = body.xMm - contact.xMm
  const dy = body.yMm - contact.yMm
  const dz = body.zMm - contact.zMm
  const away =
    (contact.xMm - centre.xMm) * normal.x +
    (contact.yMm - centre.yMm) * normal.y +
    (contact.zMm - centre.zMm) * normal.z
  const share = held(-away / (dx * normal.x + dy * normal.y + dz * normal.z), 0, 1)
  const x = contact.xMm + share * dx - centre.xMm
  const y = contact.yMm + share * dy - centre.yMm
  const z = contact.zMm + share * dz - centre.zMm
  return {
    long: held(x * long.x + y * long.y + z * long.z, portal.longMinMm, portal.longMaxMm),
    short: held(x * short.x + y * short.y + z * short.z, portal.shortMinMm, portal.shortMaxMm),
  }
}

const bearsAt = (portal: Portal, { long, short }: Pair): boolean =>
  long <= portal.longMinMm ||
  long >= portal.longMaxMm ||
  short <= portal.shortMinMm ||
  short >= portal.shortMaxMm

/** How far a step may go: halved until the strap, its two ends kept where they are, gets no longer by it. */
const HALVINGS = 40

/** Rounding of a strap's length of some metres, mm. */
const ROUNDING_MM = 1e-12

interface Places {
  readonly first: Pair
  /** The place in the second opening; the same as the first where there is only one. */
  readonly second: Pair
}

/** The openings a strap crosses, from the mount on: one, or two for a shell with a thickness. */
interface Openings {
  readonly outer: Portal
  readonly inner: Portal | null
}

/** Where a strap is in the openings; the same point twice where there is only one. */
interface Points {
  readonly near: PointMm
  readonly far: PointMm
}

const pointsAt = ({ outer, inner }: Openings, { first, second }: Places): Points => {
  const near = pointAt(outer, first)
  return { near, far: inner === null ? near : pointAt(inner, second) }
}

const lengthMm = (openings: Openings, places: Places, contact: PointMm, body: PointMm): number => {
  const { near, far } = pointsAt(openings, places)
  const betweenMm = openings.inner === null ? 0 : distanceMm(near, far)
  return distanceMm(contact, near) + betweenMm + distanceMm(far, body)
}

/** A Newton step and what it is to take away: the pulls along what can move, as shares of the tension. */
interface Step {
  readonly by: Places
  readonly unbalanced: number
}

/** The part of a pull that an opening's limits do not take up. */
const unbalancedAt = (portal: Portal, at: Pair, pull: Pair): number =>
  (isLongFree(portal, at, pull) ? Math.abs(pull.long) : 0) +
  (isShortFree(portal, at, pull) ? Math.abs(pull.short) : 0)

/** One Newton step on one opening. */
const singleStep = (portal: Portal, at: Pair, point: PointMm, contact: PointMm, reach: Reach): Step => {
  const back = pullToward(portal, point, contact)
  const on = pullTowardBody(portal, point, reach)
  const pull = { long: back.long + on.long, short: back.short + on.short }
  const by = times(yieldingAt(portal, at, pull, plus(back, on)), pull)
  return { by: { first: by, second: by }, unbalanced: unbalancedAt(portal, at, pull) }
}

/** One Newton step on two openings: the first one's movement is eliminated. */
const doubleStep = (
  outer: Portal,
  inner: Portal,
  { first, second }: Places,
  { near, far }: Points,
  contact: PointMm,
  reach: Reach,
): Step => {
  const back = pullToward(outer, near, contact)
  const between = pullToward(outer, near, far)
  const on = pullTowardBody(inner, far, reach)
  const nearPull = { long: back.long + between.long, short: back.short + between.short }
  const farPull = { long: on.long - between.long, short: on.short - between.short }
  const nearYield = yieldingAt(outer, first, nearPull, plus(back, between))
  const carried = times(between, times(nearYield, nearPull))
  const softened = sandwiched(between, nearYield)
  const farStiffness: Stiffness = {
    longLong: on.longLong + between.longLong - softened.longLong,
    longShort: on.longShort + between.longShort - softened.longShort,
    shortShort: on.shortShort + between.shortShort - softened.shortShort,
  }
  const farYield = yieldingAt(inner, second, farPull, farStiffness)
  const farBy = times(farYield, { long: farPull.long + carried.long, short: farPull.short + carried.short })
  const drag = times(between, farBy)
  const nearBy = times(nearYield, { long: nearPull.long + drag.long, short: nearPull.short + drag.short })
  return {
    by: { first: nearBy, second: farBy },
    unbalanced: unbalancedAt(outer, first, nearPull) + unbalancedAt(inner, second, farPull),
  }
}

const stepOf = (
  { outer, inner }: Openings,
  places: Places,
  points: Points,
  contact: PointMm,
  reach: Reach,
): Step =>
  inner === null
    ? singleStep(outer, places.first, points.near, contact, reach)
    : doubleStep(outer, inner, places, points, contact, reach)

const movedPlaces = ({ outer, inner }: Openings, at: Places, by: Places, share: number): Places => {
  const first = moved(outer, at.first, by.first, share)
  return { first, second: inner === null ? first : moved(inner, at.second, by.second, share) }
}

const apartMm = (a: Places, b: Places): number =>
  Math.max(
    Math.abs(a.first.long - b.first.long),
    Math.abs(a.first.short - b.first.short),
    Math.abs(a.second.long - b.second.long),
    Math.abs(a.second.short - b.second.short),
  )

/** The places after a step of at most `most` of a whole one that does not lengthen the strap. */
const shortened = (
  openings: Openings,
  places: Places,
  by: Places,
  contact: PointMm,
  reach: Reach,
  most: number,
): Places => {
  let next = movedPlaces(openings, places, by, most)
  if (apartMm(places, next) < 1e-3) return next
  const beforeMm = lengthMm(openings, places, contact, reach.point)
  let share = most
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    if (lengthMm(openings, next, contact, reach.point) <= beforeMm + ROUNDING_MM) return next
    share /= 2
    next = movedPlaces(openings, places, by, share)
  }
  return next
}

/**
 * Whole steps are right as long as each leaves less than this share of the imbalance: the ends of the strap then follow as the step
 * expects. Otherwise the step must not lengthen the strap with its ends held.
 */
const SETTLING = 0.6

/** A lap strap, whose aim turns with it, can be in balance in two places: only steps below this lead to the nearer one, mm. Our judgement. */
const NEAR_MM = 2

/** The taut strap through openings that the straight one misses. On its way it may come by the inside of tube or body, at rest it may not. */
export const tautString = (
  mount: MountEnd,
  end: BodyEnd,
  portal: Portal,
  straight: { readonly contact: PointMm; readonly reach: Reach },
): TautString | InTheWay => {
  let { contact, reach } = straight
  const openings: Openings = { outer: portal, inner: portal.depthMm > 0 ? innerPortal(portal) : null }
  const first = heldCrossing(portal, contact, reach.point)
  let places: Places = {
    first,
    second: openings.inner === null ? first : heldCrossing(openings.inner, contact, reach.point),
  }
  let before = 0
  for (let step = 0; ; step += 1) {
    const points = pointsAt(openings, places)
    contact = contactOnMount(mount, points.near) ?? contact
    reach = reachOf(end, points.far) ?? reach
    const { by, unbalanced } = stepOf(openings, places, points, contact, reach)
    const whole = movedPlaces(openings, places, by, 1)
    const isSettling =
      unbalanced < SETTLING * before && (end.family !== 'lap' || apartMm(places, whole) < NEAR_MM)
    before = step === 0 ? unbalanced : Math.min(before, unbalanced)
    const share = isSettling ? 1 : stepShare(step)
    const next = isSettling ? whole : shortened(openings, places, by, contact, reach, share)
    const isStill = apartMm(places, next) < STILL_MM * share || step >= STEPS
    places = next
    if (!isStill) continue
    // Never seen but with an opening right round the hip point, where the aim of a lap strap turns about.
    return unbalanced > IN_BALANCE ? { by: 'body', at: points.far } : settled(mount, end, openings, places)
  }
}

const settled = (
  mount: MountEnd,
  end: BodyEnd,
  openings: Openings,
  places: Places,
): TautString | InTheWay => {
  const { near, far } = pointsAt(openings, places)
  const contact = contactOnMount(mount, near)
  if (contact === null) return { by: 'tube', at: near }
  const reach = reachOf(end, far)
  if (reach === null) return { by: 'body', at: far }
  const nearBears = bearsAt(openings.outer, places.first)
  if (openings.inner === null) return { contact, crossings: [near], bears: [nearBears], reach }
  return {
    contact,
    crossings: [near, far],
    bears: [nearBears, bearsAt(openings.inner, places.second)],
    reach,
  }
}
