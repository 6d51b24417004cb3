import { pointDistanceMm, pointSum, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import type { ShoulderEnd } from './bodyEnd'
import { contactOnMount, mountEndOf, type MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import type { PlaceFrame, StrapFrame } from './placeFrame'
import { crossesBackrest } from './portal'
import { shoulderEnd, shoulderRun } from './shoulderPath'
import type { StrapRun } from './strapRun'

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

/** Steps in which the junction is found; each leaves a small part of the error of the one before. */
const STEPS = 400
const STILL_MM = 1e-10

const firstContact = ({ edges, reach }: StrapRun): PointMm => edges[0] ?? reach.point

/** A junction tried at a place: both straps from there on. */
interface Trial {
  readonly left: StrapRun
  readonly right: StrapRun
}

/** One strap of the pair with the part of the body it lies on. */
interface JoinedStrap {
  readonly framed: StrapFrame
  readonly end: ShoulderEnd
}

const trialAt = (left: JoinedStrap, right: JoinedStrap, junction: PointMm): Result<Trial, PathProblem> => {
  const mount: MountEnd = { point: junction, radiusMm: 0, axis: null, upward: 1 }
  const leftRun = shoulderRun(left.framed, mount, left.end)
  if (!leftRun.ok) return leftRun
  const rightRun = shoulderRun(right.framed, mount, right.end)
  return rightRun.ok ? ok({ left: leftRun.value, right: rightRun.value }) : rightRun
}

/**
 * Where the tail's end would come to lie: from its contact with the mount in line with the sum of both straps' pulls at the junction
 * tried. Null where they cancel out or the junction is inside the wrapped tube.
 */
const pulledTo = (
  mount: MountEnd,
  tailMm: number,
  junction: PointMm,
  { left, right }: Trial,
): PointMm | null => {
  const contact = contactOnMount(mount, junction)
  if (contact === null) return null
  const a = firstContact(left)
  const b = firstContact(right)
  const toA = pointDistanceMm(junction, a)
  const toB = pointDistanceMm(junction, b)
  const x = (a.xMm - junction.xMm) / toA + (b.xMm - junction.xMm) / toB
  const y = (a.yMm - junction.yMm) / toA + (b.yMm - junction.yMm) / toB
  const z = (a.zMm - junction.zMm) / toA + (b.zMm - junction.zMm) / toB
  const pull = Math.hypot(x, y, z)
  if (!(pull > 1e-9)) return null
  return pointSum(contact, { x: x / pull, y: y / pull, z: z / pull }, tailMm)
}

/** Both straps and the tail in equilibrium. */
const settledJunction = (
  mount: MountEnd,
  tailMm: number,
  left: JoinedStrap,
  right: JoinedStrap,
): Result<JoinedRuns, PathProblem> => {
  const { arc } = left.end
  const middle: PointMm = {
    xMm: arc.centre.uMm,
    yMm: (left.end.yMm + right.end.yMm) / 2,
    zMm: arc.centre.vMm + arc.radiusMm,
  }
  const strap = left.framed.strap
  const start = contactOnMount(mount, middle)
  if (start === null) return err({ kind: 'anchor-inside-body', strap, insideMm: 0 })
  const awayMm = pointDistanceMm(start, middle)
  let junction = pointSum(start, unit(start, middle, awayMm), tailMm)
  for (let step = 0; ; step += 1) {
    const trial = trialAt(left, right, junction)
    if (!trial.ok) return trial
    const pulled = pulledTo(mount, tailMm, junction, trial.value)
    if (pulled === null) return err({ kind: 'anchor-inside-body', strap, insideMm: 0 })
    if (pointDistanceMm(junction, pulled) < STILL_MM || step >= STEPS) {
      const contact = contactOnMount(mount, junction) ?? start
      const { portal } = left.framed
      const isThrough = portal !== null && crossesBackrest(portal, contact, junction)
      return isThrough ? err({ kind: 'no-slot', strap }) : ok({ contact, ...trial.value })
    }
    // A junction beside its place is drawn back by both: the tail swings the other way, in the ratio of the two lengths.
    const freeMm =
      (pointDistanceMm(junction, firstContact(trial.value.left)) +
        pointDistanceMm(junction, firstContact(trial.value.right))) /
      2
    const share = freeMm / (freeMm + tailMm)
    junction = {
      xMm: junction.xMm + share * (pulled.xMm - junction.xMm),
      yMm: junction.yMm + share * (pulled.yMm - junction.yMm),
      zMm: junction.zMm + share * (pulled.zMm - junction.zMm),
    }
  }
}

const unit = (from: PointMm, to: PointMm, lengthMm: number): { x: number; y: number; z: number } => ({
  x: (to.xMm - from.xMm) / lengthMm,
  y: (to.yMm - from.yMm) / lengthMm,
  z: (to.zMm - from.zMm) / lengthMm,
})

/**
 * Two shoulder straps joined into one tail of `tailMm`, their mounts at `leftPoint` and `rightPoint`. The junction is where the sum of
 * the tail's and both straps' lengths is least for that tail: the tail lies in line with the sum of the straps' pulls. Source: statics of
 * three strings that meet, derived here.
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
  return settledJunction(
    mount,
    tailMm,
    { framed: left.framed, end: shoulderEnd(place, left.framed.strap) },
    { framed: right.framed, end: shoulderEnd(place, right.framed.strap) },
  )
}
