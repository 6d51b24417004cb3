import { expect, test } from '@playwright/test'
import { App } from './pages/app'

test('one place is seen under all rule sets at once, and where sources disagree it is plain', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('All rule sets')
  const spacing = page.getByTestId('matrix:shoulder-spacing:shoulder-pair')
  // 175–235 mm (student cars 2026) and at most 150 mm (dirt speedway 2010), both read: no value keeps both.
  await expect(spacing).toHaveAttribute('data-agreement', 'no-value')
  await expect(spacing).toContainText('Sources disagree')
  await expect(spacing.getByTestId('matrix-rule:student-shoulder-spacing')).toContainText('175 mm to 235 mm')
  await expect(spacing.getByTestId('matrix-rule:speedway-shoulder-spacing')).toContainText('at most 150 mm')
  const all = await page.locator('[data-testid^="matrix:"]').count()
  await page.getByLabel('Only where sources disagree').check()
  const some = await page.locator('[data-testid^="matrix:"]').count()
  expect(some).toBeGreaterThan(0)
  expect(some).toBeLessThan(all)
  await page.getByRole('radio', { name: 'List', exact: true }).press('Space')
  await expect(spacing).toContainText('Formula SAE Rules, 2026 V1')
  await page.getByRole('radio', { name: 'Table', exact: true }).press('Space')
  await page.getByRole('button', { name: 'Show on the whole page' }).click()
  await expect(page.getByRole('dialog', { name: 'All rule sets' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
})

test('on a phone the same is a list that does not run out of the page', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 720 })
  const app = await App.start(page)
  await app.tab('All rule sets')
  await expect(page.getByTestId('matrix:belt-points:belt')).toContainText('New Jersey')
  const sticksOut = await page
    .getByRole('region', { name: 'All rule sets' })
    .evaluate((panel) => panel.scrollWidth - panel.clientWidth)
  expect(sticksOut).toBeLessThanOrEqual(0)
})

test('a rule set is copied, changed, checked against, undone and read from a file', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Rules')
  const chosen = page.getByTestId('rule-set').last()
  await chosen.selectOption('student-cars-2026')
  await page.getByRole('button', { name: 'Copy this set to change it' }).click()
  await expect(chosen).toHaveValue(/^own-rules/)
  const rule = page.getByTestId('own-rule:student-shoulder-spacing')
  await rule.locator('summary').click()
  const most = page.getByTestId('most:student-shoulder-spacing')
  await most.fill('300')
  await most.press('Enter')
  await expect(rule.locator('summary')).toContainText('175 mm to 300 mm')
  await expect(rule).toContainText('a limit of your own')
  await page.keyboard.press('Control+z')
  await expect(rule.locator('summary')).toContainText('175 mm to 235 mm')

  await page.getByTestId('rule-set-file').setInputFiles({
    name: 'odd.rules.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"ruleSetFile": 1, "ruleSet": {"name": 7}}'),
  })
  await expect(app.notice).toContainText('odd.rules.json cannot be used. Nothing was changed.')
  await app.closeNotice()
  await page.getByRole('button', { name: 'Delete this set' }).click()
  await expect(chosen).toHaveValue('workshop-practice')
})
