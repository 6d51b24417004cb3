import type { ReactElement } from 'react'
import { pageOffline } from '../../state/offline/pageOffline'
import { useActions, useKept } from '../../state/react'
import { OFFLINE_ANSWER, versionWords } from './offlineWords'

/** Which build this is and whether it works without a network, in one line; the guide says more. */
export const AboutLine = (props: { readonly onLeave: () => void }): ReactElement => {
  const state = useKept(pageOffline.state)
  const { setView } = useActions()
  return (
    <p className="hint about-line">
      Version {versionWords(state)}. Works without a network: {OFFLINE_ANSWER[state.offline]}.{' '}
      <button
        type="button"
        className="link"
        onClick={() => {
          setView({ screen: 'guide' })
          props.onLeave()
        }}
      >
        More in the guide
      </button>
    </p>
  )
}
