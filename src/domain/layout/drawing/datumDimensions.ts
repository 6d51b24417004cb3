import { type Elevation, type PlanePointMm, planePoint, projected } from '../../geometry/plane'
import { lengthText } from '../../units/length'
import type { Layout, LengthUnit } from '../document/layout'
import { handleById, handlesOf } from '../edit/handles'
import type { DrawnPlace } from './drawnPlace'
import type { DrawingOptions } from './options'
import type { Drawing, PartId, Primitive } from './primitive'

/** A point whose distances from the datum are wanted. */
interface Measured {
  readonly part: PartId
  readonly at: PlanePointMm
}

/** Distances below this are no distance, and those closer together than this are one: half of the 0.1 mm shown. */
const SAME_DISTANCE_MM = 0.05

/** Rows of dimension lines keep this many text heights apart, and the first keeps this many from what it measures. Our judgement. */
const ROW_TEXT_HEIGHTS = 1.9

const measuredPoints = (
  layout: Layout,
  places: readonly DrawnPlace[],
  elevation: Elevation,
  wanted: DrawingOptions['dimensions'],
): readonly Measured[] => {
  if (wanted === 'none') return []
  const placeIds = new Set(places.map((drawn) => drawn.place.id))
  const handles =
    wanted === 'datum'
      ? handlesOf(layout).filter(
          ({ ref }) => (ref.kind === 'anchor' || ref.kind === 'hip') && placeIds.has(ref.placeId),
        )
      : wanted.flatMap((id) => handleById(layout, id) ?? [])
  return handles
    .filter(({ ref }) => ref.kind !== 'shell-point' || ref.elevation === elevation)
    .map((handle) => ({ part: handle.id, at: projected(handle.point, elevation) }))
}

type Axis = 'u' | 'v'

/** One measured distance along an axis, and the row it stands in; rows count from 0 outward on each side of the datum. */
interface Row {
  readonly measured: Measured
  readonly distanceMm: number
  readonly row: number
}

const along = (at: PlanePointMm, axis: Axis): number => (axis === 'u' ? at.uMm : at.vMm)

/** The shortest distance stands nearest to the drawing, so that no extension line crosses a shorter dimension. */
const rowsOf = (points: readonly Measured[], axis: Axis): readonly Row[] => {
  const distinct: Measured[] = []
  for (const point of points) {
    const distanceMm = along(point.at, axis)
    const isKnown = distinct.some((other) => Math.abs(along(other.at, axis) - distanceMm) < SAME_DISTANCE_MM)
    if (Math.abs(distanceMm) >= SAME_DISTANCE_MM && !isKnown) distinct.push(point)
  }
  const side = (sign: 1 | -1): Row[] =>
    distinct
      .filter((point) => Math.sign(along(point.at, axis)) === sign)
      .toSorted((a, b) => Math.abs(along(a.at, axis)) - Math.abs(along(b.at, axis)))
      .map((measured, row) => ({ measured, distanceMm: along(measured.at, axis), row }))
  return [...side(1), ...side(-1)]
}

const onAxis = (axis: Axis, alongMm: number, acrossMm: number): PlanePointMm =>
  axis === 'u' ? planePoint(alongMm, acrossMm) : planePoint(acrossMm, alongMm)

const extension = (key: string, part: PartId, from: PlanePointMm, to: PlanePointMm): Primitive => ({
  kind: 'polyline',
  key,
  part,
  points: [from, to],
  closed: false,
  style: 'dimension',
})

/** Dimensions along one axis, on lines below the drawing (u) or left of it (v), counted out from `baseMm`. */
const axisDimensions = (
  rows: readonly Row[],
  axis: Axis,
  baseMm: number,
  textHeightMm: number,
  unit: LengthUnit,
): Primitive[] => {
  if (rows.length === 0) return []
  const datum = extension(`dimension/${axis}/datum`, null, planePoint(0, 0), onAxis(axis, 0, baseMm))
  const dimensions = rows.flatMap((row): Primitive[] => {
    const { measured, distanceMm } = row
    const key = `dimension/${axis}/${measured.part ?? ''}`
    const outMm = (row.row + 1) * ROW_TEXT_HEIGHTS * textHeightMm
    // Below a line that runs toward +u is its right; left of one that runs toward +v is its left. Negative distances turn both.
    const sign = (axis === 'u' ? -1 : 1) * Math.sign(distanceMm)
    return [
      extension(`${key}/extension`, measured.part, measured.at, onAxis(axis, distanceMm, baseMm)),
      {
        kind: 'dimension',
        key,
        part: measured.part,
        from: onAxis(axis, 0, baseMm),
        to: onAxis(axis, distanceMm, baseMm),
        offsetMm: sign * outMm,
        text: lengthText(Math.abs(distanceMm), unit),
      },
    ]
  })
  return [datum, ...dimensions]
}

/**
 * Distances from the datum. `datum` dimensions everything outside the drawing, and leaves x to the side elevation below the top one;
 * chosen handles are dimensioned close by, so that the lines stay in sight when zoomed in.
 */
export const datumDimensions = (
  layout: Layout,
  places: readonly DrawnPlace[],
  elevation: Elevation,
  options: DrawingOptions & { readonly textHeightMm: number },
  bounds: Drawing['bounds'],
): Primitive[] => {
  const points = measuredPoints(layout, places, elevation, options.dimensions)
  if (points.length === 0) return []
  const isAll = options.dimensions === 'datum'
  const below = isAll ? bounds.min.vMm : Math.min(0, ...points.map((point) => point.at.vMm))
  const left = isAll ? bounds.min.uMm : Math.min(0, ...points.map((point) => point.at.uMm))
  const { textHeightMm, lengthUnit } = options
  const acrossRows = isAll && elevation === 'top' ? [] : rowsOf(points, 'u')
  return [
    ...axisDimensions(acrossRows, 'u', below, textHeightMm, lengthUnit),
    ...axisDimensions(rowsOf(points, 'v'), 'v', left, textHeightMm, lengthUnit),
  ]
}
