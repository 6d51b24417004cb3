import { expect, type Page, test } from '@playwright/test'
import jsQR from 'jsqr'
import { layoutText } from '../src/domain/layout/document/layoutText'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { benchCar, exampleLayout } from './pages/benchCar'
import { keptTexts } from './pages/keptLayouts'

const PIXELS = 3

/** What a camera would read of the code that is on the page, as the browser paints it, three pixels to a module. */
const scanned = async (page: Page): Promise<string | undefined> => {
  const { side, dark } = await page.locator('.qr-code').evaluate(async (svg, scale) => {
    const size = Number(svg.getAttribute('viewBox')?.split(' ')[2]) * scale
    const copy = svg.cloneNode(true) as SVGElement
    for (const [name, value] of [
      ['xmlns', 'http://www.w3.org/2000/svg'],
      ['width', String(size)],
      ['height', String(size)],
    ] as const)
      copy.setAttribute(name, value)
    const image = new Image()
    image.src = `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}`
    await image.decode()
    const context = new OffscreenCanvas(size, size).getContext('2d')
    context?.drawImage(image, 0, 0)
    const data = context?.getImageData(0, 0, size, size).data ?? []
    const reds = Array.from({ length: size * size }, (_, index) => data[index * 4] ?? 0)
    return { side: size, dark: reds.map((red) => (red < 128 ? '1' : '0')).join('') }
  }, PIXELS)
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (let at = 0; at < dark.length; at += 1) if (dark[at] === '1') pixels.fill(0, at * 4, at * 4 + 3)
  return jsQR(pixels, side, side)?.data
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
