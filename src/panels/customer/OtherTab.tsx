import { type ReactElement, useEffect, useState } from 'react'
import { type Answer, answerText } from '../../domain/layout/agreement/answer'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { useActions } from '../../state/react'
import { browserTabs, offerToOthers } from '../../state/talk/answerHandOver'
import { putAside } from '../../state/talk/arrivedAnswer'
import { layoutsShown } from '../../state/talk/layoutsOfAnswer'

/** Whether another tab is working on a layout that was shown so; false until the browser has said it. */
const useIsElsewhere = ({ shown }: Answer): boolean => {
  const [isElsewhere, setElsewhere] = useState(false)
  useEffect(() => {
    let isWanted = true
    void pageKeeping.list().then((kept) => {
      if (isWanted)
        setElsewhere(layoutsShown(kept ?? [], shown).some(({ isOpenElsewhere }) => isOpenElsewhere))
    })
    return () => {
      isWanted = false
    }
  }, [shown])
  return isElsewhere
}

/** A link opens in a tab of its own: where the layout is open in another one the answer belongs there, and not into a copy here. */
export const OtherTab = (props: { readonly answer: Answer }): ReactElement | null => {
  const { answer } = props
  const { notify } = useActions()
  const isElsewhere = useIsElsewhere(answer)
  const [state, setState] = useState<'unasked' | 'asking' | 'silent'>('unasked')
  if (!isElsewhere) return null
  const handOver = async (): Promise<void> => {
    setState('asking')
    if (!(await offerToOthers(answerText(answer), browserTabs()))) return setState('silent')
    putAside()
    notify(
      'info',
      'The answer is in the other tab now: it waits there under Customer. This tab can be closed.',
    )
  }
  return (
    <div className="caution" role="alert">
      <p>
        The layout that was shown is open in another tab. Added here, the answer would go into a copy of it,
        and the layout in the other tab would know nothing of it.
      </p>
      <button type="button" className="primary" disabled={state === 'asking'} onClick={() => void handOver()}>
        Hand it over to that tab
      </button>
      {state === 'silent' ? (
        <p>The other tab does not take it now. Go to it and open the link or the file of the answer there.</p>
      ) : null}
    </div>
  )
}
