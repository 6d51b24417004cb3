import type { ReactElement } from 'react'
import type { PicturePoint, PictureSize } from '../../domain/measure/photo/photo'

const SIDE_PX = 150

/** The spot under a cross is shown at least this much larger than the picture is. Our judgement. */
const LARGER = 3

/** The picture about a cross, enlarged, in the corner of the view that the cross is not in. */
export const CrossMagnifier = (props: {
  readonly address: string
  readonly size: PictureSize
  readonly at: PicturePoint
  readonly scale: number
  readonly corner: 'left' | 'right'
}): ReactElement => {
  const { address, size, at, corner } = props
  const scale = Math.max(1, LARGER * props.scale)
  return (
    <div
      className="cross-magnifier"
      data-testid="cross-magnifier"
      data-corner={corner}
      aria-hidden="true"
      style={{
        width: SIDE_PX,
        height: SIDE_PX,
        backgroundImage: `url("${address}")`,
        backgroundSize: `${size.widthPx * scale}px ${size.heightPx * scale}px`,
        backgroundPosition: `${SIDE_PX / 2 - at.xPx * scale}px ${SIDE_PX / 2 - at.yPx * scale}px`,
      }}
    >
      <svg width={SIDE_PX} height={SIDE_PX} viewBox="-75 -75 150 150">
        {(['rim', 'ink'] as const).map((look) => (
          <path key={look} className={`cross-${look}`} d="M-75 0H-6M6 0H75M0 -75V-6M0 6V75M-1 0H1" />
        ))}
      </svg>
    </div>
  )
}
