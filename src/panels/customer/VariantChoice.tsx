import { type ReactElement, useId, useMemo } from 'react'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import { plainDifferences, plainTurns } from '../../domain/layout/wording/plainDifferences'
import { plainFindings } from '../../domain/layout/wording/plainFinding'
import { listed } from '../../domain/layout/wording/plainNames'
import { LayoutPicture } from '../figure/LayoutPicture'
import { numbersOf } from '../../state/selectors'

interface ChoiceProps {
  readonly variants: readonly VariantLayout[]
  readonly chosenId: string
  readonly onChoose: (id: string) => void
}

/** The words of one variant: what is built otherwise than in the first, and what that does to what is outside its limits. */
const wordsOf = (variants: readonly VariantLayout[], index: number) => {
  const plain = variants.map(({ layout }) =>
    plainFindings(
      numbersOf(layout).places.flatMap(({ findings }) => findings),
      layout,
    ),
  )
  const [first] = variants
  const own = variants[index]
  const outside = (plain[index] ?? []).filter(({ group }) => group === 'outside').length
  const unchecked = (plain[index] ?? []).filter(({ group }) => group === 'unchecked').length
  if (first === undefined || own === undefined || index === 0)
    return { outside, unchecked, differences: [], turns: { mended: [], broken: [] } }
  return {
    outside,
    unchecked,
    differences: plainDifferences(first.layout, own.layout),
    turns: plainTurns(plain[0] ?? [], plain[index] ?? []),
  }
}

const Turns = (props: { readonly words: ReturnType<typeof wordsOf> }): ReactElement => {
  const { mended, broken } = props.words.turns
  return (
    <>
      {mended.length === 0 ? null : <p>Better here, within what is asked for: {listed(mended)}.</p>}
      {broken.length === 0 ? null : <p>Worse here, outside what is asked for: {listed(broken)}.</p>}
    </>
  )
}

const Differences = (props: {
  readonly words: ReturnType<typeof wordsOf>
  readonly firstName: string
}): ReactElement => {
  const { differences } = props.words
  if (differences.length === 0) return <p className="hint">The others are compared with this one.</p>
  return (
    <>
      <p>Other than in “{props.firstName}”:</p>
      <ul className="plain-cases">
        {differences.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  )
}

const VariantCard = (
  props: ChoiceProps & { readonly variant: VariantLayout; readonly index: number; readonly group: string },
): ReactElement => {
  const { variant, variants, index, group, chosenId, onChoose } = props
  const words = useMemo(() => wordsOf(variants, index), [variants, index])
  return (
    <li className="variant-card" data-chosen={variant.id === chosenId}>
      <label>
        <input
          type="radio"
          name={group}
          checked={variant.id === chosenId}
          onChange={() => onChoose(variant.id)}
        />{' '}
        <b>{variant.name}</b>
      </label>
      <LayoutPicture
        layout={variant.layout}
        elevation="side"
        description={`“${variant.name}” from the side, the front at the left.`}
      />
      <p>
        {words.outside} outside what is asked for, {words.unchecked} not checked.
      </p>
      <Differences words={words} firstName={variants[0]?.name ?? ''} />
      <Turns words={words} />
    </li>
  )
}

/** The ways to build the car beside each other, and which of them is talked about below. */
export const VariantChoice = (props: ChoiceProps): ReactElement => {
  const group = useId()
  return (
    <fieldset className="variant-choice">
      <legend>Which one do you want to look at and talk about?</legend>
      <ul className="variant-list">
        {props.variants.map((variant, index) => (
          <VariantCard key={variant.id} {...props} variant={variant} index={index} group={group} />
        ))}
      </ul>
    </fieldset>
  )
}
