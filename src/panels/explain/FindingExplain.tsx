import { useId, useState, type ReactElement } from 'react'
import type { ShownFinding } from '../../domain/rules/finding'
import { QUANTITY_IDS } from '../../domain/straps/quantity'
import { useApp } from '../../state/react'
import { currentPlaceEvaluation } from '../../state/selectors'
import { ExplainButton, useReturnedFocus } from './ExplainButton'
import { FindingWords } from '../help/PanelWords'
import { ExplainCard } from './ExplainCard'

const isQuantity = (id: string): boolean => QUANTITY_IDS.some((quantity) => quantity === id)

const OpenExplain = (props: {
  readonly id: string
  readonly finding: ShownFinding
  readonly onClose: () => void
}): ReactElement | null => {
  const { finding } = props
  // The place as it is now: while something is dragged the finding follows a moment later.
  const sitting = useApp((state) =>
    currentPlaceEvaluation(state)?.sittings.find((entry) => entry.sitting.id === finding.worstSitting),
  )
  const layout = useApp((state) => state.layout)
  const quantity = sitting?.quantities.find(
    ({ id, subject }) => id === finding.quantity && subject === finding.subject,
  )
  return sitting === undefined || quantity === undefined ? null : (
    <ExplainCard
      id={props.id}
      layout={layout}
      sitting={sitting}
      quantity={quantity}
      onClose={props.onClose}
    />
  )
}

/** What a finding's number is measured between, in the sitting where it is worst; nothing for what is typed or has no number. */
export const FindingExplain = (props: { readonly finding: ShownFinding }): ReactElement | null => {
  const { finding } = props
  const id = useId()
  const [isOpen, setOpen] = useState(false)
  const { button, onClose } = useReturnedFocus(() => setOpen(false))
  if (!isQuantity(finding.quantity) || finding.value === null || finding.worstSitting === null) return null
  return (
    <>
      <ExplainButton
        words="What is measured"
        label="What is measured"
        isOpen={isOpen}
        controls={id}
        onToggle={() => setOpen(!isOpen)}
        ref={button}
      />
      <FindingWords quantity={finding.quantity} />
      {isOpen ? <OpenExplain id={id} finding={finding} onClose={onClose} /> : null}
    </>
  )
}
