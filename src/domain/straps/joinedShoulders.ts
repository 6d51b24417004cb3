import { pointBetween, pointDistanceMm, pointSum, type Direction, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import type { ShoulderEnd } from './bodyEnd'
import { contactOnSide, mountEndOf, mountSide, type MountEnd, type MountSide } from './mountEnd'
import type { PathProblem } from './path'
import type { PlaceFrame, StrapFrame } from './placeFrame'
import { crossesBackrest } from './portal'
import { contactFollows, pullTurn, type Answer } from './pullTurn'
import { shoulderEnd, shoulderRun } from './shoulderPath'
import type { StrapRun } from './strapRun'

/*
 * The junction J of two shoulder straps that become one tail of length L: in balance the tail lies in line with the sum of both straps'
 * pulls, J = c + L·û with c where the tail leaves its mount and û along the sum. Found by Newton's method on F(J) = c(J) + L·û(J) − J:
 * every straight piece turns by a formula. Steps that do not lessen |F| are shortened.
 */

/** Two shoulder straps that become one tail behind the neck. */
export interface JoinedRuns {
  /** Where the tail leaves the mount. */
  readonly contact: PointMm
  /** Both straps from the junction on. */
  readonly left: StrapRun
  readonly right: StrapRun
}

/** Mounts this close are one, mm. */
const ONE_PLACE_MM = 1e-3

/** The junction is found when it is this near to where its straps pull it, mm: rounding of coordinates of some metres. */
const STILL_MM = 1e-10

/** Where rounding lets no step come nearer, this is near enough, mm: far less than any number shown. */
const NEAR_ENOUGH_MM = 1e-7

/** Junctions tried at most for one pair. Measured on random cars: four as a rule, at most five in 99 of 100; places without balance take this many. */
const MOST_TRIALS = 100

/** A step is halved this often at most. */
const HALVINGS = 3

/** Both joined straps and what their tail hangs on. */
interface JoinedStraps {
  readonly mount: MountEnd
  readonly tailMm: number
  readonly left: { readonly framed: StrapFrame; readonly end: ShoulderEnd }
  readonly right: { readonly framed: StrapFrame; readonly end: ShoulderEnd }
}

/** A junction tried at a place, its tail clear of the backrest. */
interface Trial extends JoinedRuns {
  readonly junction: PointMm
  /** Midway between where both straps bear next. */
  readonly between: PointMm
  /** On which side of a wrapped tube the tail leaves it. */
  readonly side: MountSide
  /** Sum of both straps' pulls as a share of the tension. */
  readonly pull: number
  /** Its direction, length 1. */
  readonly along: Direction
  /** From the junction to where its straps pull it. */
  readonly off: Direction
  readonly offMm: number
}

const firstContact = ({ edges, reach }: StrapRun): PointMm => edges[0] ?? reach.point

/** Pulls of this size together have no direction, shares of the tension. */
const NO_PULL = 1e-9

/** Why a junction cannot be where it was tried; null where it is the tail alone that has no way. */
type Refusal = PathProblem | null

const trialAt = (straps: JoinedStraps, junction: PointMm): Result<Trial, Refusal> => {
  const { mount, tailMm } = straps
  const from: MountEnd = { point: junction, radiusMm: 0, axis: null, upward: 1 }
  const left = shoulderRun(straps.left.framed, from, straps.left.end)
  if (!left.ok) return left
  const right = shoulderRun(straps.right.framed, from, straps.right.end)
  if (!right.ok) return right
  const a = firstContact(left.value)
  const b = firstContact(right.value)
  // Over or under is said of the straps, whatever side of straight up their junction happens to lie on.
  const between = pointBetween(a, b, 0.5)
  const side = mountSide(mount, between)
  // Without a tail they leave the mount itself.
  const contact = tailMm === 0 ? junction : contactOnSide(mount, junction, side)
  const toA = pointDistanceMm(junction, a)
  const toB = pointDistanceMm(junction, b)
  const x = (a.xMm - junction.xMm) / toA + (b.xMm - junction.xMm) / toB
  const y = (a.yMm - junction.yMm) / toA + (b.yMm - junction.yMm) / toB
  const z = (a.zMm - junction.zMm) / toA + (b.zMm - junction.zMm) / toB
  const pull = Math.sqrt(x * x + y * y + z * z)
  const { portal } = straps.left.framed
  const isThrough = contact !== null && portal !== null && crossesBackrest(portal, contact, junction)
  if (contact === null || isThrough || !(pull > NO_PULL)) return err(null)
  const along = { x: x / pull, y: y / pull, z: z / pull }
  const off = {
    x: contact.xMm + tailMm * along.x - junction.xMm,
    y: contact.yMm + tailMm * along.y - junction.yMm,
    z: contact.zMm + tailMm * along.z - junction.zMm,
  }
  const offMm = Math.sqrt(off.x * off.x + off.y * off.y + off.z * off.z)
  return ok({
    contact,
    left: left.value,
    right: right.value,
    junction,
    between,
    side,
    pull,
    along,
    off,
    offMm,
  })
}

/** How the place a junction is pulled to moves away from the junction as that moves. */
const offTurn = ({ mount, tailMm, left, right }: JoinedStraps, trial: Trial): Answer => {
  const ofLeft = pullTurn(left.end, left.framed.portal, trial.left)
  const ofRight = pullTurn(right.end, right.framed.portal, trial.right)
  const ofContact = contactFollows(mount, trial.contact, trial.junction)
  const { along, pull } = trial
  return (by) => {
    const a = ofLeft(by)
    const b = ofRight(by)
    const c = ofContact(by)
    const x = a.x + b.x
    const y = a.y + b.y
    const z = a.z + b.z
    const lengthening = x * along.x + y * along.y + z * along.z
    const perMm = tailMm / pull
    return {
      x: c.x + perMm * (x - lengthening * along.x) - by.x,
      y: c.y + perMm * (y - lengthening * along.y) - by.y,
      z: c.z + perMm * (z - lengthening * along.z) - by.z,
    }
  }
}

const crossed = (a: Direction, b: Direction): Direction => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
})

