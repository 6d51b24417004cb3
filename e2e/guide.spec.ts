import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { openGuide } from './pages/kept'

const PHONE = { viewport: { width: 320, height: 640 }, hasTouch: true, isMobile: true }

for (const theme of ['light', 'dark'] as const) {
  test.describe(`at 320 px, ${theme}`, () => {
    test.use({ ...PHONE, colorScheme: theme })

    test('a word is explained by touch, and the guide is free of what the checker finds', async ({
      page,
    }) => {
      test.slow()
      const app = await App.start(page)
      await app.tab('Belt')
      await page.getByTestId('term:lap-strap').tap()
      const card = page.getByTestId('term-card')
      await expect(card.getByRole('img')).toBeVisible()
      const box = await card.boundingBox()
      expect(box === null ? 0 : box.x).toBeGreaterThanOrEqual(0)
      expect(box === null ? 999 : box.x + box.width).toBeLessThanOrEqual(320)
      expect(await violations(page, '[data-testid="term-card"]'), 'the card').toEqual([])
      await card.getByRole('button', { name: 'Close' }).tap()
      await expect(card).toHaveCount(0)

      await openGuide(page)
      await page.getByRole('searchbox', { name: 'Find a word' }).fill('guide hoop')
      await page.locator('.word-list summary').first().tap()
      await expect(page.locator('.word-list').getByRole('img').first()).toBeVisible()
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320)
      expect(await violations(page, '.screen'), 'the guide').toEqual([])
    })
  })
}

test('a word is explained from the keyboard; reasons can be tried; the guide prints', async ({ page }) => {
  const app = await App.start(page)
  await app.tab('Seat')
  const word = page.getByTestId('term:recline')
  await word.focus()
  await page.keyboard.press('Enter')
  const card = page.getByRole('dialog', { name: 'Recline' })
  await expect(card).toBeFocused()
  await expect(card.getByRole('img')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(card).toHaveCount(0)
  await expect(word).toBeFocused()

  await openGuide(page)
  const reason = page.getByTestId('reason:square')
  const readings = reason.locator('.reason-readings')
  const before = await readings.innerText()
  await reason.getByRole('slider').focus()
  await page.keyboard.press('End')
  await expect(readings).not.toHaveText(before)
  // The car of the guide is not the one on the drawing.
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1')
  expect((pdf.match(/\/Type\s*\/Page\b/g) ?? []).length).toBeGreaterThan(3)
  await page.getByRole('button', { name: 'Papers', exact: true }).first().click()
  await expect(page.getByTestId('sheet-page-1')).toBeVisible()
})
