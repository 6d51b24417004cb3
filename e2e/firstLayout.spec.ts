import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { bare, Sheet } from './pages/sheet'

/** What the person at the car types; the rest is skipped. */
const TYPED = {
  job: 'Quarry car',
  datum: 'Rear bolt of the front floor plate',
  back: '1130',
  cushion: '171',
  barTop: '612',
}

const next = async (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Next', exact: true }).tap()
const skip = async (page: Page): Promise<void> => page.getByRole('button', { name: /^Skip/ }).tap()
const asked = async (page: Page, title: string): Promise<void> =>
  expect(page.getByRole('heading', { name: title })).toBeFocused()

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })

  test('a first visit leads through the questions to a printed sheet with what was typed', async ({
    page,
  }) => {
    const app = await App.start(page)
    await page.getByRole('button', { name: 'Answer questions' }).tap()
    await asked(page, 'What is this job?')
    await expect(page.getByText('Question 1 of 15')).toBeVisible()
    await page.getByLabel('Job', { exact: true }).fill(TYPED.job)
    await next(page)
    await page.getByRole('textbox', { name: /^The datum/ }).fill(TYPED.datum)
    await next(page)
    await asked(page, 'Where is the seat?')

    // The drawing follows what is typed before it is taken over; Enter takes it over and goes to the next field.
    const drawing = page.getByRole('img', { name: /^Side: rearward to the back/ })
    const back = page.getByLabel(/^A {1,2}Rearward to the face of the back/)
    await back.fill(TYPED.back)
    await expect(drawing).toHaveAttribute('aria-label', /A: 1130 mm/)
    await back.press('Enter')
    const cushion = page.getByLabel(/^B {1,2}Up to the pressed-down cushion/)
    await expect(cushion).toBeFocused()
    await cushion.fill('1e9')
    await cushion.press('Enter')
    // A number that cannot be taken over keeps the question.
    await expect(page.getByRole('alert')).toBeVisible()
    await expect(cushion).toBeFocused()
    await next(page)
    await expect(cushion).toBeFocused()
    await cushion.fill(TYPED.cushion)
    await next(page)
    await asked(page, 'How far does the back lean?')
    await skip(page)
    await asked(page, 'How high are the hips above the cushion?')
    await page.getByRole('button', { name: 'Back', exact: true }).tap()
    await asked(page, 'How far does the back lean?')
    await expect(page.getByText('Skipped: the starting value is kept.')).toBeVisible()

    // What was answered is there after a reload; the questions go on where they were left.
    await page.reload()
    await page.getByRole('button', { name: 'Go on with the questions' }).tap()
    await asked(page, 'How far does the back lean?')
    await page.getByRole('button', { name: 'All questions' }).tap()
    await page.getByRole('button', { name: /Where is the harness bar\?/ }).tap()
    await page.getByLabel(/^B {1,2}Up to its top/).fill(TYPED.barTop)
    for (const title of [
      'Is there a tube for the lap tabs?',
      'Where do the lap tabs go?',
      'Where do the shoulder straps end?',
      'Where do the straps between the legs end?',
      'Does the shell have slots?',
      'Which rules do you check against?',
      'Your layout is complete',
    ]) {
      await next(page)
      await asked(page, title)
    }
    await expect(page.getByRole('region', { name: 'Not measured yet' })).toContainText(
      'How far does the back lean?',
    )
    await page.getByRole('button', { name: 'Look at the papers' }).tap()

    const sheet = new Sheet(page)
    await expect(sheet.pages.first()).toBeVisible()
    await app.settled()
    const printed = bare((await sheet.print()).flatMap(({ texts }) => texts).join(' '))
    expect(printed).toContain(bare(TYPED.job))
    expect(printed).toContain(bare(TYPED.datum))
    // The numbers that were skipped are not for welding yet.
    expect(printed).toContain(bare('NOT MEASURED YET'))
    // The bar's centre line, half of its 38.1 mm below the top that was typed.
    expect(printed).toContain('593')
  })
})

test('a similar car is started from a kept one, and nothing of its job comes along', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy')
  await app.openMenu('File')
  await page.getByRole('button', { name: /^New layout/ }).click()
  await page.getByRole('button', { name: 'Start from a similar car' }).click()
  await page
    .getByRole('region', { name: 'Start here' })
    .getByRole('listitem')
    .first()
    .getByRole('button')
    .click()
  await expect(page.getByRole('heading', { name: 'What is this job?' })).toBeFocused()
  await expect(page.getByLabel('Customer')).toHaveValue('')
  await page.getByRole('button', { name: 'Leave' }).click()
  await app.tab('Anchors')
  await expect(page.getByText('no anchor yet')).toHaveCount(0)
})

for (const theme of ['light', 'dark'] as const) {
  test.describe(`in ${theme}, 320 px wide`, () => {
    test.use({ viewport: { width: 320, height: 700 }, hasTouch: true, isMobile: true, colorScheme: theme })

    test('the questions are free of what the checker finds, and fit', async ({ page }) => {
      await App.start(page)
      expect(await violations(page, '.first-offer'), 'the offer').toEqual([])
      await page.getByRole('button', { name: 'Answer questions' }).tap()
      for (const title of ['Where is the seat?', 'Who sits there?', 'Does the shell have slots?']) {
        await page.getByRole('button', { name: 'All questions' }).tap()
        await page.getByRole('button', { name: new RegExp(`${title.slice(0, -1)}\\?`) }).tap()
        await asked(page, title)
        expect(await violations(page, '#panels'), title).toEqual([])
        const wide = await page
          .locator('.question-body')
          .evaluate((body) => body.scrollWidth - body.clientWidth)
        expect(wide, title).toBeLessThanOrEqual(0)
      }
      await page.getByRole('button', { name: 'All questions' }).tap()
      expect(await violations(page, '#panels'), 'the list').toEqual([])
    })
  })
}
