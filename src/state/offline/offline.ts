import { createStore, type StoreApi } from 'zustand/vanilla'
import type { KeptReport, ToSiteWorker } from './workerMessages'

/**
 * Whether the app works without a network. `checking`: not known yet. `not-yet`: this build is not kept whole. `kept`: the worker has
 * just counted every file of it. The rest say why this browser will never keep it here.
 */
export type Offline =
  'checking' | 'not-yet' | 'kept' | 'not-built' | 'not-secure' | 'not-supported' | 'refused'

/** `taken-elsewhere`: another tab has put the newer build in charge; this one still runs the older. */
export type Update = 'none' | 'ready' | 'unfinished-entry' | 'taking' | 'taken-elsewhere'

export interface OfflineState {
  /** The build of the page; null where it is served from source. */
  readonly version: string | null
  readonly offline: Offline
  readonly update: Update
}

/** The part of the browser that keeps the app, so that tests can stand in for it. */
export interface OfflineGround {
  readonly version: string | null
  readonly isSecure: boolean
  /** Undefined where the browser has none. */
  readonly container: ServiceWorkerContainer | undefined
  readonly workerUrl: string
  /** Tells the worker by its name that a page of this build is open. */
  readonly holdPageLock: (scopeUrl: string, version: string) => void
  readonly ask: (worker: ServiceWorker, message: ToSiteWorker) => Promise<KeptReport>
  /** Commits what is typed and waits until everything is kept; false: something typed is in no layout yet, or could not be kept. */
  readonly isSafeToLeave: () => Promise<boolean>
  readonly reload: () => void
}

export interface OfflineKeeping {
  readonly state: Pick<StoreApi<OfflineState>, 'getState' | 'getInitialState' | 'subscribe'>
  readonly start: () => Promise<void>
  /** Counts again what is kept, and looks whether there is a newer build. Quiet when there is no network. */
  readonly look: () => Promise<void>
  /** Puts the newer build in charge and loads it; `evenUnfinished` when the builder has been told of an entry that would be lost. */
  readonly take: (evenUnfinished: 'stay' | 'evenUnfinished') => Promise<void>
}

const tell = (worker: ServiceWorker, message: ToSiteWorker): void => worker.postMessage(message)

/** Why nothing can be kept here, or null. */
const hindrance = ({ version, isSecure, container }: OfflineGround): Offline | null => {
  if (version === null) return 'not-built'
  if (!isSecure) return 'not-secure'
  return container === undefined ? 'not-supported' : null
}

/** Follows one registration: what it keeps and whether a newer build waits. Gives the way to look again. */
const follow = (
  registration: ServiceWorkerRegistration,
  ground: OfflineGround,
  set: (change: Partial<OfflineState>) => void,
): (() => void) => {
  const count = async (worker: ServiceWorker): Promise<void> => {
    const { version, missing } = await ground.ask(worker, { kind: 'what-is-kept' })
    // A page loaded past the worker may be of another build than the one that is kept.
    set({ offline: missing === 0 && version === ground.version ? 'kept' : 'not-yet' })
  }
  const look = (): void => {
    const { active, waiting } = registration
    if (active === null) set({ offline: 'not-yet' })
    else void count(active)
    if (active !== null && waiting !== null) set({ update: 'ready' })
  }
  const watch = (worker: ServiceWorker | null): void => {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' || worker.state === 'activated') look()
    })
  }
  watch(registration.installing)
  watch(registration.waiting)
  registration.addEventListener('updatefound', () => watch(registration.installing))
  look()
  return look
}

/** Hears of every change of the worker in charge but the first, which takes over a page that had none: nothing changes for that. */
const onNewCharge = (container: ServiceWorkerContainer, hear: () => void): void => {
  let hadWorker = container.controller !== null
  container.addEventListener('controllerchange', () => {
    if (hadWorker) hear()
    hadWorker = true
  })
}

/** Some browsers that are told to have no workers answer with nothing instead of refusing. */
const registered = async (
  container: ServiceWorkerContainer,
  workerUrl: string,
): Promise<ServiceWorkerRegistration | null> => {
  try {
    const given: ServiceWorkerRegistration | undefined = await container.register(workerUrl, {
      updateViaCache: 'none',
    })
    return given ?? null
  } catch {
    return null
  }
}

/** Has the app kept by the browser and follows what becomes of it. */
export const createOffline = (ground: OfflineGround): OfflineKeeping => {
  const store = createStore<OfflineState>(() => ({
    version: ground.version,
    offline: hindrance(ground) ?? 'checking',
    update: 'none',
  }))
  let registration: ServiceWorkerRegistration | null = null
  let countAgain: (() => void) | null = null
  let isTaking = false

  // Undo, a trace, an answer that is looked at: what else a tab holds is its user's to give up. Its files stay while it is open.
  const onCharge = (): void => {
    if (isTaking) ground.reload()
    else store.setState({ update: 'taken-elsewhere' })
  }

  const start = async (): Promise<void> => {
    const { container, version } = ground
    if (hindrance(ground) !== null || container === undefined || version === null) return
    onNewCharge(container, onCharge)
    registration = await registered(container, ground.workerUrl)
    if (registration === null) {
      store.setState({ offline: 'refused' })
      return
    }
    ground.holdPageLock(registration.scope, version)
    countAgain = follow(registration, ground, (change) => store.setState(change))
    if (registration.active !== null) tell(registration.active, { kind: 'tidy' })
  }

  const take = async (evenUnfinished: 'stay' | 'evenUnfinished'): Promise<void> => {
    if (!(await ground.isSafeToLeave()) && evenUnfinished === 'stay') {
      store.setState({ update: 'unfinished-entry' })
      return
    }
    const waiting = registration?.waiting ?? null
    if (waiting === null) {
      ground.reload()
      return
    }
    isTaking = true
    store.setState({ update: 'taking' })
    tell(waiting, { kind: 'take-charge' })
  }

  return {
    state: store,
    start,
    look: async () => {
      countAgain?.()
      try {
        await registration?.update()
      } catch {
        // No network, or the site is being changed right now: the next look will tell.
      }
    },
    take,
  }
}
