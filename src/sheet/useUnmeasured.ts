import { useMemo } from 'react'
import { unmeasuredQuestions } from '../state/firstLayout/guide'
import { guideKeeper } from '../state/firstLayout/guideKeeper'
import { useApp, useAppStore, useKept } from '../state/react'

/** The questions of the open layout whose numbers nobody has measured yet, as they are asked; none where nobody began with the questions. */
export const useUnmeasured = (): readonly string[] => {
  const guide = useKept(guideKeeper(useAppStore()).state)
  const layout = useApp((state) => state.history.present)
  return useMemo(
    () => (guide === null ? [] : unmeasuredQuestions(guide, layout).map(({ question }) => question.title)),
    [guide, layout],
  )
}
