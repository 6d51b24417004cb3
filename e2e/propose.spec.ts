import { expect, type Page, test } from '@playwright/test'
import { App } from './pages/app'

const status = (page: Page) => page.getByTestId('propose-status')
const proposal = (page: Page, rank: number) => page.getByTestId(`proposal:${rank}`)

/** A slow machine may take its time over some thousand positions. */
const found = (page: Page): Promise<void> =>
  expect(status(page)).toContainText('most room first', { timeout: 150_000 })

/** Searching is work: a busy machine with two cores may need a minute or two. */
test.setTimeout(240_000)

const openPanel = async (page: Page): Promise<App> => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Propose')
  await expect(page.getByText('A proposal is geometry only')).toBeAttached()
  await expect(status(page)).toContainText('Nothing has been looked for yet.')
  return app
}

/** The left shoulder tab along the harness bar: the quickest question that this car has. */
const askForShoulder = async (page: Page): Promise<void> => {
  await page.getByTestId('propose-anchor').selectOption({ label: 'Left shoulder tab' })
}

test('positions are looked for, picked out on the drawing, taken in one step and undone', async ({
  page,
}) => {
  const app = await openPanel(page)
  await askForShoulder(page)
  await page.getByRole('button', { name: 'Look for positions' }).click()
  await found(page)
  const first = proposal(page, 1)
  await expect(first).toContainText('more room than as drawn')
  await expect(first).toContainText('Limited by')
  const roomMm = Number(await first.getAttribute('data-room'))
  expect(roomMm).toBeGreaterThan(11)
  // The pointer picks a proposal out.
  await proposal(page, 2).hover()
  await expect(proposal(page, 2)).toHaveAttribute('data-shown', 'true')
  await first.hover()
  await expect(first).toHaveAttribute('data-shown', 'true')
  await expect(proposal(page, 2)).not.toHaveAttribute('data-shown', 'true')
  // Taken: the findings have the room that was promised.
  await page.getByTestId('take:1').click()
  await expect(first).toContainText('(as drawn now)')
  await expect(page.getByTestId('take:1')).toBeDisabled()
  await app.tab('Findings')
  const rooms = await page
    .locator('[data-testid^="finding:"][data-room]')
    .evaluateAll((findings) =>
      findings
        .filter((finding) => finding.getAttribute('data-testid')?.includes('/shoulder-') === true)
        .map((finding) => Number(finding.getAttribute('data-room'))),
    )
  expect(Math.min(...rooms)).toBeCloseTo(roomMm, 6)
  // One undo brings the drawn position back, and the proposals still hold.
  await app.undo()
  await app.tab('Propose')
  await expect(page.getByTestId('take:1')).toBeEnabled()
  await expect(first).not.toContainText('(as drawn now)')
})

test('everything goes by keyboard, a change makes proposals stale, and a search can be cancelled', async ({
  page,
}) => {
  const app = await openPanel(page)
  await askForShoulder(page)
  await page.getByRole('button', { name: 'Look for positions' }).focus()
  await page.keyboard.press('Enter')
  await found(page)
  await proposal(page, 2)
    .getByRole('button', { name: /^Position 2/ })
    .focus()
  await expect(proposal(page, 2)).toHaveAttribute('data-shown', 'true')
  await page.keyboard.press('Tab')
  await expect(page.getByTestId('take:2')).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(proposal(page, 2)).toContainText('(as drawn now)')
  // Another rule set: what was worked out no longer holds and cannot be taken.
  await page.getByTestId('rule-set').selectOption({ label: 'US road anchorages, 49 CFR 571.210' })
  await expect(status(page)).toHaveAttribute('data-stale', 'true')
  await expect(status(page)).toContainText('The layout has changed since these were worked out')
  await expect(page.getByTestId('take:1')).toBeDisabled()
  await app.undo()
  await expect(status(page)).not.toHaveAttribute('data-stale', 'true')
  // A worker that is held back can be cancelled; one that cannot be had says so.
  let mode: 'hold' | 'refuse' | 'let' = 'hold'
  await page.route('**/propose.worker*', async (route) => {
    if (mode === 'let') await route.continue()
    else if (mode === 'refuse') await route.abort()
  })
  await page.getByRole('button', { name: 'Look for positions' }).click()
  await expect(status(page)).toContainText('Looking')
  await status(page).getByRole('button', { name: 'Cancel' }).click()
  await expect(status(page)).toContainText('The search was cancelled.')
  mode = 'refuse'
  await page.getByRole('button', { name: 'Look for positions' }).click()
  await expect(status(page)).toContainText('The search came to no end')
  mode = 'let'
  await status(page).getByRole('button', { name: 'Try again' }).click()
  await found(page)
})

test('a wish that cannot be looked for says how to mend it', async ({ page }) => {
  const app = await openPanel(page)
  await askForShoulder(page)
  await page.getByTestId('propose-how').locator('summary').click()
  await page.getByLabel('Anywhere permitted').check()
  await page.getByLabel('Only within a box').check()
  const from = page.getByRole('group', { name: 'From (front, left, low)' })
  await app.typeInto(from.getByLabel('x rearward'), '5000')
  await page.getByRole('button', { name: 'Look for positions' }).click()
  await expect(status(page)).toContainText('The box is turned round in x')
})

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, colorScheme: 'dark' })

  test('the way to begin is in view before anything is scrolled', async ({ page }) => {
    await openPanel(page)
    await expect(page.getByRole('button', { name: 'Look for positions' })).toBeInViewport({ ratio: 1 })
  })

  test('proposals fit the width and are picked and taken with a finger', async ({ page }) => {
    await openPanel(page)
    await askForShoulder(page)
    await page.getByRole('button', { name: 'Look for positions' }).tap()
    await found(page)
    const head = proposal(page, 2).getByRole('button', { name: /^Position 2/ })
    await head.scrollIntoViewIfNeeded()
    await head.tap()
    await expect(proposal(page, 2)).toHaveAttribute('data-shown', 'true')
    for (const target of [head, page.getByTestId('take:2')]) {
      const box = await target.boundingBox()
      expect(box?.height ?? 0).toBeGreaterThanOrEqual(44)
    }
    await page.getByTestId('take:2').tap()
    await expect(proposal(page, 2)).toContainText('(as drawn now)')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  })
})
