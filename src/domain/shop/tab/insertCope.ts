import {
  directionDot,
  directionLength,
  pointDifference,
  pointSum,
  type Direction,
} from '../../geometry/point'
import { directionCross, directionScaled, directionSum, squareTo, unitDirection } from '../../geometry/vector'
import type { TabMount } from '../../straps/anchor'
import { tabNormal } from '../../straps/tabPlane'
import { tabSize } from '../../straps/tabSize'
import { cosDeg, sinDeg } from '../../units/angle'
import type { FlatPoint } from '../flat/flatFigure'
import { lengthToTubeMm } from './lineOnTube'
import type { SeatProblem, TabOnTube } from './tabOnTube'
import { wayOf, type Way } from './way'

/**
 * The coped end of a welded threaded insert, unrolled to be wrapped round it with the print outside: x round it from the seam to the seam
 * again, y up toward the face that the fitting lies on, which is at y = 0; the tube is below.
 */
export interface InsertCope {
  readonly diameterMm: number
  /** π times the diameter: how wide the unrolled template is. */
  readonly circumferenceMm: number
  /** The coped edge from seam to seam, y < 0. */
  readonly edge: readonly FlatPoint[]
  /** From the face to the coped edge, where the insert is shortest and longest. */
  readonly shortestMm: number
  readonly longestMm: number
  /** Length of the insert in the layout. */
  readonly drawnMm: number
  /** The line of the insert, x from the seam, that has to face along the tube away from P1, and the way that is. */
  readonly alongMm: number
  readonly alongWay: Way
}

/** Why an insert gets no cope; lengths in mm. */
export type InsertProblem =
  | SeatProblem
  /** Its axis runs along the tube: it is welded along its side, `gapMm` from surface to surface (negative: they overlap). */
  | { readonly kind: 'insert-beside'; readonly gapMm: number }
  /** It points at the tube but is so wide or so far off that part of it passes beside. */
  | { readonly kind: 'insert-passes' }

/** Steps round the insert: 2.5° each. */
const STEPS = 144

/**
 * The cope of a round insert on a round tube. Its axis is the normal of the tab's plane, from the face into the tube. Each line
 * of its surface is as long as it is to the tube (`lengthToTubeMm`).
 */
export const insertCope = (mount: TabMount, on: TabOnTube): InsertCope | InsertProblem => {
  if (on.problem !== null) return on.problem
  const radiusMm = tabSize(mount).widthMm / 2
  const inward = towardTube(mount, on)
  const first = unitDirection(squareTo(inward, on.axis))
  const closeness = directionLength(squareTo(on.axis, inward))
  if (first === null || closeness < BESIDE_SINE)
    return { kind: 'insert-beside', gapMm: (on.standoffMm ?? 0) - radiusMm }
  const outEnd = directionScaled(inward, -1)
  const second = directionCross(outEnd, first)
  const circumferenceMm = 2 * Math.PI * radiusMm
  const edge: FlatPoint[] = []
  for (let step = 0; step <= STEPS; step += 1) {
    // The seam lies opposite the line that faces along the tube.
    const deg = (360 * step) / STEPS - 180
    const out = directionSum(directionScaled(first, cosDeg(deg)), second, sinDeg(deg))
    const lengthMm = lengthToTubeMm(on, pointSum(mount.point, out, radiusMm), inward)
    if (lengthMm === null) return { kind: 'insert-passes' }
    edge.push({ xMm: (circumferenceMm * step) / STEPS, yMm: -lengthMm })
  }
  const lengths = edge.map(({ yMm }) => -yMm)
  return {
    diameterMm: 2 * radiusMm,
    circumferenceMm,
    edge,
    shortestMm: Math.min(...lengths),
    longestMm: Math.max(...lengths),
    drawnMm: mount.thicknessMm,
    alongMm: circumferenceMm / 2,
    alongWay: wayOf(first),
  }
}

/** Nearer to the tube's direction than this an insert lies beside it: sine of 15°. Our judgement: no cope that flat can be cut. */
const BESIDE_SINE = sinDeg(15)

/** The insert's axis from its face toward the tube: a plane has two normals, and this is the one that leads there. */
export const towardTube = (mount: TabMount, on: Pick<TabOnTube, 'foot'>): Direction => {
  const normal = tabNormal(mount)
  const isAway = directionDot(normal, pointDifference(on.foot, mount.point)) < 0
  return isAway ? directionScaled(normal, -1) : normal
}
