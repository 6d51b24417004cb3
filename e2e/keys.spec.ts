import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'

const LAP_LEFT = 'anchor:driver:lap-left'
const LAP_RIGHT = 'anchor:driver:lap-right'
/** Exact by definition: 1 in = 25.4 mm. */
const MM_PER_INCH = 25.4

const start = async (page: Page) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.showNumbers()
  return { app, side: new Elevation(app, 'side'), top: new Elevation(app, 'top') }
}

test('arrow keys in the parts list move by 1 mm, with Shift by 10 mm, with Alt across the car', async ({
  page,
}) => {
  const { app } = await start(page)
  await app.part(LAP_LEFT).focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowUp')
  await app.expectAt(LAP_LEFT, { x: 1381, y: 130, z: 51 })
  await page.keyboard.press('Shift+ArrowLeft')
  await page.keyboard.press('Shift+ArrowDown')
  await app.expectAt(LAP_LEFT, { x: 1371, y: 130, z: 41 })
  await page.keyboard.press('Alt+ArrowUp')
  await page.keyboard.press('Shift+Alt+ArrowDown')
  await app.expectAt(LAP_LEFT, { y: 121 })
  // Mirrored about the seat at y 360.
  await app.expectAt(LAP_RIGHT, { x: 1371, y: 599, z: 41 })
})

test('in inches the arrow keys move by a sixteenth and, with Shift, by half an inch', async ({ page }) => {
  const { app } = await start(page)
  await app.useInches()
  await app.part(LAP_LEFT).focus()
  await page.keyboard.press('ArrowRight')
  await app.expectAt(LAP_LEFT, { x: 1380 + MM_PER_INCH / 16 })
  await page.keyboard.press('Shift+ArrowUp')
  await app.expectAt(LAP_LEFT, { z: 50 + MM_PER_INCH / 2 })
})

test('arrow keys on an elevation move the selected part in its plane', async ({ page }) => {
  const { app, side, top } = await start(page)
  await app.select(LAP_LEFT)
  await side.pane.focus()
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('Shift+ArrowRight')
  await app.expectAt(LAP_LEFT, { x: 1390, y: 130, z: 51 })
  await top.pane.focus()
  await page.keyboard.press('Shift+ArrowUp')
  await app.expectAt(LAP_LEFT, { x: 1390, y: 140, z: 51 })
})

test('a key held down is one step to undo', async ({ page }) => {
  const { app, side } = await start(page)
  await app.select(LAP_LEFT)
  await app.settled()
  const before = await app.numbers()
  await side.pane.focus()
  for (let press = 0; press < 5; press += 1) await page.keyboard.down('ArrowUp')
  await page.keyboard.up('ArrowUp')
  await app.expectAt(LAP_LEFT, { z: 55 })
  await app.expectOneUndoGives(before)
})

test('Escape during a drag restores the numbers it began with and leaves no step', async ({ page }) => {
  const { app, side } = await start(page)
  const before = await app.numbers()
  const from = await side.grab(LAP_LEFT)
  await side.carry(from, { u: 60, v: 60 })
  await expect.poll(async () => await app.numbers()).not.toEqual(before)
  await page.keyboard.press('Escape')
  await expect.poll(async () => await app.numbers()).toEqual(before)
  await side.carry({ x: from.x + 5, y: from.y }, { u: 80, v: 20 })
  await side.drop()
  expect(await app.numbers()).toEqual(before)
  // An opened file has no step to undo yet.
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})

test('undo and redo step through a mixed sequence, each gesture one step, with identical numbers', async ({
  page,
}) => {
  const { app, side, top } = await start(page)
  await app.select(LAP_LEFT)
  const steps = [
    () => side.drag(LAP_LEFT, { u: -30, v: 40 }),
    () => top.drag('hip:driver', { u: 25, v: 30 }),
    () => app.part('tube-height:harness-bar').press('Shift+ArrowUp'),
    () => app.typeInto(app.selectedField('z up'), '655.5'),
    () => side.drag('recline:driver', { u: 40, v: 0 }),
    () => page.getByTestId('rule-set').selectOption('student-cars-2026'),
  ]
  const states = [await app.numbers()]
  for (const step of steps) {
    await step()
    states.push(await app.numbers())
  }
  expect(new Set(states.map((state) => JSON.stringify(state))).size).toBe(steps.length + 1)
  for (const state of states.slice(0, -1).toReversed()) {
    await page.keyboard.press('Control+z')
    await expect.poll(async () => await app.numbers()).toEqual(state)
  }
  for (const state of states.slice(1)) {
    await page.keyboard.press('Control+Shift+z')
    await expect.poll(async () => await app.numbers()).toEqual(state)
  }
  await expect(page.getByRole('button', { name: 'Redo' })).toBeDisabled()
})
