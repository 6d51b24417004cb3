import type { ReactElement } from 'react'
import { type Elevation, planePoint, type PlanePointMm } from '../../domain/geometry/plane'
import type { AnchorDeviation } from '../../domain/layout/asWelded/deviation'
import type { Measurement } from '../../domain/measure/measurement'
import { type FigureShapes, figureShapes } from './figureShapes'

const WIDTH = 210
const HEIGHT = 130
const BORDER = 22

interface Placing {
  readonly perMm: number
  readonly left: number
  readonly bottom: number
}

/** The largest equal scale at which all points are inside the border, in the middle of the picture. */
const placingOf = ({ known, ways, target }: FigureShapes): Placing => {
  const all = [target, ...known.map(({ at }) => at), ...ways.flatMap(({ points }) => points)]
  const us = all.map(({ uMm }) => uMm)
  const vs = all.map(({ vMm }) => vMm)
  const [wide, high] = [Math.max(...us) - Math.min(...us), Math.max(...vs) - Math.min(...vs)]
  const perMm = Math.min(
    (WIDTH - 2 * BORDER) / Math.max(wide, 1),
    (HEIGHT - 2 * BORDER) / Math.max(high, 1),
    1,
  )
  return {
    perMm,
    left: (WIDTH - wide * perMm) / 2 - Math.min(...us) * perMm,
    bottom: (HEIGHT + high * perMm) / 2 + Math.min(...vs) * perMm,
  }
}

const middle = (points: readonly PlanePointMm[]): PlanePointMm => {
  const [first, last] = [points[0], points.at(-1)]
  if (first === undefined || last === undefined) return planePoint(0, 0)
  return planePoint((first.uMm + last.uMm) / 2, (first.vMm + last.vMm) / 2)
}

const Elevated = (props: { readonly shapes: FigureShapes; readonly words: string }): ReactElement => {
  const { shapes, words } = props
  const { perMm, left, bottom } = placingOf(shapes)
  const x = ({ uMm }: PlanePointMm): number => left + uMm * perMm
  const y = ({ vMm }: PlanePointMm): number => bottom - vMm * perMm
  const target = shapes.target
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
      <text className="figure-title" x={4} y={12}>
        {words}
      </text>
      {shapes.ways.map(({ name, points }) => (
        <g key={name}>
          <polyline
            className={name === 'level' ? 'figure-level' : 'figure-way'}
            points={points.map((point) => `${x(point)},${y(point)}`).join(' ')}
          />
          <text x={x(middle(points)) + 3} y={y(middle(points)) - 3}>
            {name}
          </text>
        </g>
      ))}
      {shapes.known.map(({ name, at }) => (
        <g key={name}>
          <circle className="figure-known" cx={x(at)} cy={y(at)} r={3.5} />
        </g>
      ))}
      <path
        className="figure-target"
        d={`M${x(target) - 6} ${y(target)}h12M${x(target)} ${y(target) - 6}v12`}
      />
    </svg>
  )
}

/** Side and top elevation of where the tape goes: known points as dots, what is measured as a cross. */
export const MeasureFigure = (props: {
  readonly measurement: Measurement
  readonly deviation: AnchorDeviation
}): ReactElement => {
  const { measurement, deviation } = props
  const { position } = deviation.reading
  const target = position?.ok === true ? position.value.point : deviation.planned
  const words: Readonly<Record<Elevation, string>> = { side: 'From the side', top: 'From above' }
  return (
    <div className="measure-figure">
      {(['side', 'top'] as const).map((elevation) => (
        <Elevated
          key={elevation}
          shapes={figureShapes(measurement, target, elevation)}
          words={words[elevation]}
        />
      ))}
    </div>
  )
}
