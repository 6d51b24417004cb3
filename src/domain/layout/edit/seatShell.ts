import type { Seat } from '../../straps/seat'
import { atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import type { Layout } from '../document/layout'
import { limited, type NumberLimits } from '../document/limits'
import { withPlaceChanged } from './replace'

/**
 * A seat shell as a tape and an angle finder give it. Lengths along the back run up the torso line, "behind" is square to it and
 * rearward. How high the hip point is above the cushion is the seat's own `hipHeightMm` and not repeated here.
 */
export interface ShellSizes {
  /** From the corner between cushion and back up the front of the back to its top, > 0. */
  readonly backLengthMm: number
  /** Front of the back behind the hip point, > 0. */
  readonly hipToBackMm: number
  /** Shell with its padding, square to the surface, back and cushion alike, > 0. */
  readonly thicknessMm: number
  /** From the same corner forward along the cushion to its front edge, > 0. */
  readonly cushionLengthMm: number
  /** Between the front of the back and the top of the cushion; 90° is square, larger is more open. */
  readonly backToCushionDeg: number
  /** Across the shell beside the hip point, > 0. */
  readonly hipWidthMm: number
  /** Across the back of the shell, > 0. */
  readonly shoulderWidthMm: number
  /** From the top of the back down to the rim over which a strap without a slot passes; negative: the rim is above it. */
  readonly rimBelowTopMm: number
  /** From the front of the back rearward to that rim. */
  readonly rimBehindFrontMm: number
}

export type ShellMade = Pick<Seat, 'sideOutline' | 'topOutline' | 'backrestRim'>

const mm = (min: number, max: number): NumberLimits => ({ min, max, unit: 'mm' })

/**
 * What may be typed. Our judgement, as every limit of a layout: wide enough for any seat, they say nothing about what is safe. The
 * shortest cushion at the widest angle still ends ahead of the hip point of the deepest back: 300 · sin 130° = 230 > 200.
 */
export const SHELL_LIMITS = {
  backLengthMm: mm(200, 1_100),
  hipToBackMm: mm(50, 200),
  thicknessMm: mm(5, 120),
  cushionLengthMm: mm(300, 700),
  backToCushionDeg: { min: 90, max: 130, unit: '°' },
  hipWidthMm: mm(250, 900),
  shoulderWidthMm: mm(250, 900),
  rimBelowTopMm: mm(-100, 1_000),
  rimBehindFrontMm: mm(-100, 200),
} as const satisfies Record<keyof ShellSizes, NumberLimits>

/** The corner between back and cushion is cut off by this much along either face, inside and outside. Our judgement. */
const CORNER_CUT_MM = 60

/** The rim stays this far above the corner, clear of its cut, so that back and rim can be told apart. Our judgement. */
const RIM_ABOVE_CORNER_MM = 100

interface SidePoint {
  readonly xMm: number
  readonly zMm: number
}

/** How far down from the top of the back the rim may be typed: clear of the corner between back and cushion. */
export const rimBelowTopLimits = (sizes: ShellSizes): NumberLimits => ({
  ...SHELL_LIMITS.rimBelowTopMm,
  max: Math.max(0, sizes.backLengthMm - RIM_ABOVE_CORNER_MM),
})

/** The shortest back that still carries its rim clear of the corner. */
export const backLengthLimits = (sizes: ShellSizes): NumberLimits => ({
  ...SHELL_LIMITS.backLengthMm,
  min: Math.max(SHELL_LIMITS.backLengthMm.min, sizes.rimBelowTopMm + RIM_ABOVE_CORNER_MM),
})

/**
 * Where the cushion, which passes `hipHeightMm` below the hip point, meets the front of the back, seat frame.
 * Source: the cushion runs along (−sin a, cos a) from (0, −h); it reaches x = b at z = −h − b·cos a / sin a.
 */
const innerCorner = (hipHeightMm: number, hipToBackMm: number, angleDeg: number): SidePoint => ({
  xMm: hipToBackMm,
  zMm: 0 - hipHeightMm - (hipToBackMm * cosDeg(angleDeg)) / sinDeg(angleDeg),
})

/**
 * Both outlines and the rim made from sizes, seat frame. The side outline is two flat plates of one thickness with the corner cut
 * off; the top outline is as wide as the hips from its front edge to the hip point and goes over to the width of the back there.
 * Real shells are rounder: the shape is our judgement, a start for points moved by hand; it draws the seat and straps do not meet it.
 * The rim is what straps meet; it is exactly where its two sizes put it. `sizes` are taken as inside SHELL_LIMITS.
 */
export const shellOf = (sizes: ShellSizes, hipHeightMm: number): ShellMade => {
  const { hipToBackMm, thicknessMm, cushionLengthMm, backToCushionDeg } = sizes
  const s = sinDeg(backToCushionDeg)
  const c = cosDeg(backToCushionDeg)
  const inner = innerCorner(hipHeightMm, hipToBackMm, backToCushionDeg)
  const topMm = inner.zMm + sizes.backLengthMm
  const backMm = hipToBackMm + thicknessMm
  // Both faces of the corner moved out by the thickness: the cushion's underside runs thickness / sin a lower at the same x.
  const outer = innerCorner(hipHeightMm + thicknessMm / s, backMm, backToCushionDeg)
  const forward = (from: SidePoint, byMm: number): SidePoint => ({
    xMm: from.xMm - byMm * s,
    zMm: from.zMm + byMm * c,
  })
  const front = forward(inner, cushionLengthMm)
  return {
    sideOutline: [
      front,
      forward(inner, CORNER_CUT_MM),
      { xMm: hipToBackMm, zMm: inner.zMm + CORNER_CUT_MM },
      { xMm: hipToBackMm, zMm: topMm },
      { xMm: backMm, zMm: topMm },
      { xMm: backMm, zMm: outer.zMm + CORNER_CUT_MM },
      forward(outer, CORNER_CUT_MM),
      { xMm: front.xMm - thicknessMm * c, zMm: front.zMm - thicknessMm * s },
    ],
    topOutline: planOutline(sizes, front.xMm, backMm),
    backrestRim: { xMm: hipToBackMm + sizes.rimBehindFrontMm, zMm: topMm - sizes.rimBelowTopMm },
  }
}

const planOutline = (sizes: ShellSizes, frontMm: number, backMm: number): Seat['topOutline'] => {
  const hipMm = sizes.hipWidthMm / 2
  const shoulderMm = sizes.shoulderWidthMm / 2
  const left = [
    { xMm: frontMm, yMm: 0 - hipMm },
    { xMm: 0, yMm: 0 - hipMm },
    { xMm: sizes.hipToBackMm, yMm: 0 - shoulderMm },
    { xMm: backMm, yMm: 0 - shoulderMm },
  ]
  return [...left, ...left.toReversed().map((point) => ({ ...point, yMm: 0 - point.yMm }))]
}

interface Pair {
  readonly alongMm: number
  readonly acrossMm: number
}

/** From the least to the greatest place where a closed outline crosses a line `along` = `atMm`; null when it does not. */
const crossed = (outline: readonly Pair[], atMm: number): readonly [number, number] | null => {
  const places = outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from
    if (from.alongMm <= atMm === to.alongMm <= atMm) return []
    const share = (atMm - from.alongMm) / (to.alongMm - from.alongMm)
    return [from.acrossMm + share * (to.acrossMm - from.acrossMm)]
  })
  return places.length === 0 ? null : [Math.min(...places), Math.max(...places)]
}

