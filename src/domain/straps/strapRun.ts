import { planeDistanceMm, projected } from '../geometry/plane'
import { pointBetween, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { CONTACT_MM } from './aroundArc'
import { reachOf, type BodyEnd, type Reach } from './bodyEnd'
import { arcPass } from './arcPass'
import { contactOnMount, type MountEnd } from './mountEnd'
import type { PathProblem } from './path'
import { beyondMm, crossesBackrest, innerPortal, isWithinPortal, type Portal } from './portal'
import type { StrapId } from './strap'
import { tautString, type InTheWay, type TautString } from './tautString'

/** Where a strap passes its slot or the backrest rim; through a thick shell, its opening on the mount's side. */
interface PortalPass {
  readonly portal: Portal
  readonly point: PointMm
  /** It bears on an edge there or, in a thick shell, on an edge of the other opening. */
  readonly touches: boolean
}

/** A strap from its mount to where it first meets the body. */
export interface StrapRun {
  readonly contact: PointMm
  /** Where it bears on edges of its slot, on the rim or on the shell, from the mount on. */
  readonly edges: readonly PointMm[]
  readonly edgesOn: 'slot' | 'rim' | 'seat-side'
  readonly reach: Reach
  /** Null when it passes nothing. */
  readonly pass: PortalPass | null
}

/** The contact next to the body: the effective anchor. */
export const lastOutside = (run: StrapRun): PointMm => run.edges.at(-1) ?? run.contact

/** A straight strap between the mount and the body. */
export interface StraightRun {
  readonly contact: PointMm
  readonly reach: Reach
}

/** Steps in which mount and body contact are found from each other; each at least squares what is left. */
const MEETING_STEPS = 60

/** Two contacts this close are the same, mm: rounding in coordinates of some metres. */
const SAME_MM = 1e-11

const isSame = (a: PointMm, b: PointMm): boolean =>
  Math.abs(a.xMm - b.xMm) < SAME_MM && Math.abs(a.yMm - b.yMm) < SAME_MM && Math.abs(a.zMm - b.zMm) < SAME_MM

/** What a strap is first aimed at, before its contacts are known. */
const firstAim = (end: BodyEnd): PointMm => {
  switch (end.family) {
    case 'shoulder':
      return { xMm: end.arc.centre.uMm, yMm: end.yMm, zMm: end.arc.centre.vMm }
    case 'lap':
      return end.hip
    case 'sub':
      return end.buckle
  }
}

/** A contact with a wrapped tube to begin with. Seen along it the tube may cover what is aimed at, but not where its middle's strap would end. */
const firstContact = (mount: MountEnd, end: BodyEnd): PointMm | null => {
  const aimed = contactOnMount(mount, firstAim(end))
  if (aimed !== null) return aimed
  const reach = reachOf(end, mount.point)
  return reach && contactOnMount(mount, reach.point)
}

/** The strap pulled straight; a contact that cannot be had is null. */
export const straightRun = (
  mount: MountEnd,
  end: BodyEnd,
): { readonly contact: PointMm | null; readonly reach: Reach | null } => {
  let contact = mount.axis === null ? mount.point : firstContact(mount, end)
  if (contact === null) return { contact, reach: null }
  let reach = reachOf(end, contact)
  if (mount.axis === null) return { contact, reach }
  for (let step = 0; step < MEETING_STEPS && reach !== null; step += 1) {
    const next = contactOnMount(mount, reach.point)
    if (next === null) return { contact: null, reach }
    const isStill = isSame(next, contact)
    contact = next
    reach = reachOf(end, contact)
    if (isStill) break
  }
  return { contact, reach }
}

/** Where the piece between two points on opposite sides of an opening's plane crosses it. */
export const crossingOf = (portal: Portal, contact: PointMm, body: PointMm): PointMm => {
  const far = beyondMm(portal, contact)
  const near = beyondMm(portal, body)
  return pointBetween(body, contact, near / (near - far))
}

/** Whether a lap strap comes by a place ahead of the hip point: an aim taken from there would look back. */
const isPastHip = (end: BodyEnd, { xMm }: PointMm): boolean => end.family === 'lap' && xMm < end.hip.xMm

/** Whether a strap that only the outer opening was asked of bears on it behind the hip point and passes the inner one clean. */
const isHeldAlone = (end: BodyEnd, inner: Portal, { crossings, bears, reach }: TautString): boolean => {
  const [edge] = crossings
  return (
    edge !== undefined &&
    bears[0] === true &&
    !isPastHip(end, edge) &&
    isWithinPortal(inner, crossingOf(inner, edge, reach.point))
  )
}

/**
 * The taut strap through its opening. Through a thick wall beside the hip a lap strap may bear on the outer opening behind the hip point
 * and merely pass the inner one ahead of it: then the outer one alone decides. Where that strap would not pass the inner one either, it
 * bears on it there, ahead of the hip point.
 */
const tautThrough = (
  mount: MountEnd,
  end: BodyEnd,
  portal: Portal,
  straight: StraightRun,
): TautString | InTheWay => {
  const taut = tautString(mount, end, portal, straight)
  const isAsked = end.family === 'lap' && portal.depthMm > 0
  if (!isAsked || !('by' in taut || taut.crossings.some((at) => isPastHip(end, at)))) return taut
  const alone = tautString(mount, end, { ...portal, depthMm: 0 }, straight)
  if (!('by' in alone) && isHeldAlone(end, innerPortal(portal), alone)) return alone
  return 'by' in taut
    ? taut
    : { ...taut, bears: taut.crossings.map((at, index) => taut.bears[index] === true || isPastHip(end, at)) }
}

/** The strap bent over edges of its opening. */
const bentRun = (
  strap: StrapId,
  mount: MountEnd,
  end: BodyEnd,
  portal: Portal,
  straight: StraightRun,
): Result<StrapRun, PathProblem> => {
  const taut = tautThrough(mount, end, portal, straight)
  if ('by' in taut) {
    const { by, at } = taut
    return err({
      kind: 'slot-blocked',
      strap,
      by,
      insideMm: by === 'tube' ? inTubeMm(mount, at) : Math.max(0, inBodyMm(end, at)),
    })
  }
  const edges = taut.crossings.filter((_, index) => taut.bears[index])
  const last = edges.at(-1)
  const insideMm = last === undefined ? 0 : inBodyMm(end, last) + CONTACT_MM
  if (insideMm > 0 && last !== undefined && end.family !== 'lap')
    return err({ kind: 'slot-blocked', strap, by: 'body', insideMm: Math.max(0, insideMm - CONTACT_MM) })
  return ok({
    contact: taut.contact,
    edges,
    edgesOn: portal.on,
    reach: taut.reach,
    pass: { portal, point: taut.crossings[0] ?? taut.contact, touches: edges.length > 0 },
  })
}

/** How far a point is inside the wrapped tube, mm ≥ 0. */
const inTubeMm = ({ point, radiusMm, axis }: MountEnd, at: PointMm): number => {
  if (axis === null) return 0
  const dx = at.xMm - point.xMm
  const dy = at.yMm - point.yMm
  const dz = at.zMm - point.zMm
  const along = dx * axis.x + dy * axis.y + dz * axis.z
  return Math.max(0, radiusMm - Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - along * along)))
}

