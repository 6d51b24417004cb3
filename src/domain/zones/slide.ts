import {
  type Direction,
  directionDot,
  pointDifference,
  pointDistanceMm,
  type PointMm,
  pointSum,
} from '../geometry/point'
import { nearestOnPolyline } from '../geometry/segment'
import type { Tube } from '../geometry/tube'
import type { Anchor } from '../straps/anchor'
import { type Belt, strapFamily } from '../straps/strap'
import { tabNormal } from '../straps/tabPlane'

/** Cosine of 45°: a tube runs in a direction while less than half of it goes elsewhere. Our judgement. */
const ALONG_COSINE = Math.SQRT1_2

/** A hole whose distance from the centre line changes by more than this round a bend needs another tab. Our judgement: what a tape shows. */
const SAME_STAND_OFF_MM = 1

/** Rounding of coordinates of some metres, mm. */
const ROUNDING_MM = 1e-6

/**
 * Half of what an anchor surely takes up along its tube, mm: half the webbing of a wrap; of a tab the edge of its hole and half its
 * thickness, of an eye its thread, since more than that is not in the layout. Formula: a disc of radius r and thickness t, normal at
 * an angle φ to the axis, reaches r·sin φ + t/2·cos φ along it; derived here.
 */
export const halfAlongMm = (
  { strap, mount }: Anchor,
  axis: Direction,
  { webbingMm }: Pick<Belt, 'webbingMm'>,
): number => {
  switch (mount.kind) {
    case 'wrap':
      return webbingMm[strapFamily(strap)] / 2
    case 'eye':
      return mount.threadDiameterMm / 2
    case 'tab': {
      const cosine = Math.min(1, Math.abs(directionDot(tabNormal(mount), axis)))
      const sine = Math.sqrt((1 - cosine) * (1 + cosine))
      return (mount.holeDiameterMm / 2) * sine + (mount.thicknessMm / 2) * cosine
    }
  }
}

/** A straight piece of a tube. */
interface Piece {
  readonly from: PointMm
  readonly to: PointMm
  readonly lengthMm: number
  readonly axis: Direction
  /** Length of the tube before it. */
  readonly beforeMm: number
}

/** By the tube itself, which is never changed. */
const PIECES = new WeakMap<Tube, readonly Piece[]>()

const piecesOf = (tube: Tube): readonly Piece[] => {
  const known = PIECES.get(tube)
  if (known !== undefined) return known
  const fresh = straightPieces(tube)
  PIECES.set(tube, fresh)
  return fresh
}

const straightPieces = ({ points }: Tube): readonly Piece[] => {
  let beforeMm = 0
  return points.slice(1).map((to, index) => {
    const from = points[index] ?? to
    const lengthMm = pointDistanceMm(from, to)
    const way = pointDifference(to, from)
    const axis = { x: way.x / lengthMm, y: way.y / lengthMm, z: way.z / lengthMm }
    const piece = { from, to, lengthMm, axis, beforeMm }
    beforeMm += lengthMm
    return piece
  })
}

/** A place along a tube: on which straight piece and how far along it, mm; beyond an end less than 0 or more than its length. */
interface AlongTube {
  readonly index: number
  readonly atMm: number
}

/** Where along a tube a point lies beside it; the foot of a point beyond an end is not held to that end. */
const placeAlong = (tube: Tube, point: PointMm): AlongTube => {
  const { segmentIndex, share, point: foot, axis } = nearestOnPolyline(tube.points, point)
  const start = tube.points[segmentIndex] ?? foot
  const end = tube.points[segmentIndex + 1] ?? foot
  const isAtStart = share === 0 && segmentIndex === 0
  const isAtEnd = share === 1 && segmentIndex === tube.points.length - 2
  const beyondMm = isAtStart || isAtEnd ? directionDot(pointDifference(point, foot), axis) : 0
  return { index: segmentIndex, atMm: share * pointDistanceMm(start, end) + beyondMm }
}

/** The direction of a tube beside a point, length 1. */
const tubeAxisAt = (tube: Tube, point: PointMm): Direction => nearestOnPolyline(tube.points, point).axis