/** Just inside an end of an outline, where a line across still meets both of its faces. */
const INSIDE_MM = 1

const backFaces = (seat: Seat): { readonly frontMm: number; readonly thicknessMm: number } => {
  const outline = seat.sideOutline.map(({ xMm, zMm }) => ({ alongMm: zMm, acrossMm: xMm }))
  const topMm = Math.max(...outline.map((point) => point.alongMm))
  const found =
    crossed(outline, Math.min(seat.backrestRim.zMm, topMm - INSIDE_MM)) ?? crossed(outline, topMm - INSIDE_MM)
  const [frontMm, rearMm] = found ?? [SHELL_LIMITS.hipToBackMm.min, SHELL_LIMITS.hipToBackMm.min]
  return {
    frontMm: limited(frontMm, SHELL_LIMITS.hipToBackMm),
    thicknessMm: limited(rearMm - frontMm, SHELL_LIMITS.thicknessMm),
  }
}

/** The upper of the foremost points: those within half the thickness of the very front. */
const cushionFront = (seat: Seat, thicknessMm: number): SidePoint => {
  const foremostMm = Math.min(...seat.sideOutline.map((point) => point.xMm))
  const ends = seat.sideOutline.filter((point) => point.xMm <= foremostMm + thicknessMm / 2)
  return ends.reduce((upper, point) => (point.zMm > upper.zMm ? point : upper), ends[0] ?? seat.backrestRim)
}

