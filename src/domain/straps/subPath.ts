import type { CircleMm } from '../geometry/circle'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { CONTACT_MM } from './aroundArc'
import type { SubEnd, SubReach } from './bodyEnd'
import { outsideTouches, passOf } from './edgeTouches'
import type { MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import type { PlaceFrame, StrapFrame } from './placeFrame'
import type { StrapScene } from './scene'
import { pastShell } from './seatShell'
import type { Belt, StrapId } from './strap'
import { circleArc, strapPath, type SolvedStrap, type Touch } from './strapPath'
import { straightRun, throughPortal, type StrapRun } from './strapRun'

/**
 * The groin arc, drawn in to the buckle where a thin lap lets the buckle lie within it: the buckle is on the body, never in it.
 */
const groinOf = ({ body }: StrapScene, buckle: PlanePointMm): CircleMm => {
  const { centre, radiusMm } = body.groinArc
  return { centre, radiusMm: Math.min(radiusMm, planeDistanceMm(centre, buckle)) }
}

/**
 * Height of the lowest point of the groin. An anti-submarine strap holds the pelvis down only from an anchor below it; the point
 * itself does not count as below. Source: our judgement; common practice has the strap run down from the groin.
 */
const groinBottomMm = ({ centre, radiusMm }: CircleMm): number => centre.vMm - radiusMm

/** Whether the wearer sits on this strap, which then leaves the body rearward: the pair of a belt that is worn so. */
export const isUnderThighs = (belt: Pick<Belt, 'thighStraps'>, strap: StrapId): boolean =>
  belt.thighStraps === 'under-thighs' && strap !== 'sub-centre'

/** Height of the lowest point of the groin with the buckle somewhere, mm. */
export const groinBottomOf = (scene: StrapScene, buckle: PointMm): number =>
  groinBottomMm(groinOf(scene, projected(buckle, 'side')))

export const subEnd = (scene: StrapScene, buckle: PointMm): SubEnd => ({
  family: 'sub',
  groin: groinOf(scene, projected(buckle, 'side')),
  buckle,
})

/** How far the anchor, or the edge that bends the strap, is above the place it must be below, mm ≥ 0; null when below. */
const notBelowMm = ({ groin }: SubEnd, run: StrapRun): number | null => {
  const anchorMm = run.contact.zMm - groinBottomMm(groin)
  const edge = run.edges.at(-1)
  const edgeMm = edge === undefined ? -Infinity : edge.zMm - run.reach.point.zMm
  const aboveMm = Math.max(anchorMm, edgeMm)
  return aboveMm > -CONTACT_MM ? Math.max(0, aboveMm) : null
}

/** How far ahead of the groin's lowest point a strap worn under the thighs leaves it, mm ≥ 0; null at or behind that point. */
const notBehindMm = ({ groin }: SubEnd, run: StrapRun): number | null => {
  const reach = run.reach as SubReach
  const leavesMm = groin.centre.uMm - (reach.onGroin === null ? run.contact : run.reach.point).xMm
  const anchorMm = groin.centre.uMm - run.contact.xMm
  const aheadMm = Math.max(leavesMm, anchorMm)
  return aheadMm > CONTACT_MM || reach.onGroin === null ? Math.max(0, aheadMm) : null
}

/** The strap from its mount to where it first meets the groin or, clear of it, the buckle. */
export const subRun = (
  place: PlaceFrame,
  { strap, portal }: StrapFrame,
  mount: MountEnd,
  end: SubEnd,
): Result<StrapRun, PathProblem> => {
  const { groin, buckle } = end
  const apartMm =
    planeDistanceMm(projected(mount.point, 'side'), groin.centre) - groin.radiusMm - mount.radiusMm
  const { contact, reach } = straightRun(mount, end)
  const inside: PathProblem = { kind: 'anchor-inside-body', strap, insideMm: Math.max(0, -apartMm) }
  if (apartMm < CONTACT_MM || contact === null || reach === null) return err(inside)
  if (planeDistanceMm(projected(contact, 'side'), projected(buckle, 'side')) < CONTACT_MM) return err(inside)
  const straight = { contact, reach }
  const run =
    portal === null
      ? pastShell(strap, mount, end, place.shell, straight)
      : throughPortal(strap, mount, end, portal, straight)
  const judged = run.ok ? run.value : { contact, edges: [], edgesOn: 'slot' as const, reach, pass: null }
  const isShort = !run.ok && run.error.kind !== 'slot-not-reached' && run.error.kind !== 'no-slot'
  if (isShort) return run
  if (isUnderThighs(place.scene.belt, strap)) {
    const aheadMm = notBehindMm(end, judged)
    return aheadMm === null ? run : err({ kind: 'sub-anchor-not-behind', strap, aheadMm })
  }
  const aboveMm = notBelowMm(end, judged)
  return aboveMm === null ? run : err({ kind: 'sub-anchor-not-below', strap, aboveMm })
}

/** Adds the contacts on the groin and the buckle. */
const addGroinTouches = (touches: Touch[], { groin, buckle }: SubEnd, reach: SubReach): void => {
  const last: Touch = { on: 'buckle', point: buckle, bendDeg: 0, arcToNext: null }
  const { onGroin, point } = reach
  if (onGroin === null) {
    touches.push(last)
    return
  }
  const { high, sweepRad, toBuckleMm } = onGroin
  const share = toBuckleMm === 0 ? 0 : (groin.radiusMm * sweepRad) / toBuckleMm
  const yMm = point.yMm + share * (buckle.yMm - point.yMm)
  touches.push(
    {
      on: 'body',
      point,
      bendDeg: (sweepRad * 180) / Math.PI,
      arcToNext: circleArc(groin, projected(point, 'side'), -sweepRad),
    },
    { on: 'body', point: { xMm: high.uMm, yMm, zMm: high.vMm }, bendDeg: 0, arcToNext: null },
    last,
  )
}

/**
 * The taut anti-submarine strap: anchor, edges where it bears on them, round the groin where it has to, buckle. When it clears the
 * groin it runs straight to the buckle, and the buckle is its contact with the body.
 */
export const subStrap = (
  { strap, anchor }: StrapFrame,
  end: SubEnd,
  run: StrapRun,
): Result<SolvedStrap, PathProblem> => {
  const touches = outsideTouches(run, null)
  addGroinTouches(touches, end, run.reach as SubReach)
  return ok({
    anchor,
    path: strapPath(strap, touches),
    touches,
    anchorContact: run.contact,
    pass: passOf(run),
  })
}
