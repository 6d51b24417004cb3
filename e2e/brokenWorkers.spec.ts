import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'

const LAP_LEFT = 'anchor:driver:lap-left'

const zoneStatus = (page: Page) => page.getByTestId('zone-status')
const remedyStatus = (page: Page) => page.getByTestId('remedy-status')

/** The file of the worker for rooms, zones and remedies cannot be had until it is given back. */
const withoutWorkerFile = async (page: Page): Promise<() => Promise<void>> => {
  const files = '**/evaluation.worker*'
  await page.route(files, async (route) => await route.abort())
  return async () => await page.unroute(files)
}

const openBench = async (page: Page): Promise<App> => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  return app
}

test('where the worker cannot be had, missing zones and remedies are said in words and can be tried again', async ({
  page,
}) => {
  const mend = await withoutWorkerFile(page)
  const app = await openBench(page)
  await app.tab('Findings')
  await expect(zoneStatus(page)).toContainText('Permitted zones are not known')
  await expect(zoneStatus(page)).toContainText('could not be loaded')
  await expect(remedyStatus(page)).toContainText('could not be worked out in the background')
  await app.chooseInView('Zones', 'All anchors')
  const side = new Elevation(app, 'side')
  expect(await side.hatchedNow()).toBe(0)
  // Still broken: it is said again.
  await zoneStatus(page).getByRole('button', { name: 'Try again' }).click()
  await expect(zoneStatus(page)).toContainText('Permitted zones are not known')
  await mend()
  await remedyStatus(page).getByRole('button', { name: 'Try again' }).click()
  await expect(zoneStatus(page)).toBeEmpty()
  await expect(remedyStatus(page)).not.toContainText('could not be worked out')
  expect(await side.hatchedPx()).toBeGreaterThan(50)
  await expect(page.getByTestId('finding-counts')).not.toContainText('kept')
})

test('where the worker cannot be had, the page works zones and remedies out itself when asked to', async ({
  page,
}) => {
  await withoutWorkerFile(page)
  const app = await openBench(page)
  await app.chooseInView('Zones', 'All anchors')
  await app.tab('Findings')
  await remedyStatus(page).getByRole('button', { name: 'Work it out here' }).click()
  await expect(remedyStatus(page)).not.toContainText('could not be worked out')
  await expect(zoneStatus(page)).toBeEmpty()
  expect(await new Elevation(app, 'side').hatchedPx()).toBeGreaterThan(50)
})

interface Breakable {
  breaksAtZones: boolean
}

/** Workers that die when they are asked for a zone, as long as the test says so. */
const workersThatDie = async (page: Page) => {
  await page.addInitScript(() => {
    const state = window as unknown as Breakable
    state.breaksAtZones = true
    const Native = window.Worker
    window.Worker = class extends Native {
      override postMessage(message: { readonly question?: { readonly kind?: string } }): void {
        if (state.breaksAtZones && message.question?.kind === 'zone')
          this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }))
        else super.postMessage(message)
      }
    }
  })
  return async (breaks: boolean) =>
    await page.evaluate((value) => {
      ;(window as unknown as Breakable).breaksAtZones = value
    }, breaks)
}

test('a worker that dies of a zone is told of by name, and the zone comes when it is tried again', async ({
  page,
}) => {
  const setBreaking = await workersThatDie(page)
  const app = await openBench(page)
  await app.tab('Findings')
  await app.settled()
  await expect(zoneStatus(page)).toBeEmpty()
  await app.tab('Parts')
  await app.select(LAP_LEFT)
  await expect(zoneStatus(page)).toContainText('out of memory')
  // Findings with their room and remedies are not touched by it.
  await expect(remedyStatus(page)).not.toContainText('could not be worked out')
  await expect(page.getByTestId('finding-counts')).not.toContainText('kept')
  await setBreaking(false)
  const again = zoneStatus(page).getByRole('button', { name: 'Try again' })
  await again.focus()
  await page.keyboard.press('Enter')
  await expect(zoneStatus(page)).toBeEmpty()
  const side = new Elevation(app, 'side')
  const from = await side.grab(LAP_LEFT)
  await side.carry(from, { u: -30, v: 0 })
  await expect.poll(async () => await side.hatchedNow()).toBeGreaterThan(50)
  await side.drop()
})

test('nothing comes or goes above the drawing while something is dragged', async ({ page }) => {
  const setBreaking = await workersThatDie(page)
  const app = await openBench(page)
  await setBreaking(false)
  await app.showNumbers()
  const side = new Elevation(app, 'side')
  const from = await side.grab(LAP_LEFT)
  await side.carry(from, { u: -30, v: 0 })
  await expect.poll(async () => await side.hatchedNow()).toBeGreaterThan(50)
  const before = await side.box()
  await setBreaking(true)
  await side.carry(from, { u: -40, v: -30 })
  await expect(page.getByTestId('finding-counts')).toContainText('zones not known')
  await expect(zoneStatus(page)).toBeEmpty()
  expect(await side.box()).toEqual(before)
  await page.mouse.up()
  await expect(zoneStatus(page)).toContainText('out of memory')
})

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })

  test('the words leave the drawing its room, and the way to try again is big enough for a finger', async ({
    page,
  }) => {
    await withoutWorkerFile(page)
    await openBench(page)
    await expect(zoneStatus(page)).toContainText('Permitted zones are not known')
    const again = await zoneStatus(page).getByRole('button', { name: 'Try again' }).boundingBox()
    expect(again?.height ?? 0).toBeGreaterThanOrEqual(44)
    const drawing = await page.getByTestId('elevation-side').boundingBox()
    expect(drawing?.height ?? 0).toBeGreaterThan(180)
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  })
})
