import type { PointMm } from '../../../domain/geometry/point'
import type { Tube } from '../../../domain/geometry/tube'
import type { Layout } from '../../../domain/layout/document/layout'
import { tubeName } from '../../../domain/layout/wording/names'
import type { CsvTable } from '../csv'
import { column, lengthColumns, pointColumns, tableOf } from './columns'

interface TubePoint {
  readonly tube: Tube
  readonly number: number
  readonly point: PointMm
}

/** Every point of every tube's centre line, in the order that lengths along it count from P1. */
export const tubesTable = (layout: Layout): CsvTable =>
  tableOf(
    [
      ...column<TubePoint>('tube', ({ tube }) => tubeName(tube.id, layout)),
      ...column<TubePoint>('role', ({ tube }) => tube.role.replace('-', ' ')),
      ...lengthColumns<TubePoint>('outside diameter', ({ tube }) => tube.outsideDiameterMm),
      ...lengthColumns<TubePoint>('wall', ({ tube }) => tube.wallMm),
      ...column<TubePoint>('point', ({ number }) => `P${number}`),
      ...pointColumns<TubePoint>('', ({ point }) => point),
    ],
    layout.tubes.flatMap((tube) =>
      tube.points.map((point, index): TubePoint => ({ tube, number: index + 1, point })),
    ),
  )
