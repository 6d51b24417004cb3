import { expect, test } from '@playwright/test'
import { App } from './pages/app'

const SCREENS = [
  { name: 'a desktop', use: { viewport: { width: 1440, height: 900 } } },
  { name: 'a phone', use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } },
]

for (const { name, use } of SCREENS) {
  test.describe(`on ${name}`, () => {
    test.use(use)

    test('a strap that would pass through the shell gets a slot with one press, and one undo takes it back', async ({
      page,
    }) => {
      const app = await App.start(page)
      await app.openMenu('File')
      await page.getByRole('button', { name: 'New layout' }).click()
      await app.tab('Anchors')
      for (const strap of ['lap-left', 'shoulder-left', 'sub-left'])
        await page.getByTestId(`add-anchor:${strap}`).click()
      // Far enough outside that the lap straps come in over the shell.
      const lap = page.getByRole('region', { name: 'Left lap tab' })
      await app.typeInto(lap.getByLabel('x rearward'), '1040')
      await app.typeInto(lap.getByLabel('y right'), '-330')
      await app.typeInto(lap.getByLabel('z up'), '68')

      await app.tab('Findings')
      await app.settled()
      const offers = page.getByTestId('offer-slot:sub-left')
      await expect(offers.first()).toHaveText('Add a slot where it crosses the cushion')
      const box = await offers.first().boundingBox()
      expect(box?.height ?? 0).toBeGreaterThanOrEqual(name === 'a phone' ? 44 : 24)
      const findings = page.locator('[data-testid$="/sub-left"][data-verdict="unchecked"]')
      expect(await findings.count()).toBeGreaterThan(0)

      await offers.first().focus()
      await page.keyboard.press('Enter')
      await expect(app.notice).toContainText('starting values: measure the seat')
      await app.closeNotice()
      await expect(offers).toHaveCount(0)
      await expect(page.getByTestId('offer-slot:sub-right')).toHaveCount(0)
      await expect(findings).toHaveCount(0)
      await app.tab('Numbers')
      await app.expectQuantity('slot-bend', 'sub-left', 0)
      await app.tab('Seat')
      await expect(page.getByText('Slot: left anti-submarine strap')).toBeVisible()

      await app.undo()
      await app.tab('Numbers')
      await expect(page.locator('.problems')).toContainText(
        'the seat has no slot for the left anti-submarine strap',
        {
          ignoreCase: true,
        },
      )
      await expect(offers).toHaveCount(1)
    })
  })
}
