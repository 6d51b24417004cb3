import type { ReactElement } from 'react'
import type { PlanePointMm } from '../../domain/geometry/plane'
import { angleTextAt, arcPoints, dimensionLine } from '../../domain/layout/drawing/figureText'
import type { Drawing, Primitive } from '../../domain/layout/drawing/primitive'

/** Up is plus on the drawing and minus on the page. */
const points = (list: readonly PlanePointMm[]): string =>
  list.map(({ uMm, vMm }) => `${uMm.toFixed(3)},${(-vMm).toFixed(3)}`).join(' ')

const ANCHOR = { left: 'start', centre: 'middle', right: 'end' } as const

interface Lettering {
  readonly at: PlanePointMm
  readonly text: string
  readonly textHeightMm: number
  readonly align?: keyof typeof ANCHOR
  readonly isStrong?: boolean
  /** Anticlockwise, as the drawing counts. */
  readonly turnDeg?: number
}

/** Text on a rim of paper, so that it stays legible over lines. */
const Letters = (props: Lettering): ReactElement => {
  const { at, text, textHeightMm, align = 'centre', isStrong = false, turnDeg = 0 } = props
  return (
    <text
      x={at.uMm}
      y={-at.vMm}
      dy="0.35em"
      fontSize={0.88 * textHeightMm}
      strokeWidth={0.25 * textHeightMm}
      textAnchor={ANCHOR[align]}
      className={isStrong ? 'figure-text strong' : 'figure-text'}
      transform={turnDeg === 0 ? undefined : `rotate(${-turnDeg} ${at.uMm} ${-at.vMm})`}
    >
      {text}
    </text>
  )
}

/** Half length of an architectural tick as a share of the lettering. Our judgement. */
const TICK_SHARE = 0.35

const Dimension = (props: {
  readonly primitive: Extract<Primitive, { kind: 'dimension' }>
  readonly textHeightMm: number
}): ReactElement => {
  const { primitive, textHeightMm } = props
  const { from, to, textAt, textTurnDeg } = dimensionLine(primitive, textHeightMm)
  const reach = TICK_SHARE * textHeightMm
  return (
    <g>
      <polyline className="figure-line dimension" points={points([primitive.from, from])} />
      <polyline className="figure-line dimension" points={points([primitive.to, to])} />
      <polyline className="figure-line value" points={points([from, to])} />
      {[from, to].map(({ uMm, vMm }, index) => (
        <line
          // The two ends never change places.
          key={index === 0 ? 'from' : 'to'}
          className="figure-line value"
          x1={uMm - reach}
          y1={-(vMm - reach)}
          x2={uMm + reach}
          y2={-(vMm + reach)}
        />
      ))}
      <Letters at={textAt} text={primitive.text} textHeightMm={textHeightMm} turnDeg={textTurnDeg} isStrong />
    </g>
  )
}

const Angle = (props: {
  readonly primitive: Extract<Primitive, { kind: 'angle' }>
  readonly textHeightMm: number
}): ReactElement => {
  const { primitive, textHeightMm } = props
  const { apex, radiusMm, fromDeg, toDeg, text } = primitive
  return (
    <g>
      <polyline className="figure-line value" points={points(arcPoints(apex, radiusMm, fromDeg, toDeg))} />
      <Letters at={angleTextAt(primitive, textHeightMm)} text={text} textHeightMm={textHeightMm} isStrong />
    </g>
  )
}

const Shape = (props: {
  readonly primitive: Primitive
  readonly textHeightMm: number
}): ReactElement | null => {
  const { primitive, textHeightMm } = props
  switch (primitive.kind) {
    case 'polyline': {
      const className = `figure-line ${primitive.style}`
      return primitive.closed ? (
        <polygon className={className} points={points(primitive.points)} />
      ) : (
        <polyline className={className} points={points(primitive.points)} />
      )
    }
    case 'circle':
      return (
        <circle
          className={`figure-line ${primitive.style}`}
          cx={primitive.centre.uMm}
          cy={-primitive.centre.vMm}
          r={primitive.radiusMm}
        />
      )
    case 'label':
      return (
        <Letters
          at={primitive.at}
          text={primitive.text}
          textHeightMm={textHeightMm}
          align={primitive.align}
          isStrong={primitive.weight === 'strong'}
        />
      )
    case 'dimension':
      return <Dimension primitive={primitive} textHeightMm={textHeightMm} />
    case 'angle':
      return <Angle primitive={primitive} textHeightMm={textHeightMm} />
    case 'mark':
      return (
        <circle
          className="figure-point"
          cx={primitive.at.uMm}
          cy={-primitive.at.vMm}
          r={0.22 * textHeightMm}
        />
      )
    // No zone is ever part of what is measured.
    case 'zone':
      return null
  }
}

/** What an elevation, an explained number or a picture in the guide is drawn from. */
export interface Figure {
  readonly primitives: readonly Primitive[]
  /** The part of the plane to show. */
  readonly bounds: Drawing['bounds']
  /** Height of a line of text, mm of the car. */
  readonly textHeightMm: number
}

/** One drawing at the width it is given, as high as its bounds ask for. */
export const FigureSvg = (props: { readonly figure: Figure; readonly description: string }): ReactElement => {
  const { bounds, primitives, textHeightMm } = props.figure
  const widthMm = bounds.max.uMm - bounds.min.uMm
  const heightMm = bounds.max.vMm - bounds.min.vMm
  return (
    <svg
      className="figure-drawing"
      role="img"
      aria-label={props.description}
      viewBox={`${bounds.min.uMm} ${-bounds.max.vMm} ${widthMm} ${heightMm}`}
    >
      {primitives.map((primitive) => (
        <Shape key={primitive.key} primitive={primitive} textHeightMm={textHeightMm} />
      ))}
    </svg>
  )
}
