import { expect, type Locator, type Page, test } from '@playwright/test'
import { App, type Point } from './pages/app'
import { bare, Sheet } from './pages/sheet'

/** Where the left lap tab of the example really is: 1.5 mm rearward, 1 mm to the right and 1 mm below its planned place. */
const REALLY: Point = { x: 1351.5, y: 71, z: 37 }

/** Named points of the example, from its file. */
const KNOWN = {
  left: { name: /^Left leg of the main hoop/, at: { x: 1627.8, y: -17.9, z: 330 } },
  right: { name: /^Right leg of the main hoop/, at: { x: 1627.8, y: 737.9, z: 330 } },
  roof: { name: /^Front roof tube/, at: { x: 860, y: 360, z: 1271 } },
} as const

const tapeMm = (from: Point): string =>
  Math.hypot(REALLY.x - from.x, REALLY.y - from.y, REALLY.z - from.z).toFixed(1)

const type = async (field: Locator, text: string): Promise<void> => {
  await field.fill(text)
  await field.press('Enter')
}

const addTape = async (page: Page, known: keyof typeof KNOWN): Promise<void> => {
  const select = page.getByTestId('read:add-tape')
  const words = await select.locator('option').allTextContents()
  const label = words.find((text) => KNOWN[known].name.test(text))
  await select.selectOption({ label: label ?? '' })
}

const intake = (page: Page): Locator => page.getByTestId('intake:driver:driver-lap-left')

const value = async (page: Page, of: string): Promise<number> =>
  Number(await page.getByTestId(`off:${of}`).getAttribute('data-value'))

