import { keptName, keptPrefix, outdatedNames, routeOf, type SiteFile, type SiteFiles } from './siteFiles'

/** What a service worker is given by the browser, so that tests can give it the same. */
export interface WorkerGround {
  readonly scopeUrl: string
  readonly caches: Pick<CacheStorage, 'open' | 'keys' | 'delete' | 'has'>
  readonly fetch: (request: Request | string, options?: RequestInit) => Promise<Response>
  /** Names of the locks that pages hold or wait for. */
  readonly pageLocks: () => Promise<readonly string[]>
  /** Whether a newer build is being fetched or waits for its turn. */
  readonly isNewerComing: () => boolean
}

export interface SiteWorker {
  /** Keeps every file of the build, or none: rejects when one cannot be had as it was built. */
  readonly install: () => Promise<void>
  /** How many files of the build are not kept, after one more try to fetch those that are gone. */
  readonly missing: () => Promise<number>
  /** Removes what was kept of builds that no page uses any more. */
  readonly tidy: () => Promise<void>
  /** Null: the browser asks the server as if there were no worker. */
  readonly answer: (request: Request) => Promise<Response> | null
}

/** Enough for a busy line and few enough for a weak one. Our judgement. */
const FETCHED_AT_ONCE = 6

/** `Vary` says which requests an answer is for; the files of a build are the same for all of them. */
const ANY_REQUEST = { ignoreVary: true, ignoreSearch: true } as const

const sha256Of = async (bytes: BufferSource): Promise<string> =>
  [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')

/** The answer with its bytes and their kind alone, if they are those that were built; else null. A redirected answer may open no page. */
const asBuilt = async (response: Response, file: SiteFile): Promise<Response | null> => {
  const bytes = await response.arrayBuffer()
  if (!response.ok || (await sha256Of(bytes)) !== file.sha256) return null
  const kind = response.headers.get('Content-Type')
  return new Response(bytes, { headers: kind === null ? {} : { 'Content-Type': kind } })
}

/** Runs `work` for every item, a few at once; rejects with the first that fails. */
const forEachFew = async <Item>(
  items: readonly Item[],
  work: (item: Item) => Promise<void>,
): Promise<void> => {
  const waiting = [...items]
  const runner = async (): Promise<void> => {
    for (let item = waiting.shift(); item !== undefined; item = waiting.shift()) await work(item)
  }
  await Promise.all(Array.from({ length: FETCHED_AT_ONCE }, runner))
}

const createKeeper = (site: SiteFiles, ground: WorkerGround) => {
  const { scopeUrl, caches } = ground
  const name = keptName(scopeUrl, site.version)
  const addressOf = (path: string): string => new URL(path, scopeUrl).href
  const olderNames = async (): Promise<readonly string[]> =>
    (await caches.keys()).filter((other) => other !== name && other.startsWith(keptPrefix(scopeUrl)))

  const fromOlder = async (request: Request | string): Promise<Response | undefined> => {
    for (const older of await olderNames()) {
      const found = await (await caches.open(older)).match(request, ANY_REQUEST)
      if (found !== undefined) return found
    }
    return undefined
  }

  /** From an older build if the file is still the same there, else from the server and never from the browser's own store of answers. */
  const fetched = async (file: SiteFile): Promise<Response> => {
    const address = addressOf(file.path)
    const older = await fromOlder(address)
    const same = older === undefined ? null : await asBuilt(older, file)
    if (same !== null) return same
    const fresh = await asBuilt(await ground.fetch(address, { cache: 'no-cache' }), file)
    if (fresh === null) throw new Error(`${file.path} is not the file that was built`)
    return fresh
  }
  const keep = async (kept: Cache, file: SiteFile): Promise<void> =>
    await kept.put(addressOf(file.path), await fetched(file))
  return { name, addressOf, fromOlder, keep }
}

/** What the service worker of one build does. Everything it serves is of that build, or of an older one that still has a page. */
export const createSiteWorker = (site: SiteFiles, ground: WorkerGround): SiteWorker => {
  const { scopeUrl, caches } = ground
  const paths = new Set(site.files.map(({ path }) => path))
  const { name, addressOf, fromOlder, keep } = createKeeper(site, ground)
  const keptFile = async (path: string): Promise<Response | undefined> =>
    await (await caches.open(name)).match(addressOf(path), ANY_REQUEST)

  return {
    install: async () => {
      const wasThere = await caches.has(name)
      try {
        const kept = await caches.open(name)
        await forEachFew(site.files, async (file) => await keep(kept, file))
      } catch (error) {
        // Nothing half done stays behind.
        if (!wasThere) await caches.delete(name)
        throw error
      }
    },
    missing: async () => {
      const kept = await caches.open(name)
      let missing = 0
      await forEachFew(site.files, async (file) => {
        if ((await keptFile(file.path)) !== undefined) return
        await keep(kept, file).catch(() => {
          missing += 1
        })
      })
      return missing
    },
    tidy: async () => {
      if (ground.isNewerComing()) return
      const inUse = { version: site.version, locks: await ground.pageLocks() }
      const outdated = outdatedNames(await caches.keys(), scopeUrl, inUse)
      await Promise.all(outdated.map(async (old) => await caches.delete(old)))
    },
    answer: (request) => {
      const route = routeOf(request, scopeUrl, paths)
      switch (route.kind) {
        case 'server':
          return null
        case 'kept':
          return keptFile(route.path).then((kept) => kept ?? ground.fetch(request))
        case 'older-or-server':
          return fromOlder(request).then((older) => older ?? ground.fetch(request))
      }
    },
  }
}
