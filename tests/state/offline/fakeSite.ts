import { createHash } from 'node:crypto'
import type { SiteFiles } from '../../../src/state/offline/siteFiles'
import { createSiteWorker, type SiteWorker } from '../../../src/state/offline/siteWorker'

export const SCOPE = 'https://shop.example/tabwright/'

const addressOf = (request: RequestInfo | URL): string => {
  const url = new URL(request instanceof Request ? request.url : String(request))
  return url.origin + url.pathname
}

/** What a browser keeps answers in: as much of it as the worker uses, with answers by address and a failing write if wanted. */
class FakeCaches {
  readonly kept = new Map<string, Map<string, Response>>()

  async open(name: string): Promise<Cache> {
    const answers = this.kept.get(name) ?? new Map<string, Response>()
    this.kept.set(name, answers)
    return {
      put: async (request: RequestInfo | URL, response: Response) => {
        answers.set(addressOf(request), response)
      },
      match: async (request: RequestInfo | URL) => answers.get(addressOf(request))?.clone(),
    } as unknown as Cache
  }

  async has(name: string): Promise<boolean> {
    return this.kept.has(name)
  }

  async keys(): Promise<string[]> {
    return [...this.kept.keys()]
  }

  async delete(name: string): Promise<boolean> {
    return this.kept.delete(name)
  }
}

/** One build's files by path. */
export type Built = Readonly<Record<string, string>>

export const listOf = (version: string, files: Built): SiteFiles => ({
  version,
  files: Object.entries(files).map(([path, text]) => ({
    path,
    // From Node's own digest, not from the one under test.
    sha256: createHash('sha256').update(text).digest('hex'),
  })),
})

/** A browser and a server that can be shut; what the server holds is changed by the test. */
export class FakeWorld {
  readonly caches = new FakeCaches()
  served: Built = {}
  isServerUp = true
  readonly asked: string[] = []
  locks: readonly string[] = []
  isNewerComing = false

  worker(site: SiteFiles): SiteWorker {
    return createSiteWorker(site, {
      scopeUrl: SCOPE,
      caches: this.caches,
      fetch: async (request) => {
        const address = addressOf(request)
        this.asked.push(address.slice(SCOPE.length))
        if (!this.isServerUp) throw new TypeError('Failed to fetch')
        const text = this.served[address.slice(SCOPE.length)]
        return text === undefined
          ? new Response('gone', { status: 404 })
          : new Response(text, { headers: { 'Content-Type': 'text/plain', Vary: 'Origin' } })
      },
      pageLocks: async () => this.locks,
      isNewerComing: () => this.isNewerComing,
    })
  }
}

/** A request as a browser makes it; Node's own knows no navigation. */
export const requestOf = (path: string, mode = 'cors', method = 'GET'): Request => {
  const request = new Request(new URL(path, SCOPE), { method })
  return new Proxy(request, {
    get: (target, key) => (key === 'mode' ? mode : Reflect.get(target, key, target)),
  })
}
