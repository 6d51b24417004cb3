import { directionDot, pointDifference, pointSum, type Direction, type PointMm } from '../../geometry/point'
import { directionScaled } from '../../geometry/vector'
import type { Tube } from '../../geometry/tube'
import { type Anchor, tabForm } from '../../straps/anchor'
import { shankAxis } from '../../straps/eyeShank'
import type { FlatPoint } from '../flat/flatFigure'
import { clockLines, type ClockLines } from './clock'
import { towardTube } from './insertCope'
import { lengthToTubeMm } from './lineOnTube'
import { tabOnTube, type TabOnTube } from './tabOnTube'
import { faceLine, type PlaceOnTube, placeOnTube, pointOnTube, type TabPlate, tabPlates } from './tabPlates'
import { nearestMark, type TubeMark, tubeMarks } from './tubeMark'
import { wayOf, type Way } from './way'

/*
 * A strip that is wrapped round a tube with the print outside: x along it from the strip's left edge, away from P1; y round it, 0 on the
 * tube's top line (front line of an upright tube), + against the clock for somebody who looks along the tube from P1. The two
 * long edges meet on the opposite line.
 */

/** An anchor with what the strip needs to know beside it. */
export interface StripAnchor {
  /** What it is called on the strip: its item number. */
  readonly label: string
  readonly anchor: Anchor
  readonly webbingMm: number
}

/** One thing marked on a strip. */
export type StripFeature =
  /** The middle and both edges of the webbing of a wrap, and the inner faces of its guide hoops where it has them. */
  | {
      readonly kind: 'wrap'
      readonly label: string
      readonly anchor: Anchor
      readonly centreMm: number
      readonly edgesMm: readonly [number, number]
      readonly hoopsMm: readonly [number, number] | null
    }
  /** Where the faces of a tab's plates meet the tube, and the line along the tube that goes through the middle of its foot. */
  | {
      readonly kind: 'tab'
      readonly label: string
      readonly anchor: Anchor
      readonly at: FlatPoint
      /** They may run past the strip's ends where a foot reaches over a bend or end. Cut at the seam, so that no line runs across the strip. */
      readonly lines: readonly (readonly FlatPoint[])[]
    }
  /** Where the axis of an eye bolt or an insert meets the tube; for a tab without an outline, where its hole is nearest to it. */
  | {
      readonly kind: 'point'
      readonly of: 'axis' | 'hole'
      readonly label: string
      readonly anchor: Anchor
      readonly at: FlatPoint
    }
  /** Another tube that joins, or a bend or end within the strip. */
  | { readonly kind: 'mark'; readonly mark: TubeMark; readonly atMm: number }

export interface TubeStrip {
  readonly tube: Tube
  /** Which straight piece of the tube, counted from 0. */
  readonly pieceIndex: number
  readonly lengthMm: number
  /** Round the tube: π times its outside diameter. */
  readonly circumferenceMm: number
  /** The line y = 0. */
  readonly zeroLine: ClockLines['from']
  /** The way of the car from the left edge to the right, and from the line y = 0 to larger y. */
  readonly rightWay: Way
  readonly upWay: Way
  /** What the left edge is measured from, and how far it lies from it, away from P1, mm ≥ 0. */
  readonly start: { readonly mark: TubeMark; readonly edgeMm: number }
  readonly features: readonly StripFeature[]
}

/** Room between webbing and guide hoop on each side, mm. Our judgement; MIL-S-58095A 3.11.7.3 asks for no more than 13 mm over the strap's width in all; read. */
export const HOOP_ROOM_MM = 3

/** Kept free before the first and beyond the last thing on a strip, for what is written there. Our judgement. */
const LEFT_ROOM_MM = 32
const END_ROOM_MM = 18

/** Kept free between the left edge and a joining tube's surface, and between the edge and a thing near to it. Our judgement. */
const JOINT_ROOM_MM = 5

export interface StripSetting {
  /** All tubes of the car: the marks are their crossings. */
  readonly tubes: readonly Tube[]
  /** The left edge lies at a whole number of these from its mark, so that a tape shows it exactly: 5 mm, or a quarter inch. */
  readonly stepMm: number
  /** Longest strip that still goes on one sheet, mm. Things further apart get strips of their own: a tape is truer than glued paper. */
  readonly mostMm: number
}

/** The strips of one tube, in their order along it: each for things on one straight piece that lie near to each other. */
export const tubeStrips = (
  tube: Tube,
  anchors: readonly StripAnchor[],
  setting: StripSetting,
): readonly TubeStrip[] => {
  const seated = anchors.flatMap((each): readonly Seated[] => {
    const on = each.anchor.mount.tubeId === tube.id ? tabOnTube(each.anchor, setting.tubes) : null
    return on === null ? [] : [{ ...each, on }]
  })
  const marks = tubeMarks(tube, setting.tubes)
  return tube.points.slice(1).flatMap((_, pieceIndex) => {
    const here = seated.filter(({ on }) => on.pieceIndex === pieceIndex)
    const [first] = here
    if (first === undefined) return []
    const piece = { tube, pieceIndex, axis: first.on.axis }
    const ownMarks = marks.filter((mark) => isOnPiece(piece, mark))
    const features = here.flatMap((each) => featuresOf(each, Math.PI * tube.outsideDiameterMm))
    return clustered(features, setting.mostMm).flatMap((cluster) => {
      const strip = stripOf(piece, cluster, ownMarks, setting)
      return strip === null ? [] : [strip]
    })
  })
}

