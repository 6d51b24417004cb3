import { directionBetween, pointDistanceMm, type PointMm } from '../../geometry/point'
import { segmentsNearest } from '../../geometry/segmentDistance'
import type { Tube } from '../../geometry/tube'
import { alongTubeMm, tubeLengthMm } from '../anchorRows'
import { wayOf, type Way } from './way'

/** Something on a tube that a tape can be hooked on or laid against. */
export interface TubeMark {
  /** Another tube that crosses or joins it, a bend of its own, or one of its two ends. */
  readonly kind: 'crossing' | 'bend' | 'end'
  /** The crossing tube's id; null for a bend or an end. */
  readonly otherTubeId: string | null
  /** For a bend or end the number of the point, counted from 1: P1, P2 …; null for a crossing. */
  readonly pointNumber: number | null
  /** On this tube's centre line, where the other centre line comes nearest. */
  readonly point: PointMm
  /** Along the centre line from P1, mm ≥ 0. */
  readonly alongTubeMm: number
}

/** Tubes whose surfaces come this near to each other are joined: room for a weld gap and for rounding on the drawing. Our judgement. */
const REACH_MM = 5

/** All marks of a tube, sorted along it. Where a crossing falls on a bend or an end, both are listed. */
export const tubeMarks = (tube: Tube, tubes: readonly Tube[]): readonly TubeMark[] =>
  [
    ...tubes.flatMap((other) => (other.id === tube.id ? [] : crossings(tube, other))),
    ...ownMarks(tube),
  ].toSorted((a, b) => a.alongTubeMm - b.alongTubeMm)

const ownMarks = (tube: Tube): readonly TubeMark[] =>
  tube.points.map((point, index) => ({
    kind: index === 0 || index === tube.points.length - 1 ? ('end' as const) : ('bend' as const),
    otherTubeId: null,
    pointNumber: index + 1,
    point,
    alongTubeMm: tubeLengthMm(tube.points.slice(0, index + 1)),
  }))

/**
 * Where one other tube comes within reach. Of pairs of straight pieces that meet at one place, as beside a bend, the one where the centre
 * lines come nearest counts: so the order of the points does not matter.
 */
const crossings = (tube: Tube, other: Tube): readonly TubeMark[] => {
  const reachMm = (tube.outsideDiameterMm + other.outsideDiameterMm) / 2 + REACH_MM
  const near = pieces(tube.points)
    .flatMap(([a0, a1]) => pieces(other.points).map(([b0, b1]) => segmentsNearest(a0, a1, b0, b1)))
    .map(({ onFirst, onSecond }) => ({ point: onFirst, apartMm: pointDistanceMm(onFirst, onSecond) }))
    .filter(({ apartMm }) => apartMm <= reachMm)
    .toSorted((a, b) => a.apartMm - b.apartMm)
  const found: TubeMark[] = []
  for (const { point } of near) {
    const alongMm = alongTubeMm(tube.points, point)
    if (found.some((mark) => Math.abs(mark.alongTubeMm - alongMm) < other.outsideDiameterMm)) continue
    found.push({
      kind: 'crossing',
      otherTubeId: other.id,
      pointNumber: null,
      point,
      alongTubeMm: alongMm,
    })
  }
  return found
}

const pieces = (points: readonly PointMm[]): readonly (readonly [PointMm, PointMm])[] =>
  points.slice(1).map((end, index) => [points[index] ?? end, end])

/** How far along a tube something is from a mark. */
export interface FromMark {
  readonly mark: TubeMark
  /** Along the centre line, mm ≥ 0. */
  readonly distanceMm: number
  /** The way from the mark to it, along the tube; null when it is on the mark. */
  readonly way: Way | null
}

/** Nearer than this along the tube is on the mark: half of what a tape shows. Our judgement. */
const ON_MARK_MM = 0.5

/** Of a crossing and an end or bend at the same place the crossing is named: it can be seen on the car. */
const KINDS = ['crossing', 'bend', 'end'] as const

/** The mark nearest to a place of a tube, along it; null only for a tube without points. */
export const nearestMark = (
  marks: readonly TubeMark[],
  at: { readonly alongTubeMm: number; readonly point: PointMm },
): FromMark | null => {
  const distanceMm = (mark: TubeMark): number => Math.abs(mark.alongTubeMm - at.alongTubeMm)
  const leastMm = Math.min(...marks.map(distanceMm))
  const [mark] = marks
    .filter((each) => distanceMm(each) <= leastMm + SAME_PLACE_MM)
    .toSorted((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || distanceMm(a) - distanceMm(b))
  if (mark === undefined) return null
  const way = directionBetween(mark.point, at.point)
  return {
    mark,
    distanceMm: distanceMm(mark),
    way: distanceMm(mark) < ON_MARK_MM || way === null ? null : wayOf(way),
  }
}

/** An end or bend this near beyond a crossing is part of the same joint. Our judgement: about the size of a tube. */
const SAME_PLACE_MM = 40
