import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import { expectKept, openGuide, removeCopy, siteCopy, startAt } from './pages/kept'
import { BENCH_HIP, lapAngle } from './pages/sideView'
import { SiteServer } from './pages/siteServer'

/* The journeys that another engine must bear too; the rest is driven in Chromium alone. */

const LAP_LEFT = 'anchor:driver:lap-left'

test('an example opens; a tab is dragged, typed and undone; the papers stand; a file is saved and opened', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.openLayout(benchCar())
  await app.showNumbers()
  const before = await app.numbers()
  await new Elevation(app, 'side').dragExactly(LAP_LEFT, { u: -20, v: 15 })
  await app.expectAt(LAP_LEFT, { x: 1360, z: 65 })
  await app.expectBoth('lap-angle', 'lap', lapAngle(BENCH_HIP, { x: 1360, z: 65 }))
  await app.expectOneUndoGives(before)

  await app.tab('Job')
  // Key by key: what this driver puts in at once is no typing to the page.
  const job = page.getByRole('textbox', { name: 'Job', exact: true })
  await job.press('Control+A')
  await job.pressSequentially('Other engine')
  await job.press('Enter')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Other engine')
  await app.openSheet()
  await expect(page.getByTestId('sheet-page-1')).toContainText('Other engine')
  await page.getByRole('button', { name: /Back to the drawing/ }).click()

  // This driver tells of no download that a page makes by itself: what is handed to the browser is looked at instead.
  await page.evaluate(() => {
    const create = URL.createObjectURL.bind(URL)
    URL.createObjectURL = (content) => {
      if (content instanceof Blob)
        void content.text().then((text) => (document.documentElement.dataset['handedOver'] = text))
      return create(content)
    }
  })
  await app.openMenu('File')
  await page.getByRole('button', { name: /^Save to a file/ }).click()
  const handedOver = page.locator('html')
  await expect(handedOver).toHaveAttribute('data-handed-over', /Other engine/)
  const saved = (await handedOver.getAttribute('data-handed-over')) ?? ''
  expect(JSON.parse(saved)).toMatchObject({ job: { name: 'Other engine' } })
  await app.openExample('Nearly empty')
  await app.pickFile(saved, 'again.layout.json')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Other engine')
})

test.describe('kept by the browser', () => {
  test.use({ serviceWorkers: 'allow' })

  test('works with the server shut', async ({ page }) => {
    const folder = siteCopy()
    const server = new SiteServer(folder)
    const app = await startAt(page, await server.open())
    await expectKept(page)
    await server.close()
    removeCopy(folder)
    await page.reload()
    await expect(page.getByRole('application').first()).toBeVisible()
    await app.openExample('Rock buggy, one seat')
    await app.settled()
    await openGuide(page)
    await expect(page.getByTestId('about-offline')).toHaveText('yes')
  })
})
