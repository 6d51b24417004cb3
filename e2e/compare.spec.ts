import { readFileSync } from 'node:fs'
import { expect, test, type Locator, type Page } from '@playwright/test'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { benchCar } from './pages/benchCar'

const LAP_LEFT = 'anchor:driver:lap-left'

const openCompare = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Go to', exact: true }).click()
  await page.getByRole('button', { name: /^Compare/ }).click()
  await expect(page.getByRole('heading', { name: 'Variants of this car' })).toBeFocused()
}

const cell = (page: Page, row: string, variant: string): Locator =>
  page.getByTestId(`compare:${row}`).locator(`[data-variant="${variant}"]`)

const expectLowTabsCompared = async (page: Page): Promise<void> => {
  // 60 mm lower: from 50 to −10.
  await expect(cell(page, 'anchor/driver/lap-left/z', 'Variant A')).toHaveText(/^50 mm\s*60 mm up$/)
  await expect(cell(page, 'anchor/driver/lap-left/z', 'Low tabs')).toHaveText('−10 mm')
  // 180 mm behind the hip point and 180 below it: 45°. 240 below it: the 3-4-5 triangle, 53.13°.
  await expect(cell(page, 'number/lap-angle/lap-left/driver', 'Variant A')).toHaveText(/^45°\s*−8.1°$/)
  await expect(cell(page, 'number/lap-angle/lap-left/driver', 'Low tabs')).toHaveText('53.1°')
}

const dark = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.dataset['theme'] = 'dark'
  })

test('a variant is made, changed by typing, compared, drawn and undone, and survives its file', async ({
  page,
}) => {
  // Without the browser's own file dialog, which no test can answer, the file is a download.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await openCompare(page)
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Make a variant of this one' }).click()
  const cards = page.getByTestId(/^variant:/)
  await expect(cards).toHaveCount(2)
  await expect(page.getByText('Nothing: all variants are alike in this.')).toHaveCount(3)
  await app.typeInto(cards.nth(1).getByLabel('Name of this variant'), 'variant a')
  await expect(app.notice).toContainText('Another variant is called “variant a” already.')
  await app.closeNotice()
  await app.typeInto(cards.nth(1).getByLabel('Name of this variant'), 'Low tabs')

  await page.getByRole('button', { name: 'Back to the drawing' }).click()
  await app.showNumbers()
  await app.select(LAP_LEFT)
  await app.typeInto(app.selectedField('z up'), '-10')
  await app.expectAt(LAP_LEFT, { z: -10 })
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench car, variant Low tabs')
  const variant = page.getByTestId('variant')
  await variant.selectOption('Variant A')
  await app.expectAt(LAP_LEFT, { z: 50 })
  await variant.selectOption('Low tabs')
  await app.expectAt(LAP_LEFT, { z: -10 })

  await openCompare(page)
  await expectLowTabsCompared(page)
  await expect(page.getByText('Rooms to the limits are worked out for all variants.')).toBeVisible()
  await expect(
    page
      .getByRole('table', { name: 'Findings' })
      .getByText(/room than in Low tabs$/)
      .first(),
  ).toBeVisible()
  await expect(
    page.getByRole('img', { name: 'Low tabs with Variant A laid over it, from the side' }),
  ).toContainText('Lap tabs 60 mm')
  await page.getByRole('button', { name: 'On paper' }).click()
  await expect(page.getByTestId('sheet-page-1')).toContainText('Variant A laid over Low tabs')
  await openCompare(page)
  await page.getByRole('button', { name: 'Count who fits each variant' }).click()
  await expect(page.getByText('Counted for all variants as they are.')).toBeVisible()
  await expect(cell(page, 'fit/advice', 'Low tabs')).toHaveText(/^\d+ of 600 women, \d+ of 600 men/)
  expect(await violations(page)).toEqual([])
  await dark(page)
  expect(await violations(page)).toEqual([])

  await cards.nth(0).getByRole('button', { name: 'Draw this one' }).click()
  await expect(cards.nth(0).getByRole('button', { name: 'Drawn now' })).toHaveAttribute(
    'aria-pressed',
    'true',
  )
  await expect(cell(page, 'number/lap-angle/lap-left/driver', 'Low tabs')).toHaveText(/^53.1°\s*\+8.1°$/)
  await app.undo()
  await expectLowTabsCompared(page)

  await app.openMenu('File')
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: /^Save to a file/ }).click()
  const text = readFileSync(await (await downloading).path(), 'utf8')
  await cards.nth(1).getByRole('button', { name: 'Remove Low tabs' }).click()
  await expect(page.getByText('There is one way to build this car so far.')).toBeVisible()
  await app.pickFile(text, 'two.layout.json')
  await expect(app.notice).toContainText('two.layout.json is open')
  await expectLowTabsCompared(page)
})

test('on a phone each value says whose it is, nothing is cut off, and the keys reach everything', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 640 })
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await openCompare(page)
  // A click by the keyboard: every button is one.
  await page.getByRole('button', { name: 'Make a variant of this one' }).press('Enter')
  await page.getByLabel('Only differences').press('Space')
  await expect(cell(page, 'anchor/driver/lap-left/z', 'Variant A')).toBeVisible()
  const width = await page.locator('.screen-body').evaluate((body) => body.scrollWidth - body.clientWidth)
  expect(width).toBe(0)
  expect(await violations(page)).toEqual([])
})
