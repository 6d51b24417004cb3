import { readFileSync } from 'node:fs'
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
  await app.typeInto(page.getByRole('textbox', { name: 'Job', exact: true }), 'Other engine')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Other engine')
  await app.openSheet()
  await expect(page.getByTestId('sheet-page-1')).toContainText('Other engine')
  await page.getByRole('button', { name: /Back to the drawing/ }).click()

  await app.openMenu('File')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: /^Save to a file/ }).click()
  const saved = readFileSync(await (await downloading).path(), 'utf8')
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
