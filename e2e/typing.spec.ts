import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { BENCH_HIP, lapAngle, shoulderCentre, shoulderDrop } from './pages/sideView'

const LAP_LEFT = 'anchor:driver:lap-left'
/** 12 3/8 in · 25.4 mm/in */
const TWELVE_AND_THREE_EIGHTHS_MM = 314.325

const start = async (page: Page): Promise<App> => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.showNumbers()
  await app.select(LAP_LEFT)
  return app
}

test('a fraction typed in inches survives the other unit and back', async ({ page }) => {
  const app = await start(page)
  await app.useInches()
  const field = app.selectedField('x rearward')
  await app.typeInto(field, '12 3/8')
  await expect(field).toHaveValue('12 3/8')
  await app.expectAt(LAP_LEFT, { x: TWELVE_AND_THREE_EIGHTHS_MM }, 1e-9)
  await app.useMillimetres()
  await expect(field).toHaveValue('314.3')
  // Touched but not changed: leaving the rounded text must not round the value behind it.
  await field.focus()
  await field.press('Enter')
  await app.useInches()
  await expect(field).toHaveValue('12 3/8')
  await app.expectAt(LAP_LEFT, { x: TWELVE_AND_THREE_EIGHTHS_MM }, 1e-9)
})

test('a length typed with its unit is taken as said, whatever the shop works in', async ({ page }) => {
  const app = await start(page)
  await app.useInches()
  await app.typeInto(app.selectedField('z up'), '30 mm')
  await app.expectAt(LAP_LEFT, { z: 30 })
  await app.expectBoth('lap-angle', 'lap', lapAngle(BENCH_HIP, { x: 1380, z: 30 }))
  await app.useMillimetres()
  await app.typeInto(app.selectedField('z up'), '2 1/2 in')
  await app.expectAt(LAP_LEFT, { z: 63.5 })
  await app.typeInto(app.selectedField('z up'), '-12,5')
  await app.expectAt(LAP_LEFT, { z: -12.5 })
})

test('what is no length changes nothing, says why and is put back by Escape', async ({ page }) => {
  const app = await start(page)
  const before = await app.numbers()
  const field = app.selectedField('x rearward')
  const message = page.getByTestId('selected-part').getByRole('alert')
  for (const wrong of ['twelve', '12 3/', '1/0', '12 kg', '1e999', '']) {
    await app.typeInto(field, wrong)
    await expect(message, wrong).not.toBeEmpty()
    await expect(field).toHaveAttribute('aria-invalid', 'true')
    expect(await app.numbers()).toEqual(before)
    await field.press('Escape')
    await expect(field).toHaveValue('1380')
    await expect(message).toHaveCount(0)
  }
})

test('a number that no layout can hold changes nothing and names the range', async ({ page }) => {
  const app = await start(page)
  const before = await app.numbers()
  await app.typeInto(app.selectedField('x rearward'), '60000')
  await expect(page.getByTestId('selected-part').getByRole('alert')).toContainText('outside what a layout')
  expect(await app.numbers()).toEqual(before)
})

test('switching the unit and back leaves every text as it was', async ({ page }) => {
  const app = await start(page)
  const before = await app.numbers()
  await app.useInches()
  await expect.poll(async () => await app.numbers()).not.toEqual(before)
  await app.useMillimetres()
  await expect.poll(async () => await app.numbers()).toEqual(before)
})

test('a recline typed in the seat panel turns the torso line', async ({ page }) => {
  const app = await start(page)
  await app.tab('Seat')
  await app.typeInto(page.getByLabel('As drawn'), '27.5')
  const drop = shoulderDrop(shoulderCentre(BENCH_HIP, 27.5), { x: 1640, z: 640 })
  await app.expectBoth('shoulder-drop', 'shoulder', drop)
  await app.expectBoth('shoulder-to-spine', 'shoulder', drop - 27.5)
})