interface Seated extends StripAnchor {
  readonly on: TabOnTube
}

interface Piece {
  readonly tube: Tube
  readonly pieceIndex: number
  readonly axis: Direction
}

/** Features in groups from left to right, each as long as it fits on one strip. */
const clustered = (
  features: readonly StripFeature[],
  mostMm: number,
): readonly (readonly StripFeature[])[] => {
  const groups: StripFeature[][] = []
  for (const feature of features.toSorted((a, b) => extent([a])[0] - extent([b])[0])) {
    const [lowMm, highMm] = extent([...(groups.at(-1) ?? []), feature])
    const fits = highMm - lowMm + LEFT_ROOM_MM + END_ROOM_MM <= mostMm
    if (groups.length > 0 && fits) groups.at(-1)?.push(feature)
    else groups.push([feature])
  }
  return groups
}

const stripOf = (
  { tube, pieceIndex, axis }: Piece,
  own: readonly StripFeature[],
  ownMarks: readonly TubeMark[],
  setting: StripSetting,
): TubeStrip | null => {
  const lines = clockLines(axis)
  const [lowMm, highMm] = extent(own)
  const start = startOf(ownMarks, { lowMm, highMm }, setting)
  if (start === null) return null
  const leftMm = start.mark.alongTubeMm + start.edgeMm
  // Round a bend no strip lies flat, and past an end there is nothing to tape it to.
  const lastMm = ownMarks.at(-1)?.alongTubeMm ?? Infinity
  const lengthMm = Math.min(highMm + END_ROOM_MM, lastMm) - leftMm
  const within = ownMarks.flatMap((mark): readonly StripFeature[] => {
    const atMm = mark.alongTubeMm - leftMm
    return atMm > 0 && atMm < lengthMm ? [{ kind: 'mark', mark, atMm }] : []
  })
  return {
    tube,
    pieceIndex,
    lengthMm,
    circumferenceMm: Math.PI * tube.outsideDiameterMm,
    zeroLine: lines.from,
    rightWay: wayOf(axis),
    upWay: wayOf(directionScaled(lines.quarter, -1)),
    start,
    features: [...own.map((feature) => shifted(feature, leftMm)), ...within],
  }
}

/** Whether a mark lies between the two points of a straight piece, its ends included. */
const isOnPiece = ({ tube, pieceIndex, axis }: Piece, { point }: TubeMark): boolean => {
  const [from, to] = [tube.points[pieceIndex], tube.points[pieceIndex + 1]]
  if (from === undefined || to === undefined) return false
  const along = (end: typeof from): number => directionDot(pointDifference(point, end), axis)
  return along(from) >= -ROUNDING_MM && along(to) <= ROUNDING_MM
}

const ROUNDING_MM = 1e-6

/**
 * What the left edge is measured from: the last crossing, bend or end before the first thing on the strip, a crossing rather than an
 * end at the same joint. The edge lies clear of the joining tube where the strip may be that long, else shortly before the first
 * thing; always at a whole number of steps from the mark.
 */
const startOf = (
  marks: readonly TubeMark[],
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
  { tubes, stepMm, mostMm }: StripSetting,
): TubeStrip['start'] | null => {
  const before = marks.filter((mark) => mark.alongTubeMm <= lowMm)
  const last = before.at(-1) ?? marks[0]
  if (last === undefined) return null
  const found = nearestMark(before, { alongTubeMm: lowMm, point: last.point })
  const mark = found?.mark ?? last
  const other = tubes.find(({ id }) => id === mark.otherTubeId)
  const clearMm = other === undefined ? 0 : other.outsideDiameterMm / 2 + JOINT_ROOM_MM
  const atMarkMm = Math.ceil(clearMm / stepMm) * stepMm
  const steps = (roomMm: number): number => Math.floor((lowMm - roomMm - mark.alongTubeMm) / stepMm) * stepMm
  const isShortEnough = highMm + END_ROOM_MM - mark.alongTubeMm - atMarkMm <= mostMm
  return {
    mark,
    edgeMm: Math.max(
      0,
      isShortEnough ? Math.min(atMarkMm, steps(JOINT_ROOM_MM)) : steps(LEFT_ROOM_MM - stepMm),
    ),
  }
}

