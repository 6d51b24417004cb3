/** One file of a build, by its place under the site's folder. */
export interface SiteFile {
  readonly path: string
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly sha256: string
}

/** All that one build of the app consists of, but for the service worker itself. */
export interface SiteFiles {
  readonly version: string
  readonly files: readonly SiteFile[]
}

/** The page that answers every navigation. */
export const START_PAGE = 'index.html'

/** Under which a build's files are kept. The folder is part of it: another copy of the app on the same site keeps its own. */
export const keptName = (scopeUrl: string, version: string): string => `${keptPrefix(scopeUrl)}${version}`

/** What the names of all builds of this folder begin with. */
export const keptPrefix = (scopeUrl: string): string => `tabwright ${new URL(scopeUrl).pathname} `

/** A page holds this lock as long as it lives, so that the files of its build are not taken away under it. */
export const pageLockName = (scopeUrl: string, version: string): string =>
  `tabwright-page ${new URL(scopeUrl).pathname} ${version}`

/** Names kept for builds of this folder that neither are in charge nor have a page left. */
export const outdatedNames = (
  names: readonly string[],
  scopeUrl: string,
  inUse: { readonly version: string; readonly locks: readonly string[] },
): readonly string[] => {
  const prefix = keptPrefix(scopeUrl)
  return names.filter((name) => {
    if (!name.startsWith(prefix)) return false
    const version = name.slice(prefix.length)
    return version !== inUse.version && !inUse.locks.includes(pageLockName(scopeUrl, version))
  })
}

/** How a request is answered: from a file of this build, from what an older build left if there is such a file, or by the server. */
export type Route =
  | { readonly kind: 'kept'; readonly path: string }
  | { readonly kind: 'older-or-server' }
  | { readonly kind: 'server' }

/** Pure routing: every navigation that names no file of the build is the start page's; what is asked of others is left alone. */
export const routeOf = (
  request: { readonly method: string; readonly url: string; readonly mode: string },
  scopeUrl: string,
  paths: ReadonlySet<string>,
): Route => {
  const url = new URL(request.url)
  const scope = new URL(scopeUrl)
  const isOwn = url.origin === scope.origin && url.pathname.startsWith(scope.pathname)
  if (request.method !== 'GET' || !isOwn) return { kind: 'server' }
  const path = decoded(url.pathname.slice(scope.pathname.length))
  if (paths.has(path)) return { kind: 'kept', path }
  return request.mode === 'navigate' ? { kind: 'kept', path: START_PAGE } : { kind: 'older-or-server' }
}

const decoded = (path: string): string => {
  try {
    return decodeURIComponent(path)
  } catch {
    // No file of a build has a name that cannot be decoded.
    return path
  }
}

const BYTES_IN_VERSION = 4

/** The day of the build and the beginning of a digest of its contents: people read the first, the second tells two builds of a day apart. */
export const versionOf = (builtOn: string, digestHex: string): string =>
  `${builtOn}.${digestHex.slice(0, 2 * BYTES_IN_VERSION)}`
