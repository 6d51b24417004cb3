import { type ReactElement, useMemo, useState } from 'react'
import { emptyLayout } from '../../domain/layout/document/empty'
import { questionStatus } from '../../state/firstLayout/guide'
import { continueFirstLayout, startFirstLayout } from '../../state/firstLayout/guideKeeper'
import { useApp, useAppStore, useKept } from '../../state/react'
import { isSameValue } from '../../state/sameValue'
import { SimilarCarPicker } from './SimilarCarPicker'
import { useGuide } from './useGuide'

/** For who comes here for the first time, before anything is drawn. */
const StartOffer = (): ReactElement => {
  const store = useAppStore()
  const [isPicking, setPicking] = useState(false)
  return (
    <section className="first-offer no-print" aria-label="Start here">
      <h2>A first layout in five minutes</h2>
      <p>
        One question at a time, in the order you measure a car, with a drawing of where the tape goes. Skip
        what you do not know yet.
      </p>
      <div className="button-row">
        <button type="button" className="primary" onClick={() => startFirstLayout(store)}>
          Answer questions
        </button>
        <button type="button" aria-expanded={isPicking} onClick={() => setPicking(!isPicking)}>
          Start from a similar car
        </button>
      </div>
      {isPicking ? <SimilarCarPicker /> : null}
    </section>
  )
}

/** The questions of this layout were left before their end. */
const ContinueOffer = (): ReactElement => {
  const store = useAppStore()
  const { keeper, guide, layout, questions } = useGuide()
  const answered = questions.filter(
    (question) => questionStatus(guide, layout, question) === 'answered',
  ).length
  return (
    <section className="first-offer no-print" aria-label="Questions">
      <p>
        {answered} of {questions.length} questions answered.
      </p>
      <div className="button-row">
        <button type="button" className="primary" onClick={() => continueFirstLayout(store)}>
          Go on with the questions
        </button>
        <button type="button" onClick={() => keeper.move((now) => ({ ...now, at: 'end' }))}>
          Done with them
        </button>
      </div>
    </section>
  )
}

/** Stands over the panels while nothing is drawn yet, or while questions wait to be answered; nothing otherwise. */
export const FirstLayoutOffer = (): ReactElement | null => {
  const { keeper } = useGuide()
  const guide = useKept(keeper.state)
  const layout = useApp((state) => state.layout)
  const isUntouched = useMemo(() => isSameValue(layout, emptyLayout()), [layout])
  if (guide !== null && guide.at !== 'end') return <ContinueOffer />
  return isUntouched ? <StartOffer /> : null
}
