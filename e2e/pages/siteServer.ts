import { createReadStream, existsSync, statSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize } from 'node:path'

const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
}

/** Serves a folder that can be changed for another one, and can be shut for good: no socket answers any more. */
export class SiteServer {
  folder: string
  readonly server: Server

  constructor(folder: string) {
    this.folder = folder
    this.server = createServer((request, response) => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost')
      const file = join(this.folder, normalize(pathname === '/' ? '/index.html' : pathname))
      // As real servers do it: the answer is said to depend on who asks.
      response.setHeader('Vary', 'Origin')
      if (!existsSync(file) || !statSync(file).isFile()) {
        response.writeHead(404).end()
        return
      }
      response.setHeader('Content-Type', KINDS[extname(file)] ?? 'application/octet-stream')
      createReadStream(file).pipe(response)
    })
  }

  async open(port = 0): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(port, 'localhost', resolve))
    return `http://localhost:${(this.server.address() as AddressInfo).port}/`
  }

  async close(): Promise<void> {
    this.server.closeAllConnections()
    await new Promise((resolve) => this.server.close(resolve))
  }
}
