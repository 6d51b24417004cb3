import type { ReactElement } from 'react'
import type { MarkId, Photo } from '../../domain/measure/photo/photo'
import type { Crosses } from './useCrosses'

/** Which crosses belong together, and are joined by a line. */
const LINES: readonly (readonly MarkId[])[] = [
  ['lengthFrom', 'lengthTo'],
  ['levelFrom', 'levelTo'],
  ['frontLow', 'rearLow', 'rearHigh', 'frontHigh', 'frontLow'],
  ['checkFrom', 'checkTo'],
]

/** Lines between crosses that belong together, so that it is seen which ones do. */
export const PictureLines = (props: {
  readonly photo: Photo
  readonly crosses: Crosses
  readonly scale: number
}): ReactElement => {
  const { photo, crosses, scale } = props
  const lines = LINES.flatMap((ids) => {
    const points = ids.map((id) => (crosses.ids.includes(id) ? crosses.where(id) : undefined))
    return points.slice(1).flatMap((to, index) => {
      const from = points[index]
      return from === undefined || to === undefined ? [] : [{ key: ids[index] ?? '', from, to }]
    })
  })
  return (
    <svg
      className="picture-lines"
      width={photo.size.widthPx * scale}
      height={photo.size.heightPx * scale}
      aria-hidden="true"
    >
      {(['rim', 'ink'] as const).map((look) => (
        <g key={look} className={`cross-${look}`}>
          {lines.map(({ key, from, to }) => (
            <line
              key={key}
              x1={from.xPx * scale}
              y1={from.yPx * scale}
              x2={to.xPx * scale}
              y2={to.yPx * scale}
            />
          ))}
        </g>
      ))}
    </svg>
  )
}
