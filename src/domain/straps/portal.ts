import type { PosedBody } from '../body/posedBody'
import type { Direction, PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import type { Seat, Slot, SlotFace } from './seat'
import { slotOf } from './slotGate'
import { strapFamily, type Belt, type StrapId } from './strap'

/** The seat frame of one sitting with the sine and cosine of its recline taken once. */
export interface SeatFrame {
  readonly origin: PointMm
  readonly sin: number
  readonly cos: number
}

/**
 * A flat opening that a strap passes on its way from the mount to the body, in the vehicle frame: the points
 * `centre + l·long + s·short` with l and s within their limits. A slot in a shell with a thickness is two such openings, the
 * second `depthMm` nearer to the body.
 */
export interface Portal {
  readonly on: 'slot' | 'rim'
  /** The surface the slot is cut in; null for the rim. */
  readonly face: SlotFace | null
  /** Middle of the opening on the mount's side; for the rim its own point. */
  readonly centre: PointMm
  readonly long: Direction
  readonly short: Direction
  /** Square to the opening, from the body to the mount's side. */
  readonly normal: Direction
  readonly longMinMm: number
  readonly longMaxMm: number
  readonly shortMinMm: number
  readonly shortMaxMm: number
  readonly depthMm: number
  /** Square to the backrest below the rim, rearward: what a strap that does not pass the rim may not cross. Null for a slot. */
  readonly backrest: Direction | null
  /** A slot of the cushion that lies above the body, or one of the backrest ahead of it: as placed it is in nobody's seat. */
  readonly isOnWrongSide: boolean
}

const inSeat = ({ sin, cos }: SeatFrame, x: number, y: number, z: number): Direction => ({
  x: x * cos + z * sin,
  y,
  z: z * cos - x * sin,
})

export const seatPointIn = (frame: SeatFrame, { xMm, yMm, zMm }: PointMm): PointMm => ({
  xMm: frame.origin.xMm + xMm * frame.cos + zMm * frame.sin,
  yMm: frame.origin.yMm + yMm,
  zMm: frame.origin.zMm - xMm * frame.sin + zMm * frame.cos,
})

interface SlotAxes {
  readonly long: Direction
  readonly short: Direction
  readonly normal: Direction
}

/** The axes of a slot; `long` along its long side, turned in its face as `slotCorners` says. */
const slotAxes = (frame: SeatFrame, { face, turnDeg }: Slot): SlotAxes => {
  const c = turnDeg === 0 ? 1 : cosDeg(turnDeg)
  const s = turnDeg === 0 ? 0 : sinDeg(turnDeg)
  switch (face) {
    case 'back':
      return { long: inSeat(frame, 0, c, s), short: inSeat(frame, 0, -s, c), normal: inSeat(frame, 1, 0, 0) }
    case 'side':
      return { long: inSeat(frame, c, 0, s), short: inSeat(frame, -s, 0, c), normal: { x: 0, y: 1, z: 0 } }
    case 'cushion':
      return { long: inSeat(frame, s, c, 0), short: inSeat(frame, c, -s, 0), normal: inSeat(frame, 0, 0, 1) }
  }
}

/** The point that is on the body's side of a slot: the middle of the shoulder arc for shoulder straps, else the hip point. */
const bodySide = (body: PosedBody, strap: StrapId): PointMm => {
  if (strapFamily(strap) !== 'shoulder') return body.hip
  const { centre } = body.shoulderArc
  return { xMm: centre.uMm, yMm: body.hip.yMm, zMm: centre.vMm }
}

const isTowardBody = (slot: Slot, normal: Direction, at: PointMm, body: PointMm): boolean => {
  // A side wall is seen from the seat's middle, wherever the occupant's middle is.
  if (slot.face === 'side') return slot.centre.yMm < 0
  const { x, y, z } = normal
  return x * (body.xMm - at.xMm) + y * (body.yMm - at.yMm) + z * (body.zMm - at.zMm) > 0
}

const slotPortal = (
  frame: SeatFrame,
  { seat, body, belt }: { readonly seat: Seat; readonly body: PosedBody; readonly belt: Belt },
  slot: Slot,
  strap: StrapId,
): Portal => {
  const { long, short, normal } = slotAxes(frame, slot)
  const middle = seatPointIn(frame, slot.centre)
  const isToward = isTowardBody(slot, normal, middle, bodySide(body, strap))
  const sign = isToward ? -1 : 1
  const depthMm = seat.shellThicknessMm ?? 0
  // Webbing lies flat through a slot in the back or the cushion; a side wall is crossed slantwise.
  const heldMm = slot.face === 'side' ? 0 : belt.webbingMm[strapFamily(strap)] / 2
  const halfMm = Math.max(0, slot.lengthMm / 2 - heldMm)
  const outMm = (sign * depthMm) / 2
  return {
    on: 'slot',
    face: slot.face,
    centre: {
      xMm: middle.xMm + outMm * normal.x,
      yMm: middle.yMm + outMm * normal.y,
      zMm: middle.zMm + outMm * normal.z,
    },
    long,
    short,
    normal: { x: sign * normal.x, y: sign * normal.y, z: sign * normal.z },
    longMinMm: -halfMm,
    longMaxMm: halfMm,
    shortMinMm: -slot.heightMm / 2,
    shortMaxMm: slot.heightMm / 2,
    depthMm,
    backrest: null,
    // The body is above its cushion and ahead of its backrest.
    isOnWrongSide: slot.face === 'cushion' ? !isToward : slot.face === 'back' && isToward,
  }
}

/** The backrest rim as an opening without an upper end, vertical in side view whatever the recline. */
const rimPortal = (frame: SeatFrame, { backrestRim }: Seat): Portal => ({
  on: 'rim',
  face: null,
  centre: seatPointIn(frame, { ...backrestRim, yMm: 0 }),
  long: { x: 0, y: 1, z: 0 },
  short: { x: 0, y: 0, z: 1 },
  normal: { x: 1, y: 0, z: 0 },
  longMinMm: -Infinity,
  longMaxMm: Infinity,
  shortMinMm: 0,
  shortMaxMm: Infinity,
  depthMm: 0,
  backrest: inSeat(frame, 1, 0, 0),
  isOnWrongSide: false,
})

/** The slot of a strap or, for a shoulder strap without one, the upper rim of the backrest. Null when there is neither. */
export const portalOf = (
  frame: SeatFrame,
  given: { readonly seat: Seat; readonly body: PosedBody; readonly belt: Belt },
  strap: StrapId,
): Portal | null => {
  const slot = slotOf(given.seat, strap)
  if (slot !== null) return slotPortal(frame, given, slot, strap)
  return strapFamily(strap) === 'shoulder' ? rimPortal(frame, given.seat) : null
}

/** How far a point lies beyond the opening on the mount's side, mm; negative on the body's side. */
export const beyondMm = ({ centre, normal }: Portal, { xMm, yMm, zMm }: PointMm): number =>
  (xMm - centre.xMm) * normal.x + (yMm - centre.yMm) * normal.y + (zMm - centre.zMm) * normal.z

/**
 * Whether the straight way between two points would pass through the backrest: from behind it to its front, below its rim. The
 * backrest is flat from the rim down along the torso line.
 */
export const crossesBackrest = ({ centre, backrest }: Portal, from: PointMm, to: PointMm): boolean => {
  if (backrest === null) return false
  const { x, z } = backrest
  const behindMm = (from.xMm - centre.xMm) * x + (from.zMm - centre.zMm) * z
  const aheadMm = (centre.xMm - to.xMm) * x + (centre.zMm - to.zMm) * z
  if (behindMm <= 0 || aheadMm <= 0) return false
  const share = behindMm / (behindMm + aheadMm)
  return from.zMm + share * (to.zMm - from.zMm) < centre.zMm
}

/** A place in the opening's own coordinates. */
export const portalPoint = ({ centre, long, short }: Portal, longMm: number, shortMm: number): PointMm => ({
  xMm: centre.xMm + longMm * long.x + shortMm * short.x,
  yMm: centre.yMm + longMm * long.y + shortMm * short.y,
  zMm: centre.zMm + longMm * long.z + shortMm * short.z,
})

/** The opening on the body's side of a shell with a thickness. */
export const innerPortal = (portal: Portal): Portal => ({
  ...portal,
  centre: {
    xMm: portal.centre.xMm - portal.depthMm * portal.normal.x,
    yMm: portal.centre.yMm - portal.depthMm * portal.normal.y,
    zMm: portal.centre.zMm - portal.depthMm * portal.normal.z,
  },
})

/** Rounding of coordinates of some metres, mm: a crossing this little outside an edge passes it. */
const ON_EDGE_MM = 1e-9

/** Whether a point of the opening's plane is within it, its edges included. */
export const isWithinPortal = (portal: Portal, { xMm, yMm, zMm }: PointMm): boolean => {
  const { centre, long, short } = portal
  const x = xMm - centre.xMm
  const y = yMm - centre.yMm
  const z = zMm - centre.zMm
  const l = x * long.x + y * long.y + z * long.z
  const s = x * short.x + y * short.y + z * short.z
  return (
    l >= portal.longMinMm - ON_EDGE_MM &&
    l <= portal.longMaxMm + ON_EDGE_MM &&
    s >= portal.shortMinMm - ON_EDGE_MM &&
    s <= portal.shortMaxMm + ON_EDGE_MM
  )
}
