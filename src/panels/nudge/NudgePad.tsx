import { type ReactElement, useState } from 'react'
import type { PointMm } from '../../domain/geometry/point'
import type { Handle } from '../../domain/layout/edit/handle'
import { lengthText } from '../../domain/units/length'
import { nudgeMm, type NudgeSize } from '../../state/nudge'
import { useApp } from '../../state/react'
import { lengthUnitOf } from '../../state/selectors'
import { useHold } from './useHold'

/** In the order of the coordinates; the arrow is the way it goes on the drawing that shows it. */
const WAYS = [
  { axis: 'x', key: 'xMm', sign: -1, arrow: '←', words: 'Forward' },
  { axis: 'x', key: 'xMm', sign: 1, arrow: '→', words: 'Rearward' },
  { axis: 'y', key: 'yMm', sign: -1, arrow: '⇤', words: 'To the left' },
  { axis: 'y', key: 'yMm', sign: 1, arrow: '⇥', words: 'To the right' },
  { axis: 'z', key: 'zMm', sign: -1, arrow: '↓', words: 'Down' },
  { axis: 'z', key: 'zMm', sign: 1, arrow: '↑', words: 'Up' },
] as const

const SHORT = { x: 'along', y: 'across', z: 'height' } as const

const NudgeButton = (props: {
  readonly handleId: string
  readonly way: (typeof WAYS)[number]
  readonly stepMm: number
  readonly stepWords: string
}): ReactElement => {
  const { handleId, way, stepMm, stepWords } = props
  const hold = useHold(handleId, { key: way.key satisfies keyof PointMm, byMm: way.sign * stepMm })
  return (
    <button type="button" className="nudge" aria-label={`${way.words} by ${stepWords}`} {...hold}>
      <span aria-hidden="true">{way.arrow}</span>
      <small aria-hidden="true">{stepWords}</small>
    </button>
  )
}

/** Arrows for the part in hand, to press or to hold, with the step written on them. */
export const NudgePad = ({ handle }: { readonly handle: Handle }): ReactElement => {
  const unit = useApp(lengthUnitOf)
  const [size, setSize] = useState<NudgeSize>('small')
  const stepMm = nudgeMm(unit, size)
  const words = (of: NudgeSize): string => `${lengthText(nudgeMm(unit, of), unit)} ${unit}`
  const other: NudgeSize = size === 'small' ? 'large' : 'small'
  return (
    <div className="nudge-pad" role="group" aria-label="Move by steps">
      {(['x', 'y', 'z'] as const)
        .filter((axis) => handle.moves[axis])
        .map((axis) => (
          <div key={axis} className="nudge-pair" data-axis={axis}>
            <span aria-hidden="true">{SHORT[axis]}</span>
            {WAYS.filter((way) => way.axis === axis).map((way) => (
              <NudgeButton
                key={way.words}
                handleId={handle.id}
                way={way}
                stepMm={stepMm}
                stepWords={words(size)}
              />
            ))}
          </div>
        ))}
      <button
        type="button"
        className="nudge nudge-size"
        aria-label={`Steps of ${words(other)}`}
        onClick={() => setSize(other)}
      >
        <span aria-hidden="true">step</span>
        <small aria-hidden="true">→ {words(other)}</small>
      </button>
    </div>
  )
}
