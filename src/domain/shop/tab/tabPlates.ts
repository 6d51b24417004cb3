import { directionDot, pointDifference, pointSum, type Direction, type PointMm } from '../../geometry/point'
import { directionCross, unitDirection } from '../../geometry/vector'
import { tabForm, type TabMount } from '../../straps/anchor'
import { tabNormal } from '../../straps/tabPlane'
import { tabSize, type TabSize } from '../../straps/tabSize'
import { atan2Deg } from '../../units/angle'
import { type Clock, clockOf } from './clock'
import { type SlicePoint, surfaceAt, tubeSlice, type TubeSlice } from './tubeSlice'
import type { SeatProblem, TabOnTube } from './tabOnTube'
import { type OutlineProblem, type TabOutline, tabOutline } from './tabOutline'

/** Why a tab gets no outline; lengths in mm. Words are made in `layout/wording/tabText`. */
export type PlateProblem =
  | SeatProblem
  | OutlineProblem
  /** The plate's plane runs along the tube and passes `besideMm` ≥ 0 beside its surface. */
  | { readonly kind: 'plane-misses'; readonly besideMm: number }
  /** The foot would meet the tube past one of its ends or bends: the straight piece ends `beyondMm` before. */
  | { readonly kind: 'foot-beyond'; readonly beyondMm: number }

/** One plate of a tab, ready to be drawn in true size. */
export interface TabPlate {
  /** Which of a clevis' two plates: the one its normal points to, or the other; `only` for a single plate. */
  readonly which: 'only' | 'near' | 'far'
  readonly outline: TabOutline
  /** The middle of this plate's hole. */
  readonly hole: PointMm
  readonly slice: TubeSlice
  /** Where the middle of the foot meets the tube: along the centre line from P1, mm, and round it. */
  readonly footAlongMm: number
  readonly footClock: Clock | null
  /** How far the foot reaches past the next bend or end of the tube, mm; 0 when it stays on the straight piece. */
  readonly overBendMm: number
}

export interface TabPlates {
  readonly size: TabSize
  readonly plates: readonly TabPlate[]
}

/** The plates of a tab on its tube (one, or a clevis' two), or why there are none. An insert has no plate: see `insertCope`. */
export const tabPlates = (mount: TabMount, on: TabOnTube): TabPlates | PlateProblem => {
  if (on.problem !== null) return on.problem
  const size = tabSize(mount)
  const offMm = (size.gapMm + mount.thicknessMm) / 2
  const places =
    tabForm(mount) === 'clevis'
      ? ([
          ['near', offMm],
          ['far', -offMm],
        ] as const)
      : ([['only', 0]] as const)
  const up = sharedUp(
    mount,
    on,
    places.map(([, offsetMm]) => offsetMm),
  )
  const plates: TabPlate[] = []
  for (const [which, offsetMm] of places) {
    const plate = tabPlate(mount, on, size, { which, offsetMm, up })
    if ('kind' in plate) return plate
    plates.push(plate)
  }
  return { size, plates }
}

/**
 * Both plates of a clevis stand the same way on the tube, as one plate in their middle would; undefined for a single plate, and where
 * one of them would not meet the tube that way: then each takes its own shortest way.
 */
const sharedUp = (mount: TabMount, on: TabOnTube, offsetsMm: readonly number[]): Direction | undefined => {
  const middle = sliceAt(mount, on, mount.point)
  if (offsetsMm.length === 1 || typeof middle === 'string') return undefined
  const slices = offsetsMm.map((offsetMm) =>
    sliceAt(mount, on, pointSum(mount.point, tabNormal(mount), offsetMm), middle.up),
  )
  return slices.every((slice) => typeof slice !== 'string') ? middle.up : undefined
}

/** A plane parallel to the tab's through a hole, and the tube in it. */
const sliceAt = (
  mount: TabMount,
  on: TabOnTube,
  hole: PointMm,
  up?: Direction,
): ReturnType<typeof tubeSlice> =>
  tubeSlice({
    hole,
    normal: tabNormal(mount),
    onAxis: on.foot,
    axis: on.axis,
    radiusMm: on.tube.outsideDiameterMm / 2,
    ...(up === undefined ? {} : { up }),
  })

