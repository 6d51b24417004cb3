import './compare.css'
import { type ReactElement, useMemo, useState } from 'react'
import {
  type CompareGroup,
  findingGroups,
  numberGroups,
  partGroups,
} from '../../domain/layout/wording/compareRows'
import { COMPARE_CAUTION } from '../../domain/layout/wording/compareWords'
import { useActions } from '../../state/react'
import { ToggleField } from '../fields/ChoiceField'
import { ScreenFrame } from '../ScreenFrame'
import { CompareTable } from './CompareTable'
import { FitsByVariant } from './FitsByVariant'
import { MakeVariant } from './MakeVariant'
import { OverlayView } from './OverlayView'
import { type CompareView, useCompare } from './useCompare'
import { VariantCard, VARIANTS_HEADING } from './VariantCard'

const ROOM_WORDS: Readonly<Record<CompareView['rooms'], string>> = {
  known: 'Rooms to the limits are worked out for all variants.',
  working: 'Rooms to the limits are being worked out; until then a kept limit is only called kept.',
  missing: 'Rooms to the limits could not be worked out here; a kept limit is only called kept.',
}

/** A table of what differs under its heading, or that nothing does. */
const TableSection = (props: {
  readonly id: string
  readonly title: string
  readonly about: string
  readonly groups: readonly CompareGroup[]
  readonly view: CompareView
  readonly status?: string
}): ReactElement => {
  const { id, title, groups, view } = props
  return (
    <section className="compare-section" aria-labelledby={`compare-${id}`}>
      <h3 id={`compare-${id}`}>{title}</h3>
      {props.status === undefined ? null : <p aria-live="polite">{props.status}</p>}
      {groups.every(({ rows }) => rows.length === 0) ? (
        <p>Nothing: all variants are alike in this.</p>
      ) : (
        <CompareTable
          label={title}
          about={props.about}
          groups={groups}
          variants={view.variants}
          drawn={view.drawn}
        />
      )}
    </section>
  )
}

/** What differs: first what is built otherwise, in words and drawn, then what it comes to. */
const Differences = (props: { readonly view: CompareView }): ReactElement => {
  const { view } = props
  const { variants, evaluated, drawn } = view
  const [onlyDifferences, setOnly] = useState(true)
  const groups = useMemo(() => {
    const compared = { variants, evaluated, drawn, onlyDifferences }
    return {
      parts: partGroups(compared),
      findings: findingGroups(compared),
      numbers: numberGroups(compared),
    }
  }, [variants, evaluated, drawn, onlyDifferences])
  return (
    <>
      <ToggleField
        label="Only differences"
        checked={onlyDifferences}
        onChange={setOnly}
        hint="Leaves out whatever is the same in all variants."
      />
      <TableSection
        id="parts"
        title="What is built otherwise"
        about="Part"
        groups={groups.parts}
        view={view}
      />
      <OverlayView view={view} />
      <TableSection
        id="findings"
        title="Findings"
        about="Rule"
        groups={groups.findings}
        view={view}
        status={ROOM_WORDS[view.rooms]}
      />
      <TableSection id="numbers" title="Numbers" about="Number" groups={groups.numbers} view={view} />
    </>
  )
}

const OnlyOne = (): ReactElement => (
  <section className="compare-section" aria-label="No variants yet">
    <p>
      There is one way to build this car so far. A variant is another one: a bar that stands elsewhere, other
      tabs, another seat. You draw each as any layout, and here they stand beside each other with what differs
      in mm and degrees, with the findings of each and who fits.
    </p>
    <p>
      A variant begins as a copy of what is drawn, or with the tubes and places of another layout. The rule
      set, the datum, belts in use and what was measured on the car belong to the car and stay the same for
      all.
    </p>
    <MakeVariant />
  </section>
)

const Several = (props: { readonly view: CompareView }): ReactElement => {
  const { view } = props
  const { setView } = useActions()
  return (
    <>
      <p className="caution">{COMPARE_CAUTION}</p>
      <section className="compare-section" aria-labelledby={VARIANTS_HEADING}>
        <h3 id={VARIANTS_HEADING} tabIndex={-1}>
          {view.variants.length} variants
        </h3>
        <ul className="compare-cards" data-count={view.variants.length}>
          {view.variants.map((variant, index) => {
            const evaluated = view.evaluated[index]
            return evaluated === undefined ? null : (
              <VariantCard
                key={variant.id}
                variant={variant}
                evaluated={evaluated}
                index={index}
                count={view.variants.length}
                isDrawn={index === view.drawn}
              />
            )
          })}
        </ul>
        <div className="button-row no-print">
          <MakeVariant />
          <button type="button" onClick={() => setView({ screen: 'customer' })}>
            Show to the customer
          </button>
          <button type="button" onClick={() => setView({ screen: 'papers', paperKind: 'comparison' })}>
            On paper
          </button>
        </div>
      </section>
      <Differences view={view} />
      <FitsByVariant view={view} />
    </>
  )
}

/** Variants of one car side by side: what differs, what each comes to, and which one is drawn. */
export const CompareScreen = (): ReactElement => {
  const view = useCompare()
  return (
    <ScreenFrame title="Variants of this car">
      <div className="compare">{view.variants.length < 2 ? <OnlyOne /> : <Several view={view} />}</div>
    </ScreenFrame>
  )
}
