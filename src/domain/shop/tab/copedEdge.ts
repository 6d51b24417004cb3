import { directionDot } from '../../geometry/point'
import { acrossTube, type SlicePoint, surfaceAt, type TubeSlice } from './tubeSlice'

/**
 * The place where a plate, cut square through its thickness, first meets the tube at `xMm`: the highest of all the tube's surface under
 * its thickness. It is on one of the two faces, or between them where the crest of the tube lies under the plate. Null beside the tube.
 */
export const copeAt = (slice: TubeSlice, xMm: number, thicknessMm: number): SlicePoint | null => {
  const halfMm = thicknessMm / 2
  const crestMm = crestDepth(slice, xMm)
  const depths = [0, halfMm, -halfMm, ...(crestMm !== null && Math.abs(crestMm) < halfMm ? [crestMm] : [])]
  let highest: SlicePoint | null = null
  for (const depthMm of depths) {
    const yMm = surfaceAt(slice, xMm, depthMm)
    if (yMm !== null && (highest === null || yMm > highest.yMm)) highest = { xMm, yMm, depthMm }
  }
  return highest
}

/**
 * At which depth the tube is highest: on the line along which somebody who looks squarely at the plate sees the tube's edge. There the
 * surface holds the line of sight, so that q = 0 and p = ±r. Null where every depth is alike or the line is not there.
 */
const crestDepth = (slice: TubeSlice, xMm: number): number | null => {
  const upP = directionDot(slice.up, slice.p)
  const depthQ = directionDot(slice.normal, slice.q)
  if (Math.abs(upP) < NO_SHARE || Math.abs(depthQ) < NO_SHARE) return null
  const edgeMm = Math.sign(upP) * slice.radiusMm
  const yMm = (edgeMm - acrossTube(slice, { xMm, yMm: 0, depthMm: 0 }).pMm) / upP
  return -acrossTube(slice, { xMm, yMm, depthMm: 0 }).qMm / depthQ
}

const NO_SHARE = 1e-9

/** The direction square to the tube's surface at a place on it, in the plate's plane, not of length 1: to the right and up. */
const outOfTube = (slice: TubeSlice, at: SlicePoint): { readonly right: number; readonly up: number } => {
  const { pMm, qMm } = acrossTube(slice, at)
  const share = (way: TubeSlice['up']): number =>
    pMm * directionDot(way, slice.p) + qMm * directionDot(way, slice.q)
  return { right: share(slice.right), up: share(slice.up) }
}

/**
 * How far to one side (−1 left, +1 right) the coped edge goes: to `mostMm`, or to where the tube's surface has fallen away by
 * `mostSlope` (rise over run, > 0) if that is nearer. The surface bulges toward the hole, so that it only ever falls away more.
 */
export const edgeReach = (
  slice: TubeSlice,
  thicknessMm: number,
  side: -1 | 1,
  limits: { readonly mostMm: number; readonly mostSlope: number },
): number => {
  const isOn = (reachMm: number): boolean => {
    const at = copeAt(slice, side * reachMm, thicknessMm)
    if (at === null) return false
    const out = outOfTube(slice, at)
    return side * out.right <= limits.mostSlope * out.up
  }
  if (isOn(limits.mostMm)) return limits.mostMm
  let [on, off] = [0, limits.mostMm]
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (on + off) / 2
    if (isOn(middle)) on = middle
    else off = middle
  }
  return on
}

/** Enough to halve a metre to less than a millionth of a millimetre. */
const HALVINGS = 60

/** Straight pieces that a coped edge is drawn with: under 0.01 mm off the curve for any tube that LIMITS allow and a tab it suits. */
const PIECES = 96

/** The coped edge from left to right, each place with the depth at which the plate touches the tube there. */
export const copedEdge = (
  slice: TubeSlice,
  thicknessMm: number,
  ends: { readonly leftMm: number; readonly rightMm: number },
): readonly SlicePoint[] =>
  Array.from({ length: PIECES + 1 }, (_, index) => {
    const xMm = ends.leftMm + ((ends.rightMm - ends.leftMm) * index) / PIECES
    return copeAt(slice, xMm, thicknessMm)
  }).filter((at) => at !== null)

/** The gap between the foot of a plate and the tube at one face, mm ≥ 0: the largest along the edge, square to the tube. */
export const faceGapMm = (slice: TubeSlice, edge: readonly SlicePoint[], depthMm: number): number =>
  edge.reduce((mostMm, { xMm, yMm }) => {
    const { pMm, qMm } = acrossTube(slice, { xMm, yMm, depthMm })
    return Math.max(mostMm, Math.hypot(pMm, qMm) - slice.radiusMm)
  }, 0)
