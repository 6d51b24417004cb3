import { useId, type ReactElement, type ReactNode } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { subjectName } from '../../domain/layout/wording/names'
import { quantityName } from '../../domain/layout/wording/quantities'
import { capitalised } from '../../domain/layout/wording/words'
import type { QuantityId, QuantityValue, Subject } from '../../domain/straps/quantity'
import { ExplainButton, useReturnedFocus } from '../explain/ExplainButton'
import { ExplainCard } from '../explain/ExplainCard'

/** Which number is opened to its drawing. */
export const lineKey = (id: QuantityId, subject: Subject): string => `${id}/${subject}`

/** One line of a table of numbers, whose name opens to what it is measured between in the shown sitting. */
export const QuantityLine = (props: {
  readonly id: QuantityId
  readonly subject: Subject
  readonly layout: Layout
  readonly shown: SittingEvaluation
  readonly isOpen: boolean
  readonly onOpen: (key: string | null) => void
  readonly columns: number
  /** The cells after the name. */
  readonly children: ReactNode
}): ReactElement => {
  const { id, subject, layout, shown, isOpen, onOpen } = props
  const cardId = useId()
  const { button, onClose } = useReturnedFocus(() => onOpen(null))
  const quantity: QuantityValue | undefined = shown.quantities.find(
    (each) => each.id === id && each.subject === subject,
  )
  const name = capitalised(subjectName(subject, layout))
  return (
    <>
      <tr>
        <th scope="row">
          {quantity === undefined ? (
            name
          ) : (
            <ExplainButton
              words={name}
              label={`${name}, ${quantityName(id)}: what is measured`}
              isOpen={isOpen}
              controls={cardId}
              onToggle={() => onOpen(isOpen ? null : lineKey(id, subject))}
              ref={button}
            />
          )}
        </th>
        {props.children}
      </tr>
      {isOpen && quantity !== undefined ? (
        <tr className="explain-row">
          <td colSpan={props.columns}>
            <ExplainCard id={cardId} layout={layout} sitting={shown} quantity={quantity} onClose={onClose} />
          </td>
        </tr>
      ) : null}
    </>
  )
}
