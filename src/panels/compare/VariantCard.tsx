import { type ReactElement, useMemo } from 'react'
import { type EvaluatedVariant, findingTally } from '../../domain/layout/compare/comparedFindings'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import {
  isFreeVariantName,
  type VariantLayout,
  withoutVariant,
  withVariantDrawn,
  withVariantMoved,
  withVariantRenamed,
} from '../../domain/layout/edit/changeVariants'
import { tallyLines } from '../../domain/layout/wording/compareWords'
import { useActions, useApp } from '../../state/react'
import { TextField } from '../fields/TextField'
import { LayoutPicture } from '../figure/LayoutPicture'

/** Where the focus goes on from when a card goes with its buttons. */
export const VARIANTS_HEADING = 'compare-variants'

const VariantButtons = (props: {
  readonly variant: VariantLayout
  readonly index: number
  readonly count: number
  readonly isDrawn: boolean
}): ReactElement => {
  const { edit } = useActions()
  const { variant, index, count, isDrawn } = props
  const { id, name } = variant
  return (
    <div className="button-row">
      <button
        type="button"
        aria-pressed={isDrawn}
        onClick={() => edit(`Draw ${name}`, (layout) => withVariantDrawn(layout, id))}
      >
        {isDrawn ? 'Drawn now' : 'Draw this one'}
      </button>
      <button
        type="button"
        disabled={index === 0}
        onClick={() => edit(`Put ${name} earlier`, (layout) => withVariantMoved(layout, id, -1))}
      >
        Earlier<span className="visually-hidden">: {name}</span>
      </button>
      <button
        type="button"
        disabled={index === count - 1}
        onClick={() => edit(`Put ${name} later`, (layout) => withVariantMoved(layout, id, 1))}
      >
        Later<span className="visually-hidden">: {name}</span>
      </button>
      <button
        type="button"
        onClick={() => {
          // The button goes with its card.
          document.getElementById(VARIANTS_HEADING)?.focus()
          edit(`Remove ${name}`, (layout) => withoutVariant(layout, id))
        }}
      >
        Remove<span className="visually-hidden"> {name}</span>
      </button>
    </div>
  )
}

/** One variant: its picture, its name, how its findings add up, and what can be done with it. */
export const VariantCard = (props: {
  readonly variant: VariantLayout
  readonly evaluated: EvaluatedVariant
  readonly index: number
  readonly count: number
  readonly isDrawn: boolean
}): ReactElement => {
  const { variant, evaluated, isDrawn } = props
  const { edit, notify } = useActions()
  const whole = useApp((state) => state.layout)
  const lines = useMemo(() => {
    const findings = evaluated.evaluation.places.flatMap((place) => place.findings)
    return tallyLines(findingTally(findings), evaluated.layout)
  }, [evaluated])
  const rename = (name: string): void => {
    if (isFreeVariantName(whole, name, variant.id))
      return edit(`Call ${variant.name} ${name.trim()}`, (layout) =>
        withVariantRenamed(layout, variant.id, name),
      )
    notify(
      'problem',
      name.trim() === '' ? 'A variant needs a name.' : `Another variant is called “${name.trim()}” already.`,
    )
  }
  return (
    <li
      className="compare-card"
      data-drawn={isDrawn ? 'true' : undefined}
      data-testid={`variant:${variant.id}`}
    >
      <h4>
        {variant.name}
        {isDrawn ? <span className="compare-tag"> · drawn</span> : null}
      </h4>
      <LayoutPicture layout={variant.layout} elevation="side" description={`${variant.name} from the side`} />
      <ul className="compare-tally">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <TextField
        label="Name of this variant"
        value={variant.name}
        maxLength={TEXT_LENGTHS.name}
        onCommit={rename}
      />
      <VariantButtons variant={variant} index={props.index} count={props.count} isDrawn={isDrawn} />
    </li>
  )
}