for (const width of [1440, 390]) {
  test(`a car is measured with tapes, judged, signed and printed, at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: width === 390 ? 844 : 900 })
    const app = await App.start(page)
    await app.openExample('Rock buggy, one seat')
    await app.tab('Job')
    await page.getByLabel('Count with an error').check()
    await app.tab('As welded')
    await page.getByRole('button', { name: /^Begin (a|another) record/ }).click()
    await expect(page.getByTestId('welded-summary')).toHaveText('6 not measured')

    await intake(page).locator('summary').first().click()
    await intake(page).getByRole('radio', { name: 'Tapes' }).check()
    await addTape(page, 'left')
    await addTape(page, 'right')
    await addTape(page, 'roof')
    await type(page.getByTestId('read:tape-1:0'), tapeMm(KNOWN.left.at))
    await type(page.getByTestId('read:tape-3:0'), tapeMm(KNOWN.roof.at))

    // A tape that cannot be: the hoop's legs are 755.8 mm apart, and 400 mm are too few to reach from one tape's end to the other.
    await type(page.getByTestId('read:tape-2:0'), '200')
    await expect(page.getByTestId('intake-result')).toContainText('do not meet')
    await expect(page.getByTestId('intake-result')).toContainText('too short')
    await type(page.getByTestId('read:tape-2:0'), tapeMm(KNOWN.right.at))

    // Three tapes fit two places; nothing is chosen beforehand.
    const choices = page.getByTestId(/^mirror:/)
    await expect(choices).toHaveCount(2)
    await expect(page.getByTestId('off:x')).toHaveCount(0)
    for (const choice of await choices.all()) await expect(choice).toHaveAttribute('aria-pressed', 'false')
    const nearer = choices.filter({ hasText: 'nearer to the plan' })
    await expect(nearer).toHaveCount(1)
    await nearer.click()
    await expect(nearer).toHaveAttribute('aria-pressed', 'true')
    // Typed to 0.1 mm, so it comes back to a few tenths.
    expect(await value(page, 'x')).toBeCloseTo(1.5, 0)
    expect(Math.abs((await value(page, 'x')) - 1.5)).toBeLessThan(0.4)
    expect(Math.abs((await value(page, 'y')) - 1)).toBeLessThan(0.4)
    expect(Math.abs((await value(page, 'z')) + 1)).toBeLessThan(0.4)
    await expect(intake(page).locator('summary').first()).toContainText('within tolerance')

    // Read again, 8 mm apart: the mean counts, and it is said that they are far apart.
    await page.getByRole('button', { name: /^Add another reading: Tape 1/ }).click()
    await type(page.getByTestId('read:tape-1:1'), (Number(tapeMm(KNOWN.left.at)) + 8).toFixed(1))
    await expect(page.getByTestId('intake-result')).toContainText('8 mm apart')
    await expect(page.getByTestId('intake-result')).toContainText('Read again')
    await app.undo()
    await expect(page.getByTestId('intake-result')).not.toContainText('8 mm apart')

    // The findings of the car come by themselves, and say what they take from the plan.
    await expect(page.getByTestId('welded-status')).toContainText('as measured')
    await expect(page.getByTestId('welded-changes')).toContainText('On the car as far as it is measured')
    await expect(page.getByText('5 of 6 anchors are taken as planned')).toBeVisible()

    await page.getByLabel('Signed by').fill('Ines Okafor')
    await page.getByLabel('Signed by').press('Enter')
    await page.getByRole('button', { name: 'Sign and close' }).click()
    await expect(page.getByTestId('welded-signed')).toContainText('Signed by Ines Okafor')
    await expect(page.getByTestId(/^read:/)).toHaveCount(0)
    await expect(page.getByRole('button', { name: 'Remove this record' })).toHaveCount(0)
    await expect(intake(page)).toContainText('Tape from Left leg of the main hoop')
    // Nothing sticks out to the side.
    const edge = await intake(page).evaluate((element) => element.getBoundingClientRect().right)
    expect(edge).toBeLessThanOrEqual(width)

    await page.getByRole('button', { name: 'Record page' }).click()
    const sheet = new Sheet(page)
    await expect.poll(async () => await sheet.text()).toContain(bare('Signed by Ines Okafor'))
    const text = await sheet.text()
    for (const part of [
      'As-welded record',
      'Left lap tab',
      'within tolerance',
      '5 of 6 anchors are taken as planned',
      'Tape from Left leg of the main hoop',
      'Rule set:',
      'This is not a certificate',
      'Measure again on the car',
    ])
      expect(text).toContain(bare(part))
  })
}

test('the plan stays as it was, and another record copies nothing', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('As welded')
  await page.getByRole('button', { name: /^Begin (a|another) record/ }).click()
  await intake(page).locator('summary').first().click()
  await intake(page).getByRole('radio', { name: 'Coordinates' }).check()
  await type(page.getByTestId('read:xMm:0'), '1356')
  await type(page.getByTestId('read:yMm:0'), '70')
  await type(page.getByTestId('read:zMm:0'), '38')
  await expect(page.getByTestId('off:x')).toHaveAttribute('data-value', '6')
  await expect(intake(page).locator('summary').first()).toContainText('no tolerance typed')
  await app.tab('Parts')
  await app.expectAt('anchor:driver:driver-lap-left', { x: 1350, y: 70, z: 38 })
  await app.tab('As welded')
  await page.getByRole('button', { name: 'Begin another record' }).click()
  await expect(page.getByTestId('welded-summary')).toHaveText('6 not measured')
})

test('what a worker could not work out is tried again, and done on the page for the paper', async ({
  page,
}) => {
  await page.route('**/welded.worker*', async (route) => await route.abort())
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('As welded')
  await expect(page.getByTestId('welded-status')).toContainText('came to no end')
  await page.getByRole('button', { name: 'Record page' }).click()
  await expect(page.getByRole('alert')).toContainText('could not be worked out in the background')
  await page.getByRole('button', { name: 'Work it out here' }).click()
  await expect(page.getByTestId('sheet-page-1')).toBeVisible()
  await page.unroute('**/welded.worker*')
  await page.getByRole('button', { name: 'Back to the drawing' }).click()
  await app.tab('As welded')
  await page.getByRole('button', { name: 'Try again' }).click()
  await expect(page.getByTestId('welded-status')).toContainText('as measured')
})

test('an example says which tape cannot be, and which tab is outside', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Dune runner, three points')
  await app.tab('As welded')
  await expect(page.getByTestId('welded-summary')).toContainText('1 outside tolerance')
  await expect(page.getByTestId('welded-summary')).toContainText('1 cannot be told: measure again')
  const right = page.getByTestId('intake:driver:driver-lap-right')
  await right.locator('summary').first().click()
  await expect(right.getByTestId('intake-result')).toContainText('too short')
  await page.getByTestId('intake:driver:driver-lap-left').locator('summary').first().click()
  await expect(page.getByTestId('off:z')).toContainText('5 mm down')
  await expect(page.getByText('1 of 3 anchors are taken as planned')).toBeVisible()
})
