import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page } from '@playwright/test'
import { App } from './app'
import { watchOwnOrigin } from './ownOrigin'

const DIST = new URL('../../dist/', import.meta.url).pathname

/** A folder of its own with a copy of the built site, so that nothing that is built meanwhile gets in the way. */
export const siteCopy = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'tabwright-site-'))
  cpSync(DIST, folder, { recursive: true })
  return folder
}

export const removeCopy = (folder: string): void => rmSync(folder, { recursive: true, force: true })

/** Opens the app at another address than the usual one. */
export const startAt = async (page: Page, address: string): Promise<App> => {
  watchOwnOrigin(page)
  await page.goto(address)
  await expect(page.getByRole('application').first()).toBeVisible()
  return new App(page)
}

export const openGuide = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Go to' }).click()
  await page.getByRole('button', { name: /^Guide/ }).click()
}

/** Waits until the guide says that every file is kept. */
export const expectKept = async (page: Page): Promise<void> => {
  await openGuide(page)
  await expect(page.getByTestId('about-offline')).toHaveAttribute('data-state', 'kept')
  await page.getByRole('button', { name: 'Back to the drawing' }).click()
}