const dot = (a: Direction, b: Direction): number => a.x * b.x + a.y * b.y + a.z * b.z

/** The movement that takes away what is off: −F⁻¹ of the turn, by Cramer's rule; null where it has none. */
const newtonStep = (turn: Answer, off: Direction): Direction | null => {
  const ofX = turn({ x: 1, y: 0, z: 0 })
  const ofY = turn({ x: 0, y: 1, z: 0 })
  const ofZ = turn({ x: 0, y: 0, z: 1 })
  const yz = crossed(ofY, ofZ)
  const size = dot(ofX, yz)
  const step = {
    x: -dot(off, yz) / size,
    y: -dot(ofX, crossed(off, ofZ)) / size,
    z: -dot(ofX, crossed(ofY, off)) / size,
  }
  return Number.isFinite(step.x + step.y + step.z) ? step : null
}

/** A junction at the tail's length from its mount, toward `toward`; null where that is inside the wrapped tube. */
const atTail = ({ mount, tailMm }: JoinedStraps, toward: PointMm, side: MountSide): PointMm | null => {
  const contact = contactOnSide(mount, toward, side)
  if (contact === null) return null
  const awayMm = pointDistanceMm(contact, toward)
  if (!(awayMm > 0)) return null
  const along = {
    x: (toward.xMm - contact.xMm) / awayMm,
    y: (toward.yMm - contact.yMm) / awayMm,
    z: (toward.zMm - contact.zMm) / awayMm,
  }
  return pointSum(contact, along, tailMm)
}

/** How many junctions may still be tried. */
interface Budget {
  left: number
}

/** The next junction: after a whole step or the longest part of it that has a path and is less off. Null where there is none. */
const nextTrial = (straps: JoinedStraps, before: Trial, step: Direction, budget: Budget): Trial | null => {
  for (let halving = 0; halving < HALVINGS && budget.left > 0; halving += 1) {
    const junction = atTail(straps, pointSum(before.junction, step, 0.5 ** halving), before.side)
    if (junction === null) continue
    budget.left -= 1
    const trial = trialAt(straps, junction)
    if (trial.ok && trial.value.offMm < before.offMm) return trial.value
  }
  return null
}

/** Both straps and the tail in balance, from a first junction on; null where none is found. */
const settledFrom = (straps: JoinedStraps, first: Trial, budget: Budget): Trial | null => {
  let found: Trial | null = first
  while (found !== null && found.offMm >= STILL_MM) {
    const step = newtonStep(offTurn(straps, found), found.off)
    const next: Trial | null = step && nextTrial(straps, found, step, budget)
    if (next === null && found.offMm < NEAR_ENOUGH_MM) return found
    found = next
  }
  return found
}

