import { describe, expect, it } from 'vitest'
import { createOffline, type OfflineGround } from '../../../src/state/offline/offline'
import type { KeptReport, ToSiteWorker } from '../../../src/state/offline/workerMessages'

/** A worker as a page sees one: a state, and what it is told. */
class FakeWorker extends EventTarget {
  readonly told: ToSiteWorker[] = []
  state = 'installing'

  postMessage(message: ToSiteWorker): void {
    this.told.push(message)
  }

  become(state: string): void {
    this.state = state
    this.dispatchEvent(new Event('statechange'))
  }
}

class FakeRegistration extends EventTarget {
  readonly scope = 'https://shop.example/'
  installing: FakeWorker | null = null
  waiting: FakeWorker | null = null
  active: FakeWorker | null = null
  update = async (): Promise<void> => {
    throw new TypeError('no network')
  }

  /** A build is found and fetched whole. */
  fetchedNewer(): FakeWorker {
    const worker = new FakeWorker()
    this.installing = worker
    this.dispatchEvent(new Event('updatefound'))
    this.installing = null
    this.waiting = worker
    worker.become('installed')
    return worker
  }
}

class FakeContainer extends EventTarget {
  controller: FakeWorker | null = null
  readonly registration = new FakeRegistration()
  register = async (): Promise<FakeRegistration | undefined> => this.registration

  changeController(worker: FakeWorker): void {
    this.controller = worker
    this.dispatchEvent(new Event('controllerchange'))
  }
}

const settled = async (): Promise<void> => await new Promise((resolve) => setTimeout(resolve))

const page = (change: Partial<OfflineGround> = {}, report: KeptReport = { version: '1', missing: 0 }) => {
  const container = new FakeContainer()
  const seen = { reloads: 0, isSafe: true, locks: [] as string[] }
  const offline = createOffline({
    version: '1',
    isSecure: true,
    container: container as unknown as ServiceWorkerContainer,
    workerUrl: './service-worker.js',
    holdPageLock: (_, version) => seen.locks.push(version),
    ask: async () => report,
    isSafeToLeave: async () => seen.isSafe,
    reload: () => {
      seen.reloads += 1
    },
    ...change,
  })
  return { offline, container, seen, now: () => offline.state.getState() }
}

/** A page of a later visit: its worker is there and in charge. */
const visited = async (report?: KeptReport) => {
  const visit = page({}, report)
  const active = new FakeWorker()
  visit.container.controller = active
  visit.container.registration.active = active
  await visit.offline.start()
  await settled()
  return { ...visit, active }
}

describe('whether it works without a network', () => {
  it.each([
    ['not-built', { version: null }],
    ['not-secure', { isSecure: false }],
    ['not-supported', { container: undefined }],
  ] as const)('%s is known at once and nothing is registered', async (expected, change) => {
    const { offline, seen, now } = page(change)
    expect(now().offline).toBe(expected)
    await offline.start()
    expect(now().offline).toBe(expected)
    expect(seen.locks).toEqual([])
  })

  it.each([
    ['throws', async () => await Promise.reject(new DOMException('no', 'SecurityError'))],
    ['answers with nothing', async () => undefined],
  ])('a browser that %s has refused', async (_, register) => {
    const { offline, container, now } = page()
    container.register = register
    await offline.start()
    expect(now().offline).toBe('refused')
  })

  it('a first visit is not kept before the worker has everything', async () => {
    const { offline, container, now, seen } = page()
    const worker = new FakeWorker()
    container.registration.installing = worker
    await offline.start()
    expect(now().offline).toBe('not-yet')
    container.registration.active = worker
    worker.become('activated')
    await settled()
    expect(now()).toEqual({ version: '1', offline: 'kept', update: 'none' })
    container.changeController(worker)
    await settled()
    expect(seen.reloads).toBe(0)
  })

  it.each([
    ['a file is gone', { version: '1', missing: 1 }],
    ['what is kept is another build than the page', { version: '0', missing: 0 }],
  ])('not yet when %s', async (_, report) => {
    expect((await visited(report)).now().offline).toBe('not-yet')
  })
})

describe('a newer build', () => {
  it('is told of once it is fetched whole, and is not taken by itself', async () => {
    const { container, now, seen, active } = await visited()
    expect(active.told).toEqual([{ kind: 'tidy' }])
    const newer = container.registration.fetchedNewer()
    expect(now().update).toBe('ready')
    expect(newer.told).toEqual([])
    expect(seen.reloads).toBe(0)
  })

  it('that cannot be fetched whole is not spoken of', async () => {
    const { container, now } = await visited()
    const broken = new FakeWorker()
    container.registration.installing = broken
    container.registration.dispatchEvent(new Event('updatefound'))
    container.registration.installing = null
    broken.become('redundant')
    expect(now()).toEqual({ version: '1', offline: 'kept', update: 'none' })
  })

  it('is looked for without a word when there is no network', async () => {
    const { offline, now } = await visited()
    await offline.look()
    expect(now()).toEqual({ version: '1', offline: 'kept', update: 'none' })
  })

  it('is put in charge when the builder says so, and the page is loaded only then', async () => {
    const { offline, container, now, seen } = await visited()
    const newer = container.registration.fetchedNewer()
    await offline.take('stay')
    expect(newer.told).toEqual([{ kind: 'take-charge' }])
    expect(now().update).toBe('taking')
    expect(seen.reloads).toBe(0)
    container.changeController(newer)
    await settled()
    expect(seen.reloads).toBe(1)
  })

  it('waits while something typed is in no layout, unless told otherwise', async () => {
    const { offline, container, now, seen } = await visited()
    const newer = container.registration.fetchedNewer()
    seen.isSafe = false
    await offline.take('stay')
    expect(now().update).toBe('unfinished-entry')
    expect(newer.told).toEqual([])
    await offline.take('evenUnfinished')
    expect(newer.told).toEqual([{ kind: 'take-charge' }])
  })

  it('taken by another tab never loads this one before its user says so', async () => {
    const { offline, container, now, seen } = await visited()
    container.changeController(container.registration.fetchedNewer())
    container.registration.waiting = null
    await settled()
    expect(seen.reloads).toBe(0)
    expect(now().update).toBe('taken-elsewhere')
    await offline.take('stay')
    expect(seen.reloads).toBe(1)
  })

  it('taken by another tab does not get past something typed here either', async () => {
    const { offline, container, now, seen } = await visited()
    container.changeController(container.registration.fetchedNewer())
    container.registration.waiting = null
    seen.isSafe = false
    await offline.take('stay')
    expect(seen.reloads).toBe(0)
    expect(now().update).toBe('unfinished-entry')
    await offline.take('evenUnfinished')
    expect(seen.reloads).toBe(1)
  })
})