/** Whether a tube runs more in a direction than across it, where a point lies beside it. */
export const runsAlong = (tube: Tube, point: PointMm, way: Direction): boolean =>
  Math.abs(directionDot(tubeAxisAt(tube, point), way)) >= ALONG_COSINE

/** Along a tube from some place until it has gone `byMm` further in a direction; null where it ends or turns off before. */
const goneAlong = (
  pieces: readonly Piece[],
  from: AlongTube,
  way: Direction,
  byMm: number,
): AlongTube | null => {
  const first = pieces[from.index]
  const onward = first !== undefined && directionDot(first.axis, way) < 0 ? -1 : 1
  let { index, atMm } = from
  let restMm = byMm
  for (;;) {
    const piece = pieces[index]
    const gain = piece === undefined ? 0 : onward * directionDot(piece.axis, way)
    if (piece === undefined || gain < ALONG_COSINE) return null
    const leftMm = onward > 0 ? piece.lengthMm - atMm : atMm
    if (leftMm < -ROUNDING_MM) return null
    const neededMm = restMm / gain
    if (neededMm <= leftMm + ROUNDING_MM) return { index, atMm: atMm + onward * neededMm }
    restMm -= leftMm * gain
    index += onward
    atMm = onward > 0 ? 0 : (pieces[index]?.lengthMm ?? 0)
  }
}

/** How much of half a mount's width sticks out beyond the nearer end of its tube, mm ≥ 0. */
const overhangMm = (pieces: readonly Piece[], { index, atMm }: AlongTube, halfMm: number): number => {
  const alongMm = (pieces[index]?.beforeMm ?? 0) + atMm
  const totalMm = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0)
  return Math.max(0, halfMm - alongMm, alongMm - (totalMm - halfMm))
}

const pointOf = (piece: Piece, atMm: number): PointMm => pointSum(piece.from, piece.axis, atMm)

/** An anchor, where it is now, on the tube that carries it. */
interface Sliding {
  readonly anchor: Anchor
  readonly point: PointMm
  readonly tube: Tube
  readonly belt: Belt
}

/**
 * The point of an anchor slid along its tube until it has gone `byMm` (> 0) in a direction, its offset from the centre line kept; null
 * where nobody could weld or wrap it: the tube ends or turns off before, or the anchor would stick out beyond the end more than it
 * does as drawn.
 */
export const slidPoint = (
  { anchor, point, tube, belt }: Sliding,
  way: Direction,
  byMm: number,
): PointMm | null => {
  const pieces = piecesOf(tube)
  const here = placeAlong(tube, point)
  const there = goneAlong(pieces, here, way, byMm)
  const from = pieces[here.index]
  const to = there && pieces[there.index]
  if (there === null || from === undefined || to === null || to === undefined) return null
  if (overhangMm(pieces, there, 0) > ROUNDING_MM) return null
  const halfMm = halfAlongMm(anchor, to.axis, belt)
  const wasMm = overhangMm(pieces, here, halfAlongMm(anchor, from.axis, belt))
  if (overhangMm(pieces, there, halfMm) > wasMm + ROUNDING_MM) return null
  const moved = pointSum(point, pointDifference(pointOf(to, there.atMm), pointOf(from, here.atMm)))
  if (here.index === there.index) return moved
  const standOffMm = (at: PointMm): number => nearestOnPolyline(tube.points, at).distanceMm
  const isSame = Math.abs(standOffMm(moved) - standOffMm(point)) <= SAME_STAND_OFF_MM
  return isSame ? moved : null
}

/** Whether an anchor at its point lies beside its tube, between its ends. */
export const isBetweenEnds = (tube: Tube, point: PointMm): boolean =>
  overhangMm(piecesOf(tube), placeAlong(tube, point), 0) <= ROUNDING_MM

/** How much of what an anchor surely takes up would stick out beyond the nearer end of its tube with the anchor at `point`, mm ≥ 0. */
export const overhangAt = ({ anchor, point, tube, belt }: Sliding): number =>
  overhangMm(piecesOf(tube), placeAlong(tube, point), halfAlongMm(anchor, tubeAxisAt(tube, point), belt))
