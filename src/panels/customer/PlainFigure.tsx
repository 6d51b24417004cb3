import { type ReactElement, useId, useMemo, useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { explanationOf } from '../../domain/layout/drawing/explain/explain'
import type { ShownEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { PlainCase, PlainFinding } from '../../domain/layout/wording/plainFinding'
import { ExplainButton, useReturnedFocus } from '../explain/ExplainButton'
import { FigureSvg } from '../figure/FigureSvg'

interface FigureProps {
  readonly layout: Layout
  readonly evaluation: ShownEvaluation
  readonly plain: PlainFinding
}

/** The number of a case in the sitting where it is worst; null for what is typed or has no number. */
const measuredIn = ({ finding }: PlainCase, evaluation: ShownEvaluation) => {
  const { placeId, worstSitting, quantity, subject } = finding
  const sitting = evaluation.places
    .find((place) => place.placeId === placeId)
    ?.sittings.find((entry) => entry.sitting.id === worstSitting)
  const number = sitting?.quantities.find((each) => each.id === quantity && each.subject === subject)
  return sitting === undefined || number === undefined ? null : { sitting, number }
}

const Figures = (props: FigureProps & { readonly shown: PlainCase }): ReactElement | null => {
  const { layout, evaluation, plain, shown } = props
  const figures = useMemo(() => {
    const measured = measuredIn(shown, evaluation)
    const place = layout.places.find(({ id }) => id === shown.finding.placeId)
    if (measured === null || place === undefined) return []
    const { sitting, number } = measured
    const lengthUnit = layout.units.length
    const made = explanationOf({ place, sitting, tubes: layout.tubes, lengthUnit, ...number })
    return made?.figures ?? []
  }, [layout, evaluation, shown])
  if (figures.length === 0) return <p className="hint">There is no picture of this number.</p>
  return (
    <>
      {figures.map((figure) => (
        <FigureSvg key={figure.view} figure={figure} description={`${shown.who}. ${plain.number}`} />
      ))}
    </>
  )
}

/** The number of a finding drawn on request; nothing for what is typed. */
export const PlainFigure = (props: FigureProps): ReactElement | null => {
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const { button } = useReturnedFocus(() => setOpen(false))
  const shown = props.plain.cases.find((each) => measuredIn(each, props.evaluation) !== null)
  if (shown === undefined) return null
  return (
    <>
      <ExplainButton
        words="Show it"
        label={`Show it: ${props.plain.topic}`}
        isOpen={isOpen}
        controls={id}
        onToggle={() => setOpen(!isOpen)}
        ref={button}
      />
      {isOpen ? (
        <div id={id} className="plain-figure" role="group" aria-label={props.plain.topic}>
          <Figures {...props} shown={shown} />
        </div>
      ) : null}
    </>
  )
}
