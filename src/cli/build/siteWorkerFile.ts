import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join, relative, resolve, sep } from 'node:path'
import { build, type Plugin } from 'vite'
import { START_PAGE, type SiteFiles, versionOf } from '../../state/offline/siteFiles.ts'

/** The service worker's file; it lies at the site's root, so that it is in charge of the whole site. */
const WORKER_FILE = 'service-worker.js'
const WORKER_SOURCE = 'src/state/offline/service.worker.ts'

/**
 * What the page may load and run. Source: W3C, Content Security Policy Level 3 (from memory). Nothing is ever asked of another origin.
 * Styles may stand in the page because the paper's size is told to the printer by one that is written there.
 */
const CONTENT_POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "frame-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex')

/** Paths under the folder, with forward slashes, in one order on every machine. */
const filesUnder = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => relative(folder, join(folder, path)).split(sep).join('/'))
    .filter((path) => path !== WORKER_FILE && !path.endsWith('.map'))
    .toSorted()

/** Tells the page which build it is of, then lists the finished folder. */
const stampedSite = (folder: string, builtOn: string): SiteFiles => {
  const paths = filesUnder(folder)
  const listed = (): SiteFiles['files'] =>
    paths.map((path) => ({ path, sha256: sha256(readFileSync(join(folder, path))) }))
  const version = versionOf(builtOn, sha256(JSON.stringify(listed())))
  const page = join(folder, START_PAGE)
  const html = readFileSync(page, 'utf8')
  writeFileSync(page, html.replace('</head>', `  <meta name="build" content="${version}" />\n  </head>`))
  return { version, files: listed() }
}

/** Builds the service worker as one classic script: module workers are not for service workers everywhere. */
const writeWorker = async (root: string, folder: string, site: SiteFiles): Promise<void> => {
  await build({
    configFile: false,
    root,
    publicDir: false,
    logLevel: 'warn',
    define: { __SITE_FILES__: JSON.stringify(site) },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      rollupOptions: {
        input: join(root, WORKER_SOURCE),
        output: { format: 'iife', entryFileNames: WORKER_FILE },
      },
    },
  })
}

/** Adds to a build its service worker, which knows every file of it, and the page's content policy. Serving from source has neither. */
export const siteWorkerFile = (today: () => string): Plugin => {
  let root = ''
  let folder = ''
  return {
    name: 'site-worker-file',
    apply: 'build',
    configResolved: (config) => {
      root = config.root
      folder = resolve(config.root, config.build.outDir)
    },
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
        injectTo: 'head-prepend',
      },
    ],
    closeBundle: async () => await writeWorker(root, folder, stampedSite(folder, today())),
  }
}
