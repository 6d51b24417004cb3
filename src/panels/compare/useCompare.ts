import { useEffect, useMemo } from 'react'
import type { EvaluatedVariant } from '../../domain/layout/compare/comparedFindings'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import { pageVariantFindings } from '../../state/compare/pageCompare'
import { evaluatedVariant, shownVariants } from '../../state/compare/shownVariants'
import { useApp, useKept } from '../../state/react'

/** The variants of the car as everything on the screen needs them. */
export interface CompareView {
  readonly variants: readonly VariantLayout[]
  /** In the same order, with as much as is known. */
  readonly evaluated: readonly EvaluatedVariant[]
  /** Which of them is drawn. */
  readonly drawn: number
  readonly rooms: 'known' | 'working' | 'missing'
}

/** Numbers at once; the rooms follow from a worker. With only one variant nothing is asked. */
export const useCompare = (): CompareView => {
  const { variants, drawn } = useApp((state) => shownVariants(state.layout))
  const { answers, running } = useKept(pageVariantFindings.state)
  const questions = useMemo(
    () => (variants.length < 2 ? [] : variants.map(({ layout }) => ({ layout }))),
    [variants],
  )
  useEffect(() => pageVariantFindings.want(questions), [questions])
  // Nobody looks at it any more; what is known is kept.
  useEffect(() => () => pageVariantFindings.want([]), [])
  const found = useMemo(
    () =>
      questions.map(
        (question) =>
          answers.find((answer) => pageVariantFindings.isSame(answer.question, question))?.value ?? null,
      ),
    [questions, answers],
  )
  const evaluated = useMemo(
    () => variants.map(({ layout }, index) => evaluatedVariant(layout, found[index] ?? null)),
    [variants, found],
  )
  const isKnown = found.every((findings) => findings !== null)
  return { variants, evaluated, drawn, rooms: isKnown ? 'known' : running === null ? 'missing' : 'working' }
}
