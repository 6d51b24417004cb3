import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

const DESKTOP = { name: 'desktop', use: { viewport: { width: 1440, height: 900 } } }
const PHONE = {
  name: 'phone',
  use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
}

/** What the checker finds on the page, or in a part of it. */
const violations = async (page: Page, part = 'body'): Promise<readonly string[]> => {
  // Legacy mode spares the helper page that is only needed for frames; there are none here.
  const checker = new AxeBuilder({ page }).setLegacyMode(true).include(part).withTags(RULES)
  const { violations: found } = await checker.analyze()
  return found.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary}`))
}

const TABS = [
  'Numbers',
  'All rule sets',
  'Rules',
  'Who fits',
  'Propose',
  'As welded',
  'Job',
  'Seat',
  'People',
  'Belt',
  'Anchors',
  'Tubes',
  'Parts',
  'Belt care',
]

/** Each panel in both themes, where it stands alone; drawing, findings, menus and sheet in every combination. */
const COMBINATIONS = [
  { ...DESKTOP, theme: 'light', tabs: [] },
  { ...DESKTOP, theme: 'dark', tabs: [] },
  { ...PHONE, theme: 'light', tabs: TABS },
  { ...PHONE, theme: 'dark', tabs: TABS },
] as const

for (const { name, use, theme, tabs } of COMBINATIONS) {
  test.describe(`${name}, ${theme}`, () => {
    test.use({ ...use, colorScheme: theme })

    test('the page is free of what the checker finds', async ({ page }) => {
      // The checker looks at every letter's contrast: seconds for each panel on a busy machine.
      test.slow()
      const app = await App.start(page)
      await app.openExample('Everything wrong')
      await expect(page.locator('html')).toHaveAttribute('data-theme', theme)
      expect(await violations(page), 'the drawing').toEqual([])
      for (const tab of tabs) {
        await app.tab(tab)
        expect(await violations(page, '#panels'), tab).toEqual([])
      }
      await app.openMenu('File')
      await expect(page.getByRole('button', { name: /^Rock buggy/ })).toBeVisible()
      expect(await violations(page, 'header'), 'the file menu').toEqual([])
      await page.keyboard.press('Escape')
      await app.openMenu('View')
      expect(await violations(page, 'header'), 'the view menu').toEqual([])
      await page.keyboard.press('Escape')
      await app.openSheet()
      expect(await violations(page), 'the sheet').toEqual([])
    })
  })
}

for (const theme of ['light', 'dark'] as const) {
  test.describe(`where workers fail, ${theme}`, () => {
    test.use({ ...PHONE.use, colorScheme: theme })

    test('what is said, and lists that are opened, are free of what the checker finds', async ({ page }) => {
      test.slow()
      await page.route('**/*.worker*', async (route) => await route.abort())
      const app = await App.start(page)
      await app.openExample('Rock buggy, one seat')
      await app.tab('Findings')
      await expect(page.getByTestId('zone-status')).toContainText('not known')
      for (const list of ['silent-rules', 'stated-rules'])
        await page.getByTestId(list).locator('summary').first().click()
      expect(await violations(page), 'findings').toEqual([])
      await app.tab('Who fits')
      await expect(page.getByTestId('fit-status')).toContainText('came to no end')
      expect(await violations(page, '#panels'), 'who fits').toEqual([])
      await app.tab('Propose')
      await page.getByTestId('propose-how').locator('summary').click()
      await page.getByRole('button', { name: 'Look for positions' }).click()
      await expect(page.getByTestId('propose-status')).toContainText('came to no end')
      expect(await violations(page, '#panels'), 'propose').toEqual([])
      await app.tab('As welded')
      await expect(page.getByTestId('welded-status')).toContainText('came to no end')
      await page.getByTestId('intake:driver:driver-lap-left').locator('summary').first().click()
      expect(await violations(page, '#panels'), 'a signed record').toEqual([])
      await page.getByRole('button', { name: 'Begin another record' }).click()
      const intake = page.getByTestId('intake:driver:driver-lap-left')
      await intake.locator('summary').first().click()
      await intake.getByRole('radio', { name: 'Angle and length' }).check()
      await intake.getByText('Angles of the tab').click()
      expect(await violations(page, '#panels'), 'measuring in').toEqual([])
    })
  })
}
