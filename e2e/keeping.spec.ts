import { readFileSync } from 'node:fs'
import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar, exampleLayout } from './pages/benchCar'
import { Elevation } from './pages/elevation'

const LAP_LEFT = 'anchor:driver:lap-left'

const start = async (page: Page): Promise<App> => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.showNumbers()
  return app
}

/** The layouts that the browser keeps for this page, as text; empty while there are none. */
const kept = async (page: Page): Promise<string> =>
  await page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open('tabwright')
        opening.onerror = () => reject(new Error('no database'))
        opening.onsuccess = () => {
          const reading = opening.result.transaction('layouts').objectStore('layouts').getAll()
          reading.onerror = () => reject(new Error('nothing to read'))
          reading.onsuccess = () => {
            opening.result.close()
            resolve(JSON.stringify(reading.result))
          }
        }
      }),
  )

const nameJob = async (app: App, name: string): Promise<void> => {
  await app.tab('Job')
  await app.typeInto(app.page.getByRole('textbox', { name: 'Job', exact: true }), name)
  await expect(app.page.getByRole('heading', { level: 1 })).toHaveText(name)
  await expect.poll(async () => await kept(app.page)).toContain(name)
}

/** Loads the page anew, as a builder does who comes back to a tab. */
const reloaded = async (app: App): Promise<void> => {
  await app.page.reload()
  await expect(app.page.getByRole('application').first()).toBeVisible()
}

test('what was dragged is there again after the page is loaded anew', async ({ page }) => {
  const app = await start(page)
  await new Elevation(app, 'side').dragExactly(LAP_LEFT, { u: -20, v: 15 })
  await app.expectAt(LAP_LEFT, { x: 1360, z: 65 })
  const before = await app.numbers()
  await expect.poll(async () => await kept(page)).toContain('1360')
  await page.reload()
  await expect(page.getByRole('application').first()).toBeVisible()
  await app.showNumbers()
  await expect.poll(async () => await app.numbers()).toEqual(before)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench car')
})

test('a saved file holds the layout and opens to the same numbers', async ({ page }) => {
  // Without the browser's own file dialog, which no test can answer, the file is a download.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  const app = await start(page)
  await new Elevation(app, 'side').dragExactly(LAP_LEFT, { u: -20, v: 15 })
  const before = await app.numbers()
  await app.openMenu('File')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save to a file' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('bench-car-c.layout.json')
  const text = readFileSync(await download.path(), 'utf8')
  const expected = benchCar()
  for (const { strap, mount } of expected.places.flatMap(({ anchors }) => anchors)) {
    if (strap.startsWith('lap')) Object.assign(mount.point, { xMm: 1360, zMm: 65 })
  }
  expect(JSON.parse(text)).toEqual(expected)

  await app.openExample('Nearly empty')
  await app.pickFile(text, 'again.layout.json')
  await expect(app.notice).toContainText('again.layout.json is open')
  await app.showNumbers()
  await expect.poll(async () => await app.numbers()).toEqual(before)
})

const bench = JSON.stringify(benchCar())
const REFUSED = [
  { what: 'a file cut off in the middle', text: bench.slice(0, bench.length / 2), why: /line/ },
  { what: 'a file that is no JSON', text: 'solid tab\nfacet normal 0 0 1', why: /JSON/ },
  { what: 'JSON of something else', text: '{"name":"groceries","items":["bolts"]}', why: /version/ },
  {
    what: 'a layout of a version to come',
    text: JSON.stringify({ ...benchCar(), version: 2 }),
    why: /version/,
  },
  {
    what: 'a layout with a word for a number',
    text: JSON.stringify(benchCar()).replace('"reclineDeg":20', '"reclineDeg":"steep"'),
    why: /steep/,
  },
]

