import { createStore, type StoreApi } from 'zustand/vanilla'

/** What some browsers hand to a page that can be installed. Source: W3C Web Application Manifest, incubations (from memory). */
interface InstallOffer extends Event {
  readonly prompt: () => Promise<unknown>
}

/** `offered`: the browser will ask when told to. `installed`: the page runs as an app of its own. `by-hand`: only the browser's own menu can. */
export type Installing = 'by-hand' | 'offered' | 'installed'

const store = createStore<{ readonly installing: Installing }>(() => ({ installing: 'by-hand' }))
let offer: InstallOffer | null = null

export const pageInstalling: Pick<
  StoreApi<{ readonly installing: Installing }>,
  'getState' | 'getInitialState' | 'subscribe'
> = store

/** Keeps the browser's offer until the builder asks for it; begun early, for it comes but once. */
export const followInstallOffer = (): void => {
  if (window.matchMedia('(display-mode: standalone)').matches) store.setState({ installing: 'installed' })
  window.addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    offer = event as InstallOffer
    store.setState({ installing: 'offered' })
  })
  window.addEventListener('appinstalled', () => {
    offer = null
    store.setState({ installing: 'installed' })
  })
}

/** Has the browser ask whether to install. An offer is good for one question. */
export const install = async (): Promise<void> => {
  const asked = offer
  offer = null
  if (asked === null) return
  store.setState({ installing: 'by-hand' })
  await asked.prompt()
}
