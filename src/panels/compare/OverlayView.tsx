import { type ReactElement, useMemo, useState } from 'react'
import type { Elevation } from '../../domain/geometry/plane'
import type { EvaluatedVariant } from '../../domain/layout/compare/comparedFindings'
import { overlayDrawing } from '../../domain/layout/drawing/overlayDrawing'
import { ChoiceField } from '../fields/ChoiceField'
import { useMediaQuery } from '../useMediaQuery'
import { type Figure, FigureSvg } from '../figure/FigureSvg'
import type { CompareView } from './useCompare'

/** Lettering as a share of the length of the car: what can be read on a desk, and on a phone. Our judgement. */
const TEXT_SHARES = { wide: 0.016, narrow: 0.042 } as const

/** The lettering before the length is known: 1:10. */
const FIRST_TEXT_MM = 25

const figuresOf = (
  solid: EvaluatedVariant | undefined,
  dotted: EvaluatedVariant | undefined,
  textShare: number,
): Readonly<Record<Elevation, Figure>> | null => {
  if (solid === undefined || dotted === undefined) return null
  const lengthUnit = solid.layout.units.length
  const rough = overlayDrawing({ solid, dotted, lengthUnit, textHeightMm: FIRST_TEXT_MM }, 'side').bounds
  const textHeightMm = textShare * (rough.max.uMm - rough.min.uMm)
  const [side, top] = (['side', 'top'] as const).map((elevation) =>
    overlayDrawing({ solid, dotted, lengthUnit, textHeightMm }, elevation),
  )
  if (side === undefined || top === undefined) return null
  // One x axis for both: what stands above what is at the same x.
  const minUMm = Math.min(side.bounds.min.uMm, top.bounds.min.uMm)
  const maxUMm = Math.max(side.bounds.max.uMm, top.bounds.max.uMm)
  const framed = ({ bounds, primitives }: typeof side): Figure => ({
    primitives,
    textHeightMm,
    bounds: { min: { ...bounds.min, uMm: minUMm }, max: { ...bounds.max, uMm: maxUMm } },
  })
  return { side: framed(side), top: framed(top) }
}

const Legend = (props: { readonly drawn: string; readonly other: string }): ReactElement => (
  <ul className="compare-legend">
    <li>
      <svg viewBox="0 0 48 16" aria-hidden="true">
        <line className="figure-line strap" x1="2" y1="8" x2="46" y2="8" />
        <circle className="figure-point" cx="24" cy="8" r="4" />
      </svg>
      {props.drawn}: solid lines, round marks
    </li>
    <li>
      <svg viewBox="0 0 48 16" aria-hidden="true">
        <line className="figure-line other" x1="2" y1="8" x2="46" y2="8" />
        <polygon className="figure-line other" points="18,8 24,2 30,8 24,14" />
      </svg>
      {props.other}: dotted lines, rhombs, and only what lies elsewhere
    </li>
    <li>
      <svg viewBox="0 0 48 16" aria-hidden="true">
        <line className="figure-line focus" x1="2" y1="8" x2="46" y2="8" />
      </svg>
      how far a part lies elsewhere, straight through space
    </li>
  </ul>
)

/** The drawn variant with another laid over it, from above and from the side on one x axis. */
export const OverlayView = (props: { readonly view: CompareView }): ReactElement | null => {
  const { view } = props
  const { variants, evaluated, drawn } = view
  const [chosenId, setChosenId] = useState('')
  const others = variants.filter((_, index) => index !== drawn)
  const chosen = others.find(({ id }) => id === chosenId) ?? others[0]
  const below = evaluated[drawn]
  const above = evaluated[variants.findIndex(({ id }) => id === chosen?.id)]
  const textShare = TEXT_SHARES[useMediaQuery('(max-width: 640px)') ? 'narrow' : 'wide']
  const figures = useMemo(() => figuresOf(below, above, textShare), [below, above, textShare])
  const solid = variants[drawn]
  if (chosen === undefined || solid === undefined || figures === null) return null
  const words = `${solid.name} with ${chosen.name} laid over it`
  return (
    <section className="compare-section" aria-labelledby="compare-overlay">
      <h3 id="compare-overlay">One over the other</h3>
      <ChoiceField
        label={`Laid over ${solid.name}`}
        value={chosen.id}
        choices={others.map(({ id, name }) => ({ value: id, words: name }))}
        onChange={setChosenId}
      />
      <Legend drawn={solid.name} other={chosen.name} />
      <div className="compare-overlay">
        <FigureSvg figure={figures.top} description={`${words}, from above`} />
        <FigureSvg figure={figures.side} description={`${words}, from the side`} />
      </div>
    </section>
  )
}
