import type { ReactElement } from 'react'
import type { PointMm } from '../../domain/geometry/point'
import type { Layout } from '../../domain/layout/document/layout'
import { judgedLength, mirrorChoices } from '../../domain/layout/wording/weldedWords'
import { measuredPoint } from '../../domain/measure/measuredPoint'
import type { Measurement } from '../../domain/measure/measurement'
import type { MirrorPair } from '../../domain/measure/measureProblem'
import { lengthText } from '../../domain/units/length'

type Tapes = Extract<Measurement, { readonly kind: 'tapes' }>

/** The two places that fit, whether one was chosen or not; null where the tapes tell them apart, or give none. */
const pairOf = (measurement: Tapes): MirrorPair | null => {
  const undecided = measuredPoint({ ...measurement, side: null })
  return undecided.ok || undecided.error.kind !== 'side-not-chosen' ? null : undecided.error.pair
}

/**
 * Tapes from points in one plane fit two places, one on either side of it. Which one it is, only whoever stands at the car can
 * tell: none is picked beforehand, because the one nearer to the plan would hide a tab on the wrong side.
 */
export const MirrorChoiceButtons = (props: {
  readonly measurement: Tapes
  readonly planned: PointMm
  readonly layout: Layout
  readonly onChoose: (measurement: Tapes) => void
}): ReactElement | null => {
  const { measurement, planned, layout, onChoose } = props
  const pair = pairOf(measurement)
  if (pair === null) return null
  const unit = layout.units.length
  return (
    <fieldset className="mirror-choice">
      <legend>Two places fit these tapes. Where is it on the car?</legend>
      {mirrorChoices(pair, planned).map(({ side, point, where, fromPlanMm, isNearerToPlan }) => (
        <button
          key={side}
          type="button"
          aria-pressed={measurement.side === side}
          data-testid={`mirror:${side}`}
          onClick={() => onChoose({ ...measurement, side })}
        >
          <strong>{where}</strong>
          <span>
            x {lengthText(point.xMm, unit)}, y {lengthText(point.yMm, unit)}, z {lengthText(point.zMm, unit)}{' '}
            {unit}
          </span>
          <span>
            {judgedLength(fromPlanMm, unit)} from the plan{isNearerToPlan ? ' · nearer to the plan' : ''}
          </span>
        </button>
      ))}
    </fieldset>
  )
}
