import { pointDistanceMm, type PointMm } from '../geometry/point'
import { pointToSegmentMm } from '../geometry/segment'
import { segmentDistanceMm } from '../geometry/segmentDistance'
import type { Tube } from '../geometry/tube'
import type { SolvedStrap, Touch } from './strapPath'

/** A straight piece of a tube. */
export interface TubePiece {
  readonly tubeId: string
  readonly from: PointMm
  readonly to: PointMm
  readonly radiusMm: number
  /** Ball that holds the whole piece: its middle, given by plain numbers because it is looked at most often, and its radius. */
  readonly ballXMm: number
  readonly ballYMm: number
  readonly ballZMm: number
  readonly ballMm: number
}

/** The straight pieces of all tubes; joints are taken as round. */
export const tubePieces = (tubes: readonly Tube[]): readonly TubePiece[] => {
  const pieces: TubePiece[] = []
  for (const { id, points, outsideDiameterMm } of tubes)
    for (let index = 1; index < points.length; index += 1) {
      const from = points[index - 1]
      const to = points[index]
      if (from === undefined || to === undefined) continue
      const radiusMm = outsideDiameterMm / 2
      pieces.push({
        tubeId: id,
        from,
        to,
        radiusMm,
        ballXMm: (from.xMm + to.xMm) / 2,
        ballYMm: (from.yMm + to.yMm) / 2,
        ballZMm: (from.zMm + to.zMm) / 2,
        ballMm: pointDistanceMm(from, to) / 2 + radiusMm,
      })
    }
  return pieces
}

/** The least distance of something to the surface of a tube, mm; negative inside it. */
export interface TubeGap {
  readonly tubeId: string
  readonly gapMm: number
  /** The straight pieces of strap and tube that are nearest to each other. */
  readonly strapFrom: PointMm
  readonly strapTo: PointMm
  readonly piece: TubePiece
}

/** Whether a ball is so far from the ball that holds a piece of tube that the two cannot be nearer than `gapMm`. */
const isFartherFromBall = (middle: PointMm, halfMm: number, piece: TubePiece, gapMm: number): boolean => {
  const reachMm = Math.max(0, gapMm + piece.ballMm + halfMm)
  const dx = middle.xMm - piece.ballXMm
  const dy = middle.yMm - piece.ballYMm
  const dz = middle.zMm - piece.ballZMm
  return dx * dx + dy * dy + dz * dz >= reachMm * reachMm
}

/** Whether a ball is so far from a piece of tube that what it holds cannot be nearer than `gapMm`; looked at first by the piece's own ball. */
export const isFarther = (middle: PointMm, halfMm: number, piece: TubePiece, gapMm: number): boolean => {
  if (isFartherFromBall(middle, halfMm, piece, gapMm)) return true
  const { from, to } = piece
  const reachMm = Math.max(0, gapMm + piece.radiusMm + halfMm)
  const ux = to.xMm - from.xMm
  const uy = to.yMm - from.yMm
  const uz = to.zMm - from.zMm
  const dx = middle.xMm - from.xMm
  const dy = middle.yMm - from.yMm
  const dz = middle.zMm - from.zMm
  // Not a number for a piece without a length, which its ball has spoken for: then nothing is said to be farther.
  const along = (dx * ux + dy * uy + dz * uz) / (ux * ux + uy * uy + uz * uz)
  const share = along < 0 ? 0 : along > 1 ? 1 : along
  const x = dx - share * ux
  const y = dy - share * uy
  const z = dz - share * uz
  return x * x + y * y + z * z >= reachMm * reachMm
}

/** The straight pieces of a strap between its mount and its last contact with the body. */
const straightPieces = ({ touches }: SolvedStrap): number => {
  let last = touches.length - 1
  while (last > 0 && touches[last]?.on !== 'body') last -= 1
  return last === 0 ? touches.length - 1 : last
}

/** Rounding of coordinates of some metres, mm. */
const ON_SURFACE_MM = 1e-6

/**
 * Whether a strap runs into its own tube: from its mount on it comes nearer to the centre line than it began, and inside the surface. A
 * strap that leaves its tube does neither, nor does one from a hole drawn inside the tube. One that is wrapped round its tube leaves it
 * by tangent, wherever the tube is tried. `gapMm`: strap to surface.
 */
const runsInto = (piece: TubePiece, mount: PointMm, gapMm: number): boolean =>
  gapMm < -ON_SURFACE_MM &&
  gapMm + piece.radiusMm < pointToSegmentMm(mount, piece.from, piece.to) - ON_SURFACE_MM

/**
 * How near the taut strap passes to a tube: the straight pieces from the mount to the last contact with the body against all
 * tubes; the one the mount is on counts only where the strap would run into it. Null without such tubes.
 */