const tabPlate = (
  mount: TabMount,
  on: TabOnTube,
  size: TabSize,
  {
    which,
    offsetMm,
    up,
  }: {
    readonly which: TabPlate['which']
    readonly offsetMm: number
    readonly up: Direction | undefined
  },
): TabPlate | PlateProblem => {
  const normal = tabNormal(mount)
  const hole = pointSum(mount.point, normal, offsetMm)
  const radiusMm = on.tube.outsideDiameterMm / 2
  const slice = sliceAt(mount, on, hole, up)
  if (slice === 'inside')
    return { kind: 'inside-tube', tubeId: on.tube.id, depthMm: Math.max(0, -(on.standoffMm ?? 0)) }
  if (slice === 'misses') {
    const offAxisMm = Math.abs(directionDot(pointDifference(hole, on.foot), normal))
    return { kind: 'plane-misses', besideMm: Math.max(0, offAxisMm - radiusMm) }
  }
  const foot = placeOnTube(on, hole, slice, { xMm: 0, yMm: -slice.reachMm, depthMm: 0 })
  const beyondMm = beyondPiece(on, foot.alongMm)
  if (beyondMm > 0) return { kind: 'foot-beyond', beyondMm }
  const { thicknessMm, holeDiameterMm } = mount
  const outline = tabOutline(slice, { ...size, thicknessMm, holeDiameterMm })
  if ('kind' in outline) return outline
  const overs = outline.edge.map((at) => beyondPiece(on, placeOnTube(on, hole, slice, at).alongMm))
  return {
    which,
    outline,
    hole,
    slice,
    footAlongMm: foot.alongMm,
    footClock: foot.clock,
    overBendMm: Math.max(0, ...overs),
  }
}

/** Where a place of a plate lies on its tube: along the centre line from P1 and round it. */
export interface PlaceOnTube {
  readonly alongMm: number
  readonly clock: Clock | null
}

/** A point of the car as a place along and round a tube; the straight piece is taken to go on past its ends. */
export const pointOnTube = (
  on: Pick<TabOnTube, 'foot' | 'axis' | 'alongTubeMm'>,
  point: PointMm,
): PlaceOnTube => {
  const from = pointDifference(point, on.foot)
  return { alongMm: on.alongTubeMm + directionDot(from, on.axis), clock: clockOf(on.axis, from) }
}

/** A place in a plate's own coordinates as a place along and round the tube. */
export const placeOnTube = (
  on: Pick<TabOnTube, 'foot' | 'axis' | 'alongTubeMm'>,
  hole: PointMm,
  slice: TubeSlice,
  at: SlicePoint,
): PlaceOnTube => pointOnTube(on, spatial(hole, slice, at))

/** A place in a plate's own coordinates, in the car. */
export const spatial = (hole: PointMm, slice: TubeSlice, { xMm, yMm, depthMm }: SlicePoint): PointMm =>
  pointSum(pointSum(pointSum(hole, slice.right, xMm), slice.up, yMm), slice.normal, depthMm)

/** How far a place along the tube lies outside the straight piece that the anchor's foot is on, mm ≥ 0. */
const beyondPiece = (on: TabOnTube, alongMm: number): number => {
  const own = (index: number, otherwise: number): number => {
    const point = on.tube.points[index]
    return point === undefined ? otherwise : directionDot(pointDifference(point, on.foot), on.axis)
  }
  const atMm = alongMm - on.alongTubeMm
  return Math.max(0, own(on.pieceIndex, -Infinity) - atMm, atMm - own(on.pieceIndex + 1, Infinity))
}

/** A direction of the car as somebody sees it who looks squarely at a plate: degrees anticlockwise from the right; null when it points at them. */
export const directionInPlate = (slice: TubeSlice, direction: Direction): number | null => {
  const [x, y] = [directionDot(direction, slice.right), directionDot(direction, slice.up)]
  return Math.hypot(x, y) < NO_SHARE ? null : atan2Deg(y, x)
}

const NO_SHARE = 1e-6

/** The level line in a plate's plane, as `directionInPlate`, range (-90°, 90°]; null for a plate that lies flat, where every line is level. */
export const levelInPlate = (slice: TubeSlice): number | null => {
  const level = unitDirection(directionCross(slice.normal, { x: 0, y: 0, z: 1 }))
  const deg = level === null ? null : directionInPlate(slice, level)
  if (deg === null) return null
  return deg > 90 ? deg - 180 : deg <= -90 ? deg + 180 : deg
}

/** The line on the tube along which one face of a plate meets it, in the plate's coordinates, left to right. */
export const faceLine = (plate: TabPlate, depthMm: number): readonly SlicePoint[] =>
  plate.outline.edge.flatMap(({ xMm }) => {
    const yMm = surfaceAt(plate.slice, xMm, depthMm)
    return yMm === null ? [] : [{ xMm, yMm, depthMm }]
  })
