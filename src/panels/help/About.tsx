import type { ReactElement } from 'react'
import { install, pageInstalling } from '../../state/offline/installing'
import { pageOffline } from '../../state/offline/pageOffline'
import { useKept } from '../../state/react'
import { INSTALL_WORDS, OFFLINE_ANSWER, OFFLINE_WORDS, versionWords } from './offlineWords'

const UpdateState = (): ReactElement | null => {
  const { update, offline } = useKept(pageOffline.state)
  if (update === 'ready' || update === 'unfinished-entry')
    return (
      <p>
        A newer version is ready. It is taken when you say so, or by itself once every Tabwright page of this
        browser has been closed.{' '}
        <button type="button" onClick={() => void pageOffline.take('stay')}>
          Take it now
        </button>
      </p>
    )
  return offline === 'kept' ? (
    <p>
      Whether there is a newer one is looked up when the page is opened and there is a network. It is fetched
      beside this one, whole or not at all, and taken only when you say so.
    </p>
  ) : null
}

/** Version, whether it works without a network, and how to have it as an app; each as it truly stands. */
export const About = (): ReactElement => {
  const state = useKept(pageOffline.state)
  const { installing } = useKept(pageInstalling)
  return (
    <>
      <dl className="about-facts">
        <dt>Version</dt>
        <dd data-testid="about-version">{versionWords(state)}</dd>
        <dt>Works without a network</dt>
        <dd data-testid="about-offline" data-state={state.offline}>
          <strong>{OFFLINE_ANSWER[state.offline]}</strong>
        </dd>
      </dl>
      <p>{OFFLINE_WORDS[state.offline]}</p>
      <UpdateState />
      <p>{INSTALL_WORDS[installing]}</p>
      {installing === 'offered' ? (
        <p>
          <button type="button" onClick={() => void install()}>
            Install Tabwright
          </button>
        </p>
      ) : null}
      <p>
        Nothing you enter leaves this device unless you save, print or share it yourself. The page asks no
        other address for anything.
      </p>
    </>
  )
}
