import { isInsideOutline } from '../../geometry/outline'
import { planePoint, type PlanePointMm } from '../../geometry/plane'
import { pointBetween, type PointMm } from '../../geometry/point'
import { planeSegmentIntersection } from '../../geometry/segment'
import { seatPoint } from '../../body/pose'
import type { Seat, Slot, SlotFace } from '../../straps/seat'
import { type StrapFamily, strapFamily, type StrapId, strapSide } from '../../straps/strap'
import { atan2Deg } from '../../units/angle'
import type { Layout, Place } from '../document/layout'
import { LIMITS } from '../document/limits'
import { drawnPose, shoulderMidPoint } from './handles'
import { solvedAsDrawn } from './startingMount'

/*
 * Where a new slot starts. Starting values, not advice: a slot is measured on the seat, and what is right is said by the rules for
 * the people who really sit there.
 */

const FACES: Readonly<Record<StrapFamily, SlotFace>> = { shoulder: 'back', lap: 'side', sub: 'cushion' }

/** Spare length of a slot beside the webbing, and its height. Starting values, our judgement. */
const SPARE_MM = 15
const SLOT_HEIGHT_MM = 25

/** Where slots start that no strap asks for, in the seat frame. Starting values, our judgement: shoulder slots just below the
 * shoulder, lap slots beside and behind the hip, thigh slots under it. */
const BELOW_SHOULDER_MM = 30
const BELOW_RIM_MM = 30
const LAP_SLOT = { xMm: 70, zMm: -60 }
const SUB_SLOT_AHEAD_MM = 60
const HALF_SHOULDER_SLOTS_MM = 80
const HALF_SUB_SLOTS_MM = 55

/** Turn of a lap slot across a strap that falls rearward at about 52° on a seat that is upright. */
const LAP_SLOT_TURN_DEG = 38

/** So far below the hip point, mm, that no strap is below it: a rim there stands in nobody's way. */
const NO_RIM_MM = -10_000

type Opening = Pick<Slot, 'face' | 'centre' | 'turnDeg'> & {
  /** How far the strap shifts along the long and the short side on its way through the shell's thickness, mm ≥ 0. */
  readonly slantMm: readonly [long: number, short: number]
}

/** A strap pulled straight, in the seat frame as drawn: its last straight piece before the body. */
interface StraightStrap {
  readonly from: PointMm
  readonly to: PointMm
}

/** The strap as it would run with the first occupant if there were no shell; null while it has no path even then. */
const straightStrap = (layout: Layout, place: Place, strap: StrapId): StraightStrap | null => {
  const { seat } = place
  const bare: Seat = {
    ...seat,
    sideOutline: [],
    backrestRim: { ...seat.backrestRim, zMm: NO_RIM_MM },
  }
  const path = solvedAsDrawn(layout, { ...place, seat: bare }).paths.find((each) => each.strap === strap)
  const contacts = path?.contacts ?? []
  const bodyAt = contacts.findIndex(({ on }) => on === 'body' || on === 'buckle')
  const from = contacts[bodyAt - 1]
  const to = contacts[bodyAt]
  if (from === undefined || to === undefined) return null
  const pose = drawnPose(place)
  return { from: seatPoint(pose, from.point), to: seatPoint(pose, to.point) }
}

const side = ({ xMm, zMm }: Pick<PointMm, 'xMm' | 'zMm'>): PlanePointMm => planePoint(xMm, zMm)

/** The widest half of the shell from above, mm. */
const halfWidthMm = ({ topOutline }: Seat): number =>
  Math.max(0, ...topOutline.map(({ yMm }) => Math.abs(yMm)))

/** The strap from where it comes in between the sides of the shell; null for one that stays beyond them. */
const betweenSides = (run: StraightStrap, seat: Seat): StraightStrap | null => {
  const { from, to } = run
  const wallMm = Math.sign(from.yMm) * halfWidthMm(seat)
  if (Math.abs(from.yMm) <= Math.abs(wallMm)) return run
  const share = (wallMm - from.yMm) / (to.yMm - from.yMm)
  return share > 0 && share < 1 ? { from: pointBetween(from, to, share), to } : null
}

