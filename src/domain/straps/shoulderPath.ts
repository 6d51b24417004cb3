import { planeDistanceMm, projected } from '../geometry/plane'
import type { PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { CONTACT_MM } from './aroundArc'
import type { ShoulderEnd } from './bodyEnd'
import { outsideTouches, passOf, tailPassOf } from './edgeTouches'
import type { MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import type { PlaceFrame, StrapFrame } from './placeFrame'
import { addFrontTouches, addTopTouches, clearOfShoulderMm, type FrontRun } from './shoulderFront'
import { strapPath, type SolvedStrap } from './strapPath'
import { lastOutside, straightRun, throughPortal, type StrapRun } from './strapRun'

/** What a shoulder strap's front part ends at: a buckle that can be led to, one inside the shoulder, or none that is known. */
export type ShoulderFront = FrontRun | 'inside-shoulder' | null

const isAhead = (from: PointMm, onBody: PointMm): boolean => from.xMm - onBody.xMm < CONTACT_MM

/** The rear part: from the mount to where the strap first meets the shoulder arc. Walked forward the arc lies on the left, below. */
export const shoulderRun = (
  { strap, portal }: StrapFrame,
  mount: MountEnd,
  end: ShoulderEnd,
): Result<StrapRun, PathProblem> => {
  const { arc } = end
  const apartMm = planeDistanceMm(projected(mount.point, 'side'), arc.centre) - arc.radiusMm - mount.radiusMm
  const { contact, reach } = straightRun(mount, end)
  if (apartMm < CONTACT_MM || contact === null || reach === null)
    return err({ kind: 'anchor-inside-body', strap, insideMm: Math.max(0, -apartMm) })
  const run = throughPortal(strap, mount, end, portal, { contact, reach })
  const isStraight = run.ok
    ? run.value.edges.length === 0
    : run.error.kind === 'slot-not-reached' || run.error.kind === 'no-slot'
  if (isStraight && isAhead(contact, reach.point)) return aheadProblem(strap, contact, reach.point)
  if (run.ok && isAhead(lastOutside(run.value), run.value.reach.point))
    return aheadProblem(strap, lastOutside(run.value), run.value.reach.point)
  return run
}

const aheadProblem = (
  strap: StrapFrame['strap'],
  from: PointMm,
  onBody: PointMm,
): Result<never, PathProblem> =>
  err({ kind: 'anchor-ahead-of-shoulder', strap, aheadMm: Math.max(0, onBody.xMm - from.xMm) })

export const shoulderEnd = ({ scene }: PlaceFrame, strap: StrapFrame['strap']): ShoulderEnd => {
  const { left, right } = scene.body.shoulderPoint
  const yMm = (strap === 'shoulder-left' ? left : right).yMm
  return { family: 'shoulder', arc: scene.body.shoulderArc, yMm }
}

/**
 * The taut shoulder strap: anchor, slot or rim where it bears on it, rear touching point of the shoulder arc, over the arc, over the
 * chest where that is in the way, buckle. Fails with the reason when the anchor is in the body or not behind it, or when a
 * straight strap would not bear on the shoulder. `tailFrom`: where the tail of joined straps leaves the mount; null without one.
 */
export const shoulderStrap = (
  { scene }: PlaceFrame,
  { strap, anchor, portal }: StrapFrame,
  run: StrapRun,
  front: ShoulderFront,
  tailFrom: PointMm | null,
): Result<SolvedStrap, PathProblem> => {
  const { body } = scene
  const touches = outsideTouches(run, tailFrom)
  const rear = run.reach.point
  if (front === null) {
    const { left, right } = body.shoulderPoint
    addTopTouches(touches, body, rear, strap === 'shoulder-left' ? left : right)
  } else {
    if (front === 'inside-shoulder') return err({ kind: 'buckle-unknown', strap })
    const clearMm = clearOfShoulderMm(
      body,
      projected(lastOutside(run), 'side'),
      projected(rear, 'side'),
      front,
    )
    if (clearMm !== null) return err({ kind: 'clear-of-shoulder', strap, clearMm })
    addFrontTouches(touches, body, rear, front)
  }
  return ok({
    anchor,
    path: strapPath(strap, touches),
    touches,
    anchorContact: tailFrom ?? run.contact,
    pass: passOf(run) ?? (tailFrom && tailPassOf(portal, tailFrom, run.contact)),
  })
}
