import { readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Locator, type Page } from '@playwright/test'
import { App } from './pages/app'

/** Set on the page's own clock: what a belt's age is counted to. */
const NOON = new Date(2026, 5, 1, 12)

/** The page with its clock at noon of 1 June 2026. */
const started = async (page: Page): Promise<App> => {
  await page.clock.setFixedTime(NOON)
  return await App.start(page)
}

const panel = (page: Page): Locator => page.getByRole('region', { name: 'Belt care' })

const addBelt = async (page: Page): Promise<void> => {
  await panel(page).getByRole('button', { name: 'Add the belt' }).click()
  await panel(page).getByLabel('Name').fill('Test harness')
  await panel(page).getByLabel('Standard').selectOption('sfi-16.1')
  await panel(page).getByLabel('Serial number').fill('T 1')
  await panel(page).getByLabel('Date of manufacture').fill('2025-03')
  await panel(page).getByRole('button', { name: 'Begin this record' }).click()
}

/** An entry of the history by its words. */
const entries = (page: Page): Locator => panel(page).locator('[data-testid^="entry:"]')

test('a belt is recorded, inspected, found at fault, and its history is only added to', async ({ page }) => {
  const app = await started(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Belt care')
  await addBelt(page)
  const age = panel(page).getByTestId(/^age:/)
  // Workshop practice has no age rule.
  await expect(age).toContainText('No age rule')
  await page.getByTestId('rule-set').first().selectOption('belt-standards')
  // SFI: two years; the label gives the month only, so from 1 March 2025. 1 June 2026 to 1 March 2027: 29 + 31 + 31 + 30 + 31 + 30 + 31 + 31 + 28 + 1 = 273.
  await expect(age).toHaveText(/Not expired: the last day of use is 2027-03-01, in 273 days\./)

  await panel(page).getByRole('button', { name: 'Inspect today' }).click()
  // Nothing is sound before it was looked at.
  await expect(panel(page).getByRole('radio', { name: 'Not looked at', checked: true })).toHaveCount(11)
  await panel(page).getByRole('button', { name: 'Enter this inspection' }).click()
  await expect(panel(page).getByRole('alert')).toContainText('Nothing was looked at yet')
  await page.getByTestId('inspect:stitching').getByRole('radio', { name: 'Fault' }).press('Space')
  await page.getByTestId('inspect:cuts').getByRole('radio', { name: 'Sound' }).press('Space')
  await panel(page).getByLabel('What was seen').fill('Two stitches torn at the left lap end.')
  await panel(page).getByRole('button', { name: 'Enter this inspection' }).click()
  await expect(page.getByTestId(/^condition:/)).toContainText(
    'Out of use. Fault found on 2026-06-01 (stitching)',
  )
  await expect(page.getByRole('tab', { name: 'Belt care 1' })).toBeVisible()
  await expect(entries(page)).toHaveCount(1)
  await expect(entries(page).first()).toContainText('Two stitches torn')

  await panel(page)
    .getByRole('button', { name: /^Strike the entry/ })
    .click()
  await panel(page).getByLabel('Why it is wrong').fill('That was another belt.')
  await panel(page).getByRole('button', { name: 'Strike it' }).click()
  await expect(entries(page)).toHaveCount(2)
  await expect(page.getByTestId('entry:entry-1')).toContainText('Two stitches torn')
  await expect(page.getByTestId('entry:entry-1').locator('s')).toContainText('FAULT: stitching')
  await expect(page.getByTestId(/^condition:/)).toContainText('No fault and no crash is open')

  await app.undo()
  await expect(page.getByTestId(/^condition:/)).toContainText('Out of use')
  await expect(entries(page)).toHaveCount(1)
})

test('a wrong label is corrected and what it said stays; the date decides', async ({ page }) => {
  const app = await started(page)
  await app.openExample('Rock buggy, one seat')
  await page.getByTestId('rule-set').first().selectOption('belt-standards')
  await app.tab('Belt care')
  await addBelt(page)
  await panel(page).getByRole('button', { name: 'Correct the label or the fitting' }).click()
  await panel(page).getByLabel('Date of manufacture').fill('2024-13')
  await panel(page).getByLabel('Why').fill('Read the punched edge again.')
  await panel(page).getByRole('button', { name: 'Enter the correction' }).click()
  await expect(panel(page).getByRole('alert')).toContainText('“2024-13” is no date of manufacture.')
  await panel(page).getByLabel('Date of manufacture').fill('2024-05')
  await panel(page).getByRole('button', { name: 'Enter the correction' }).click()
  await expect(entries(page)).toContainText(['Date of manufacture corrected from 2025-03 to 2024-05.'])
  // Two years from 1 May 2024: 1 May 2026, 31 days before 1 June.
  await expect(page.getByTestId(/^age:/)).toContainText(
    'Expired: the last day of use was 2026-05-01, 31 days ago.',
  )
})

test('a belt is replaced: the old record is retired and stays, the new one begins', async ({ page }) => {
  const app = await started(page)
  await app.openExample('Student racer, straps under the thighs')
  await app.tab('Belt care')
  await expect(page.getByTestId(/^age:/)).toContainText('Expired: the last day of use was 2025-12-31')
  await panel(page).getByRole('button', { name: 'Replace this belt' }).click()
  await panel(page).getByLabel('Standard').selectOption('fia-8853-2016')
  await panel(page).getByLabel('Last year on the label').fill('2031')
  await panel(page)
    .getByRole('button', { name: /^Retire the old one/ })
    .click()
  await expect(page.getByTestId(/^age:/)).toContainText('Not expired: the last day of use is 2031-12-31')
  await panel(page).getByRole('button', { name: 'Retired belts (1)' }).click()
  await expect(page.getByTestId('belt:belt-kestrel-2022')).toContainText('Retired on 2026-06-01')
  await app.undo()
  await expect(page.getByTestId(/^age:/)).toContainText('Expired: the last day of use was 2025-12-31')
})

test('reminders are saved for a calendar, and the record is printed', async ({ page }) => {
  const app = await started(page)
  await app.openExample('Desert single, padded shell')
  await app.tab('Belt care')
  const saved = page.waitForEvent('download')
  await panel(page).getByRole('button', { name: 'Save reminders for a calendar' }).click()
  const download = await saved
  expect(download.suggestedFilename()).toMatch(/-belts\.ics$/)
  const text = readFileSync(await download.path(), 'utf8')
  expect(text).toContain('UID:belt-desert-single-second-last-day@tabwright.invalid\r\n')
  expect(text).toContain('DTSTART;VALUE=DATE:20311231\r\n')
  expect(text).toContain('DTSTAMP:2026')

  await page.getByRole('button', { name: 'Papers' }).click()
  await page.getByRole('button', { name: 'Belt record' }).click()
  const first = page.getByTestId('sheet-page-1')
  await expect(first).toContainText('Race belt')
  await expect(first).toContainText('2031-12-31')
  await expect(first).toContainText('This is not a certificate')
})

test.describe('on a phone', () => {
  test.use({ viewport: { width: 320, height: 720 }, hasTouch: true, isMobile: true })

  test('the panel does not run out of the page and every target is a finger wide', async ({ page }) => {
    const app = await started(page)
    await app.openExample('Trail car, two seats')
    await app.tab('Belt care')
    for (const name of ['Inspect today', 'Enter something else', 'Every age rule for such a belt'])
      await panel(page).getByRole('button', { name }).click()
    const sticksOut = await panel(page).evaluate((element) => element.scrollWidth - element.clientWidth)
    expect(sticksOut).toBeLessThanOrEqual(0)
    const low = await panel(page)
      .locator('button, select, input:not([type="radio"]), textarea, .switch-choices label')
      .evaluateAll((elements) =>
        elements
          .map((element) => element.getBoundingClientRect().height)
          .filter((height) => height > 0 && height < 44),
      )
    expect(low).toEqual([])
  })
})

for (const theme of ['light', 'dark'] as const) {
  test.describe(`${theme}, with every form open`, () => {
    test.use({ colorScheme: theme })

    test('the panel is free of what the checker finds', async ({ page }) => {
      const app = await started(page)
      await app.openExample('Desert single, padded shell')
      await app.tab('Belt care')
      // From the last to the first: an opened form moves none of those before it.
      const openers = await panel(page).locator('.care-opener').all()
      for (const opener of openers.toReversed()) await opener.click()
      await expect(panel(page).getByLabel('Why it is wrong').first()).toBeVisible()
      const checker = new AxeBuilder({ page }).setLegacyMode(true).include('#panels')
      const { violations } = await checker
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze()
      expect(violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))).toEqual([])
    })
  })
}
