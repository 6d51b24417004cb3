import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Locator } from '@playwright/test'
import { App } from './pages/app'
import { Elevation } from './pages/elevation'

const LAP_ANGLE = 'explain:lap-angle:lap-left'

/** The ends of a drawn line as the page has them: y down. */
const lineOf = async (card: Locator, style: string): Promise<readonly number[]> => {
  const text = await card.locator(`polyline.figure-line.${style}`).last().getAttribute('points')
  return (text ?? '').split(/[ ,]/).map(Number)
}

const openLapAngle = async (app: App): Promise<Locator> => {
  await app.page.getByRole('button', { name: 'Left lap strap, lap angle: what is measured' }).click()
  const card = app.page.getByTestId(LAP_ANGLE)
  await expect(card).toBeVisible()
  return card
}

test('a number opens to a drawing whose lines make the angle it says, and Escape gives the focus back', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Numbers')
  const card = await openLapAngle(app)
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = await lineOf(card, 'hidden')
  const [u0 = 0, v0 = 0, u1 = 0, v1 = 0] = await lineOf(card, 'focus')
  const value = await app.quantity('lap-angle', 'lap-left')
  // Angle between two vectors by their dot product; the page keeps three decimals of a mm.
  const dot = (x1 - x0) * (u1 - u0) + (y1 - y0) * (v1 - v0)
  const cosine = dot / (Math.hypot(x1 - x0, y1 - y0) * Math.hypot(u1 - u0, v1 - v0))
  expect((Math.acos(cosine) * 180) / Math.PI).toBeCloseTo(value, 2)
  await expect(card).toContainText('atan2(zH − zE, xE − xH)')
  await expect(card).toContainText('H hip point')
  await expect(card.getByRole('img')).toHaveAttribute('aria-label', /^Side elevation/)
  await page.keyboard.press('Escape')
  await expect(card).toHaveCount(0)
  await expect(
    page.getByRole('button', { name: 'Left lap strap, lap angle: what is measured' }),
  ).toBeFocused()
  // By keyboard alone.
  await page.keyboard.press('Enter')
  await expect(card).toBeVisible()
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .include('#panels')
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([])
})

/** What only some belts, mounts and shells have, on examples that have it. */
const SPECIAL = [
  {
    example: 'Rock buggy, one seat',
    number: 'Left lap strap, room to the tubes',
    views: [/^(Side elevation|From above)/, /^Turned so that/],
    says: '|PN| in space',
  },
  {
    example: 'Hill climber, joined shoulder straps',
    number: 'Shoulder straps, junction behind the neck',
    views: [/^Side elevation/],
    says: 'xJ − xN',
  },
  {
    example: 'Student racer, straps under the thighs',
    number: 'Left lap strap, pull from the line of the eye bolt',
    views: [/^Turned so that/],
    says: 'acos(d·s)',
  },
  {
    example: 'Desert single, padded shell',
    number: 'Left lap strap, room about the adjuster',
    views: [/^Side elevation/, /^Laid out straight/],
    says: 'along the strap from an end of the adjuster’s body',
  },
] as const

for (const { example, number, views, says } of SPECIAL)
  test(`${number}: opens to what is measured on ${example}`, async ({ page }) => {
    const app = await App.start(page)
    await app.openExample(example)
    await app.tab('Numbers')
    await page.getByRole('button', { name: `${number}: what is measured` }).click()
    const card = page.locator('.explain')
    const drawings = card.getByRole('img')
    await expect(drawings).toHaveCount(views.length)
    for (const [index, view] of views.entries())
      await expect(drawings.nth(index)).toHaveAttribute('aria-label', view)
    await expect(card.locator('.explain-formula')).toContainText(says)
    // The value stands on the last drawing as it stands in the title.
    const title = (await card.getAttribute('aria-label')) ?? ''
    const value = title.slice(title.lastIndexOf(': ') + 2)
    await expect(drawings.last()).toContainText(value)
  })

test('a finding opens to the drawing of the sitting where it is worst', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Findings')
  const item = page.locator('[data-testid^="finding:"][data-verdict="broken"]', {
    has: page.getByRole('button', { name: 'What is measured' }),
  })
  const first = item.first()
  await first.getByRole('button', { name: 'What is measured' }).click()
  const card = first.locator('.explain')
  await expect(card.getByRole('img').first()).toBeVisible()
  await card.getByRole('button', { name: 'Close' }).click()
  await expect(card).toHaveCount(0)
  await expect(first.getByRole('button', { name: 'What is measured' })).toBeFocused()
})

test('every sitting has a column with the worst marked, and choosing one draws it', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Numbers')
  await page.getByRole('radio', { name: 'Every sitting' }).check()
  const table = page.getByTestId('sittings-table')
  const heads = table.locator('thead button')
  await expect(heads).toHaveCount(6)
  await expect(table.locator('td[data-verdict="broken"]').first()).toContainText('worst: broken')
  const side = new Elevation(app, 'side')
  const before = await side.picture()
  const other = table.locator('thead button[aria-pressed="false"]').first()
  const id = (await other.getAttribute('data-testid'))?.replace('sitting-column:', '') ?? ''
  await other.click()
  await expect(page.getByTestId('sitting')).toHaveValue(id)
  await expect(page.getByTestId(`sitting-column:${id}`)).toHaveAttribute('aria-pressed', 'true')
  await expect.poll(async () => (await side.picture()) === before).toBe(false)
  // The names stay in view when the table is moved sideways.
  const name = table.locator('tbody th[scope="row"]').first()
  const left = (await name.boundingBox())?.x
  await page.locator('.sittings-scroll').evaluate((element) => element.scrollTo({ left: 200 }))
  expect((await name.boundingBox())?.x).toBe(left)
})

test('a ghost is named while its column is pointed at', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Numbers')
  await page.getByRole('radio', { name: 'Every sitting' }).check()
  await app.settled()
  const side = new Elevation(app, 'side')
  const before = await side.picture()
  await page.getByTestId('sittings-table').locator('thead button[aria-pressed="false"]').first().hover()
  await expect.poll(async () => (await side.picture()) === before).toBe(false)
  await page.getByRole('radio', { name: 'Every sitting' }).hover()
  await expect.poll(async () => await side.picture()).toBe(before)
})

test.describe('on a narrow phone', () => {
  test.use({ viewport: { width: 320, height: 640 }, hasTouch: true, isMobile: true })

  test('one sitting has the column, stepped through by a chooser; nothing is wider than the page', async ({
    page,
  }) => {
    const app = await App.start(page)
    await app.openExample('Everything wrong')
    await app.tab('Numbers')
    await page.getByRole('button', { name: 'Left lap strap, lap angle: what is measured' }).tap()
    await expect(page.getByTestId(LAP_ANGLE)).toBeVisible()
    const fits = (): Promise<boolean> =>
      page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)
    expect(await fits()).toBe(true)
    await page.getByRole('radio', { name: 'Every sitting' }).check()
    const table = page.getByTestId('sittings-table')
    await expect(table.locator('thead button')).toHaveCount(1)
    const choice = page.getByTestId('sitting-column-choice')
    const before = await choice.inputValue()
    const step = page.getByRole('button', { name: /^(Next|Previous)$/, disabled: false }).first()
    expect((await step.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    await step.tap()
    await expect(choice).not.toHaveValue(before)
    await expect(table.locator('thead button')).toHaveAttribute(
      'data-testid',
      `sitting-column:${await choice.inputValue()}`,
    )
    expect(await fits()).toBe(true)
  })
})
