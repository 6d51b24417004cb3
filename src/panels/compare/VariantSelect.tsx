import type { ReactElement } from 'react'
import { variantLabels, withVariantDrawn } from '../../domain/layout/edit/changeVariants'
import { useActions, useApp } from '../../state/react'
import { ChoiceField } from '../fields/ChoiceField'

/** Which variant of the car is drawn, and the way to draw another; nothing while there is only one. */
export const VariantSelect = (): ReactElement | null => {
  // The same object as long as only the drawn one is changed: a drag renders nothing here.
  const variants = useApp((state) => state.layout.variants)
  const { edit } = useActions()
  const labels = variantLabels({ variants })
  if (variants === undefined || labels.length < 2) return null
  return (
    <ChoiceField
      label="Variant"
      value={variants.drawn.id}
      choices={labels.map(({ id, name }) => ({ value: id, words: name }))}
      testId="variant"
      onChange={(id) => {
        const name = labels.find((variant) => variant.id === id)?.name ?? ''
        edit(`Draw ${name}`, (layout) => withVariantDrawn(layout, id))
      }}
    />
  )
}
