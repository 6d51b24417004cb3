import { useEffect, useMemo, useRef, type KeyboardEvent, type ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { explanationOf } from '../../domain/layout/drawing/explain/explain'
import type { NamedPoint } from '../../domain/layout/drawing/explain/explanation'
import type { SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { valueText } from '../../domain/layout/wording/amounts'
import { quantityFormula, viewCaption } from '../../domain/layout/wording/explained'
import { sittingName, subjectName } from '../../domain/layout/wording/names'
import { quantityMeaning, quantityName } from '../../domain/layout/wording/quantities'
import { capitalised } from '../../domain/layout/wording/words'
import type { QuantityValue } from '../../domain/straps/quantity'
import { lengthWithUnit } from '../../domain/units/length'
import { FigureSvg } from '../figure/FigureSvg'

const PointRow = (props: { readonly point: NamedPoint; readonly layout: Layout }): ReactElement => {
  const { letter, words, point } = props.point
  const text = (lengthMm: number): string => lengthWithUnit(lengthMm, props.layout.units.length)
  return (
    <li>
      <b>{letter}</b> {words}: x {text(point.xMm)}, y {text(point.yMm)}, z {text(point.zMm)}
    </li>
  )
}

interface ExplainProps {
  readonly id: string
  readonly layout: Layout
  readonly sitting: SittingEvaluation
  readonly quantity: QuantityValue
  readonly onClose: () => void
}

const Words = (props: {
  readonly quantity: QuantityValue
  readonly points: readonly NamedPoint[]
  readonly layout: Layout
}): ReactElement => {
  const { quantity, points, layout } = props
  const { formula, sign, source } = quantityFormula(quantity.id)
  return (
    <dl className="explain-words">
      <dt>Definition</dt>
      <dd>{quantityMeaning(quantity.id)}</dd>
      <dt>Formula</dt>
      <dd className="explain-formula">
        {formula} = {valueText(quantity.id, quantity.value, layout.units.length)}
      </dd>
      <dt>Sign</dt>
      <dd>{sign}</dd>
      {points.length === 0 ? null : (
        <>
          <dt>Points from the datum</dt>
          <dd>
            <ul>
              {points.map((point) => (
                <PointRow key={point.letter} point={point} layout={layout} />
              ))}
            </ul>
          </dd>
        </>
      )}
      <dt>Source</dt>
      <dd>{source}</dd>
    </dl>
  )
}

/** What is measured between what, for one number of one sitting. Escape or its button closes it. */
export const ExplainCard = (props: ExplainProps): ReactElement => {
  const { layout, sitting, quantity, onClose } = props
  const root = useRef<HTMLElement>(null)
  const place = layout.places.find(({ id }) => id === sitting.sitting.placeId)
  const explanation = useMemo(
    () =>
      place === undefined
        ? null
        : explanationOf({
            place,
            sitting,
            tubes: layout.tubes,
            lengthUnit: layout.units.length,
            ...quantity,
          }),
    [place, sitting, layout.tubes, layout.units.length, quantity],
  )
  // A drawing opened at the lower edge would stay out of sight.
  useEffect(() => {
    // In braces: newer browsers return a promise here, which React would take for the effect's end.
    root.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    onClose()
  }
  const value = valueText(quantity.id, quantity.value, layout.units.length)
  const title = `${capitalised(quantityName(quantity.id))}, ${subjectName(quantity.subject, layout)}: ${value}`
  return (
    <section
      ref={root}
      id={props.id}
      className="explain"
      aria-label={title}
      data-testid={`explain:${quantity.id}:${quantity.subject}`}
      onKeyDown={onKeyDown}
    >
      <header className="explain-head">
        <p>
          <b>{title}</b>
          <small>{sittingName(sitting.sitting, layout)}</small>
        </p>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </header>
      {explanation?.figures.map((figure) => (
        <figure key={figure.view}>
          <FigureSvg figure={figure} description={`${viewCaption(figure.view)}: ${title}`} />
          <figcaption>{viewCaption(figure.view)}</figcaption>
        </figure>
      ))}
      <Words quantity={quantity} points={explanation?.points ?? []} layout={layout} />
    </section>
  )
}
