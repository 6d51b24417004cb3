import type { SiteFiles } from './siteFiles'
import { createSiteWorker } from './siteWorker'
import type { KeptReport, ToSiteWorker } from './workerMessages'

/** Written into the built file by cli/build/siteWorkerFile.ts. */
declare const __SITE_FILES__: SiteFiles

interface LastingEvent extends Event {
  readonly waitUntil: (work: Promise<unknown>) => void
}

/** The part of a service worker's surroundings that is used; its types cannot stand beside those of a page. */
interface ServiceWorkerSelf {
  readonly registration: ServiceWorkerRegistration
  readonly clients: { readonly claim: () => Promise<void> }
  readonly skipWaiting: () => Promise<void>
  readonly addEventListener: {
    (kind: 'install' | 'activate', hear: (event: LastingEvent) => void): void
    (kind: 'message', hear: (event: LastingEvent & MessageEvent<ToSiteWorker>) => void): void
    (
      kind: 'fetch',
      hear: (
        event: LastingEvent & {
          readonly request: Request
          readonly respondWith: (answer: Promise<Response>) => void
        },
      ) => void,
    ): void
  }
}

const worker = self as unknown as ServiceWorkerSelf
const { registration } = worker

const site = createSiteWorker(__SITE_FILES__, {
  scopeUrl: registration.scope,
  caches,
  fetch: (request, options) => fetch(request, options),
  pageLocks: async () => {
    // Old browsers have none.
    const locks: LockManager | undefined = navigator.locks
    const { held = [], pending = [] } = (await locks?.query()) ?? {}
    return [...held, ...pending].flatMap(({ name }) => (name === undefined ? [] : [name]))
  },
  isNewerComing: () => registration.installing !== null || registration.waiting !== null,
})

worker.addEventListener('install', (event) => event.waitUntil(site.install()))
worker.addEventListener('activate', (event) =>
  event.waitUntil(worker.clients.claim().then(async () => await site.tidy())),
)
worker.addEventListener('fetch', (event) => {
  const answer = site.answer(event.request)
  if (answer !== null) event.respondWith(answer)
})
worker.addEventListener('message', (event) => {
  switch (event.data.kind) {
    case 'take-charge':
      event.waitUntil(worker.skipWaiting())
      return
    case 'tidy':
      event.waitUntil(site.tidy())
      return
    case 'what-is-kept': {
      const [port] = event.ports
      event.waitUntil(
        site.missing().then((missing) => {
          port?.postMessage({ version: __SITE_FILES__.version, missing } satisfies KeptReport)
        }),
      )
    }
  }
})