const widthAt = (seat: Seat, xMm: number): number => {
  const outline = seat.topOutline.map((point) => ({ alongMm: point.xMm, acrossMm: point.yMm }))
  const [leftMm, rightMm] = crossed(outline, xMm) ?? [0, 0]
  return rightMm - leftMm
}

/**
 * The sizes of a seat as measured on its outlines: exactly those it was made from where `shellOf` made it; on any other shape the
 * nearest reading: the back where the rim is, the cushion from below the hip point to its upper front edge, the widths beside the
 * hip point and at the rear. Held to SHELL_LIMITS but for the rim, which must never move by being read.
 */
export const shellSizes = (seat: Seat): ShellSizes => {
  const { frontMm, thicknessMm } = backFaces(seat)
  const front = cushionFront(seat, thicknessMm)
  const backToCushionDeg = limited(
    atan2Deg(0 - front.xMm, front.zMm + seat.hipHeightMm),
    SHELL_LIMITS.backToCushionDeg,
  )
  const corner = innerCorner(seat.hipHeightMm, frontMm, backToCushionDeg)
  const topMm = Math.max(...seat.sideOutline.map((point) => point.zMm))
  const rearMm = Math.max(...seat.topOutline.map((point) => point.xMm))
  const backLengthMm = limited(topMm - corner.zMm, SHELL_LIMITS.backLengthMm)
  return {
    backLengthMm,
    hipToBackMm: frontMm,
    thicknessMm,
    cushionLengthMm: limited(
      Math.hypot(front.xMm - corner.xMm, front.zMm - corner.zMm),
      SHELL_LIMITS.cushionLengthMm,
    ),
    backToCushionDeg,
    hipWidthMm: limited(widthAt(seat, 0), SHELL_LIMITS.hipWidthMm),
    shoulderWidthMm: limited(widthAt(seat, rearMm - INSIDE_MM), SHELL_LIMITS.shoulderWidthMm),
    rimBelowTopMm: corner.zMm + backLengthMm - seat.backrestRim.zMm,
    rimBehindFrontMm: seat.backrestRim.xMm - frontMm,
  }
}

/** Outline points closer than this to where `shellOf` puts them are where it put them: well under what a screen shows. */
const AS_MADE_MM = 0.01

/** Whether the outlines are what `shellOf` makes of their sizes, and not moved by hand or drawn elsewhere. */
export const isShellAsMade = (seat: Seat): boolean => {
  const made = shellOf(shellSizes(seat), seat.hipHeightMm)
  const isNear = (a: number, b: number | undefined): boolean =>
    b !== undefined && Math.abs(a - b) <= AS_MADE_MM
  return (
    made.sideOutline.length === seat.sideOutline.length &&
    made.topOutline.length === seat.topOutline.length &&
    made.sideOutline.every(
      ({ xMm, zMm }, index) =>
        isNear(xMm, seat.sideOutline[index]?.xMm) && isNear(zMm, seat.sideOutline[index]?.zMm),
    ) &&
    made.topOutline.every(
      ({ xMm, yMm }, index) =>
        isNear(xMm, seat.topOutline[index]?.xMm) && isNear(yMm, seat.topOutline[index]?.yMm),
    )
  )
}

/** The layout with both outlines and the rim of a seat made anew from its sizes, some of them changed. */
export const withShellSizes = (layout: Layout, placeId: string, patch: Partial<ShellSizes>): Layout =>
  withPlaceChanged(layout, placeId, (place) => {
    const sizes = { ...shellSizes(place.seat), ...patch }
    return { ...place, seat: { ...place.seat, ...shellOf(sizes, place.seat.hipHeightMm) } }
  })