/** The features of one anchor, x still along the tube from P1. */
const featuresOf = (
  { label, anchor, webbingMm, on }: Seated,
  circumferenceMm: number,
): readonly StripFeature[] => {
  const { mount } = anchor
  if (mount.kind === 'wrap') {
    const halfMm = webbingMm / 2
    const around = (offMm: number): readonly [number, number] => [
      on.alongTubeMm - offMm,
      on.alongTubeMm + offMm,
    ]
    return [
      {
        kind: 'wrap',
        label,
        anchor,
        centreMm: on.alongTubeMm,
        edgesMm: around(halfMm),
        hoopsMm: mount.guideHoops ? around(halfMm + HOOP_ROOM_MM) : null,
      },
    ]
  }
  const standing = (at: PlaceOnTube, of: 'axis' | 'hole'): readonly StripFeature[] => {
    const yMm = roundMm(at.clock?.clockDeg ?? 0, circumferenceMm)
    return [{ kind: 'point', of, label, anchor, at: { xMm: at.alongMm, yMm } }]
  }
  if (mount.kind === 'eye')
    return standing(whereMet(on, mount.point, directionScaled(shankAxis(mount), -1)), 'axis')
  if (tabForm(mount) === 'insert') return standing(whereMet(on, mount.point, towardTube(mount, on)), 'axis')
  const plates = tabPlates(mount, on)
  if ('kind' in plates) return standing({ alongMm: on.alongTubeMm, clock: on.clock }, 'hole')
  const [plate] = plates.plates
  const meanMm = plates.plates.reduce((sumMm, each) => sumMm + each.footAlongMm, 0) / plates.plates.length
  return [
    {
      kind: 'tab',
      label,
      anchor,
      at: { xMm: meanMm, yMm: roundMm(plate?.footClock?.clockDeg ?? 0, circumferenceMm) },
      lines: plates.plates.flatMap((each) => footLines(each, on, mount, circumferenceMm)),
    },
  ]
}

/** Where the axis of an eye bolt or insert meets the tube; straight below it where the axis passes beside. */
const whereMet = (on: TabOnTube, from: PointMm, direction: Direction): PlaceOnTube => {
  const lengthMm = lengthToTubeMm(on, from, direction)
  return lengthMm === null
    ? { alongMm: on.alongTubeMm, clock: on.clock }
    : pointOnTube(on, pointSum(from, direction, lengthMm))
}

/** Angle round the tube as a place on the strip: clockwise from P1 is downward, because the print is seen from outside. */
const roundMm = (clockDeg: number, circumferenceMm: number): number => 0 - (clockDeg / 360) * circumferenceMm

/** The two faces of a plate where they meet the tube, unrolled and cut at the seam. */
const footLines = (
  plate: TabPlate,
  on: TabOnTube,
  { thicknessMm }: { readonly thicknessMm: number },
  circumferenceMm: number,
): readonly (readonly FlatPoint[])[] =>
  [thicknessMm / 2, -thicknessMm / 2].flatMap((depthMm) =>
    cutAtSeam(
      faceLine(plate, depthMm).map((at) => {
        const { alongMm, clock } = placeOnTube(on, plate.hole, plate.slice, at)
        return { xMm: alongMm, yMm: roundMm(clock?.clockDeg ?? 0, circumferenceMm) }
      }),
      circumferenceMm,
    ),
  )

/** A line in as many pieces as it has jumps from one long edge of the strip to the other. */
const cutAtSeam = (
  points: readonly FlatPoint[],
  circumferenceMm: number,
): readonly (readonly FlatPoint[])[] => {
  const pieces: FlatPoint[][] = []
  let before: FlatPoint | undefined
  for (const point of points) {
    const jumps = before !== undefined && Math.abs(point.yMm - before.yMm) > circumferenceMm / 2
    if (before === undefined || jumps) pieces.push([])
    pieces.at(-1)?.push(point)
    before = point
  }
  return pieces.filter((piece) => piece.length > 1)
}

/** From where to where along the tube the features reach. */
const extent = (features: readonly StripFeature[]): readonly [number, number] => {
  const all = features.flatMap(placesOf)
  return [Math.min(...all), Math.max(...all)]
}

const placesOf = (feature: StripFeature): readonly number[] => {
  switch (feature.kind) {
    case 'wrap':
      return feature.hoopsMm ?? feature.edgesMm
    case 'tab':
      return [feature.at.xMm, ...feature.lines.flat().map(({ xMm }) => xMm)]
    case 'point':
      return [feature.at.xMm]
    case 'mark':
      return [feature.atMm]
  }
}

const shifted = (feature: StripFeature, leftMm: number): StripFeature => {
  const moved = ({ xMm, yMm }: FlatPoint): FlatPoint => ({ xMm: xMm - leftMm, yMm })
  const both = ([a, b]: readonly [number, number]): readonly [number, number] => [a - leftMm, b - leftMm]
  switch (feature.kind) {
    case 'wrap':
      return {
        ...feature,
        centreMm: feature.centreMm - leftMm,
        edgesMm: both(feature.edgesMm),
        hoopsMm: feature.hoopsMm && both(feature.hoopsMm),
      }
    case 'tab':
      return { ...feature, at: moved(feature.at), lines: feature.lines.map((line) => line.map(moved)) }
    case 'point':
      return { ...feature, at: moved(feature.at) }
    case 'mark':
      return { ...feature, atMm: feature.atMm - leftMm }
  }
}
