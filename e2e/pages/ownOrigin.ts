import { expect, type Page } from '@playwright/test'

/** Schemes of what a page makes by itself. */
const OWN_SCHEMES = ['blob:', 'data:', 'about:']

/** Fails the running test when the page asks anything of another origin, or tries what its content policy forbids. */
export const watchOwnOrigin = (page: Page): void => {
  page.context().on('request', (request) => {
    const url = new URL(request.url())
    const isOwn = OWN_SCHEMES.includes(url.protocol) || url.hostname === 'localhost'
    expect.soft(isOwn, `${request.method()} ${request.url()} goes to another origin`).toBe(true)
  })
  page.on('console', (message) => {
    if (message.type() === 'error')
      expect.soft(message.text(), 'against the content policy').not.toContain('Content Security Policy')
  })
}