/** Where a junction in balance goes, to begin with, as more of the tail is let out: the tail draws it along its own line. */
const drawnOut = (straps: JoinedStraps, found: Trial, share: number, more: number): PointMm | null => {
  const step = newtonStep(offTurn({ ...straps, tailMm: straps.tailMm * share }, found), found.along)
  return step && pointSum(found.junction, step, straps.tailMm * more)
}

/** The least part of the tail by which it is let out where more at once finds no balance. */
const LEAST_SHARE = 1 / 32

/** With the whole tail laid toward the neck: straps that have no path from the mount itself may have one from its end. */
const atOnce = (straps: JoinedStraps, neck: PointMm, budget: Budget): Trial | null => {
  const start = atTail(straps, neck, mountSide(straps.mount, neck))
  const first = start && trialAt(straps, start)
  return first?.ok === true ? settledFrom(straps, first.value, budget) : null
}

/**
 * The pair with its tail let out from straps that end on the mount itself: at once or, where that finds no balance, bit by bit. Else what
 * keeps the straps from their path on the mount or close to it, or how much of the tail is too much.
 */
const letOut = (straps: JoinedStraps, root: PointMm, neck: PointMm): Result<Trial, PathProblem> => {
  const { tailMm } = straps
  const { strap } = straps.left.framed
  const budget: Budget = { left: MOST_TRIALS }
  const untailed = trialAt({ ...straps, tailMm: 0 }, root)
  if (!untailed.ok) {
    const direct = atOnce(straps, neck, budget)
    if (direct !== null) return ok(direct)
    return err(untailed.error ?? { kind: 'tail-too-long', strap, overMm: tailMm })
  }
  let found = untailed.value
  let share = 0
  let more = 1
  while (share < 1) {
    const part: JoinedStraps = { ...straps, tailMm: tailMm * (share + more) }
    const toward = share === 0 ? found.between : drawnOut(straps, found, share, more)
    const start = toward && atTail(part, toward, found.side)
    const first = start === null ? err(null) : trialAt(part, start)
    budget.left -= 1
    const next = first.ok ? settledFrom(part, first.value, budget) : null
    if (next !== null) {
      found = next
      share += more
      more = Math.min(more, 1 - share)
    } else if (more > LEAST_SHARE && budget.left > 0) more /= 2
    else if (share === 0 && !first.ok && first.error !== null) return err(first.error)
    else return err({ kind: 'tail-too-long', strap, overMm: tailMm * (1 - share) })
  }
  return ok(found)
}

const settledJunction = (straps: JoinedStraps): Result<JoinedRuns, PathProblem> => {
  const { mount, left, right } = straps
  const { arc } = left.end
  const neck: PointMm = {
    xMm: arc.centre.uMm,
    yMm: (left.end.yMm + right.end.yMm) / 2,
    zMm: arc.centre.vMm + arc.radiusMm,
  }
  const root = contactOnSide(mount, neck, mountSide(mount, neck))
  if (root === null) return err({ kind: 'anchor-inside-body', strap: left.framed.strap, insideMm: 0 })
  return letOut(straps, root, neck)
}

/**
 * Two shoulder straps joined into one tail of `tailMm`, their mounts at `leftPoint` and `rightPoint`. The junction is where the tail lies
 * in line with the sum of the straps' pulls. Source: statics of three strings that meet, derived here.
 */
export const joinedRuns = (
  place: PlaceFrame,
  tailMm: number,
  left: { readonly framed: StrapFrame; readonly point: PointMm },
  right: { readonly framed: StrapFrame; readonly point: PointMm },
): Result<JoinedRuns, PathProblem> => {
  const { strap } = left.framed
  const apartMm = pointDistanceMm(left.point, right.point)
  if (apartMm > ONE_PLACE_MM) return err({ kind: 'junction-apart', strap, apartMm })
  const mount = mountEndOf(left.framed.anchor.mount, place.scene.tubes, left.point)
  if (mount === null) return err({ kind: 'anchor-missing', strap })
  return settledJunction({
    mount,
    tailMm,
    left: { framed: left.framed, end: shoulderEnd(place, left.framed.strap) },
    right: { framed: right.framed, end: shoulderEnd(place, right.framed.strap) },
  })
}