/** How far along the strap, 0 at the mount to 1 at the body, it crosses the shell's outline in side view, and the edge there. */
interface Crossing {
  readonly share: number
  readonly isLevel: boolean
}

const crossingsOf = ({ from, to }: StraightStrap, { sideOutline }: Seat): readonly Crossing[] => {
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.zMm - from.zMm)
  return sideOutline
    .flatMap((end, index): readonly Crossing[] => {
      const start = sideOutline.at(index - 1)
      const met = start && planeSegmentIntersection(side(from), side(to), side(start), side(end))
      if (start === undefined || met === undefined || met === null) return []
      const share = Math.hypot(met.uMm - from.xMm, met.vMm - from.zMm) / lengthMm
      return [{ share, isLevel: Math.abs(end.xMm - start.xMm) >= Math.abs(end.zMm - start.zMm) }]
    })
    .toSorted((a, b) => a.share - b.share)
}

const isInShell = ({ sideOutline }: Seat, point: PointMm): boolean =>
  isInsideOutline(sideOutline.map(side), side(point))

/** Whole numbers, as one would measure them; the same on both sides of the seat. */
const whole = (value: number): number => Math.sign(value) * Math.round(Math.abs(value)) + 0

const DEPTHS = { back: 'xMm', side: 'yMm', cushion: 'zMm' } as const

/** Near that share of the strap, where the wall is at a whole millimetre: in a wall that the strap slants through it is elsewhere too. */
const atWholeDepth = ({ from, to }: StraightStrap, face: SlotFace, share: number): PointMm => {
  const depth = DEPTHS[face]
  const at = pointBetween(from, to, share)
  const there = (whole(at[depth]) - from[depth]) / (to[depth] - from[depth])
  return there > 0 && there < 1 ? pointBetween(from, to, there) : at
}

/** How the strap slants through the thickness of the back or the cushion. */
const slantThrough = (
  { from, to }: StraightStrap,
  face: 'back' | 'cushion',
  seat: Seat,
): Opening['slantMm'] => {
  const dx = Math.abs(to.xMm - from.xMm)
  const dz = Math.abs(to.zMm - from.zMm)
  const [through, along] = face === 'back' ? [dx, dz] : [dz, dx]
  const thickness = through === 0 ? 0 : (seat.shellThicknessMm ?? 0) / through
  return [thickness * Math.abs(to.yMm - from.yMm), thickness * along]
}

/** Through the first wall of the shell that the strap comes to from its mount, in the middle of that wall. */
const throughOutline = (run: StraightStrap, seat: Seat): Opening | null => {
  const [outer, next] = crossingsOf(run, seat)
  if (outer === undefined) return null
  const inner = isInShell(seat, run.from) ? undefined : next
  const face = outer.isLevel ? 'cushion' : 'back'
  const centre = atWholeDepth(run, face, (outer.share + (inner ?? outer).share) / 2)
  return { face, centre, turnDeg: 0, slantMm: slantThrough(run, face, seat) }
}

/** Through the backrest below its rim, where a shoulder strap from too low would cut it. */
const throughBackrest = (run: StraightStrap, seat: Seat): Opening | null => {
  const { from, to } = run
  const { xMm, zMm } = seat.backrestRim
  const share = (xMm - from.xMm) / (to.xMm - from.xMm)
  if (!(share > 0 && share < 1)) return null
  const centre = atWholeDepth(run, 'back', share)
  if (centre.zMm >= zMm) return null
  return { face: 'back', centre, turnDeg: 0, slantMm: slantThrough(run, 'back', seat) }
}

