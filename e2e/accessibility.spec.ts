import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { violations } from './pages/axe'

const DESKTOP = { name: 'desktop', use: { viewport: { width: 1440, height: 900 } } }
const PHONE = {
  name: 'phone',
  use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
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

/** The screens beside the drawing, by their words under "Go to". */
const SCREENS = ['Layouts', 'Photo', 'Compare', 'Customer', 'Guide']

/**
 * Each panel in both themes, where it stands alone, and each screen once in either; drawing, findings, menus and sheet in every
 * combination.
 */
const COMBINATIONS = [
  { ...DESKTOP, theme: 'light', tabs: [], screens: [] },
  { ...DESKTOP, theme: 'dark', tabs: [], screens: SCREENS },
  { ...PHONE, theme: 'light', tabs: TABS, screens: SCREENS },
  { ...PHONE, theme: 'dark', tabs: TABS, screens: [] },
] as const

const goTo = async (page: Page, screen: string): Promise<void> => {
  await page.getByRole('button', { name: 'Go to', exact: true }).click()
  await page
    .locator('.screen-menu')
    .getByRole('button', { name: new RegExp(`^${screen}`) })
    .click()
  if (screen !== 'Drawing') await expect(page.locator('.screen h2').first()).toBeVisible()
}

const backOnDrawing = async (app: App): Promise<App> => {
  await app.page.getByRole('button', { name: 'Back to the drawing' }).click()
  await app.chooseInView('Show the car as', 'Drawing')
  return app
}

/** The questions that lead to a first layout, beside an empty drawing. */
const beginQuestions = async (app: App): Promise<void> => {
  await app.openMenu('File')
  await app.page
    .locator('.menu-list')
    .getByRole('button', { name: /^Answer questions/ })
    .click()
  await expect(app.page.getByRole('application').first()).toBeVisible()
}

for (const { name, use, theme, tabs, screens } of COMBINATIONS) {
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
      await expect(page.getByRole('button', { name: /^Share/ })).toBeVisible()
      expect(await violations(page, 'header'), 'the file menu').toEqual([])
      await page.keyboard.press('Escape')
      await app.openMenu('View')
      expect(await violations(page, 'header'), 'the view menu').toEqual([])
      await page.keyboard.press('Escape')
      for (const screen of screens) {
        await goTo(page, screen)
        expect(await violations(page, 'main'), screen).toEqual([])
      }
      if (screens.length > 0) await goTo(page, 'Drawing')
      await app.chooseInView('Show the car as', 'List')
      await expect(page.getByTestId('list-board')).toBeVisible()
      expect(await violations(page, '#drawing'), 'the list').toEqual([])
      await app.openSheet()
      expect(await violations(page), 'the sheet').toEqual([])
      await beginQuestions(await backOnDrawing(app))
      expect(await violations(page, '#panels'), 'the first questions').toEqual([])
    })
  })
}

/** What reaches beyond the right edge and cannot be scrolled to, and whether the page itself is wider than the screen. */
const beyondTheEdge = async (page: Page): Promise<readonly string[]> =>
  await page.evaluate(() => {
    const widthPx = document.documentElement.clientWidth
    const canScroll = (element: Element | null): boolean =>
      element !== null &&
      (['auto', 'scroll'].includes(getComputedStyle(element).overflowX) || canScroll(element.parentElement))
    const page =
      document.documentElement.scrollWidth > widthPx
        ? [`the page: ${document.documentElement.scrollWidth} px`]
        : []
    const parts = [...document.querySelectorAll('main *, header *, footer *')].flatMap((element) => {
      const { right, width } = element.getBoundingClientRect()
      // A canvas has its own way to be moved.
      if (width === 0 || right <= widthPx + 1 || element.closest('.elevation-frame') !== null) return []
      return canScroll(element) ? [] : [`${element.tagName} ${element.className.toString()}`]
    })
    return [...page, ...parts.slice(0, 5)]
  })

/** Source: WCAG 2.2, 1.4.10 Reflow, 320 px, and 1.4.4 Resize Text, 200 % of a laptop's 1280 by 800 (both from memory). */
const NARROW = [
  { name: '320 px wide', viewport: { width: 320, height: 640 } },
  { name: '200 % zoom', viewport: { width: 640, height: 400 } },
]

for (const { name, viewport } of NARROW) {
  test.describe(name, () => {
    test.use({ viewport, hasTouch: true })

    test('nothing is cut or has to be scrolled sideways, and the drawing has room', async ({ page }) => {
      const app = await App.start(page)
      await app.openExample('Trail car, two seats')
      const widths = async (what: string): Promise<void> =>
        expect(await beyondTheEdge(page), what).toEqual([])
      await widths('the drawing')
      const drawing = await page.getByTestId('elevation-side').boundingBox()
      expect(drawing?.height).toBeGreaterThan(150)
      for (const tab of ['Findings', ...TABS]) {
        await app.tab(tab)
        await widths(tab)
      }
      await app.tab('Parts')
      await app.select('hip:driver')
      await widths('a part in hand')
      for (const menu of ['File', 'View'] as const) {
        await app.openMenu(menu)
        await widths(menu)
        await page.keyboard.press('Escape')
      }
      for (const screen of SCREENS) {
        await goTo(page, screen)
        await widths(screen)
      }
      await goTo(page, 'Drawing')
      await app.chooseInView('Show the car as', 'List')
      await widths('the list')
      await app.openSheet()
      await widths('the sheet')
      await beginQuestions(await backOnDrawing(app))
      await widths('the first questions')
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
