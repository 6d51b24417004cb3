import { expect, type Locator, test } from '@playwright/test'
import { App } from './pages/app'
import { bare, Sheet } from './pages/sheet'

const rightEdge = async (part: Locator): Promise<number> =>
  await part.evaluate((element) => element.getBoundingClientRect().right)

for (const width of [1440, 320]) {
  test(`a typed weld error is said of the findings and on the sheet, at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    const app = await App.start(page)
    await app.openExample('Trail car, two seats')
    await app.tab('Job')
    await page.getByLabel('Count with an error').check()
    // The example is in inches: 5 mm is shown as the nearest 1/16 in.
    const along = page.getByTestId('tolerance:xMm')
    await expect(along).toHaveValue('3/16')
    expect(await rightEdge(along)).toBeLessThanOrEqual(width)
    await along.fill('8 mm')
    await along.press('Enter')
    await page.getByTestId('tolerance:tabDeg').fill('99')
    await page.getByTestId('tolerance:tabDeg').press('Enter')
    await expect(page.getByRole('alert')).toContainText('outside what a layout can hold')
    await page.getByTestId('tolerance:tabDeg').press('Escape')
    await page.getByTestId('tolerance:spread').selectOption('even')
    await app.tab('Findings')
    const said = page.locator('.finding-tolerance')
    await expect(
      said.filter({ hasText: /Could leave the limits .* of cars welded so/ }).first(),
    ).toBeVisible()
    expect(await rightEdge(said.first())).toBeLessThanOrEqual(width)
    await app.undo()
    await expect(said.filter({ hasText: /of cars welded so/ })).toHaveCount(0)
    await expect(said.first()).toBeVisible()
    await page.getByRole('button', { name: 'Papers', exact: true }).click()
    const sheet = new Sheet(page)
    await expect.poll(async () => await sheet.text()).toContain(bare('Weld and measuring error ±'))
  })
}
