import { type Elevation, type PlanePointMm, projected } from '../../domain/geometry/plane'
import { type PointMm, pointMm } from '../../domain/geometry/point'
import type { Measurement } from '../../domain/measure/measurement'

/** A point of the figure with the short name it carries. */
interface FigurePoint {
  readonly name: string
  readonly at: PlanePointMm
}

/** Where tapes and strings go in one elevation, in mm of the car. */
export interface FigureShapes {
  readonly known: readonly FigurePoint[]
  /** One way from a known point to what is measured, each with its name. */
  readonly ways: readonly { readonly name: string; readonly points: readonly PlanePointMm[] }[]
  readonly target: PlanePointMm
}

interface SpaceWay {
  readonly name: string
  readonly points: readonly PointMm[]
}

const DATUM = pointMm(0, 0, 0)

/** The ways of a measurement in space: along the axes, or straight. */
const waysOf = (measurement: Measurement, target: PointMm): readonly SpaceWay[] => {
  switch (measurement.kind) {
    case 'coordinates': {
      const { xMm, yMm } = target
      return [
        { name: 'x', points: [DATUM, pointMm(xMm, 0, 0)] },
        { name: 'y', points: [pointMm(xMm, 0, 0), pointMm(xMm, yMm, 0)] },
        { name: 'z', points: [pointMm(xMm, yMm, 0), target] },
      ]
    }
    case 'tapes':
      return measurement.tapes.map(({ from }, index) => ({
        name: `${index + 1}`,
        points: [from.point, target],
      }))
    case 'angle': {
      const { from } = measurement
      // Level from the known point, to see the string's angle against.
      const level = pointMm(target.xMm, target.yMm, from.point.zMm)
      return [
        { name: 'string', points: [from.point, target] },
        { name: 'level', points: [from.point, level] },
      ]
    }
  }
}

const knownOf = (measurement: Measurement): readonly { readonly name: string; readonly point: PointMm }[] => {
  switch (measurement.kind) {
    case 'coordinates':
      return [{ name: 'datum', point: DATUM }]
    case 'tapes':
      return measurement.tapes.map(({ from }, index) => ({ name: `${index + 1}`, point: from.point }))
    case 'angle':
      return [{ name: 'from', point: measurement.from.point }]
  }
}

/** The measurement as one elevation shows it; `target` is where it leads, or where it should while it does not. */
export const figureShapes = (
  measurement: Measurement,
  target: PointMm,
  elevation: Elevation,
): FigureShapes => ({
  known: knownOf(measurement).map(({ name, point }) => ({ name, at: projected(point, elevation) })),
  ways: waysOf(measurement, target).map(({ name, points }) => ({
    name,
    points: points.map((point) => projected(point, elevation)),
  })),
  target: projected(target, elevation),
})
