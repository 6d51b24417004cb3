import type { Layout } from '../../domain/layout/document/layout'
import type { Question } from '../../domain/layout/firstLayout/question'
import { askedQuestions } from '../../domain/layout/firstLayout/questions'
import { type Guide, guideOn, placeInOrder } from '../../state/firstLayout/guide'
import { type GuideKeeper, guideKeeper } from '../../state/firstLayout/guideKeeper'
import { useApp, useAppStore, useKept } from '../../state/react'
import { useMemo } from 'react'

export interface GuideView {
  readonly keeper: GuideKeeper
  readonly guide: Guide
  /** As it was last left: what the fields show, while the drawing follows what is being typed. */
  readonly layout: Layout
  readonly questions: readonly Question[]
  /** From 0; the number of questions at the end. */
  readonly index: number
}

/** The questions of the open layout as they stand. */
export const useGuide = (): GuideView => {
  const keeper = guideKeeper(useAppStore())
  const kept = useKept(keeper.state)
  const layout = useApp((state) => state.history.present)
  const guide = useMemo(() => kept ?? guideOn(layout), [kept, layout])
  const questions = useMemo(() => askedQuestions(layout), [layout])
  return { keeper, guide, layout, questions, index: placeInOrder(guide, layout) }
}