export const strapTubeGap = (pieces: readonly TubePiece[], strap: SolvedStrap): TubeGap | null => {
  const { touches, anchor } = strap
  const count = straightPieces(strap)
  const hostId = anchor.mount.tubeId
  const isWrapped = anchor.mount.kind === 'wrap'
  const start = touches[0]?.point ?? anchor.mount.point
  let nearest: TubeGap | null = null
  let gapMm = Infinity
  for (let index = 0; index < count; index += 1) {
    const touch = touches[index]
    const next = touches[index + 1]
    if (touch === undefined || next === undefined || touch.arcToNext !== null) continue
    const { point: from } = touch
    const { point: to } = next
    const middle = {
      xMm: (from.xMm + to.xMm) / 2,
      yMm: (from.yMm + to.yMm) / 2,
      zMm: (from.zMm + to.zMm) / 2,
    }
    const halfMm = pointDistanceMm(middle, to)
    for (const piece of pieces) {
      const isOwn = piece.tubeId === hostId
      if (isFarther(middle, halfMm, piece, isOwn ? 0 : gapMm)) continue
      const pieceMm = segmentDistanceMm(from, to, piece.from, piece.to) - piece.radiusMm
      if (pieceMm >= gapMm || (isOwn && (isWrapped || !runsInto(piece, start, pieceMm)))) continue
      gapMm = pieceMm
      nearest = { tubeId: piece.tubeId, gapMm, strapFrom: from, strapTo: to, piece }
    }
  }
  return nearest
}

/** What of a taut strap tubes can be in the way of: its straight pieces from the mount to its last contact with the body. */
export interface StraightRun {
  /** What it touches, in order, as digits to the base of 16: runs that touch the same change evenly into each other. */
  readonly touching: number
  /** Both ends of each piece, one after another, as x, y, z: searches keep thousands of runs. */
  readonly ends: readonly number[]
  /** The tube that the mount is on, where the strap may run into it. */
  readonly ownId: string | null
  /** A tube that is not looked at: the one that the strap is wrapped round. */
  readonly wrappedId: string | null
}

const TOUCHING: Readonly<Record<Touch['on'], number>> = {
  anchor: 1,
  junction: 2,
  slot: 3,
  rim: 4,
  'seat-side': 5,
  body: 6,
  buckle: 7,
}

export const straightRunOf = (strap: SolvedStrap): StraightRun => {
  const { touches, anchor } = strap
  const count = straightPieces(strap)
  const ends: number[] = []
  let touching = 0
  for (let index = 0; index < count; index += 1) {
    const touch = touches[index]
    const next = touches[index + 1]
    if (touch === undefined || next === undefined) continue
    touching = 16 * touching + TOUCHING[touch.on]
    if (touch.arcToNext !== null) continue
    const { point: from } = touch
    const { point: to } = next
    ends.push(from.xMm, from.yMm, from.zMm, to.xMm, to.yMm, to.zMm)
  }
  const tubeId = anchor.mount.tubeId ?? null
  const isWrapped = anchor.mount.kind === 'wrap'
  return {
    touching,
    ends,
    ownId: isWrapped ? null : tubeId,
    wrappedId: isWrapped ? tubeId : null,
  }
}

/** What is left between a strap and the tubes, mm; Infinity where there is none to be measured. */
export interface TubeRoom {
  /** To the surface of the nearest tube that the mount is not on; negative inside it. */
  readonly othersMm: number
  /**
   * Until the strap would run into the tube that its mount is on, ≥ 0 where it does not. With d the least distance of the strap to the
   * centre line, h that of the mount and R the radius: the larger of d − R and d − h. It changes without jumps, as a search needs it.
   * Derived here from `runsInto`.
   */
  readonly ownMm: number
}

const endAt = (ends: readonly number[], index: number): PointMm => ({
  xMm: ends[index] ?? NaN,
  yMm: ends[index + 1] ?? NaN,
  zMm: ends[index + 2] ?? NaN,
})

/** The same as `strapTubeGap` as plain numbers for searches. What is not nearer than `withinMm` is given as that. */
export const tubeRoom = (
  pieces: readonly TubePiece[],
  { ends, ownId, wrappedId }: StraightRun,
  withinMm = Infinity,
): TubeRoom => {
  const start = endAt(ends, 0)
  let othersMm = withinMm
  let ownMm = withinMm
  for (let index = 0; index < ends.length; index += 6) {
    const from = endAt(ends, index)
    const to = endAt(ends, index + 3)
    const middle = {
      xMm: (from.xMm + to.xMm) / 2,
      yMm: (from.yMm + to.yMm) / 2,
      zMm: (from.zMm + to.zMm) / 2,
    }
    const halfMm = pointDistanceMm(middle, to)
    for (const piece of pieces) {
      const isOwn = piece.tubeId === ownId
      if (piece.tubeId === wrappedId || isFarther(middle, halfMm, piece, isOwn ? ownMm : othersMm)) continue
      const gapMm = segmentDistanceMm(from, to, piece.from, piece.to) - piece.radiusMm
      if (!isOwn) othersMm = Math.min(othersMm, gapMm)
      else {
        const aheadMm = gapMm + piece.radiusMm - pointToSegmentMm(start, piece.from, piece.to)
        // Rounding alone must not make a strap that leaves its tube run into it.
        ownMm = Math.min(ownMm, Math.max(gapMm, aheadMm >= -ON_SURFACE_MM ? 0 : aheadMm))
      }
    }
  }
  return { othersMm, ownMm }
}

/** Smallest gap between a ball and any tube, mm; negative when they overlap. Null without tubes. */
export const ballTubeGapMm = (
  pieces: readonly TubePiece[],
  centre: PointMm,
  radiusMm: number,
): number | null => {
  let gapMm = Infinity
  for (const piece of pieces)
    if (!isFarther(centre, 0, piece, gapMm))
      gapMm = Math.min(gapMm, pointToSegmentMm(centre, piece.from, piece.to) - piece.radiusMm)
  return pieces.length === 0 ? null : gapMm - radiusMm
}