/** Through the side of the shell at a place on it, across the strap. */
const throughSide = (run: StraightStrap, centre: PointMm, seat: Seat): Opening => {
  const { from, to } = run
  const acrossDeg = atan2Deg(to.xMm - from.xMm, from.zMm - to.zMm)
  // A slit has no direction: turned by half a turn it is the same.
  const turnDeg = acrossDeg > 90 ? acrossDeg - 180 : acrossDeg <= -90 ? acrossDeg + 180 : acrossDeg
  const thickness = (seat.shellThicknessMm ?? 0) / Math.abs(to.yMm - from.yMm)
  return {
    face: 'side',
    centre,
    turnDeg,
    // Its short side lies along the strap as seen from the side.
    slantMm: [0, thickness * Math.hypot(to.xMm - from.xMm, to.zMm - from.zMm)],
  }
}

/** Where the strap, pulled straight, crosses the shell as drawn; null where it does not or has no path. */
const crossedOpening = (layout: Layout, place: Place, strap: StrapId): Opening | null => {
  const { seat } = place
  const run = straightStrap(layout, place, strap)
  if (run === null) return null
  if (strapFamily(strap) === 'shoulder') return throughBackrest(run, seat)
  const within = betweenSides(run, seat)
  if (within === null) return null
  return within !== run && isInShell(seat, within.from)
    ? throughSide(run, within.from, seat)
    : throughOutline(within, seat)
}

/** The face of the shell in which a strap without a slot would get one; null where the straight strap crosses none. */
export const crossedFace = (layout: Layout, place: Place, strap: StrapId): SlotFace | null =>
  crossedOpening(layout, place, strap)?.face ?? null

/** Where a slot starts while no strap says where it is wanted. */
const plainOpening = (place: Place, strap: StrapId): Opening => {
  const family = strapFamily(strap)
  const sign = { left: -1, centre: 0, right: 1 }[strapSide(strap)]
  return {
    face: FACES[family],
    centre: plainCentre(place, family, sign),
    turnDeg: family === 'lap' ? LAP_SLOT_TURN_DEG : 0,
    slantMm: [0, 0],
  }
}

const plainCentre = (place: Place, family: StrapFamily, sign: number): Slot['centre'] => {
  const { seat } = place
  switch (family) {
    case 'shoulder': {
      const shoulder = shoulderMidPoint(place)
      const rimMm = seat.backrestRim.zMm - BELOW_RIM_MM
      const shoulderMm =
        shoulder === null ? rimMm : seatPoint(drawnPose(place), shoulder).zMm - BELOW_SHOULDER_MM
      return {
        xMm: seat.backrestRim.xMm,
        yMm: sign * HALF_SHOULDER_SLOTS_MM,
        zMm: Math.min(rimMm, shoulderMm),
      }
    }
    case 'lap':
      return { ...LAP_SLOT, yMm: sign * halfWidthMm(seat) }
    case 'sub':
      return { xMm: 0 - SUB_SLOT_AHEAD_MM, yMm: sign * HALF_SUB_SLOTS_MM, zMm: 0 - seat.hipHeightMm }
  }
}

/** A slot for one strap, sized to its webbing: where the straight strap crosses the shell, else where such slots usually are. */
export const startingSlot = (layout: Layout, place: Place, strap: StrapId): Omit<Slot, 'id'> => {
  const opening = crossedOpening(layout, place, strap) ?? plainOpening(place, strap)
  const { face, centre, turnDeg, slantMm } = opening
  const lengthMm = place.belt.webbingMm[strapFamily(strap)] + SPARE_MM + slantMm[0]
  return {
    straps: [strap],
    face,
    centre: { xMm: whole(centre.xMm), yMm: whole(centre.yMm), zMm: whole(centre.zMm) },
    lengthMm: Math.min(LIMITS.slotLengthMm.max, Math.ceil(lengthMm)),
    heightMm: Math.min(LIMITS.slotHeightMm.max, Math.ceil(SLOT_HEIGHT_MM + slantMm[1])),
    turnDeg: whole(turnDeg),
  }
}