/** How far a point is inside the part of the body that the strap meets, mm; negative outside. */
export const inBodyMm = (end: BodyEnd, at: PointMm): number => {
  switch (end.family) {
    case 'shoulder':
      return end.arc.radiusMm - planeDistanceMm(end.arc.centre, projected(at, 'side'))
    case 'sub':
      return end.groin.radiusMm - planeDistanceMm(end.groin.centre, projected(at, 'side'))
    case 'lap': {
      const outMm = end.outward * (at.yMm - end.hip.yMm) - end.cylinderHalfMm
      const share = outMm <= 0 ? 0 : end.endMm <= 0 ? 1 : Math.min(1, outMm / end.endMm)
      const sectionMm = end.radiusMm * Math.sqrt(1 - share * share)
      return sectionMm - Math.hypot(at.xMm - end.hip.xMm, at.zMm - end.hip.zMm)
    }
  }
}

/** How far the mount is on the body's side of its slot, mm ≥ 0; null when it lies beyond the slot, or the strap passes the rim. */
const shortOfSlotMm = (portal: Portal, contact: PointMm): number | null => {
  if (portal.on === 'rim') return null
  const awayMm = beyondMm(portal, contact)
  return awayMm > 0 ? null : Math.max(0, -awayMm)
}

/**
 * The strap through its opening: straight where that passes every part of it clean, else bent over its edges. The rim acts only where
 * mount and body are on opposite sides of it; an anchor ahead of it but behind the backrest has no way. Where the strap would meet
 * the body outside its slot the slot is in the body; a strap that lies on the groin as it passes is judged there.
 */
export const throughPortal = (
  strap: StrapId,
  mount: MountEnd,
  end: BodyEnd,
  portal: Portal | null,
  straight: StraightRun,
): Result<StrapRun, PathProblem> => {
  const { contact, reach } = straight
  const clean: StrapRun = { contact, edges: [], edgesOn: 'slot', reach, pass: null }
  if (portal === null) return ok(clean)
  const shortMm = shortOfSlotMm(portal, contact)
  if (shortMm !== null)
    return err({
      kind: 'slot-not-reached',
      strap,
      shortMm,
      ...(portal.isOnWrongSide ? { isSlotOnWrongSide: true } : {}),
    })
  const inner = portal.depthMm > 0 ? innerPortal(portal) : portal
  const outsideMm = beyondMm(inner, reach.point)
  if (outsideMm >= 0) {
    if (end.family === 'sub') return arcPass(strap, end, portal, straight)
    return portal.on === 'rim'
      ? ok(clean)
      : err({ kind: 'slot-blocked', strap, by: 'body', insideMm: outsideMm })
  }
  if (!(beyondMm(portal, contact) > 0))
    return crossesBackrest(portal, contact, reach.point) ? err({ kind: 'no-slot', strap }) : ok(clean)
  const point = crossingOf(portal, contact, reach.point)
  const isClean =
    isWithinPortal(portal, point) &&
    (inner === portal || isWithinPortal(inner, crossingOf(inner, contact, reach.point)))
  if (isClean) return ok({ ...clean, pass: { portal, point, touches: false } })
  return bentRun(strap, mount, end, portal, straight)
}
