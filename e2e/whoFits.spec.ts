import { spawnSync } from 'node:child_process'
import { expect, type Page, test } from '@playwright/test'
import { App } from './pages/app'
import { exampleFile } from './pages/benchCar'

interface Counted {
  readonly passing: number
}

interface ReportedFit {
  readonly places: readonly {
    readonly place: string
    readonly rules: readonly { readonly rule: string; readonly women: Counted; readonly men: Counted }[]
  }[]
}

/** What the command line counts for an example. */
const countedFit = (name: string): ReportedFit => {
  const run = spawnSync('npm', ['run', '--silent', 'evaluate', '--', '--fit', exampleFile(name)], {
    cwd: new URL('..', import.meta.url).pathname,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  })
  return (JSON.parse(run.stdout) as { fit: ReportedFit }).fit
}

const status = (page: Page) => page.getByTestId('fit-status')
/** A slow machine may take its time over 1,200 people. */
const counted = (page: Page): Promise<void> =>
  expect(status(page)).toContainText('Counted for the layout as drawn.', { timeout: 20_000 })

test('the page counts the same people as the command line, and shows who they are', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Who fits')
  await expect(page.getByText('The survey is of soldiers, not of your customers')).toBeVisible()
  await counted(page)
  const rules = countedFit('rock-buggy').places[0]?.rules ?? []
  expect(rules.length).toBeGreaterThan(3)
  for (const { rule, women, men } of rules) {
    await expect(page.getByTestId(`fit:${rule}:female`)).toHaveText(`${women.passing} of 600`)
    await expect(page.getByTestId(`fit:${rule}:male`)).toHaveText(`${men.passing} of 600`)
  }
  await expect(page.getByTestId('fit-limiting')).not.toBeEmpty()
  // A rule chosen by keyboard shows its own people.
  const [first] = rules
  const choose = page.getByTestId(`fit-rule:${first?.rule}`)
  await choose.focus()
  await page.keyboard.press('Enter')
  await expect(choose).toHaveAttribute('aria-pressed', 'true')
  await expect(page.getByTestId('fit-picture:female')).toHaveAttribute(
    'aria-label',
    new RegExp(`: ${first?.women.passing} pass`),
  )
  await expect(page.locator('[aria-label="Who fits"]')).not.toContainText('%')
})

test('a count is marked stale when the layout changes, and is made anew when it is left alone', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Who fits')
  await counted(page)
  // The next worker is held back, so that the stale figures stay in view.
  let release = (): void => undefined
  const held = new Promise<void>((resolve) => {
    release = resolve
  })
  await page.route('**/fit.worker*', async (route) => {
    await held
    await route.continue()
  })
  await page.getByTestId('rule-set').selectOption({ label: 'US road anchorages, 49 CFR 571.210' })
  await expect(status(page)).toHaveAttribute('data-stale', 'true')
  await expect(status(page)).toContainText('Counting')
  await expect(status(page)).toContainText('The figures below are of the layout before.')
  release()
  await counted(page)
  await expect(status(page)).not.toHaveAttribute('data-stale', 'true')
  // Undo brings a layout back that is counted anew too.
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(status(page)).toHaveAttribute('data-stale', 'true')
  await counted(page)
})

test('a count can be cancelled and begun again, and one that cannot start says so', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  let mode: 'hold' | 'refuse' | 'let' = 'hold'
  await page.route('**/fit.worker*', async (route) => {
    if (mode === 'let') await route.continue()
    else if (mode === 'refuse') await route.abort()
  })
  await app.tab('Who fits')
  await expect(status(page)).toContainText('Counting')
  await expect(status(page).getByRole('progressbar')).toBeVisible()
  await status(page).getByRole('button', { name: 'Cancel' }).click()
  await expect(status(page)).toContainText('The count was cancelled.')
  mode = 'refuse'
  await status(page).getByRole('button', { name: 'Count again' }).click()
  await expect(status(page)).toContainText('The count came to no end')
  mode = 'let'
  await status(page).getByRole('button', { name: 'Try again' }).click()
  await counted(page)
})

test('someone beyond the survey is named as such', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('People')
  const mass = page.getByLabel('Mass', { exact: true }).first()
  await mass.fill('190 kg')
  await mass.press('Enter')
  await app.tab('Who fits')
  await expect(page.getByTestId('fit-beyond')).toContainText('heavier')
  await expect(page.locator('svg .fit-beyond')).toHaveText('!')
})

test.describe('on a phone', () => {
  test.use({ viewport: { width: 320, height: 740 }, hasTouch: true, isMobile: true, colorScheme: 'dark' })

  test('the counts fit the width and a rule is chosen with a finger', async ({ page }) => {
    const app = await App.start(page)
    await app.openExample('Rock buggy, one seat')
    await app.tab('Who fits')
    await counted(page)
    const rule = page.locator('[data-testid^="fit-rule:"]').first()
    await rule.scrollIntoViewIfNeeded()
    const box = await rule.boundingBox()
    expect(box?.height ?? 0).toBeGreaterThanOrEqual(44)
    await rule.tap()
    await expect(rule).toHaveAttribute('aria-pressed', 'true')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  })
})