test('a damaged or foreign file changes nothing and says why', async ({ page }) => {
  const app = await start(page)
  const before = await app.numbers()
  for (const { what, text, why } of REFUSED) {
    await app.pickFile(text, `${what}.json`)
    await expect(app.notice).toContainText(`${what}.json cannot be opened. Nothing was changed.`)
    await expect(app.notice.getByRole('listitem').first()).toContainText(why)
    await page.keyboard.press('Escape')
    expect(await app.numbers()).toEqual(before)
  }
  // The document is still the sound file that was opened before, with nothing to undo.
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench car')
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('opening another layout leaves the one before as it was, under Layouts', async ({ page }) => {
  const app = await start(page)
  const before = await app.numbers()
  await app.openExample('Rock buggy, one seat')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(exampleLayout('rock-buggy').job.name)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
  await app.openLayouts()
  await page
    .getByRole('list', { name: 'Layouts' })
    .getByRole('button', { name: /Bench car/ })
    .click()
  await expect(app.notice).toContainText('Bench car is open')
  await app.closeNotice()
  await app.showNumbers()
  await expect.poll(async () => await app.numbers()).toEqual(before)
})

test('two tabs never write over each other, and each finds its own work again', async ({ page, context }) => {
  const first = await App.start(page)
  await first.openLayout(benchCar())
  await nameJob(first, 'Dune car')
  const second = await App.start(await context.newPage())
  await expect(second.page.getByRole('heading', { level: 1 })).toHaveText('Dune car')
  await expect(second.notice).toContainText('open in another tab too')
  await second.closeNotice()
  await nameJob(second, 'Wash car')
  await nameJob(first, 'Dune car, lower')
  expect(await kept(page)).toContain('Wash car')
  await reloaded(first)
  await expect(first.page.getByRole('heading', { level: 1 })).toHaveText('Dune car, lower')
  await reloaded(second)
  await expect(second.page.getByRole('heading', { level: 1 })).toHaveText('Wash car')
  await expect(second.notice).toHaveCount(0)
})

test('a new tab has what was changed last; what other tabs kept is under Layouts', async ({
  page,
  context,
}) => {
  const first = await App.start(page)
  await nameJob(first, 'Dune car')
  const second = await App.start(await context.newPage())
  await nameJob(second, 'Wash car')
  await second.openLayouts()
  const cards = (app: App) => app.page.getByRole('list', { name: 'Layouts' }).getByRole('listitem')
  await expect(cards(second)).toHaveText([/Wash car.*Open here/, /Dune car.*Open in another tab/])
  await cards(second).nth(1).getByText('More').click()
  await expect(cards(second).nth(1).getByRole('button', { name: 'Remove' })).toBeDisabled()
  await page.close()
  await second.page.close()

  const third = await App.start(await context.newPage())
  await expect(third.page.getByRole('heading', { level: 1 })).toHaveText('Wash car')
  await expect(third.notice).toContainText('under Layouts')
  await third.closeNotice()
  await third.openLayouts()
  await cards(third)
    .nth(1)
    .getByRole('button', { name: /Dune car/ })
    .click()
  await expect(third.notice).toContainText('Dune car is open')
  await expect(third.page.getByRole('heading', { level: 1 })).toHaveText('Dune car')
})

test('a browser that keeps nothing says so and goes on working', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('storage is forbidden here', 'SecurityError')
    }
  })
  const app = await App.start(page)
  await expect(app.notice).toContainText('keeps nothing for this page')
  await app.closeNotice()
  await app.openLayout(benchCar())
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench car')
})

test('a browser without room says so, keeps working, and keeps again once there is room', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const room = { isFull: true }
    Object.assign(window, { room })
    IDBObjectStore.prototype.put = new Proxy(Reflect.get(IDBObjectStore.prototype, 'put'), {
      apply: (put, store, given) => {
        if (room.isFull) throw new DOMException('full', 'QuotaExceededError')
        return Reflect.apply(put, store, given)
      },
    })
  })
  const app = await App.start(page)
  await app.tab('Job')
  await app.typeInto(page.getByRole('textbox', { name: 'Job', exact: true }), 'Dune car')
  await expect(app.notice).toContainText('no room left')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Dune car')
  await page.evaluate(() => Object.assign(Reflect.get(window, 'room'), { isFull: false }))
  await nameJob(app, 'Dune car, lower')
  await page.reload()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Dune car, lower')
})
