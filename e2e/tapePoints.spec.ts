import { expect, test, type Locator, type Page } from '@playwright/test'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'

const tapePoints = (page: Page): Locator => page.getByRole('region', { name: 'Tape points' })

test('a tape point is named, placed in either unit, and taken out again', async ({ page }) => {
  const app = await App.start(page)
  await app.openLayout({ ...exampleLayout('rock-buggy'), tapePoints: [] })
  await app.tab('Tubes')
  const state = tapePoints(page).getByRole('status', { name: 'Tape checks' })
  await expect(state).toContainText('of 6 anchors cannot be told')
  await tapePoints(page).getByRole('button', { name: 'Add a tape point' }).click()
  await tapePoints(page).getByText('Tape point 1').click()
  await expect(tapePoints(page)).toContainText('Still at the datum')
  await app.typeInto(tapePoints(page).getByLabel('Name'), 'Roof mark')
  await app.typeInto(tapePoints(page).getByLabel('z up'), '50 in')
  await expect(tapePoints(page).getByLabel('z up')).toHaveValue('1270')
  await expect(tapePoints(page)).not.toContainText('Still at the datum')
  await app.undo()
  await expect(tapePoints(page)).toContainText('Still at the datum')
  await tapePoints(page).getByRole('button', { name: 'Remove this tape point' }).click()
  await expect(tapePoints(page).getByText('Roof mark')).toHaveCount(0)
})

test('the points of an example tell every anchor', async ({ page }) => {
  const app = await App.start(page)
  await app.openLayout(exampleLayout('rock-buggy'))
  await app.tab('Tubes')
  await expect(tapePoints(page).getByRole('status', { name: 'Tape checks' })).toContainText(
    'Every anchor’s position can be told',
  )
})
