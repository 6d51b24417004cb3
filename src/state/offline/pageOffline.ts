import { pageKeeping } from '../keeping/pageKeeping'
import type { AppStore } from '../store'
import { followInstallOffer } from './installing'
import { createOffline, type OfflineKeeping } from './offline'
import { pageLockName } from './siteFiles'
import { type UnfinishedEntries, watchEntries } from './unfinishedEntries'
import type { KeptReport } from './workerMessages'

/** Once an hour is often enough for a shop, and only when somebody comes back to the page. Our judgement. */
const LOOK_AGAIN_MS = 3_600_000

let entries: UnfinishedEntries | null = null

/** The entry that keeps the page from being loaded anew, for showing it. */
export const unfinishedEntry = async (): Promise<HTMLElement | null> => (await entries?.first()) ?? null

const askOver = (worker: ServiceWorker, message: unknown): Promise<KeptReport> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.addEventListener('message', ({ data }: MessageEvent<KeptReport>) => {
      resolve(data)
      port1.close()
    })
    port1.start()
    worker.postMessage(message, [port2])
  })

const builtVersion = (): string | null =>
  typeof document === 'undefined'
    ? null
    : (document.querySelector('meta[name="build"]')?.getAttribute('content') ?? null)

/** The page's one way of being kept by the browser. */
export const pageOffline: OfflineKeeping = createOffline({
  version: builtVersion(),
  isSecure: typeof window !== 'undefined' && window.isSecureContext,
  container: typeof navigator === 'undefined' ? undefined : navigator.serviceWorker,
  workerUrl: './service-worker.js',
  holdPageLock: (scopeUrl, version) => {
    const name = pageLockName(scopeUrl, version)
    // Old browsers have none: a page that is open while a newer build takes over is then loaded anew without its older files.
    const locks: LockManager | undefined = navigator.locks
    // Held as long as the page lives.
    void locks?.request(name, { mode: 'shared' }, async () => await new Promise<never>(() => {}))
  },
  ask: askOver,
  // A page that is not watched may hold anything.
  isSafeToLeave: async () =>
    entries !== null && (await unfinishedEntry()) === null && (await pageKeeping.settled()),
  reload: () => window.location.reload(),
})

/** Once everything that the page itself needs is there: keeping it for the next visit must not hold up this one. */
export const startKeepingApp = (): void => {
  if (document.readyState === 'complete') void pageOffline.start()
  else window.addEventListener('load', () => void pageOffline.start(), { once: true })
}

/** Keeps the app for the next visit and looks after newer builds and the browser's offer to install. */
export const startOffline = (store: AppStore): void => {
  entries = watchEntries(store)
  followInstallOffer()
  let lookedAtMs = performance.now()
  document.addEventListener('visibilitychange', () => {
    const nowMs = performance.now()
    if (document.visibilityState !== 'visible' || nowMs - lookedAtMs < LOOK_AGAIN_MS) return
    lookedAtMs = nowMs
    void pageOffline.look()
  })
  window.addEventListener('online', () => void pageOffline.look())
  startKeepingApp()
}
