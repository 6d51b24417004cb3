import type { ReactElement, ReactNode } from 'react'
import type { TermId } from '../../domain/layout/wording/terms'
import { QUANTITY_IDS, type QuantityId } from '../../domain/straps/quantity'
import { useMediaQuery } from '../useMediaQuery'
import { PANEL_WORDS, QUANTITY_WORDS } from './panelWords'
import { Term } from './Term'

const Words = (props: { readonly of: readonly TermId[]; readonly label: string }): ReactElement | null =>
  props.of.length === 0 ? null : (
    <ul className="panel-words no-print" aria-label={props.label}>
      {props.of.map((id) => (
        <li key={id}>
          <Term id={id} shows="word" />
        </li>
      ))}
    </ul>
  )

/** A panel with its words to ask about in one row that slides: above it, and on a phone, where every line counts, below it. */
export const PanelWords = (props: { readonly panel: string; readonly children: ReactNode }): ReactElement => {
  const isNarrow = useMediaQuery('(max-width: 640px)')
  const words = <Words of={PANEL_WORDS[props.panel] ?? []} label="Words on this panel" />
  return (
    <>
      {isNarrow ? null : words}
      {props.children}
      {isNarrow ? words : null}
    </>
  )
}

const isQuantity = (id: string): id is QuantityId => QUANTITY_IDS.some((quantity) => quantity === id)

/** The words of what a finding is about; none for what is no measured number. */
export const FindingWords = (props: { readonly quantity: string }): ReactElement => (
  <Words
    of={isQuantity(props.quantity) ? QUANTITY_WORDS[props.quantity] : []}
    label="Words of this finding"
  />
)
