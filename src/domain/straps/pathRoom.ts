import type { PointMm } from '../geometry/point'
import type { Anchor } from './anchor'
import type { PathProblem } from './path'
import { beyondMm, type Portal } from './portal'
import type { StrapScene } from './scene'
import { strapFamily } from './strap'
import type { SolvedStrap, Touch } from './strapPath'
import { groinBottomOf, isUnderThighs } from './subPath'

/** Where a strap first meets the body, or the buckle, and the contact before. */
const meetingOf = ({ touches }: SolvedStrap): { readonly before: Touch; readonly met: Touch } | null => {
  const index = touches.findIndex(({ on }) => on === 'body' || on === 'buckle')
  const before = touches[index - 1]
  const met = touches[index]
  return before === undefined || met === undefined ? null : { before, met }
}

/** How far behind the hip point the last contact of a lap strap outside the body is. */
const lapRoomMm = ({ body }: StrapScene, strap: SolvedStrap): number => {
  const meeting = meetingOf(strap)
  return meeting === null ? Infinity : meeting.before.point.xMm - body.hip.xMm
}

/** How far the mount of an anti-submarine strap is below the groin, and an edge it bears on below where it meets the body. */
const subRoomMm = (scene: StrapScene, strap: SolvedStrap): number => {
  const meeting = meetingOf(strap)
  const buckle = strap.touches.at(-1)
  if (meeting === null || buckle === undefined) return Infinity
  const mountMm = groinBottomOf(scene, buckle.point) - strap.anchorContact.zMm
  const { before, met } = meeting
  return before.on === 'anchor' ? mountMm : Math.min(mountMm, met.point.zMm - before.point.zMm)
}

/** How far the mount of a strap is beyond its slot, mm; Infinity where it has none or goes over the rim. */
const beyondSlotMm = (portal: Portal | null, contact: PointMm): number =>
  portal === null || portal.on === 'rim' ? Infinity : beyondMm(portal, contact)

/**
 * How far a strap that has a path is from having none, mm ≥ 0, as far as that can be measured: its mount beyond its slot, a lap strap's
 * pull behind the hip point, an anti-submarine strap's mount and edge below the groin. The numbers are those of `PathProblem` with
 * the other sign, so that a search sees one without a jump. Infinity where none of them applies.
 */
export const pathRoomMm = (scene: StrapScene, portal: Portal | null, strap: SolvedStrap): number => {
  const { touches, anchor } = strap
  // Of joined straps the junction comes to the slot first.
  const first = touches.find(({ on }) => on === 'junction') ?? touches[0]
  const slotMm = beyondSlotMm(portal, first?.point ?? strap.anchorContact)
  switch (strapFamily(anchor.strap)) {
    case 'shoulder':
      return Math.max(0, slotMm)
    case 'lap':
      return Math.max(0, Math.min(slotMm, lapRoomMm(scene, strap)))
    case 'sub':
      return isUnderThighs(scene.belt, anchor.strap)
        ? Math.max(0, slotMm)
        : Math.max(0, Math.min(slotMm, subRoomMm(scene, strap)))
  }
}

/** How far a place is from giving a strap a path, mm ≥ 0; 0 where that has no measure. */
const problemMm = (problem: PathProblem): number => {
  switch (problem.kind) {
    case 'anchor-inside-body':
    case 'slot-blocked':
    case 'through-tube':
      return problem.insideMm
    case 'anchor-ahead-of-shoulder':
    case 'lap-anchor-not-behind':
    case 'sub-anchor-not-behind':
      return problem.aheadMm
    case 'clear-of-shoulder':
      return problem.clearMm
    case 'sub-anchor-not-below':
      return problem.aboveMm
    case 'slot-not-reached':
      return problem.shortMm
    case 'lap-anchor-across':
      return problem.acrossMm
    case 'junction-apart':
      return problem.apartMm
    case 'tail-too-long':
      return problem.overMm
    case 'no-slot':
    case 'flesh-not-measured':
    case 'anchor-missing':
    case 'buckle-unknown':
      return 0
  }
}

/**
 * How far a place is from giving a strap a path, mm ≥ 0: what its problem says or, first of all, how far a mount that is a point falls
 * short of its slot, whatever else is wrong there.
 */
export const pathLackMm = (
  portal: Portal | null,
  { mount }: Anchor,
  point: PointMm,
  problem: PathProblem,
): number => {
  const shortMm = mount.kind === 'wrap' ? 0 : -beyondSlotMm(portal, point)
  return shortMm > 0 ? shortMm : problemMm(problem)
}
