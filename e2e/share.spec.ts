import { expect, type Page, test } from '@playwright/test'
import jsQR from 'jsqr'
import { layoutText } from '../src/domain/layout/document/layoutText'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { benchCar, exampleLayout } from './pages/benchCar'
import { keptTexts } from './pages/keptLayouts'

/** What a camera would read of the code that is on the page, four pixels to a module. */
const scanned = async (page: Page): Promise<string | undefined> => {
  const pixels = await page.locator('.qr-code').evaluate(async (svg) => {
    const size = Number(svg.getAttribute('viewBox')?.split(' ')[2])
    const copy = svg.cloneNode(true) as SVGElement
    copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
    copy.setAttribute('width', String(size * 4))
    copy.setAttribute('height', String(size * 4))
    const image = new Image()
    image.src = `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}`
    await image.decode()
    const canvas = new OffscreenCanvas(size * 4, size * 4)
    const context = canvas.getContext('2d')
    context?.drawImage(image, 0, 0)
    const data = context?.getImageData(0, 0, size * 4, size * 4).data ?? []
    return { side: size * 4, data: [...data] }
  })
  return jsQR(Uint8ClampedArray.from(pixels.data), pixels.side, pixels.side)?.data
}

const linkOf = async (app: App): Promise<string> => {
  await app.openMenu('File')
  await app.page.getByRole('button', { name: /^Share/ }).click()
  return await app.page.getByTestId('share-link').inputValue()
}

test('a link made in one browser opens in another as a layout of its own, letter for letter', async ({
  page,
  browser,
}) => {
  const layout = exampleLayout('hill-climber-joined-straps')
  const app = await App.start(page)
  await app.openLayout(layout)
  const link = await linkOf(app)
  expect(await scanned(page)).toBe(link)
  expect(await violations(page, 'dialog')).toEqual([])
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)

  const context = await browser.newContext({ serviceWorkers: 'block' })
  const other = await App.start(await context.newPage())
  await other.openLayout(benchCar())
  // In the same tab, where the app is open already.
  await other.page.goto(link)
  const dialog = other.page.getByRole('dialog', { name: 'A layout came with the link' })
  await expect(dialog).toContainText(layout.job.name)
  await expect(dialog).toContainText(layout.job.car)
  await expect(dialog.getByRole('img')).toBeVisible()
  await other.page.emulateMedia({ colorScheme: 'dark' })
  expect(await violations(other.page, 'dialog')).toEqual([])
  await dialog.getByRole('button', { name: 'Not now' }).click()
  await expect(other.page.getByRole('heading', { level: 1 })).toHaveText('Bench car')
  expect(new URL(other.page.url()).hash).toBe('')

  // Once more, in a page that starts with it.
  const second = await context.newPage()
  await second.goto(link)
  await second.getByRole('button', { name: 'Open as a new layout' }).click()
  await expect(second.getByRole('heading', { level: 1 })).toHaveText(layout.job.name)
  await expect
    .poll(async () => (await keptTexts(second)).toSorted())
    .toEqual([layoutText(layout), layoutText(benchCar())].toSorted())
  // Loaded anew, it does not ask again; the link again leads to what is kept.
  await second.reload()
  await expect(second.getByRole('heading', { level: 1 })).toHaveText(layout.job.name)
  await expect(second.getByRole('dialog')).toHaveCount(0)
  await second.goto(link)
  await second.getByRole('button', { name: 'Go to the one kept here' }).click()
  await expect(second.getByRole('dialog')).toHaveCount(0)
  expect(await keptTexts(second)).toHaveLength(2)

  // Cut off on its way.
  await second.goto(link.slice(0, -40))
  await expect(second.locator('.notice')).toContainText('damaged or was cut off')
  await expect(second.getByRole('heading', { level: 1 })).toHaveText(layout.job.name)
  await expect(second.getByRole('dialog')).toHaveCount(0)
  expect(await keptTexts(second)).toHaveLength(2)
  await context.close()
})
