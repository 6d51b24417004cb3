import type { ReactElement } from 'react'
import type { PointPx, SizePx } from '../viewTransform'

const CROSS_PX = 14
const GAP_PX = 3

const asPoints = (points: readonly PointPx[]): string =>
  points.map(({ xPx, yPx }) => `${xPx.toFixed(2)},${yPx.toFixed(2)}`).join(' ')

const crossPath = ({ xPx, yPx }: PointPx): string =>
  [
    `M${xPx - CROSS_PX} ${yPx}H${xPx - GAP_PX}`,
    `M${xPx + GAP_PX} ${yPx}H${xPx + CROSS_PX}`,
    `M${xPx} ${yPx - CROSS_PX}V${yPx - GAP_PX}`,
    `M${xPx} ${yPx + GAP_PX}V${yPx + CROSS_PX}`,
  ].join('')

/** What is traced so far, the piece to where it is aimed, and the cross-hair; each on a rim of paper, so that it is seen on any photo. */
export const TraceLines = (props: {
  readonly size: SizePx
  readonly line: readonly PointPx[]
  readonly aim: PointPx | null
}): ReactElement => {
  const { size, line, aim } = props
  const last = line.at(-1)
  return (
    <svg width={size.widthPx} height={size.heightPx} aria-hidden="true" className="trace-lines">
      {(['rim', 'ink'] as const).map((look) => (
        <g key={look} className={`trace-${look}`}>
          <polyline points={asPoints(line)} />
          {aim === null || last === undefined ? null : (
            <line className="trace-next" x1={last.xPx} y1={last.yPx} x2={aim.xPx} y2={aim.yPx} />
          )}
          {line.map(({ xPx, yPx }, index) => (
            // Points have no identity of their own but their order.
            // oxlint-disable-next-line react/no-array-index-key
            <circle key={index} cx={xPx} cy={yPx} r={4} />
          ))}
          {aim === null ? null : <path d={crossPath(aim)} />}
        </g>
      ))}
    </svg>
  )
}
