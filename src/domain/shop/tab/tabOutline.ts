import { pointMm } from '../../geometry/point'
import { nearestOnPolyline } from '../../geometry/segment'
import { asinDeg, atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import type { FlatPoint } from '../flat/flatFigure'
import { copeAt, copedEdge, edgeReach, faceGapMm } from './copedEdge'
import type { SlicePoint, TubeSlice } from './tubeSlice'

/** What of a plate is given before it is cut to its tube. All in mm > 0. */
export interface PlateSize {
  readonly widthMm: number
  readonly edgeDistanceMm: number
  readonly thicknessMm: number
  readonly holeDiameterMm: number
}

/**
 * The outline of a plate in true size, seen from its `normal` side: the hole's centre is (0, 0), y up is away from the tube. Its head
 * ends `edgeDistanceMm` beyond the hole, with corners rounded as far as width and edge distance let them; its sides run straight from
 * there to the ends of the coped foot.
 */
export interface TabOutline {
  /** Closed, anticlockwise, beginning at the left end of the foot. */
  readonly points: readonly FlatPoint[]
  /** Its foot, left to right, with the depth at which it touches the tube. */
  readonly edge: readonly SlicePoint[]
  /** Straight across from one end of the foot to the other. */
  readonly footWidthMm: number
  /** Straight down from the hole's centre to the tube. */
  readonly reachMm: number
  /** Least steel from the hole's edge to a free edge of the plate. */
  readonly rimMm: number
  /** Least from the hole's edge to the foot, whichever way: room for the bolt's head and the bead. */
  readonly holeToTubeMm: number
  /** Left open at the foot where the plate does not touch: on the face toward the one who looks, and on the far face. */
  readonly gapMm: { readonly near: number; readonly far: number }
}

/** Why a plate gets no outline. */
export type OutlineProblem =
  /** Between hole and tube there is less than a bead as large as the plate is thick: `roomMm` of `neededMm`, both from the hole's edge. */
  | { readonly kind: 'hole-at-tube'; readonly roomMm: number; readonly neededMm: number }
  /** The hole reaches the plate's edge: `rimMm` ≤ 0. */
  | { readonly kind: 'no-rim'; readonly rimMm: number }
  /** The head is so near to a thin tube that no foot is left to weld. */
  | { readonly kind: 'no-foot' }
  /** The tube runs so steeply past the hole in the plate's plane that one end of the foot would be beside the head. */
  | { readonly kind: 'steep-foot' }

/**
 * A plate narrower at its foot than at its head ends where the tube's surface has turned this far away from square to it: beyond, the
 * plate's edge runs along the tube and its weld cannot be reached from both sides. Our judgement.
 */
const MOST_TURN_SLOPE = Math.sqrt(3) // tan 60°

/** A head that reaches the tube may go on to here before there is no foot to speak of. Our judgement. */
const MOST_HEAD_SLOPE = 6 // tan 80.5°

/** Share of the plate's thickness that the bead takes up beside it. Source: fillet welds as large as the plate; common practice, no source. */
const BEAD_SHARE = 1

/** The outline of a plate on its tube, or why it has none. */
export const tabOutline = (slice: TubeSlice, size: PlateSize): TabOutline | OutlineProblem => {
  const { widthMm, edgeDistanceMm, thicknessMm, holeDiameterMm } = size
  const roundRimMm = Math.min(widthMm / 2, edgeDistanceMm) - holeDiameterMm / 2
  if (roundRimMm <= 0) return { kind: 'no-rim', rimMm: roundRimMm }
  const right = footEnd(slice, size, 1)
  const left = footEnd(slice, size, -1)
  if (right === null || left === null) return { kind: 'no-foot' }
  const edge = copedEdge(slice, thicknessMm, { leftMm: -left, rightMm: right })
  const [first, last] = [edge[0], edge.at(-1)]
  if (first === undefined || last === undefined) return { kind: 'no-foot' }
  const holeToTubeMm = nearestMm(edge) - holeDiameterMm / 2
  const neededMm = BEAD_SHARE * thicknessMm
  if (holeToTubeMm < neededMm) return { kind: 'hole-at-tube', roomMm: holeToTubeMm, neededMm }
  if (!isBelow(first, corner(size, -1)) || !isBelow(last, corner(size, 1))) return { kind: 'steep-foot' }
  const free = [flat(last), ...side(size, last, 1), ...side(size, first, -1).toReversed(), flat(first)]
  const rimMm = nearestMm(free) - holeDiameterMm / 2
  if (rimMm <= 0) return { kind: 'no-rim', rimMm }
  return {
    points: withoutRepeats([...edge.map(flat), ...free.slice(1, -1)]),
    edge,
    footWidthMm: Math.hypot(last.xMm - first.xMm, last.yMm - first.yMm),
    reachMm: slice.reachMm,
    rimMm,
    holeToTubeMm,
    gapMm: {
      near: faceGapMm(slice, edge, thicknessMm / 2),
      far: faceGapMm(slice, edge, -thicknessMm / 2),
    },
  }
}

/** Whether an end of the foot lies lower than the rounded corner above it, so that a straight side leads up to the head. */
const isBelow = (end: SlicePoint, round: Corner): boolean => end.yMm < round.yMm - ROUNDING_MM

/** Distance of the hole's centre from a line of straight pieces. */
const nearestMm = (points: readonly FlatPoint[]): number => {
  const spatial = points.map(({ xMm, yMm }) => pointMm(xMm, yMm, 0))
  return nearestOnPolyline(spatial, pointMm(0, 0, 0)).distanceMm
}

/** Where the head is one round the two corners meet at its top; a point that comes twice is drawn once. */
const withoutRepeats = (points: readonly FlatPoint[]): readonly FlatPoint[] =>
  points.filter((point, index) => {
    const before = points.at(index - 1) ?? point
    return index === 0 || Math.hypot(point.xMm - before.xMm, point.yMm - before.yMm) > ROUNDING_MM
  })

const flat = ({ xMm, yMm }: SlicePoint): FlatPoint => ({ xMm, yMm })

/** The circle that rounds a corner of the head; `sideX` −1 left, +1 right. */
const corner = ({ widthMm, edgeDistanceMm }: PlateSize, sideX: -1 | 1): Corner => {
  const radiusMm = Math.min(widthMm / 2, edgeDistanceMm)
  return { xMm: sideX * (widthMm / 2 - radiusMm), yMm: edgeDistanceMm - radiusMm, radiusMm }
}

interface Corner extends FlatPoint {
  readonly radiusMm: number
}

/** How far the foot reaches to one side: as the tube lets it, but always to where it is clear of the rounded head. */
const footEnd = (slice: TubeSlice, size: PlateSize, sideX: -1 | 1): number | null => {
  const mostMm = size.widthMm / 2
  const round = corner(size, sideX)
  const isClear = (reachMm: number): boolean => {
    const at = copeAt(slice, sideX * reachMm, size.thicknessMm)
    if (at === null) return false
    return Math.hypot(at.xMm - round.xMm, at.yMm - round.yMm) >= round.radiusMm - ROUNDING_MM
  }
  const wantedMm = edgeReach(slice, size.thicknessMm, sideX, { mostMm, mostSlope: MOST_TURN_SLOPE })
  if (isClear(wantedMm)) return wantedMm
  let [inside, outside] = [
    wantedMm,
    edgeReach(slice, size.thicknessMm, sideX, { mostMm, mostSlope: MOST_HEAD_SLOPE }),
  ]
  if (!isClear(outside)) return null
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (inside + outside) / 2
    if (isClear(middle)) outside = middle
    else inside = middle
  }
  return outside
}

const HALVINGS = 60
const ROUNDING_MM = 1e-9

/** One straight side from the end of the foot up to the head, then round its corner to the top. */
const side = (size: PlateSize, from: SlicePoint, sideX: -1 | 1): readonly FlatPoint[] => {
  const round = corner(size, sideX)
  // Worked out for the right side; the left is its mirror image.
  const dx = round.xMm * sideX - from.xMm * sideX
  const dy = round.yMm - from.yMm
  const distanceMm = Math.hypot(dx, dy)
  const touchDeg = atan2Deg(dy, dx) - asinDeg(round.radiusMm / Math.max(distanceMm, round.radiusMm)) - 90
  const steps = Math.max(2, Math.ceil((90 - touchDeg) / ARC_STEP_DEG))
  return Array.from({ length: steps + 1 }, (_, index) => {
    const deg = touchDeg + ((90 - touchDeg) * index) / steps
    return {
      xMm: round.xMm + sideX * round.radiusMm * cosDeg(deg),
      yMm: round.yMm + round.radiusMm * sinDeg(deg),
    }
  })
}

/** The chord of a 40 mm radius is then 0.006 mm off its arc. */
const ARC_STEP_DEG = 2
